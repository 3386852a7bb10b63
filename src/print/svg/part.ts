import type { Form } from '../../moves/form.ts'
import type { PartDrawing } from '../../sheet/drawing.ts'
import type { Sheet, SheetFeature } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { between, depthBeside, depthsOf, type Frame, frameAt, scaleFor, scaleWords, trace } from './curves.ts'
import { across } from './dimension.ts'
import { holding } from './holding.ts'
import { diameters, edgeAt, featurePlaces, ROW, shoulders } from './part-sizes.ts'
import { partDesc } from './part-words.ts'
import { LEADING, letters, line, paragraph, path, WEIGHT, widthOf } from './pen.ts'
import type { Picture } from './picture.ts'

export type PlannedFeature = Extract<SheetFeature, { status: 'planned' }>

const WIDTH = 180
const SIDE = 22
/** For the word that names what holds the work. */
const LEFT = 15
const HEADING = 8
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
  const frame = frameAt(scale, [LEFT + HELD + (open / 1e9) * scale, axis])
  const lengths = shoulders(sheet, drawing.jaws, open)
  const below = axis + reach + 12
  const notes = legend(sheet, placed)
  const heading = `The part as it is held, ${scaleWords(scale)}`
  return {
    id: 'part',
    kind: 'part',
    feature: null,
    step: null,
    title: `${sheet.title}: the part as it is held`,
    desc: partDesc(sheet),
    width: Math.min(WIDTH, Math.max(frame.x(0) + SIDE, ...[heading, ...notes].map((text) => widthOf(text) + 8))),
    height: below + lengths.length * ROW + notes.length * LEADING + 1,
    drawn: [
      letters([2, 5.5], heading, { bold: true }),
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
      ...featurePlaces(sheet, placed, frame, top - 6, finished, axis),
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

const legend = (sheet: Sheet, features: readonly PlannedFeature[]): string[] =>
  features.map((feature) => {
    const steps = sheet.steps.filter((step) => step.feature === feature.index)
    const [first, last] = [steps[0], steps.at(-1)]
    const numbers = first === undefined || last === undefined ? '' : `, steps ${first.number} to ${last.number}`
    return `${feature.index + 1}  ${feature.name}${numbers}`.slice(0, 86)
  })
