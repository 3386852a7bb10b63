import type { Scale } from '../../src/lathe/lathe.ts'
import type { Form } from '../../src/moves/form.ts'
import type { Move } from '../../src/moves/operation.ts'
import type { FeaturePlan, Plan } from '../../src/plan/plan.ts'
import { INCH, MM } from '../../src/units/length.ts'

/** Plans put together by hand: the screw of a village cider press with one relief groove. Lengths in inches here, pm in the plan. */
export const inch = (value: number): number => Math.round(value * INCH)
export const mm = (value: number): number => Math.round(value * MM)

const origin = { file: 'press.yaml', path: ['features', 0] } as const

export const inchDial = (over: Partial<Extract<Scale, { kind: 'dial' }>> = {}): Extract<Scale, { kind: 'dial' }> => ({
  kind: 'dial',
  units: 'inch',
  graduation: inch(0.001),
  perTurn: inch(0.1),
  reads: 'depth',
  backlash: inch(0.008),
  readTo: 1,
  ...over,
})

export const metricDial: Scale = {
  kind: 'dial',
  units: 'mm',
  graduation: mm(0.02),
  perTurn: mm(3),
  reads: 'depth',
  backlash: mm(0.2),
  readTo: 1,
}

export const diameterDial = inchDial({ perTurn: inch(0.2), reads: 'diameter' })
export const readout: Scale = { kind: 'readout', units: 'inch', resolution: inch(0.0005), reads: 'depth' }

export const move = (action: Move['action'], rest: Omit<Move, 'action' | 'origin'> = {}): Move => ({
  action,
  origin,
  ...rest,
})

export const grooveMoves: readonly Move[] = [
  move('layout'),
  move('fit-tool'),
  move('set-speed'),
  move('take-up', { slide: 'compound', count: null, takeUp: 11, purpose: 'set-up' }),
  move('align'),
  move('lock'),
  move('zero', { slide: 'compound' }),
  move('touch-off', { slide: 'cross-feed' }),
  move('zero', { slide: 'cross-feed' }),
  move('back-out', { slide: 'cross-feed', count: -50, purpose: 'clear' }),
  move('start'),
  move('feed-in', { slide: 'cross-feed', count: 52, purpose: 'rough' }),
  move('back-out', { slide: 'cross-feed', count: -50, purpose: 'clear' }),
  move('shift', { slide: 'compound', count: 8, purpose: 'to-place' }),
  move('feed-in', { slide: 'cross-feed', count: 52, purpose: 'rough' }),
  move('back-out', { slide: 'cross-feed', count: -50, purpose: 'clear' }),
  move('go-past', { slide: 'compound', count: -20, purpose: 'come-back' }),
  move('return', { slide: 'compound', count: 0, purpose: 'come-back' }),
  move('stop'),
  move('back-out', { slide: 'cross-feed', count: -550, purpose: 'clear-to-measure' }),
  move('measure', { purpose: 'expect-rough' }),
  move('return', { slide: 'cross-feed', count: -50, purpose: 'come-back' }),
  move('start'),
  move('feed-in', { slide: 'cross-feed', count: 72, purpose: 'finish' }),
  move('feed-across', { slide: 'compound', count: 8, purpose: 'take-out-floor' }),
  move('back-out', { slide: 'cross-feed', count: -50, purpose: 'square-shoulder' }),
  move('stop'),
  move('measure', { purpose: 'expect-finish' }),
  move('deburr'),
]

const flat = (from: number, to: number, diameter: number): Form => [
  {
    from: inch(from),
    to: inch(to),
    step: -1,
    curve: { kind: 'line', z0: inch(from), d0: inch(-diameter / 2), z1: inch(to), d1: inch(-diameter / 2) },
  },
]

const sizes = (width: number, bottom: number) =>
  [
    { id: 'width', surely: inch(width), possibly: inch(width) },
    { id: 'bottomDiameter', surely: inch(bottom), possibly: inch(bottom) },
  ] as const

type Planned = Extract<FeaturePlan, { status: 'planned' }>

