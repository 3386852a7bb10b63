import type { Form } from '../../moves/form.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import { type Markup, tag } from '../markup.ts'
import { bandsOf } from './bands.ts'
import { between, depthBeside, depthsOf, type Frame, frameAt, replaced, scaleFor, scaleWords, trace } from './curves.ts'
import { formDesc } from './form-words.ts'
import { key } from './key.ts'
import type { PlannedFeature } from './part.ts'
import { passLines, roughLeft } from './passes.ts'
import { GRAY, inLines, LEADING, letters, paragraph, path, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'
import { otherSizes, sizeLines } from './sizes.ts'
import { toolAbove } from './tool.ts'

const WIDTH = 180
/** The form, the work beside it, and room for sizes at the sides. mm of paper. */
const FORM = 64
const BESIDE = 10
const DEEP = 46
const TOOL = { from: 9, high: 26 } as const
const ROWS = 16
const UNDER = 9

/** What every part of the picture of a form goes by. */
export type View = {
  readonly sheet: Sheet
  readonly feature: PlannedFeature
  readonly drawing: Drawing
  readonly frame: Frame
  /** As the drawing wants it, with the work beside it. */
  readonly wanted: Form
  readonly from: Length
  readonly to: Length
  /** The surface and the deepest point, pm. */
  readonly surface: Length
  readonly deepest: Length
  /** On paper: the lower end of the tool's room, and of the work. */
  readonly toolEnd: number
  readonly workEnd: number
}

/** A feature enlarged: what is wanted and its limits, each pass, what is left after roughing, and the tool's edge. */
export const formPicture = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing): Picture => {
  const view = viewOf(sheet, feature, drawing)
  const id = `form-${feature.index + 1}`
  const others = otherSizes(view).flatMap((text) => inLines(text, WIDTH - 8))
  const numbers = view.workEnd + 7
  const keyAt = numbers + 5
  return {
    id,
    kind: 'form',
    feature: feature.index,
    step: null,
    title: `${feature.name}: the form enlarged`,
    desc: formDesc(view),
    width: WIDTH,
    height: keyAt + 13 + others.length * LEADING,
    drawn: [
      letters([2, 5.5], heading(`${feature.index + 1}  ${feature.name}`, view.frame.scale), { bold: true }),
      ...toolAbove(view, id, TOOL.from),
      ...metal(view),
      ...bandsOf(view).map(({ drawn }) => drawn),
      ...roughLeft(view, id),
      ...passLines(view, numbers),
      ...edges(view),
      ...sizeLines(view),
      ...key(view, id, [4, keyAt + 1]),
      ...paragraph([4, keyAt + 14], others),
    ],
  }
}

const heading = (name: string, scale: number): string => {
  const [first = '', ...rest] = inLines(name, WIDTH - 40)
  return `${first}${rest.length > 0 ? '...' : ''}, ${scaleWords(scale)}`
}

const viewOf = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing): View => {
  const { region, finished, before } = drawing
  const inside = between(drawing.wanted, region.from, region.to)
  const [, deepest] = depthsOf(inside)
  const [surface] = depthsOf(between(before, region.from - 1e6, region.to + 1e6))
  const scale = scaleFor([
    [region.to - region.from, FORM],
    [deepest - surface, DEEP],
  ])
  const beside = (BESIDE / scale) * 1e9
  const [from, to] = [region.from - beside, region.to + beside]
  const middle = WIDTH / 2 + ((region.from + region.to) / 2e9) * scale
  // The reference point may stand well over the lowest of the edge.
  const toolEnd = TOOL.from + Math.max(TOOL.high, (depthsOf(drawing.edge.pieces)[1] / 1e9) * scale + 8)
  const top = toolEnd + ROWS
  const frame = frameAt(scale, [middle, top - (surface / 1e9) * scale])
  const shown = between(before, from, to)
  const bottom = Math.max(deepest, shown.length === 0 ? deepest : Math.min(deepest, depthsOf(shown)[1]))
  return {
    sheet,
    feature,
    drawing,
    frame,
    wanted: between(replaced(finished, drawing.wanted, region), from, to),
    from,
    to,
    surface,
    deepest,
    toolEnd,
    workEnd: frame.y(bottom) + UNDER,
  }
}

/** The work that stays, in a light gray down to where the picture ends. */
const metal = ({ wanted, frame, workEnd }: View): Markup[] => {
  const [first, last] = [wanted[0], wanted.at(-1)]
  if (first === undefined || last === undefined) return []
  const body = `${trace(wanted, frame)}L${frame.x(last.to)} ${workEnd}L${frame.x(first.from)} ${workEnd}Z`
  return [path(body, { width: 0, fill: GRAY.metal, as: 'metal' })]
}

/** The wanted form heavy, the work beside it and its free end in the same line; corners that the drawing leaves open dashed. */
const edges = ({ wanted, drawing, frame, from, to, workEnd }: View): Markup[] => {
  const { region } = drawing
  const atLeast = openCorners({ drawing, frame })
  const end = wanted[0] !== undefined && wanted[0].from > from + 1e6 ? wanted[0] : null
  return [
    path(trace(between(wanted, from, to), frame), { width: WEIGHT.edge, as: 'work' }),
    tag('g', { class: 'wanted' }, path(trace(between(wanted, region.from, region.to), frame), { width: WEIGHT.heavy })),
    ...(end === null
      ? []
      : [
          path(`${trace([end], frame)}M${frame.x(end.from)} ${frame.y(depthsOf([end])[1])}V${workEnd}`, {
            width: WEIGHT.edge,
          }),
        ]),
    ...(atLeast === null
      ? []
      : [
          path(trace(between(atLeast, region.from, region.to), frame), {
            dash: '1.5 1',
            width: WEIGHT.mark,
            as: 'at-least',
          }),
        ]),
  ]
}

/** What must be cut at the least, where the drawing leaves so much open that it can be seen. */
export const openCorners = ({ drawing, frame }: Pick<View, 'drawing' | 'frame'>): Form | null => {
  const { atLeast, wanted, region } = drawing
  if (atLeast === null) return null
  const places = Array.from({ length: 200 }, (_, i) => region.from + ((i + 0.5) * (region.to - region.from)) / 200)
  const seen = places.some((z) => {
    const [least, most] = [depthBeside(atLeast, z, 1), depthBeside(wanted, z, 1)]
    return least !== null && most !== null && Math.abs(frame.y(most) - frame.y(least)) > 0.3
  })
  return seen ? atLeast : null
}
