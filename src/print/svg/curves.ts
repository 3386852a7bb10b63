import type { Curve, Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { short } from '../markup.ts'
import type { Point } from './pen.ts'

/** From places on the work to places on paper: the headstock is to the left, as it is for who stands at the lathe. */
export type Frame = {
  /** mm of paper for a mm of work. */
  readonly scale: number
  readonly x: (z: Length) => number
  /** Depth toward the axis goes down; of a mirrored half, up. */
  readonly y: (d: Length) => number
  readonly mirrored?: boolean
}

const MM = 1e9

/** `at`: the paper place of z = 0 and d = 0. */
export const frameAt = (scale: number, [x, y]: Point, mirrored = false): Frame => ({
  scale,
  x: (z) => x - (z / MM) * scale,
  y: (d) => y + ((mirrored ? -d : d) / MM) * scale,
  mirrored,
})

/** Scales that a drawing is made to, largest first. */
const SCALES = [100, 50, 20, 10, 5, 4, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100] as const

/** The largest scale at which so much work finds room on so much paper, both mm. */
export const scaleFor = (sizes: readonly (readonly [work: Length, paper: number])[], most = 100): number =>
  SCALES.find((scale) => scale <= most && sizes.every(([work, paper]) => (work / MM) * scale <= paper)) ??
  SCALES.at(-1)!

export const scaleWords = (scale: number): string =>
  scale >= 1 ? `scale ${scale}:1` : `scale 1:${Math.round(1 / scale)}`

export const depthAt = (curve: Curve, z: Length): Length => {
  if (curve.kind === 'arc') return curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))
  return curve.z1 === curve.z0 ? curve.d0 : curve.d0 + ((curve.d1 - curve.d0) * (z - curve.z0)) / (curve.z1 - curve.z0)
}

/** Only what lies between two places. */
export const between = (form: Form, from: Length, to: Length): Piece[] =>
  form.flatMap((piece) => {
    const part = { ...piece, from: Math.max(piece.from, from), to: Math.min(piece.to, to) }
    return part.to > part.from ? [part] : []
  })

/** The form with another one in a stretch of it. */
export const replaced = (
  form: Form,
  inside: Form,
  { from, to }: { readonly from: Length; readonly to: Length },
): Piece[] => [
  ...between(form, Number.NEGATIVE_INFINITY, from),
  ...between(inside, from, to),
  ...between(form, to, Number.POSITIVE_INFINITY),
]

/** The depth of a form just before (−1) or after (1) a place; null where no work is. */
export const depthBeside = (form: Form, z: Length, side: -1 | 1): Length | null => {
  const piece = form.find(({ from, to }) => (side < 0 ? from < z && z <= to : from <= z && z < to))
  return piece === undefined ? null : depthAt(piece.curve, z)
}

/** Least and greatest depth. */
export const depthsOf = (form: Form): readonly [Length, Length] => {
  const all = form.flatMap(({ from, to, curve }) => [
    depthAt(curve, from),
    depthAt(curve, to),
    ...(curve.kind === 'arc' && from < curve.zc && curve.zc < to ? [depthAt(curve, curve.zc)] : []),
  ])
  return [Math.min(...all), Math.max(...all)]
}

/** Pieces joined to one path, walls between them; the path begins anew where no work is. Toward the headstock, or back. */
export const trace = (form: Form, frame: Frame, back = false, begin = 'M'): string => {
  const pieces = back ? [...form].reverse() : form
  let d = ''
  let last: Length | null = null
  for (const { from, to, curve } of pieces) {
    const [start, end] = back ? [to, from] : [from, to]
    const starts = last === null ? begin : Math.abs(start - last) < 1000 ? 'L' : 'M'
    d += `${starts}${place(frame, start, curve)}${drawn(frame, curve, end, back)}`
    last = end
  }
  return d
}

const place = (frame: Frame, z: Length, curve: Curve): string =>
  `${short(frame.x(z))} ${short(frame.y(depthAt(curve, z)))}`

/** Toward the headstock (to the left) a bottom is run through as the hands of a clock go. */
const drawn = (frame: Frame, curve: Curve, end: Length, back: boolean): string => {
  if (curve.kind === 'line') return `L${place(frame, end, curve)}`
  const radius = short((curve.r / MM) * frame.scale)
  const clockwise = ((curve.side === 1) !== back) !== (frame.mirrored === true)
  return `A${radius} ${radius} 0 0 ${clockwise ? 1 : 0} ${place(frame, end, curve)}`
}