export const groove: Planned = {
  status: 'planned',
  before: { surely: [], possibly: [], allowed: [] },
  name: 'Thread-relief groove',
  kind: 'groove',
  why: 'clearance for the die at the end of the thread',
  drawn: ['5/32 ±0.005 wide', '0.070 +0.004 -0 deep'],
  tool: 'neck',
  edge: {
    shape: 'square',
    width: inch(0.148),
    nose: null,
    angle: null,
    radius: null,
    reach: inch(0.125),
    blank: inch(0.3125),
    edgeOffset: null,
    rakeInUse: 0,
    measured: true,
  },
  undersize: inch(0.00825),
  spindle: {
    rpm: 95,
    wanted: 114.59,
    cuttingSpeed: 90,
    speedUnits: 'ft/min',
    source: 'shop table',
    factor: 0.5,
    tooFast: false,
  },
  pace: { feed: inch(0.002), rest: { turns: 3, seconds: 2 } },
  layout: [
    { fromEnd: inch(1.125), from: 'the free end', step: null, distance: inch(1.125), say: 'tailstock-side edge' },
    { fromEnd: inch(1.28125), from: 'the free end', step: null, distance: inch(1.28125), say: 'headstock-side edge' },
  ],
  clear: inch(0.03),
  sideFeed: 'compound',
  operation: {
    feature: 0,
    name: 'Thread-relief groove',
    kind: 'groove',
    origin,
    toolName: 'neck',
    edge: { pieces: flat(0, 0.148, 0), reach: inch(0.125), shank: { from: inch(-0.08), to: inch(0.23) } },
    angle: 0,
    surface: inch(1.5),
    placing: { point: 'tailstock-corner', against: { line: inch(1.125) } },
    touch: { diameter: inch(1.5), at: null },
    lines: [inch(1.125), inch(1.28125)],
    wanted: flat(1.125, 1.28125, 1.356),
    region: { from: inch(1.125), to: inch(1.28125) },
    dimensions: [{ id: 'width', aim: inch(0.15625), limits: [inch(0.15125), inch(0.16125)] }],
    rpm: 95,
    moves: grooveMoves,
  },
  trace: {
    zero: { fromEnd: inch(1.125), diameter: inch(1.5) },
    slides: [],
    surely: [],
    possibly: [],
    sizes: sizes(0.156, 1.356),
    at: { 20: sizes(0.148, 1.396), 27: sizes(0.156, 1.356) },
    clearance: { 9: inch(0.042), 12: inch(0.042), 15: inch(0.042), 19: inch(0.542), 25: inch(0.042) },
    taken: {},
    met: {},
  },
  budget: [
    {
      id: 'width',
      planned: inch(0.156),
      low: inch(0.1545),
      high: inch(0.1575),
      rss: inch(0.0011),
      limits: [inch(0.15125), inch(0.16125)],
      verdict: 'holds',
      spare: inch(0.00325),
      worstCause: 'tool',
    },
    {
      id: 'bottomDiameter',
      planned: inch(1.356),
      low: inch(1.351),
      high: inch(1.361),
      rss: inch(0.003),
      limits: [inch(1.352), inch(1.36)],
      verdict: 'may not hold',
      spare: inch(-0.001),
      worstCause: 'touch-off',
    },
    {
      id: 'near',
      planned: inch(1.125),
      low: inch(1.1195),
      high: inch(1.1305),
      rss: inch(0.005),
      limits: null,
      verdict: 'no limits given',
      spare: null,
      worstCause: 'layout',
    },
  ],
  notes: [['The tool is .008 under the width: it is cut in two places']],
}

export const refused: FeaturePlan = {
  status: 'refused',
  name: 'Oil groove',
  kind: 'radius',
  code: 'tool-too-wide',
  origin,
  reason: 'the tool "oil" has a radius of .125, more than the .094 of the groove',
  remedy: 'grind the tool to a radius of .094 at most',
}

export const plan = (over: Partial<Plan> = {}): Plan => ({
  title: 'Cider press screw',
  drawingNumber: 'CP-14',
  units: 'inch',
  lathe: {
    name: 'Bench lathe',
    units: 'inch',
    crossFeed: inchDial(),
    compound: { scale: inchDial({ backlash: inch(0.006) }), angle: 0, travel: inch(2.5), scaleZero: 'parallel' },
    carriage: null,
    spindleSpeeds: [60, 95, 150],
    jawClearance: inch(0.25),
    accuracy: {
      reading: null,
      touchOff: inch(0.001),
      layout: inch(0.005),
      tool: inch(0.0005),
      stock: inch(0.0005),
      runout: 0,
      swivel: 1 / 2,
      trued: 1 / 20,
      toolAngle: 1 / 2,
    },
  },
  part: {
    material: 'mild steel',
    held: 'chuck',
    overhang: inch(4),
    steps: [{ name: 'body', diameter: inch(1.5), measured: inch(1.4985), from: 0, to: inch(3) }],
  },
  features: [groove],
  orderReasons: [],
  warnings: [],
  setup: { stock: [], jaws: inch(4), tailstockCenter: false },
  ...over,
})

/** The groove with other moves, for one dial at a time. */
export const grooveWith = (moves: readonly Move[], angle = 0): Planned => ({
  ...groove,
  operation: { ...groove.operation, moves, angle },
  trace: { ...groove.trace, clearance: {}, at: {} },
})
