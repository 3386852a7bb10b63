import type { Markup } from '../markup.ts'
import { head, LEADING, letters, line, type Point, paragraph, TEXT, widthOf } from './pen.ts'

/** Extension lines begin off the work, and end past the dimension line. */
const GAP = 1
const PAST = 1.5
/** Two heads and some line between them. */
const LEAST = 9

/** A length along the work between two places, its dimension line at `y`. `edges`: where each extension line comes from. */
export const across = (
  x0: number,
  x1: number,
  y: number,
  edges: readonly [number, number],
  text: string,
  room = Number.POSITIVE_INFINITY,
): Markup[] => {
  const [left, right] = x0 <= x1 ? [x0, x1] : [x1, x0]
  const [fromLeft, fromRight] = x0 <= x1 ? edges : [edges[1], edges[0]]
  const away = (from: number): number => (from > y ? -1 : 1)
  const extension = (x: number, from: number): Markup => line([x, from + away(from) * GAP], [x, y + away(from) * PAST])
  const wide = right - left >= LEAST
  const inside = wide && widthOf(text) + 2 <= right - left
  const at: Point = inside ? [(left + right) / 2, y - 1] : beside(left, right, y, widthOf(text), room, wide ? 2 : 8)
  return [
    extension(left, fromLeft),
    extension(right, fromRight),
    ...(wide
      ? [line([left, y], [right, y]), head([left, y], 180), head([right, y], 0)]
      : [line([left - 6, y], [right + 6, y]), head([left, y], 0), head([right, y], 180)]),
    letters(at, text, { anchor: 'middle', rim: true }),
  ]
}

/** To the left of the arrows, or to the right where the paper ends there. */
const beside = (left: number, right: number, y: number, width: number, room: number, off: number): Point =>
  right + off + width <= room ? [right + off + width / 2, y + TEXT / 3] : [left - off - width / 2, y + TEXT / 3]

/** A length square to the axis, its dimension line at `x`; the figure is read from the right, or stands beside it (or under it) in lines where it is too long. */
export const upright = (
  y0: number,
  y1: number,
  x: number,
  edges: readonly [number, number],
  texts: readonly string[],
  under = false,
): Markup[] => {
  const [top, bottom] = y0 <= y1 ? [y0, y1] : [y1, y0]
  const [fromTop, fromBottom] = y0 <= y1 ? edges : [edges[1], edges[0]]
  const extension = (y: number, from: number): Markup[] => {
    const way = from < x ? 1 : -1
    return from === x ? [] : [line([from + way * GAP, y], [x + way * PAST, y])]
  }
  const wide = bottom - top >= LEAST
  const inside = wide && widthOf(texts.join(' ')) + 2 <= bottom - top
  const tail = under && !inside ? [line([x, bottom], [x, bottom + 6])] : []
  return [
    ...tail,
    ...extension(top, fromTop),
    ...extension(bottom, fromBottom),
    ...(wide
      ? [line([x, top], [x, bottom]), head([x, top], -90), head([x, bottom], 90)]
      : [line([x, top - 6], [x, bottom + 6]), head([x, top], 90), head([x, bottom], -90)]),
    ...(inside
      ? [letters([x - 1, (top + bottom) / 2], texts.join(' '), { anchor: 'middle', upright: true, rim: true })]
      : paragraph(
          [x + 2, under ? bottom + 5.5 : (top + bottom) / 2 + TEXT / 3 - ((texts.length - 1) * LEADING) / 2],
          texts,
          {
            rim: true,
          },
        )),
  ]
}
