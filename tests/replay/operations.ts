import type { Piece } from '../../src/moves/form.ts'
import type { Move, Operation, WantedDimension } from '../../src/moves/operation.ts'
import type { Length } from '../../src/units/length.ts'
import { across, back, begin, corner, feed, groove, inch, line, move, out, past, round, shift, vee } from './shop.ts'

/** Operations written by hand, one of each sort, on a bar of 1.5 in with the lathe of the shop. */
const sizes = (...ids: readonly WantedDimension['id'][]): readonly WantedDimension[] =>
  ids.map((id) => ({ id, aim: 0, limits: null }))

/** A deep half circle through both edges: a concave groove in a bar of 1.5 in. */
const hollow = (center: Length, r: number, half: Length, depth: Length): Piece => ({
  from: center - half,
  to: center + half,
  step: -1,
  curve: { kind: 'arc', zc: center, dc: inch(-0.75) + depth - inch(r), r: inch(r), side: 1 },
})

/** 3/32 radius, .060 deep, with a form tool of the same radius. */
export const formed: Operation = {
  ...groove(1.5, 0.2, 0.06, [...begin, feed(40), feed(60), out(-50)]),
  edge: round(0.09375),
  placing: { point: 'tip', against: { line: inch(1.5) } },
  wanted: [hollow(inch(1.5), 0.09375, Math.sqrt(inch(0.09375) ** 2 - inch(0.03375) ** 2), inch(0.06))],
  region: { from: inch(1.5) - inch(0.088), to: inch(1.5) + inch(0.088) },
  dimensions: sizes('radius', 'depth', 'width', 'center', 'root'),
}

/** Radius .125, .060 deep, stepped along the arc by a tool of radius .09375: every mark of the compound, depth to the next mark up. */
const steppedMoves = (): readonly Move[] => {
  const swing = 0.125 - 0.09375
  const widest = Math.sqrt(0.125 ** 2 - 0.065 ** 2) * (swing / 0.125)
  const marks = Array.from({ length: 53 }, (_, k) => k - 26).filter((mark) => Math.abs(mark / 1000) <= widest)
  const depth = (mark: number): number =>
    Math.ceil((0.06 - swing + Math.sqrt(swing ** 2 - (mark / 1000) ** 2)) * 1000 - 0.5)
  const first = marks[0]!
  return [
    ...begin,
    past(first - 20),
    ...marks.flatMap((mark) => [mark === first ? back(mark) : shift(mark), feed(depth(mark)), out(-50)]),
  ]
}
export const stepped: Operation = {
  ...formed,
  moves: steppedMoves(),
  wanted: [hollow(inch(1.5), 0.125, Math.sqrt(inch(0.125) ** 2 - inch(0.065) ** 2), inch(0.06))],
  region: { from: inch(1.5) - inch(0.108), to: inch(1.5) + inch(0.108) },
}

/** Radius 1/8 on the free end's corner, by alternating small moves; every number in thousandths. */
const tips: readonly Move[] = [
  move('take-up', 'compound', null, 11),
  move('align'),
  move('lock'),
  move('touch-off', 'cross-feed'),
  move('zero', 'cross-feed'),
  out(-115),
  move('touch-off', 'compound'),
  move('zero', 'compound'),
  past(-70),
  back(-40),
  feed(-40),
  move('start'),
]
const alternate: readonly Move[] = [-30, -20, -10, -5, -2, 0].flatMap((at) => [
  move('feed-in', 'compound', at),
  feed(at),
])
export const rounded: Operation = {
  ...groove(0, 0.125, 0.125, [...tips, ...alternate, out(-150), move('stop'), move('measure')]),
  edge: corner(0.125),
  // Only the outer .010 is over the work when it touches the cylinder, and the carriage is locked there already.
  placing: { point: 'tailstock-corner', against: { beside: 0, gap: inch(0.115) } },
  wanted: corner(0.125).pieces.map((piece) => ({
    ...piece,
    curve: { kind: 'arc', zc: inch(0.125), dc: inch(0.125 - 0.75), r: inch(0.125), side: -1 },
  })),
  dimensions: sizes('radius', 'legAlong', 'legDown'),
}

/** 38 degrees, .400 deep, root .150 by a nose of .140 and a feed across of .010. */
const tan19 = Math.tan((19 * Math.PI) / 180)
const rise = inch(0.4) * tan19
export const pulley: Operation = {
  ...groove(1.5, 0.15, 0.4, [
    ...begin,
    feed(200),
    out(-50),
    shift(10),
    feed(200),
    out(-50),
    past(-20),
    back(0),
    feed(400),
    across(10),
    out(-50),
  ]),
  edge: vee(0.14, 38, 0.5),
  placing: { point: 'nose-tailstock-corner', against: { line: inch(1.5) } },
  wanted: [
    line(inch(1.5) - rise, inch(-0.75), inch(1.5), inch(-0.35)),
    line(inch(1.5), inch(-0.35), inch(1.65), inch(-0.35)),
    line(inch(1.65), inch(-0.35), inch(1.65) + rise, inch(-0.75)),
  ],
  region: { from: inch(1.5) - rise, to: inch(1.65) + rise },
  dimensions: [
    ...sizes('width', 'depth', 'root', 'angle', 'near', 'far', 'flatness', 'bottomDiameter'),
    { id: 'width', aim: 0, limits: null, atDiameter: inch(1.502) },
    { id: 'width', aim: 0, limits: null, atDiameter: inch(1) },
  ],
}

/** Compound swung to 30 degrees: a shift of C goes in by half of it, which the cross-feed takes back. */
export const swung: Operation = {
  ...groove(1.125, 0.148 + 0.008 * Math.cos(Math.PI / 6), 0.072, [
    ...begin,
    feed(72),
    out(-50),
    shift(8),
    feed(68),
    out(-50),
  ]),
  angle: 30,
  dimensions: sizes('width', 'depth', 'flatness'),
}
