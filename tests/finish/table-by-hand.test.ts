import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { type Between, betweenRows } from '../../src/finish/between.ts'
import type { Shop } from '../../src/finish/measured.ts'
import { deeperOnPaper, offPaper, readOff } from '../../src/finish/paper.ts'
import { stopOf } from '../../src/finish/stop.ts'
import { type CorrectionTable, correctionTable, readingsAround, summedError } from '../../src/finish/table.ts'
import { startOf } from '../../src/replay/replay.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { told } from '../prose.ts'

/** A groove on a dial of .001 that reads depth: a mark is .002 on the diameter. The errors are set by hand; no job has these. */
const shopOf = (measured: string, size: string, units: 'inch' | 'mm' = 'inch', by = 1): Shop => {
  const at = (inches: number): string => (inches * by).toFixed(4)
  const text = `title: Press pin
units: ${units}
part: { material: mild steel, held: chuck, overhang: ${at(3)}, diameter: ${at(1.5)}, measured-diameter: ${measured}, length: ${at(5)} }
lathe:
  name: Bench lathe
  units: ${units}
  cross-feed: { graduation: ${units === 'inch' ? 0.001 : 0.02}, per-turn: ${units === 'inch' ? 0.1 : 2}, reads: depth, backlash: ${at(0.008)} }
  compound: { graduation: ${units === 'inch' ? 0.001 : 0.02}, per-turn: ${units === 'inch' ? 0.1 : 2}, backlash: ${at(0.006)}, travel: ${at(2.5)} }
  spindle-speeds: [60, 95, 150, 240]
tools: { neck: { shape: square, width: ${at(0.148)}, reach: ${at(0.2)} } }
features:
  - { kind: groove, name: Neck, near: ${at(1.125)}, width: ${at(0.156)}, ${size}, leave: ${at(0.02)}, tool: neck }
`
  const plan = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(text) })).plan!
  const feature = plan.features[0]!
  if (feature.status !== 'planned') throw new Error(told(feature.reason))
  const { operation, trace } = feature
  const stop = stopOf(operation, trace)!
  return { lathe: plan.lathe, setup: plan.setup, progress: startOf(plan.setup), operation, stop }
}
const off = (id: 'depth' | 'bottomDiameter', low: number, high: number) =>
  [{ id, planned: 10 * INCH, low: 10 * INCH - low, high: 10 * INCH + high }] as never

const table = (
  shop: Shop,
  sum: number,
  units: 'inch' | 'mm' = 'inch',
  id: 'depth' | 'bottomDiameter' = 'bottomDiameter',
) => correctionTable(shop, off(id, sum, 0), units)!
const tenths = (found: CorrectionTable, per = INCH / 10_000): number[] =>
  found.rows.map(({ measured }) => Math.round((measured - found.expected) / per))

const BY_BOTTOM = shopOf('1.5', 'bottom-diameter: 1.36 ±0.02')
const thousandths = (many: number): number => (many * INCH) / 1000

describe('how far apart the rows stand', () => {
  // A mark is 20 tenths on the diameter; rows as many marks apart as leave two or three on each side, and one at the end of what the errors explain.
  it.each([
    [8, [80, 40, 0, -40, -80]],
    [7.9, [75, 60, 40, 20, 0, -20, -40, -60, -75]],
    [4, [40, 20, 0, -20, -40]],
    [3.9, [35, 30, 20, 10, 0, -10, -20, -30, -35]],
    [2, [20, 10, 0, -10, -20]],
    // Half of half a mark: there a tenth is told apart.
    [1.9, [19, 15, 10, 5, 0, -5, -10, -15, -19]],
    [16, [160, 80, 0, -80, -160]],
  ])('%s thousandths explained', (sum, rows) => {
    const found = table(BY_BOTTOM, thousandths(sum))
    expect(tenths(found)).toEqual(rows)
    expect(found.most).toBeCloseTo((rows[0]! * INCH) / 10_000, 0)
    expect(found.quantum).toBe(sum < 2 ? INCH / 10_000 : INCH / 2000)
  })

  it('in millimeters by hundredths, and by micrometers where a mark is that fine', () => {
    const metric = shopOf('37.5', 'bottom-diameter: 34 ±0.5', 'mm', 25)
    // .02 on the dial is .04 on the diameter.
    const found = table(metric, 0.09 * MM, 'mm')
    expect(tenths(found, MM / 100)).toEqual([9, 8, 4, 0, -4, -8, -9])
    expect(found.quantum).toBe(MM / 100)
    expect(table(metric, 0.03 * MM, 'mm').quantum).toBe(MM / 1000)
    expect(table(metric, 0.04 * MM, 'mm').quantum).toBe(MM / 100)
  })

  it('is nothing where nothing can be off', () => {
    expect(correctionTable(BY_BOTTOM, off('bottomDiameter', 0, 0), 'inch')).toBeNull()
    expect(correctionTable(BY_BOTTOM, [], 'inch')).toBeNull()
  })
})

