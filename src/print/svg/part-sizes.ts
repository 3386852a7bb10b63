import type { Form } from '../../moves/form.ts'
import { length } from '../../phrase/figure.ts'
import { number } from '../../phrase/words.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { between, depthsOf, type Frame, trace } from './curves.ts'
import { across, upright } from './dimension.ts'
import type { PlannedFeature } from './part.ts'
import { circle, INK, letters, path, TEXT, WEIGHT } from './pen.ts'

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

/** Its number in the work, and how far it is from the free end above. */
export const featurePlace = (
  sheet: Sheet,
  feature: PlannedFeature,
  i: number,
  frame: Frame,
  last: number,
  finished: Form,
  axis: number,
): Markup[] => {
  const { region } = feature.drawing!
  const x = frame.x((Math.max(0, region.from) + region.to) / 2)
  const floor = frame.y(depthsOf(between(finished, region.from, region.to))[1])
  const at = [x, Math.min(floor + 5, (floor + axis) / 2)] as const
  const place = feature.proof.lines.find(({ id }) => id === 'near')
  const edge = 2 * axis - edgeAt(finished, region.from, frame, axis)
  const face = 2 * axis - edgeAt(finished, 0, frame, axis)
  return [
    circle(at, 3, { fill: '#fff', ink: INK }),
    letters([at[0], at[1] + TEXT / 3], String(feature.index + 1), { anchor: 'middle', bold: true, as: 'number' }),
    ...(place === undefined
      ? []
      : across(frame.x(region.from), frame.x(0), last - i * ROW, [edge, face], number(place.planned, sheet.units))),
    path(trace(between(finished, region.from, region.to), frame), { width: WEIGHT.heavy, as: 'feature' }),
  ]
}
