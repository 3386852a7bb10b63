import type { Piece } from '../../moves/form.ts'
import type { ProofLine } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { between, depthAt, depthsOf } from './curves.ts'
import { head, letters, line, type Point, widthOf } from './pen.ts'
import { sizeText } from './sizes.ts'
import type { View } from './view.ts'

/** A size that no dimension line shows: told under the form, with a leader to what it is of. */
type Callout = {
  readonly id: ProofLine['id']
  readonly text: string
  readonly at: Point
  readonly side: 'left' | 'right'
}

const ROW = 6

/** In one line under the numbers of the passes, or in two where they are too long for that; `ids`: those that are told so. */
export const callouts = (
  view: View,
  y: number,
): { readonly drawn: Markup[]; readonly height: number; readonly ids: readonly string[] } => {
  const all = (['left', 'right'] as const).flatMap((side) =>
    found(view)
      .filter((one) => one.side === side)
      .slice(0, 1),
  )
  const long = all.reduce((sum, { text }) => sum + widthOf(text) + 4, 4)
  const rows = all.length > 1 && long > view.width ? 2 : Math.min(1, all.length)
  const drawn = all.flatMap(({ text, at, side }, i) => {
    const base = y + (rows === 2 ? i * ROW : 0)
    const x = side === 'left' ? 4 : view.width - 4
    const from: Point = [side === 'left' ? x + 4 : x - 4, base - 4]
    return [
      line(from, at, { as: 'leader' }),
      head(at, (Math.atan2(at[1] - from[1], at[0] - from[0]) * 180) / Math.PI),
      letters([x, base], text, { anchor: side === 'left' ? 'start' : 'end', rim: true }),
    ]
  })
  return { drawn, height: rows * ROW, ids: all.map(({ id }) => id) }
}

const found = (view: View): Callout[] => {
  const { drawing, feature, sheet } = view
  const pieces = between(drawing.wanted, drawing.region.from, drawing.region.to)
  return feature.proof.lines.flatMap((size): Callout[] => {
    const text = sizeText(size, sheet.units)
    const place = PLACES[size.id]?.(pieces)
    if (place === undefined) return []
    const at: Point = [view.frame.x(place.z), view.frame.y(depthAt(place.piece.curve, place.z))]
    return [{ id: size.id, text: place.words(text), at, side: place.side }]
  })
}

type Place = {
  readonly piece: Piece
  readonly z: Length
  readonly side: 'left' | 'right'
  readonly words: (size: string) => string
}

/** What a size is of, and where on it the leader ends: toward the headstock is to the left. */
const PLACES: Partial<Record<ProofLine['id'], (pieces: readonly Piece[]) => Place | undefined>> = {
  radius: (pieces) => radius(largest(pieces.filter(isArc), ({ curve }) => (curve.kind === 'arc' ? curve.r : 0))),
  cornerRadius: (pieces) => radius(pieces.filter(isArc).at(-1)),
  angle: (pieces) => {
    const piece = pieces
      .filter((one) => one.curve.kind === 'line' && Math.abs(one.curve.d1 - one.curve.d0) > 1e6)
      .at(-1)
    return piece && { piece, z: part(piece, 0.5), side: 'left', words: (size) => `${size} included` }
  },
  root: (pieces) => {
    const piece = largest(
      pieces.filter((one) => !isArc(one)),
      (one) => depthsOf([one])[0],
    )
    return piece && { piece, z: part(piece, 0.2), side: 'right', words: (size) => `${size} flat` }
  },
}

/** A hollow is pointed at from within the metal, a rounded corner from outside. */
const radius = (piece: Piece | undefined): Place | undefined => {
  if (piece?.curve.kind !== 'arc') return undefined
  const words = (size: string): string => `R ${size}`
  return piece.curve.side === 1
    ? { piece, z: part(piece, 0.75), side: 'left', words }
    : { piece, z: part(piece, 0.5), side: 'right', words }
}

const isArc = ({ curve }: Piece): boolean => curve.kind === 'arc'
const part = ({ from, to }: Piece, of: number): Length => from + (to - from) * of
const largest = <T>(all: readonly T[], by: (one: T) => number): T | undefined =>
  all.reduce<T | undefined>((most, one) => (most === undefined || by(one) > by(most) ? one : most), undefined)
