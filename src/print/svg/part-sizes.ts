import type { Form } from '../../moves/form.ts'
import { length } from '../../phrase/figure.ts'
import { number } from '../../phrase/words.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { between, depthsOf, type Frame, trace } from './curves.ts'
import { across, upright } from './dimension.ts'
import type { PlannedFeature } from './part.ts'
import { circle, INK, letters, type Point, path, TEXT, WEIGHT } from './pen.ts'

/** Rows of dimensions stand so far apart. mm of paper. */
export const ROW = 7.5

/** The lower edge of the work at a place, on paper: the larger of the two diameters that meet there. */
export const edgeAt = (form: Form, z: Length, frame: Frame, axis: number): number => {
  const near = between(form, z - 1e6, z + 1e6)
  return near.length === 0 ? axis : 2 * axis - frame.y(depthsOf(near)[0])
}

/** From the free end to each shoulder, and to what holds the work; the shortest stands nearest to it. */
export const shoulders = (sheet: Sheet, jaws: Length | null, open: Length): { z: Length; text: string }[] => {
  const ends = sheet.part.steps.map(({ to }) => to).filter((to) => to < open || (jaws === null && to === open))
  const all = [...new Set([...ends, ...(jaws === null ? [] : [open])])].sort((a, b) => a - b)
  return all.map((z) => ({ z, text: number(length('stock', z, sheet.units), sheet.units) }))
}

/** In the widest stretch of each step that no feature takes. */
export const diameters = (
  sheet: Sheet,
  features: readonly PlannedFeature[],
  frame: Frame,
  axis: number,
  open: Length,
): Markup[] =>
  sheet.part.steps.flatMap(({ from, to, measured }) => {
    const taken = features
      .flatMap(({ drawing }) => (drawing === undefined ? [] : [drawing.region]))
      .filter((region) => region.to > from && region.from < Math.min(to, open))
      .sort((a, b) => a.from - b.from)
    const edges = [from, ...taken.flatMap((region) => [region.from, region.to]), Math.min(to, open)]
    const gaps = edges.flatMap((edge, i) => (i % 2 === 0 ? [[edge, edges[i + 1]!] as const] : []))
    const [a, b] = gaps.reduce((widest, gap) => (gap[1] - gap[0] > widest[1] - widest[0] ? gap : widest), [0, 0])
    if (!(b > a)) return []
    const y = frame.y(-measured / 2)
    const text = `\u00d8 ${number(length('stock', measured, sheet.units), sheet.units)}`
    return upright(y, 2 * axis - y, frame.x((a + b) / 2), [frame.x((a + b) / 2), frame.x((a + b) / 2)], [text], true)
  })

/** Of each its number in the work, and how far it is from the free end above: the shortest stands nearest to the work. */
export const featurePlaces = (
  sheet: Sheet,
  features: readonly PlannedFeature[],
  frame: Frame,
  last: number,
  finished: Form,
  axis: number,
): Markup[] => {
  const from = ({ drawing }: PlannedFeature): Length => drawing!.region.from
  const sorted = [...features].sort((a, b) => from(a) - from(b))
  const rows = sorted.filter((feature) => nearOf(feature) !== undefined)
  let before: Point = [Number.POSITIVE_INFINITY, 0]
  return sorted.flatMap((feature) => {
    before = clearOf(before, balloonAt(feature, frame, finished, axis))
    const row = last - rows.indexOf(feature) * ROW
    const { region } = feature.drawing!
    return [
      circle(before, BALLOON, { fill: '#fff', ink: INK }),
      letters([before[0], before[1] + TEXT / 3], String(feature.index + 1), {
        anchor: 'middle',
        bold: true,
        as: 'number',
      }),
      ...fromEnd(sheet, feature, frame, row, (z) => 2 * axis - edgeAt(finished, z, frame, axis)),
      path(trace(between(finished, region.from, region.to), frame), { width: WEIGHT.heavy, as: 'feature' }),
    ]
  })
}

const BALLOON = 3

const balloonAt = ({ drawing }: PlannedFeature, frame: Frame, finished: Form, axis: number): Point => {
  const { region } = drawing!
  const floor = frame.y(depthsOf(between(finished, region.from, region.to))[1])
  return [frame.x((Math.max(0, region.from) + region.to) / 2), Math.min(floor + 5, (floor + axis) / 2)]
}

/** Under the one to the right of it, where there is no room beside that. */
const clearOf = ([x, y]: Point, at: Point): Point =>
  Math.abs(x - at[0]) < 2 * BALLOON + 0.5 && Math.abs(y - at[1]) < 2 * BALLOON + 0.5
    ? [at[0], y + 2 * BALLOON + 0.8]
    : at

const nearOf = ({ proof }: PlannedFeature) => proof.lines.find(({ id }) => id === 'near')

const fromEnd = (
  sheet: Sheet,
  feature: PlannedFeature,
  frame: Frame,
  row: number,
  edge: (z: Length) => number,
): Markup[] => {
  const near = nearOf(feature)
  if (near === undefined) return []
  const { from } = feature.drawing!.region
  return across(frame.x(from), frame.x(0), row, [edge(from), edge(0)], number(near.planned, sheet.units))
}
