import { describe, expect, test } from 'vitest'
import { compile } from '../../src/compile.ts'
import { INCH } from '../../src/units/length.ts'
import { allTold, told } from '../prose.ts'

/** Numbers that any shop would work out the same way. Common practice, no source. */

type Planned = Extract<NonNullable<ReturnType<typeof compile>['plan']>['features'][number], { status: 'planned' }>

const job = (tool: string, feature: string, part = 'diameter: 1.500, length: 4, overhang: 3') => `
title: Check values
units: inch
part: { material: mild steel, held: chuck, ${part} }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  own: { ${tool} }
features:
  - { ${feature}, tool: own }
`

function planned(text: string): Planned {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
  expect(diagnostics).toEqual([])
  const feature = plan!.features[0]!
  if (feature.status !== 'planned') throw new Error(`refused: ${told(feature.reason)}`)
  return feature
}

/** Dial moves from the first start of the spindle on, without the ones that only make room to measure: "cross-feed feed-in 100". */
function dialMoves({ operation: { moves } }: Planned): string[] {
  const cutting = moves.slice(moves.findIndex((move) => move.action === 'start') + 1)
  const withoutStops = cutting.filter(
    (move, i) => move.purpose !== 'clear-to-measure' && cutting[i - 1]?.action !== 'measure',
  )
  return withoutStops.flatMap((move) =>
    typeof move.count === 'number' ? [`${move.slide} ${move.action} ${move.count}`] : [],
  )
}

const size = (feature: Planned, id: string): number => feature.operation.dimensions.find((one) => one.id === id)!.aim
const made = (feature: Planned, id: string): number => feature.budget.find((one) => one.id === id)!.planned

describe('groove 3/16 wide, 1/8 deep, tool 0.012 undersize, 0.025 left for the finish, nothing left on the sides, dial 0.001', () => {
  const groove = planned(
    job(
      'shape: square, width: 0.1755, reach: 0.200',
      'kind: groove, near: 1, width: 3/16, depth: 1/8, leave: 0.025, leave-sides: 0, walls: swept',
    ),
  )

  test('plunge to 100; out; over 12; 100; back past zero and forward to 0; 125; across to 12; out', () => {
    const moves = dialMoves(groove)
    const out = moves.find((move) => move.startsWith('cross-feed back-out'))!
    const past = moves.find((move) => move.startsWith('compound go-past'))!
    expect(moves).toEqual([
      'cross-feed feed-in 100',
      out,
      'compound shift 12',
      'cross-feed feed-in 100',
      out,
      past,
      'compound return 0',
      'cross-feed feed-in 125',
      'compound feed-across 12',
      out,
    ])
    expect(Number(out.split(' ')[2])).toBeLessThan(-8)
    expect(Number(past.split(' ')[2])).toBeLessThan(-6)
  })

  test('is the way without the key as well, where the width has no limits', () => {
    const without = 'kind: groove, near: 1, width: 3/16, depth: 1/8, leave: 0.025'
    const same = planned(job('shape: square, width: 0.1755, reach: 0.200', without))
    expect(dialMoves(same)).toEqual(dialMoves(groove))
  })

  test('the bottom diameter is the stock less 0.250, the width 3/16', () => {
    expect(made(groove, 'bottomDiameter')).toBeCloseTo(1.25 * INCH, -2)
    expect(Math.round(made(groove, 'width'))).toBe((3 * INCH) / 16)
    expect(groove.undersize).toBe((12 * INCH) / 1000)
  })
})

describe('concave radius 5/32', () => {
  const tool = 'shape: round, radius: 5/32, reach: 0.200'

  test('3/16 wide: exactly 1/32 deep, 31 on a dial of 0.001', () => {
    const groove = planned(job(tool, 'kind: radius, shape: concave, center: 1, radius: 5/32, width: 3/16'))
    expect(Math.round(size(groove, 'depth'))).toBe(INCH / 32)
    expect(dialMoves(groove).findLast((move) => move.includes('feed-in'))).toBe('cross-feed feed-in 31')
  })

  test('1/32 deep: exactly 3/16 wide', () => {
    const groove = planned(job(tool, 'kind: radius, shape: concave, center: 1, radius: 5/32, depth: 1/32'))
    expect(Math.round(size(groove, 'width'))).toBe((3 * INCH) / 16)
  })
})

