import { describe, expect, it } from 'vitest'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Form } from '../../src/moves/form.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { replay } from '../../src/replay/replay.ts'
import { alongFor, depthShift } from '../../src/sequence/compound.ts'
import { INCH } from '../../src/units/length.ts'
import rows from './compound.json' with { type: 'json' }

describe('what a swung compound does', () => {
  it('has the rows', () => {
    expect([rows.read.length, rows.recomputed.length]).toEqual([2, 14])
  })

  // 30° as a bench-lathe manual has it; the tenth-reading angle from a thread of the trade, given from the cross-feed: 84.26083°.
  it.each(rows.read)('$fromWays° from the ways: $dial on the dial is $depth in depth ($source)', (row) => {
    expect(Math.abs(depthShift(row.dial * INCH, row.fromWays) / INCH - row.depth)).toBeLessThanOrEqual(1e-9)
  })

  // Sines and cosines of the angles a shop uses, six decimals; recomputed, not read.
  it.each(rows.recomputed)('$fromWays° from the ways: 1.000 on the dial is $depth in depth, $along along', (row) => {
    expect(Math.abs(depthShift(INCH, row.fromWays) / INCH - row.depth)).toBeLessThanOrEqual(0.000001)
    expect(Math.abs(alongFor(INCH, row.fromWays) / INCH - row.along)).toBeLessThanOrEqual(0.000001)
  })

  it('moves along the work only when parallel, into it only when square, and out of it when swung the other way', () => {
    expect([alongFor(INCH, 0), depthShift(INCH, 0)]).toEqual([INCH, 0])
    expect(Math.abs(alongFor(INCH, 90))).toBeLessThan(1)
    expect(depthShift(INCH, 90)).toBe(INCH)
    expect(depthShift(INCH, -30)).toBeCloseTo(-INCH / 2, -1)
  })
})

// The same rows on the model lathe: a square tool on the work, the cross-feed left at zero, the compound fed forward.
describe('what the replay cuts with a swung compound', () => {
  it.each(rows.read)('$fromWays°: $dial on the dial cuts $depth deep ($source)', (row) => {
    const { deep } = fedForward(row.fromWays, row.dial)
    expect(Math.abs(deep - row.depth)).toBeLessThanOrEqual(1e-9)
  })

  it.each(rows.recomputed)(
    '$fromWays°: 0.100 on the dial cuts a tenth of $depth deep, a tenth of $along along',
    (row) => {
      const { deep, along } = fedForward(row.fromWays, 0.1)
      expect(Math.abs(deep - row.depth / 10)).toBeLessThanOrEqual(0.0000001)
      expect(Math.abs(along - row.along / 10)).toBeLessThanOrEqual(0.0000001)
    },
  )
})

const RADIUS = 0.75 * INCH
const PLACE = INCH
const TOOL = 0.125 * INCH

const flat = (from: number, to: number, depth: number): Form => [
  { from, to, curve: { kind: 'line', z0: from, d0: depth, z1: to, d1: depth }, step: -1 },
]

/** Feeds the compound to a reading and finds the floor it has cut: how deep, and how far its near end stands along. Inches. */
const fedForward = (angle: number, reading: number): { deep: number; along: number } => {
  const setup = { stock: flat(0, 3 * INCH, -RADIUS), jaws: null, tailstockCenter: false }
  const { surely, possibly } = replay(lathe(angle), setup, [operation(angle, Math.round(reading * 1000))])
    .operations[0]!
  const floor = deepest(surely)
  expect(deepest(possibly)).toEqual(floor)
  return { deep: (floor.depth + RADIUS) / INCH, along: (floor.from - PLACE) / INCH }
}

const deepest = (form: Form): { depth: number; from: number } => {
  const floors = form.flatMap(({ from, curve }) =>
    curve.kind === 'line' && curve.d0 === curve.d1 ? [{ depth: curve.d0, from }] : [],
  )
  return floors.reduce((best, floor) => (floor.depth > best.depth ? floor : best))
}

const dial = {
  kind: 'dial',
  units: 'inch',
  graduation: INCH / 1000,
  perTurn: INCH / 10,
  reads: 'depth',
  backlash: 0.006 * INCH,
  readTo: 1,
} as const

const lathe = (angle: number): Lathe => ({
  name: 'Bench lathe',
  units: 'inch',
  crossFeed: dial,
  compound: { scale: dial, angle, travel: null, scaleZero: 'parallel' },
  carriage: null,
  spindleSpeeds: [95],
  jawClearance: INCH / 4,
  accuracy: { reading: null, touchOff: 0, layout: 0, tool: 0, stock: 0, runout: 0, swivel: 0, trued: 0, toolAngle: 0 },
})

const operation = (angle: number, count: number): Operation => {
  const origin = { file: 'row.yaml', path: [] }
  const moves: Omit<Move, 'origin'>[] = [
    { action: 'take-up', slide: 'compound', count: null, takeUp: 11 },
    { action: 'align' },
    { action: 'lock' },
    { action: 'zero', slide: 'compound' },
    { action: 'touch-off', slide: 'cross-feed' },
    { action: 'zero', slide: 'cross-feed' },
    { action: 'start' },
    { action: 'feed-in', slide: 'compound', count },
  ]
  return {
    feature: 0,
    name: 'Slanting feed',
    kind: 'groove',
    origin,
    toolName: 'square',
    edge: { pieces: flat(0, TOOL, 0), reach: INCH / 4, shank: { from: 0, to: TOOL } },
    angle,
    surface: 2 * RADIUS,
    placing: { point: 'tailstock-corner', against: { line: PLACE } },
    touch: { diameter: 2 * RADIUS, at: null },
    lines: [PLACE],
    wanted: flat(PLACE, PLACE + INCH / 2, -RADIUS + INCH / 8),
    region: { from: PLACE, to: PLACE + INCH / 2 },
    dimensions: [],
    rpm: 95,
    moves: moves.map((move) => ({ ...move, origin })),
  }
}
