import type { Scale } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Move } from '../moves/operation.ts'
import type { Placing, TouchPlace } from '../moves/placing.ts'
import type { Length } from '../units/length.ts'
import type { FeaturePlan, Plan } from './plan.ts'

/**
 * A short name for the instructions on a sheet: it covers the dials and, of each planned feature, its edge, its set-up,
 * the sizes of the drawing and every move with its reading. Two sheets with the same name cut the same, whatever their
 * titles and wherever and whenever they were printed.
 */
export const identityOf = ({ units, lathe, features }: Plan): string =>
  spelled(
    hashed(
      JSON.stringify([
        units,
        [lathe.crossFeed, lathe.compound.scale, lathe.carriage].map((scale) => (scale === null ? null : dialOf(scale))),
        features.flatMap((feature) => (feature.status === 'planned' ? [cutOf(feature)] : [])),
      ]),
    ),
  )

/** Rounding error must not change the name: lengths to a nanometer, angles to a millionth of a degree. */
const whole = (length: number | null | undefined): number | null => (length == null ? null : Math.round(length / 1000))
const degrees = (angle: number): number => Math.round(angle * 1e6)

const dialOf = (scale: Scale) =>
  scale.kind === 'readout'
    ? [scale.units, whole(scale.resolution), scale.reads]
    : [scale.units, whole(scale.graduation), whole(scale.perTurn), scale.reads, whole(scale.backlash), scale.readTo]

const cutOf = ({ operation }: Extract<FeaturePlan, { status: 'planned' }>) => [
  operation.kind,
  formOf(operation.edge.pieces),
  whole(operation.edge.reach),
  degrees(operation.angle),
  whole(operation.surface),
  placeOf(operation.placing),
  whole(operation.touch.diameter),
  ...(operation.touch.at === null ? [] : [placeOf(operation.touch.at)]),
  operation.dimensions.map(({ id, aim, limits }) => {
    const size = id === 'angle' ? degrees : whole
    return [id, size(aim), limits === null ? null : limits.map(size)]
  }),
  operation.moves.map(moveOf),
]

const placeOf = ({ point, against }: Placing | TouchPlace) => [
  point,
  ...Object.entries(against).flatMap(([what, at]: [string, Length | readonly Length[]]) => [
    what,
    [at].flat().map(whole),
  ]),
]

const moveOf = ({ action, slide, count, takeUp, place }: Move) => [
  action,
  slide ?? null,
  count ?? null,
  takeUp ?? null,
  whole(place),
]

const formOf = (form: Form) =>
  form.map(({ from, to, curve }) => [
    whole(from),
    whole(to),
    ...(curve.kind === 'line'
      ? [whole(curve.d0), whole(curve.d1)]
      : [whole(curve.zc), whole(curve.dc), whole(curve.r), curve.side]),
  ])

/** FNV-1a over the UTF-16 units, 64 bits: offset basis and prime as its authors publish them. */
export const hashed = (text: string): bigint => {
  let hash = 0xcbf29ce484222325n
  for (let i = 0; i < text.length; i++) hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(i))) * 0x100000001b3n)
  return hash
}

/** Letters and digits that cannot be confused on paper or by ear: no O and 0, no I and 1, no B, D, P and T. */
const LETTERS = 'FHKLMRWXY2346789'
const LONG = 6

/** Folded, so that every bit counts. */
export const spelled = (hash: bigint): string => {
  const folded = hash ^ (hash >> 24n) ^ (hash >> 48n)
  return Array.from({ length: LONG }, (_, i) => LETTERS[Number((folded >> BigInt(4 * i)) & 15n)]).join('')
}