describe('V of 34° included, 3/8 wide, 3/16 deep', () => {
  const v = planned(
    job(
      'shape: vee, angle: 34, nose: 0.250, reach: 0.250',
      'kind: v-groove, center: 1, angle: 34, width: 3/8, depth: 3/16, leave: 0.027, infeed: 0.060',
      'diameter: 3, length: 4, overhang: 3',
    ),
  )

  test('half-angle 17°, flat root 0.2604', () => {
    expect(size(v, 'angle') / 2).toBe(17)
    expect(Number((size(v, 'root') / INCH).toFixed(4))).toBe(0.2604)
    expect(size(v, 'root')).toBeCloseTo(0.375 * (1 - Math.tan((17 * Math.PI) / 180)) * INCH, -2)
  })

  test('roughing by 0.060 goes to 60, 120, 160; the finish to 187, since a tie leaves metal', () => {
    const readings = v.operation.moves.filter(
      (move) =>
        move.slide === 'cross-feed' &&
        move.action === 'feed-in' &&
        (move.purpose === 'rough' || move.purpose === 'finish'),
    )
    const rough = readings.filter((move) => move.purpose === 'rough').map((move) => move.count)
    expect(rough.slice(0, 3)).toEqual([60, 120, 160])
    expect(new Set(rough)).toEqual(new Set([60, 120, 160]))
    expect(readings.filter((move) => move.purpose === 'finish').map((move) => move.count)).toEqual([187])
    expect(187 - 160).toBe(27)
  })
})

describe('corner radius 1/8', () => {
  const radius = INCH / 8
  const corner = planned(job('shape: corner, radius: 1/8', 'kind: radius, shape: corner, corner-of: end, radius: 1/8'))
  const from = corner.operation.moves.findIndex((move) => move.action === 'start')
  const feeds = corner.operation.moves.slice(from).filter((move) => move.action === 'feed-in')
  const mark = INCH / 1000

  test('layout lines at R from the end and at R below the surface', () => {
    expect(corner.layout.map((line) => line.distance)).toContain(radius)
    expect(allTold(corner.layout.map((line) => line.say))).toMatch(/\.125 below the surface/)
  })

  test('both dials meet zero together: the last move of each is onto 0, one after the other', () => {
    expect(feeds.slice(-2).map((move) => `${move.slide} ${move.count}`)).toEqual(['compound 0', 'cross-feed 0'])
    // Each tip touches a little early, where the hollow has risen over the .005 that is over the work: R − √(R² − .005²) out, .0001 in.
    const early = (0.125 - Math.sqrt(0.125 ** 2 - 0.005 ** 2)) * INCH
    expect((corner.trace.zero.diameter - 1.5 * INCH) / 2).toBeCloseTo(early, -1)
    expect(corner.trace.zero.fromEnd).toBeLessThan(0)
    expect(corner.trace.zero.fromEnd).toBeGreaterThan(-early)
  })

  test('first contact is at R(1 − 1/√2) on both axes: nothing is cut before, metal is cut after', () => {
    const contact = radius * (1 - 1 / Math.SQRT2)
    const first = feeds[0]!
    expect(-first.count! * mark).toBeGreaterThan(contact)
    expect((-first.count! - 2) * mark).toBeLessThan(contact)
    // The hollow of the tool at equal offsets o stands R√2 − R − o√2 from the sharp corner along the diagonal: it touches where that is 0.
    expect(radius * Math.SQRT2 - radius - contact * Math.SQRT2).toBeCloseTo(0, 0)
  })

  test('from there both readings only rise, by moves that do not grow', () => {
    for (const slide of ['compound', 'cross-feed'] as const) {
      const counts = feeds
        .filter((move) => move.slide === slide && move.purpose === 'alternate')
        .map((move) => move.count!)
      const gaps = counts.slice(1).map((count, i) => count - counts[i]!)
      expect(Math.min(...gaps)).toBeGreaterThan(0)
      // Rounding to a mark may make one move a mark longer than the one before.
      expect(gaps.slice(1).filter((gap, i) => gap > gaps[i]! + 1)).toEqual([])
      expect(counts.at(-1)).toBe(0)
    }
  })
})
