import type { Origin } from '../../src/diagnostics/diagnostic.ts'
import type { Dial, Lathe } from '../../src/lathe/lathe.ts'
import type { Edge, Form, Piece } from '../../src/moves/form.ts'
import type { Action, Move, Operation, Setup, Slide } from '../../src/moves/operation.ts'
import { INCH, type Length } from '../../src/units/length.ts'

export const inch = (value: number): Length => Math.round(value * 1e6) * (INCH / 1e6)
export const toInch = (length: number | null | undefined): number => (length ?? Number.NaN) / INCH

const ORIGIN: Origin = { file: 'by-hand.yaml', path: [] }
export const dial = (backlash: number): Dial => ({
  kind: 'dial',
  units: 'inch',
  graduation: inch(0.001),
  perTurn: inch(0.1),
  reads: 'depth',
  backlash: inch(backlash),
  readTo: 1,
})

export const bench: Lathe = {
  name: 'Bench lathe',
  units: 'inch',
  crossFeed: dial(0.008),
  compound: { scale: dial(0.006), angle: 0, travel: inch(2.5), scaleZero: 'parallel' },
  carriage: { ...dial(0.03), graduation: inch(0.01), perTurn: inch(0.8) },
  spindleSpeeds: [60, 95, 150],
  jawClearance: inch(0.25),
  accuracy: {
    reading: null,
    touchOff: inch(0.001),
    layout: inch(0.005),
    tool: inch(0.0005),
    stock: inch(0.0005),
    runout: inch(0.001),
    swivel: 1 / 2,
    trued: 1 / 20,
    toolAngle: 1 / 2,
  },
}

export const line = (z0: Length, d0: Length, z1: Length, d1: Length): Piece => ({
  from: z0,
  to: z1,
  curve: { kind: 'line', z0, d0, z1, d1 },
  step: -1,
})

/** A plain bar, or steps from the free end: [diameter, length]. */
export const bar = (...steps: readonly (readonly [number, number])[]): Setup => {
  let z = 0
  const stock: Form = steps.map(([diameter, length]) => {
    const from = inch(z)
    z += length
    return line(from, inch(-diameter / 2), inch(z), inch(-diameter / 2))
  })
  return { stock, jaws: inch(4), tailstockCenter: false }
}

export const square = (width: number, reach = 0.2): Edge => ({
  pieces: [line(0, 0, inch(width), 0)],
  reach: inch(reach),
  shank: { from: 0, to: inch(width) },
})
export const round = (r: number, reach = 0.2): Edge => ({
  pieces: [{ from: inch(-r), to: inch(r), curve: { kind: 'arc', zc: 0, dc: inch(-r), r: inch(r), side: 1 }, step: -1 }],
  reach: inch(reach),
  shank: { from: inch(-r), to: inch(r) },
})
export const corner = (r: number): Edge => ({
  pieces: [{ from: 0, to: inch(r), curve: { kind: 'arc', zc: inch(r), dc: inch(r), r: inch(r), side: -1 }, step: -1 }],
  reach: inch(0.1),
  shank: { from: 0, to: inch(r) },
})
/** Nose flat n, included angle, flanks `high` behind the edge. */
export const vee = (n: number, angle: number, high: number): Edge => {
  const t = Math.tan((angle * Math.PI) / 360)
  const [h, w] = [inch(high), inch(high) * t]
  return {
    pieces: [line(-w, -h, 0, 0), line(0, 0, inch(n), 0), line(inch(n), 0, inch(n) + w, -h)],
    reach: h,
    shank: { from: -w, to: inch(n) + w },
  }
}

export const move = (action: Action, slide?: Slide, count?: number | null, takeUp?: number): Move => ({
  action,
  ...(slide === undefined ? {} : { slide }),
  ...(count === undefined ? {} : { count }),
  ...(takeUp === undefined ? {} : { takeUp }),
  origin: ORIGIN,
})
export const feed = (count: number): Move => move('feed-in', 'cross-feed', count)
export const out = (count: number): Move => move('back-out', 'cross-feed', count)
export const shift = (count: number): Move => move('shift', 'compound', count)
export const past = (count: number): Move => move('go-past', 'compound', count)
export const back = (count: number): Move => move('return', 'compound', count)
export const across = (count: number): Move => move('feed-across', 'compound', count)

/** Aligned, taken up, locked, both dials at zero, backed out by 50 marks, spindle on. */
export const begin: readonly Move[] = [
  move('take-up', 'compound', null, 11),
  move('align'),
  move('lock'),
  move('zero', 'compound'),
  move('touch-off', 'cross-feed'),
  move('zero', 'cross-feed'),
  out(-50),
  move('start'),
]

/** A groove on a 1.5 in bar; sizes in inches from `near`. */
export const groove = (near: number, width: number, depth: number, moves: readonly Move[]): Operation => ({
  feature: 0,
  name: 'Thread-relief groove',
  kind: 'groove',
  origin: ORIGIN,
  toolName: 'neck',
  edge: square(0.148),
  angle: 0,
  surface: inch(1.5),
  placing: { point: 'tailstock-corner', against: { line: inch(near) } },
  touch: { diameter: inch(1.5), at: null },
  lines: [inch(near)],
  wanted: [line(inch(near), inch(depth - 0.75), inch(near + width), inch(depth - 0.75))],
  region: { from: inch(near), to: inch(near + width) },
  dimensions: [
    { id: 'width', aim: inch(width), limits: [inch(width - 0.005), inch(width + 0.005)] },
    { id: 'depth', aim: inch(depth), limits: [inch(depth - 0.002), inch(depth + 0.002)] },
  ],
  rpm: 95,
  moves,
})

/** The groove of the sketch: .156 wide, .072 deep, cut with a tool that measures .148. */
export const neckMoves: readonly Move[] = [
  ...begin,
  feed(52),
  out(-50),
  shift(8),
  feed(52),
  out(-50),
  past(-20),
  back(0),
  move('stop'),
  move('measure'),
  move('start'),
  feed(72),
  across(8),
  out(-50),
  move('stop'),
  move('measure'),
]
export const neck = groove(1.125, 0.156, 0.072, neckMoves)
