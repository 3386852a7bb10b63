import type { Form } from '../../moves/form.ts'
import { length } from '../../phrase/figure.ts'
import { number } from '../../phrase/words.ts'
import type { PartDrawing } from '../../sheet/drawing.ts'
import type { Sheet, SheetFeature } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { between, depthBeside, depthsOf, type Frame, frameAt, scaleFor, scaleWords, trace } from './curves.ts'
import { across, upright } from './dimension.ts'
import { holding } from './holding.ts'
import { partDesc } from './part-words.ts'
import { circle, INK, LEADING, letters, line, paragraph, path, TEXT, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'

export type PlannedFeature = Extract<SheetFeature, { status: 'planned' }>

const WIDTH = 180
const SIDE = 22
const HEADING = 8
const ROW = 7.5
/** Of the work in the jaws so much is drawn. */
const HELD = 14

/** The part in the machine, outline above and below the center line. */
export const partPicture = (sheet: Sheet, drawing: PartDrawing): Picture => {
  const features = sheet.features.filter((feature): feature is PlannedFeature => feature.status === 'planned')
  const finished = features.at(-1)?.drawing?.finished ?? drawing.stock
  const end = Math.max(...finished.map(({ to }) => to))
  const open = drawing.jaws === null ? end : Math.min(end, drawing.jaws)
  const deep = -depthsOf(finished)[0]
  const scale = scaleFor(
    [
      [open, WIDTH - 2 * SIDE - HELD],
      [2 * deep, 64],
    ],
    5,
  )
  const placed = features.filter(({ drawing }) => drawing !== undefined)
  const top = HEADING + placed.length * ROW + 11
  const reach = (deep / 1e9) * scale
  const axis = top + reach + 6
  const left = WIDTH / 2 - ((open / 1e9) * scale) / 2 - HELD / 2
  const frame = frameAt(scale, [left + HELD + (open / 1e9) * scale, axis])
  const lengths = shoulders(sheet, drawing.jaws, open)
  const below = axis + reach + 12
  const notes = legend(sheet, placed)
  return {
    id: 'part',
    kind: 'part',
    feature: null,
    step: null,
    title: `${sheet.title}: the part as it is held`,
    desc: partDesc(sheet),
    width: WIDTH,
    height: below + lengths.length * ROW + notes.length * LEADING + 1,
    drawn: [
      letters([2, 5.5], `The part as it is held, ${scaleWords(scale)}`, { bold: true }),
      holding(drawing, sheet.part.held, frame, open, finished),
      ...outline(finished, drawing.jaws, frame, axis, scale),
      axisLine(frame, open, axis),
      ...diameters(sheet, placed, frame, axis, open),
      ...lengths.flatMap(({ z, text }, i) =>
        across(
          frame.x(z),
          frame.x(0),
          below + i * ROW,
          [edgeAt(finished, z, frame, axis), edgeAt(finished, 0, frame, axis)],
          text,
        ),
      ),
      ...placed.flatMap((feature, i) => featurePlace(sheet, feature, i, frame, top - 6, finished, axis)),
      ...paragraph([4, below + lengths.length * ROW + 1], notes),
    ],
  }
}

/** Above and below the axis; what the jaws hide is dashed. */
const outline = (finished: Form, jaws: Length | null, frame: Frame, axis: number, scale: number): Markup[] => {
  const held = jaws ?? Number.POSITIVE_INFINITY
  const hidden = inJaws(finished, held, held + (HELD / scale) * 1e9)
  return [false, true].flatMap((mirrored) => {
    const half = frameAt(scale, [frame.x(0), axis], mirrored)
    const shown = between(finished, Number.NEGATIVE_INFINITY, held)
    const last = shown.at(-1)
    return [
      path(
        `M${frame.x(0)} ${axis}${trace(shown, half, false, 'L')}${last !== undefined && jaws === null ? `L${half.x(last.to)} ${axis}` : ''}`,
        {
          width: WEIGHT.edge,
          as: mirrored ? 'outline below' : 'outline above',
        },
      ),
      ...(hidden.length > 0 ? [path(trace(hidden, half), { dash: '2 1', width: WEIGHT.mark })] : []),
      ...walls(shown, half, axis),
    ]
  })
}

/** Work that is given to its face of the jaws only goes on in them all the same. */
const inJaws = (form: Form, from: Length, to: Length): Form => {
  const last = form.at(-1)
  if (last === undefined || !Number.isFinite(from) || last.to > from + 1e6) return between(form, from, to)
  const depth = depthBeside(form, last.to, -1) ?? 0
  return [{ from, to, step: -1, curve: { kind: 'line', z0: from, d0: depth, z1: to, d1: depth } }]
}

/** Where the diameter changes at once, the edge goes all the way round. */
const walls = (form: Form, frame: Frame, axis: number): Markup[] =>
  form.flatMap((piece, i) => {
    const next = form[i + 1]
    if (next === undefined) return []
    const at = (one: Form[number]): number => depthsOf(between([one], piece.to - 1e6, piece.to + 1e6))[0]
    const [one, other] = [at(piece), at(next)]
    if (!(Math.abs(one - other) > 1e6)) return []
    return [line([frame.x(piece.to), frame.y(Math.max(one, other))], [frame.x(piece.to), axis], { width: WEIGHT.mark })]
  })

const axisLine = (frame: Frame, open: Length, axis: number): Markup =>
  line([frame.x(open) - HELD - 6, axis], [frame.x(0) + 8, axis], { dash: '7 1.2 1.2 1.2' })

/** The lower edge of the work at a place, on paper: the larger of the two diameters that meet there. */
const edgeAt = (form: Form, z: Length, frame: Frame, axis: number): number => {
  const near = between(form, z - 1e6, z + 1e6)
  return near.length === 0 ? axis : 2 * axis - frame.y(depthsOf(near)[0])
}

/** From the free end to each shoulder, and to what holds the work; the shortest stands nearest to it. */
const shoulders = (sheet: Sheet, jaws: Length | null, open: Length): { z: Length; text: string }[] => {
  const ends = sheet.part.steps.map(({ to }) => to).filter((to) => to < open || (jaws === null && to === open))
  const all = [...new Set([...ends, ...(jaws === null ? [] : [open])])].sort((a, b) => a - b)
  return all.map((z) => ({ z, text: number(length('stock', z, sheet.units), sheet.units) }))
}

/** In the widest stretch of each step that no feature takes. */
const diameters = (
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
    return upright(y, 2 * axis - y, frame.x((a + b) / 2), [frame.x((a + b) / 2), frame.x((a + b) / 2)], [text])
  })

/** Its number in the work, and how far it is from the free end above. */
const featurePlace = (
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

const legend = (sheet: Sheet, features: readonly PlannedFeature[]): string[] =>
  features.map((feature) => {
    const steps = sheet.steps.filter((step) => step.feature === feature.index)
    const [first, last] = [steps[0], steps.at(-1)]
    const numbers = first === undefined || last === undefined ? '' : `, steps ${first.number} to ${last.number}`
    return `${feature.index + 1}  ${feature.name}${numbers}`.slice(0, 86)
  })
