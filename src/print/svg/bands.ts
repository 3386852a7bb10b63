import { perUnit } from '../../units/length.ts'
import { type Markup, tag } from '../markup.ts'
import { between, depthsOf } from './curves.ts'
import { GRAY } from './pen.ts'
import type { View } from './view.ts'

/** A floor or an edge anywhere in its band is within its limits. Never so thin that the line of the form hides it. mm of paper. */
const LEAST = 1.3
/** On paper: how far a band of a pointed bottom reaches, how far one of an edge stands out of the work, and into it. */
const POINT = 5
const OUT = 2.5
const INTO = 5

/** `widened`: drawn wider than it is. */
export type Band = { readonly drawn: Markup; readonly widened: boolean }

/** The limits of the drawing, as places: of the floor, and of the two edges. */
export const bandsOf = (view: View): Band[] => [
  ...floor(view),
  ...edge(view, 'near'),
  ...edge(view, 'far'),
  ...width(view),
]

const floor = (view: View): Band[] => {
  const depths = floorLimits(view)
  if (depths === null) return []
  const { drawing, deepest, frame } = view
  const low = between(drawing.wanted, drawing.region.from, drawing.region.to).filter(
    (piece) => depthsOf([piece])[1] > deepest - 1e6,
  )
  const [from, to] = [Math.min(...low.map((piece) => piece.from)), Math.max(...low.map((piece) => piece.to))]
  const flat = low.every((piece) => piece.curve.kind === 'line' && Math.abs(piece.curve.d0 - piece.curve.d1) < 1e6)
  const middle = frame.x((from + to) / 2)
  const [left, right] =
    flat && frame.x(from) - frame.x(to) > 2 * POINT ? [frame.x(to), frame.x(from)] : [middle - POINT, middle + POINT]
  return [band('floor', left, frame.y(depths[0]), right, frame.y(depths[1]))]
}

/** Depths at which the floor is within its limits: by its diameter, or by its depth under the surface. */
const floorLimits = ({ feature, sheet, surface }: View): readonly [number, number] | null => {
  const pm = perUnit(sheet.units)
  const limits = (id: string) => feature.proof.lines.find((line) => line.id === id)?.limits ?? null
  const bottom = limits('bottomDiameter')
  if (bottom !== null) return [(-bottom[1].value * pm) / 2, (-bottom[0].value * pm) / 2]
  const depth = limits('depth')
  return depth === null ? null : [surface + depth[0].value * pm, surface + depth[1].value * pm]
}

/** An edge that the drawing places from the free end. */
const edge = (view: View, id: 'near' | 'far'): Band[] => {
  const limits = view.feature.proof.lines.find((line) => line.id === id)?.limits ?? null
  if (limits === null) return []
  const pm = perUnit(view.sheet.units)
  return [upright(view, id, limits[0].value * pm, limits[1].value * pm)]
}

/** The headstock-side edge, counted from the other one as drawn; a width that is given somewhere else is not drawn there. */
const width = (view: View): Band[] => {
  const limits = view.feature.proof.lines.find((line) => line.id === 'width')?.limits ?? null
  if (limits === null) return []
  const { region } = view.drawing
  const [low, high] = limits.map((limit) => region.from + limit.value * perUnit(view.sheet.units)) as [number, number]
  return low - 1e6 <= region.to && region.to <= high + 1e6 ? [upright(view, 'width', low, high)] : []
}

const upright = ({ frame, surface }: View, of: string, from: number, to: number): Band =>
  band(of, frame.x(to), frame.y(surface) - OUT, frame.x(from), frame.y(surface) + INTO)

const band = (of: string, left: number, top: number, right: number, bottom: number): Band => {
  const [wide, high] = [Math.max(LEAST, right - left), Math.max(LEAST, bottom - top)]
  return {
    widened: right - left < LEAST || bottom - top < LEAST,
    drawn: tag('rect', {
      class: `band ${of}`,
      x: (left + right - wide) / 2,
      y: (top + bottom - high) / 2,
      width: wide,
      height: high,
      fill: GRAY.band,
    }),
  }
}
