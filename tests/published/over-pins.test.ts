import { describe, expect, it } from 'vitest'
import { overPinsInVee, pinSeatsInVee } from '../../src/features/over-pins.ts'
import { INCH } from '../../src/units/length.ts'
import rows from './over-pins.json' with { type: 'json' }
import wires from './over-wires.json' with { type: 'json' }
import sheaves from './sheaves.json' with { type: 'json' }

/** Everything in inches. */
const over = (diameter: number, width: number, angle: number, pin: number): number =>
  overPinsInVee({ diameter: diameter * INCH, width: width * INCH, halfAngle: angle / 2 }, pin * INCH) / INCH

const near = (value: number, published: number, within: number): void =>
  expect(Math.abs(value - published)).toBeLessThanOrEqual(within)

it('has the rows', () => {
  expect([rows.flatCrest.length, rows.constants.length, rows.balls.length, wires.sharpV.length]).toEqual([
    11, 5, 13, 10,
  ])
  expect([sheaves.classical.length, sheaves.narrow.length]).toEqual([9, 7])
})

describe('over wires', () => {
  it.each(wires.sharpV)('sharp V $diameter-$threadsPerInch, $wire wires: $overWires ($source)', (row) => {
    near(over(row.diameter, 1 / row.threadsPerInch, 60, row.wire), row.overWires, 0.0001)
  })

  // An American National thread is a V of 60°, flat over an eighth of the pitch at crest and root: 7/8 of the pitch wide at the top.
  it.each(rows.flatCrest)('flat crest $diameter-$threadsPerInch, $wire wires: $overWires ($source)', (row) => {
    const pitch = 1 / row.threadsPerInch
    near(over(row.diameter, (7 / 8) * pitch, 60, row.wire), row.overWires, row.within)
    expect(
      pinSeatsInVee({ width: (7 / 8) * pitch * INCH, halfAngle: 30, root: (pitch / 8) * INCH }, row.wire * INCH),
    ).toBe(true)
  })

  // M = E + a·G − b·p: at the pitch diameter E a groove is half the pitch wide; at the crest of a Whitworth thread five sixths.
  it.each(rows.constants)('$angle°: $perWire for each wire, $perPitch for the pitch ($source)', (row) => {
    near(over(1, 0, row.angle, 1) - over(1, 0, row.angle, 0), row.perWire, row.within)
    near(over(1, 0, row.angle, 0) - over(1, row.widths, row.angle, 0), row.perPitch, row.within)
  })
})

describe('balls in sheave grooves', () => {
  const projection = (topWidth: number, angle: number, ball: number): number =>
    (over(10, topWidth, angle, ball) - 10) / 2

  // Published for the widest groove that the tolerance allows.
  it.each(sheaves.classical)('IP-20 $section $angle°: $ball ball, $ballProjection above the rim ($source)', (row) => {
    near(projection(row.topWidth + row.topWidthTolerance, row.angle, row.ball), row.ballProjection, 0.003)
    const root = row.topWidth - 2 * row.depth * Math.tan((row.angle * Math.PI) / 360)
    const groove = { width: row.topWidth * INCH, halfAngle: row.angle / 2, root: root * INCH }
    expect(pinSeatsInVee(groove, row.ball * INCH)).toBe(true)
  })

  it.each(sheaves.narrow)('IP-22 $section $angle°: $ball ball, $ballProjection above the rim ($source)', (row) => {
    near(projection(row.topWidth + 0.005, row.angle, row.ball), row.ballProjection, 0.003)
  })

  it.each(rows.balls)('$section $angle°: nominal $nominal, widest $widest ($source)', (row) => {
    near(projection(row.topWidth, row.angle, row.ball), row.nominal, 0.0001)
    near(projection(row.topWidth + row.wider, row.angle, row.ball), row.widest, 0.0001)
  })
})
