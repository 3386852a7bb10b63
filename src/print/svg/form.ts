import type { Form } from '../../moves/form.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import { type Markup, tag } from '../markup.ts'
import { bandsOf } from './bands.ts'
import { callouts } from './callouts.ts'
import { between, depthBeside, depthsOf, scaleWords, trace } from './curves.ts'
import { formDesc } from './form-words.ts'
import { key } from './key.ts'
import type { PlannedFeature } from './part.ts'
import { passLines, passNumbers, roughLeft } from './passes.ts'
import { GRAY, inLines, LEADING, letters, paragraph, path, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'
import { otherSizes, sizeLines } from './sizes.ts'
import { toolAbove } from './tool.ts'
import { TOOL, type View, viewOf } from './view.ts'

/** A feature enlarged: what is wanted and its limits, each pass, what is left after roughing, and the tool's edge. */
export const formPicture = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing): Picture => {
  const view = viewOf(sheet, feature, drawing)
  const id = `form-${feature.index + 1}`
  const numbers = view.workEnd + 7
  const called = callouts(view, numbers + 7)
  const others = otherSizes(view, called.ids).flatMap((text) => inLines(text, view.width - 8))
  const keyAt = numbers + 6 + called.height
  const lines = key(view, id, [4, keyAt])
  const end = keyAt + lines.height
  return {
    id,
    kind: 'form',
    feature: feature.index,
    step: null,
    title: `${feature.name}: the form enlarged`,
    desc: formDesc(view),
    width: view.width,
    height: end + 3 + others.length * LEADING,
    drawn: [
      letters([2, 5.5], heading(`${feature.index + 1}  ${feature.name}`, view), { bold: true }),
      ...toolAbove(view, id, TOOL.from),
      ...clipped(view, `${id}-work`, [
        ...metal(view),
        ...bandsOf(view).map(({ drawn }) => drawn),
        ...roughLeft(view, id),
        ...passLines(view),
        ...edges(view),
      ]),
      ...called.drawn,
      ...passNumbers(view, numbers),
      ...sizeLines(view),
      ...lines.drawn,
      ...paragraph([4, end + 3], others),
    ],
  }
}

/** A shoulder beside the form may be deeper than the picture. */
const clipped = ({ width, workEnd }: View, id: string, drawn: readonly Markup[]): Markup[] => [
  tag('defs', {}, tag('clipPath', { id }, tag('rect', { x: 0, y: 0, width, height: workEnd }))),
  tag('g', { 'clip-path': `url(#${id})` }, ...drawn),
]

const heading = (name: string, { width, frame: { scale } }: View): string => {
  const [first = '', ...rest] = inLines(name, width - 36)
  return `${first}${rest.length > 0 ? '...' : ''}, ${scaleWords(scale)}`
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
