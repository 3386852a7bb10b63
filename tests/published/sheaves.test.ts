import { describe, expect, it } from 'vitest'
import { solveV } from '../../src/features/v-groove/form.ts'
import rows from './sheaves.json' with { type: 'json' }

/** Tables in inches and in millimeters: scaled to lengths of the size of pm, each in its own unit. */
const UNIT = 1_000_000_000

/** Width at a depth below the top: a V cut off there. */
const widthBelow = (angle: number, top: number, depth: number): number =>
  solveV({ halfAngle: angle / 2, width: top * UNIT, depth: depth * UNIT }).root / UNIT

/** How far a ball seated in the V stands above the surface: centre (d/2)/sin(A/2) above the vertex of the V. */
const ballAbove = (angle: number, top: number, ball: number): number =>
  ball / 2 / Math.sin((angle * Math.PI) / 360) +
  ball / 2 -
  solveV({ halfAngle: angle / 2, width: top * UNIT }).depth / UNIT

const near = (value: number, published: number, within: number): void =>
  expect(Math.abs(value - published)).toBeLessThanOrEqual(within)

describe('sheave grooves', () => {
  it('has the rows', () => {
    expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
      classical: 9,
      narrowDeep: 9,
      narrow: 7,
      din2211: 10,
      din2211Examples: 2,
      deep: 4,
    })
  })

  // IP-20 from two places: top width and angle from the belt maker's Table 1, datum width from Machinery's Handbook, Table 9.
  it.each(rows.classical)(
    'IP-20 $section $angle°: $topWidth at the top is $datumWidth at the datum diameter',
    (row) => {
      near(widthBelow(row.angle, row.topWidth, row.outsideLessDatum / 2), row.datumWidth, 0.001)
    },
  )

  // The published projection is for the widest groove the tolerance allows.
  it.each(rows.classical)(
    'IP-20 $section $angle°: a $ball ball stands $ballProjection above the rim ($source)',
    (row) => {
      near(ballAbove(row.angle, row.topWidth + row.topWidthTolerance, row.ball), row.ballProjection, 0.003)
    },
  )

  it.each(rows.narrowDeep)(
    'IP-22 deep $section $angle°: $topWidth at the top is $effectiveWidth below ($source)',
    (row) => {
      near(widthBelow(row.angle, row.topWidth, row.outsideLessEffective / 2), row.effectiveWidth, 0.0006)
    },
  )

  // Top width tolerance of IP-22: 0.005 in.
  it.each(rows.narrow)('IP-22 $section $angle°: a $ball ball stands $ballProjection above the rim ($source)', (row) => {
    near(ballAbove(row.angle, row.topWidth + 0.005, row.ball), row.ballProjection, 0.003)
  })

  // DIN 2211 prints one top width, "about", for both angles: it lies between the two, to half of its last printed digit.
  it.each(rows.din2211)('DIN 2211 $section: datum width $datumWidth, top width about $topWidth ($source)', (row) => {
    const tops = row.angles.map((angle) => topWidth(angle, row.datumWidth, row.aboveDatum))
    const half = Number.isInteger(row.topWidth) ? 0.5 : 0.05
    expect(tops.length).toBe(2)
    expect(row.topWidth).toBeGreaterThanOrEqual(Math.min(...tops) - half)
    expect(row.topWidth).toBeLessThanOrEqual(Math.max(...tops) + half)
  })

  it.each(rows.din2211Examples)(
    'DIN 2211 $section on a datum diameter of $datumDiameter: $outside outside, $root at the root',
    (row) => {
      const { datumWidth, aboveDatum, depth } = rows.din2211.find((profile) => profile.section === row.section)!
      const top = topWidth(row.angle, datumWidth, aboveDatum)
      near(row.datumDiameter + 2 * aboveDatum, row.outside, 1e-9)
      near(widthBelow(row.angle, top, (row.outside - row.datumDiameter) / 2), datumWidth, 1e-6)
      const root = widthBelow(row.angle, top, depth)
      const below = solveV({ halfAngle: row.angle / 2, width: datumWidth * UNIT, root: root * UNIT }).depth / UNIT
      near(row.datumDiameter - 2 * below, row.root, 1e-6)
    },
  )

  it.each(rows.deep)(
    'DIN 2217 $section $angle°: datum width $datumWidth, top width about $topWidth ($source)',
    (row) => {
      near(topWidth(row.angle, row.datumWidth, row.aboveDatum), row.topWidth, 0.05)
    },
  )
})

const topWidth = (angle: number, datumWidth: number, aboveDatum: number): number =>
  solveV({ halfAngle: angle / 2, depth: aboveDatum * UNIT, root: datumWidth * UNIT }).width / UNIT