describe('what a row says', () => {
  it('is the written reading, and a mark more for each .002 that the bottom is large', () => {
    // Under 1.5 a bottom of 1.36 is .070; .020 is left, so roughed to .050 and 1.400 expected.
    const { rows, expected, finishes, at, by } = table(BY_BOTTOM, thousandths(4))
    expect([at, by, finishes]).toEqual([BY_BOTTOM.stop.at, 'cross-feed', BY_BOTTOM.stop.finishes])
    expect(expected).toBe(1.4 * INCH)
    expect(rows.map(({ deeper, counts }) => [deeper, counts])).toEqual([2, 1, 0, -1, -2].map((n) => [n, [70 + n]]))
    for (const { bottom, within } of rows)
      expect([Math.round(bottom / 1000), within]).toEqual([1.36 * (INCH / 1000), true])
  })

  it('stands around what is expected as a micrometer reads it', () => {
    // Roughed to .048 under 1.4963: 1.4003 is read as 1.4005.
    const bottom = table(shopOf('1.4963', 'bottom-diameter: 1.36 ±0.02'), thousandths(4))
    expect(bottom.byDepth).toBe(false)
    expect(bottom.expected / INCH).toBeCloseTo(1.4005, 9)
    // A depth is read off both: the difference is .100, whatever the outside is.
    const depth = table(shopOf('1.4963', 'depth: 0.070 ±0.01'), thousandths(2), 'inch', 'depth')
    expect(depth.byDepth).toBe(true)
    expect((1.4963 * INCH - depth.expected) / INCH).toBeCloseTo(0.1, 9)
    // Errors of a depth count twice on the diameter.
    expect(depth.most).toBe(thousandths(4))
  })

  it('is left out where no reading comes within the limits, with the reason', () => {
    // 1.360 −0 +.001: at .002 a mark there is a reading for an even number of thousandths, not for one and a half off.
    const tight = table(shopOf('1.5', 'bottom-diameter: 1.36 +0.0004 -0.0004'), thousandths(3.9))
    expect(tenths(tight)).toEqual([20, 0, -20])
    expect(
      tight.without.map((group) => group.map((one) => Math.round(((one - tight.expected) * 10_000) / INCH))),
    ).toEqual([[35, 30], [10], [-10], [-30, -35]])
    expect(tight.reason).toBe('no reading comes within the limits')
    // Between .002 and nothing there is a reading without a row: nobody goes by the nearer one.
    expect(deeperOnPaper({ bottom: tight, width: null }, tight.expected + thousandths(0.9))).toBeNull()
    expect(deeperOnPaper({ bottom: tight, width: null }, tight.expected + thousandths(2))).toBe(1)
  })
})

describe('between two rows of a table', () => {
  // 1.4963 less twice .068 is 1.3603. Halfway between 1.4025 (a mark deeper) and 1.4005 (as written) the one comes to 1.3595, the other to 1.3615.
  const between = (size: string, sum = 4) =>
    table(shopOf('1.4963', `bottom-diameter: ${size}`), thousandths(sum)).between
  it('the nearer is told where both of them are within the limits there', () => {
    expect([between('1.36 ±0.0016'), between('1.36 ±0.0014')]).toEqual(['nearer', 'none'])
  })

  it('it is told without limits too, up to a mark', () => {
    expect(between('1.36')).toBe('nearer')
    expect(between('1.36', 8)).toBe('in proportion')
  })

  it('it is in proportion where they stand two marks apart', () => {
    expect(between('1.36 ±0.02', 8)).toBe('in proportion')
  })
})

it('an end that is a hair short by arithmetic is no row less', () => {
  expect(tenths(table(BY_BOTTOM, thousandths(7.5) - 5))).toEqual([75, 60, 40, 20, 0, -20, -40, -60, -75])
  expect(table(BY_BOTTOM, thousandths(7.5) - 5).most).toBeCloseTo(thousandths(7.5), 0)
})

it('what the errors explain is the further side, twice that of a depth', () => {
  expect([summedError(off('bottomDiameter', 3, 1), false), summedError(off('bottomDiameter', 1, 4), false)]).toEqual([
    3, 4,
  ])
  expect([
    summedError(off('depth', 3, 1), true),
    summedError(off('depth', 3, 1), false),
    summedError([], true),
  ]).toEqual([6, 0, 0])
})

it('readings go out to the end of what is explained, each as the instrument reads it', () => {
  expect(readingsAround(100, 7, 2, 1)).toEqual([107, 106, 104, 102, 100, 98, 96, 94, 93])
  expect(readingsAround(100, 6, 2, 1)).toEqual([106, 104, 102, 100, 98, 96, 94])
  expect(readingsAround(100, 4.5, 1.5, 1)).toEqual([104, 103, 101, 100, 99, 97, 96])
  // Three tenths are three tenths, whatever a computer makes of them.
  expect(readingsAround(0, 0.3, 0.1, 0.1).map((one) => Math.round(one * 10))).toEqual([3, 2, 1, 0, -1, -2, -3])
})

describe('reading between rows', () => {
  const rows = [6000, 2000, -2000].map((measured) => ({ measured }))
  const paper = { expected: 2000, most: 4000, rows, without: [], between: 'nearer' as Between }
  const values = [2, 1, 0]
  const read = (measured: number, up = false, more: object = {}) =>
    readOff({ ...paper, ...more }, measured * 1e6, (row) => values[row]!, up)
  const scaled = (by: number) => ({
    expected: paper.expected * by,
    most: paper.most * by,
    rows: rows.map(({ measured }) => ({ measured: measured * by })),
  })
  const big = scaled(1e6)
  it.each([
    [6000, 2, 2],
    [4001, 2, 2],
    [4000, 1, 2],
    [3999, 1, 1],
    [2000, 1, 1],
    [1, 1, 1],
    [0, 0, 1],
    [-1, 0, 0],
    [-2000, 0, 0],
  ])('%s: the nearer, in doubt the lower or the higher', (measured, low, high) => {
    expect([read(measured, false, big), read(measured, true, big)]).toEqual([low + 0, high + 0])
  })

  it('is nothing off the paper, beside a reading without a row, or where the sheet says to use finish', () => {
    expect([read(6001, false, big), read(-2001, false, big)]).toEqual([null, null])
    expect([offPaper({ ...paper, ...big }, 6000.0005e6), offPaper({ ...paper, ...big }, 6000.002e6)]).toEqual([
      false,
      true,
    ])
    const without = { ...big, without: [[4000e6]] }
    expect([
      read(4100, false, without),
      read(3900, false, without),
      read(2000, false, without),
      read(1000, false, without),
    ]).toEqual([null, null, 1, 1])
    const none = { ...big, between: 'none' }
    expect([read(4100, false, none), read(6000, false, none)]).toEqual([null, 2])
    expect(read(2000, false, { ...big, rows: [] })).toBeNull()
  })
})

describe('the rule between rows', () => {
  const asked: [number, number][] = []
  const rule = (steps: readonly number[], no: readonly [number, number][] = [], without: number[] = []) => {
    asked.length = 0
    const rows = steps.map((one, i) => ({ measured: 1e6 * (steps.length - i), steps: one }))
    return betweenRows(rows, without, (measured, step) => {
      asked.push([measured / 1e6, step])
      return !no.some(([at, bad]) => at === measured / 1e6 && bad === step)
    })
  }

  it('is tried on both sides of each place where the reading changes', () => {
    expect(rule([2, 1, 1])).toBe('nearer')
    expect(asked).toEqual([
      [2.5, 2],
      [2.5, 1],
    ])
  })

  it('is in proportion where a row is several steps from the next', () => {
    expect(rule([2, 0])).toBe('in proportion')
    expect(asked).toEqual([
      [1.75, 2],
      [1.75, 1],
      [1.25, 1],
      [1.25, 0],
    ])
    expect(rule([-2, 0])).toBe('in proportion')
    expect(asked.at(-1)).toEqual([1.25, 0])
  })

  it('is none where one of them is not proved, and not asked across a reading without a row', () => {
    expect(rule([1, 0], [[1.5, 0]])).toBe('none')
    expect(rule([1, 0], [[1.5, 1]])).toBe('none')
    expect(rule([1, 0], [[1.5, 0]], [1.5e6])).toBe('nearer')
    expect(rule([2, 0], [], [1.5e6])).toBe('nearer')
    // A reading without a row beyond the rows is between none of them.
    for (const beyond of [0.5e6, 2.5e6]) expect(rule([1, 0], [[1.5, 0]], [beyond])).toBe('none')
  })
})
