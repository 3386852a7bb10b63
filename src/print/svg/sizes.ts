import { number } from '../../phrase/words.ts'
import type { ProofLine, Sheet } from '../../sheet/sheet.ts'
import { type Length, perUnit, type Units } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { depthBeside } from './curves.ts'
import { across, upright } from './dimension.ts'
import type { PlannedFeature } from './part.ts'
import { head, letters, line, paragraph, TEXT, widthOf } from './pen.ts'
import type { View } from './view.ts'

/** Sizes that are drawn where they are measured; the others are told below. */
const DRAWN = ['width', 'near', 'depth', 'bottomDiameter', 'center'] as const

/** Planned, and its limits where it has any. */
const sizeTexts = (of: ProofLine, units: Units): string[] => [
  number(of.planned, units),
  ...(of.limits === null ? [] : [`(${number(of.limits[0], units)} to ${number(of.limits[1], units)})`]),
]

export const sizeText = (of: ProofLine, units: Units): string => sizeTexts(of, units).join(' ')

const lineOf = ({ feature }: Pick<View, 'feature'>, id: (typeof DRAWN)[number]): ProofLine | undefined =>
  feature.proof.lines.find((one) => one.id === id)

/** Width above, depth to the right, the bottom's diameter to the left, and the place from the free end over all. */
export const sizeLines = (view: View): Markup[] => {
  const { frame, drawing, surface, deepest, sheet } = view
  const { region } = drawing
  const { top } = view
  const [nearEdge, farEdge] = [edgeAt(view, region.from), edgeAt(view, region.to)]
  const [width, near, depth, bottom, center] = DRAWN.map((id) => lineOf(view, id))
  const [left, right] = [frame.x(view.to), frame.x(Math.max(0, view.from))]
  return [
    ...(width === undefined
      ? []
      : across(
          frame.x(region.from),
          frame.x(region.to),
          top - 4.5,
          [nearEdge, farEdge],
          sizeText(width, sheet.units),
          view.width,
        )),
    ...(center !== undefined && byCenter(view)
      ? throughCenter(center, view, right)
      : near === undefined
        ? []
        : fromEnd(frame.x(region.from), top, right, view.width, placeText(near, view, frame.x(region.from)))),
    ...(depth === undefined
      ? []
      : upright(
          frame.y(surface),
          frame.y(deepest),
          right + 8,
          [right, frame.x(region.from)],
          sizeTexts(depth, sheet.units),
        )),
    ...(bottom === undefined
      ? []
      : diameter(frame.x(region.to), frame.y(deepest), left - 4, view.workEnd, sizeTexts(bottom, sheet.units))),
  ]
}

/** On paper, the higher of the work on either side of a place. */
const edgeAt = ({ wanted, frame, surface }: View, z: Length): number => {
  const sides = ([-1, 1] as const).flatMap((side) => depthBeside(wanted, z, side) ?? [])
  return frame.y(Math.min(surface, ...sides))
}

/** What the figures beside a form take of the paper. */
export const roomBeside = (
  sheet: Sheet,
  feature: PlannedFeature,
): { readonly left: number; readonly right: number; readonly near: number } => {
  const near = lineOf({ feature }, byCenter({ feature }) ? 'center' : 'near')
  const of = (id: (typeof DRAWN)[number]): number => {
    const found = lineOf({ feature }, id)
    return found === undefined ? 0 : Math.max(...sizeTexts(found, sheet.units).map((text) => widthOf(text)))
  }
  return {
    left: Math.max(12, of('bottomDiameter') + 12),
    right: Math.max(12, of('depth') + 14),
    near: near === undefined ? 0 : 8 + widthOf(`${number(near.planned, sheet.units)} from the free end`),
  }
}

/** The free end is beyond the paper: one arrow, and where it goes to. */
const fromEnd = (x: number, top: number, right: number, width: number, says: string): Markup[] => {
  const end = Math.min(width - 2, Math.max(right + 10, x + 8 + widthOf(says)))
  return [
    line([x, top - 1], [x, top - 13.5]),
    line([x, top - 12], [end, top - 12]),
    head([x, top - 12], 180),
    head([end, top - 12], 0),
    letters([x + 4, top - 13], says, { rim: true }),
  ]
}

/** Whether the drawing places a form by its middle: then an edge of it has no limits of its own. */
const byCenter = ({ feature }: Pick<View, 'feature'>): boolean =>
  lineOf({ feature }, 'center') !== undefined && (lineOf({ feature }, 'near')?.limits ?? null) === null

/** A center line through the form, and the arrow from there. */
const throughCenter = (center: ProofLine, view: View, right: number): Markup[] => {
  const x = view.frame.x(center.planned.value * perUnit(view.sheet.units))
  return [
    line([x, view.top - 1], [x, view.workEnd + 2], { dash: '5 1 1 1' }),
    ...fromEnd(x, view.top, right, view.width, placeText(center, view, x)),
  ]
}

/** As much of it as finds room: the limits are told below the picture as well. */
const placeText = (place: ProofLine, { sheet, width }: View, x: number): string => {
  const [planned = '', limits] = sizeTexts(place, sheet.units)
  const whole = `${[planned, limits].filter((each) => each !== undefined).join(' ')} from the free end`
  return widthOf(whole) <= width - x - 6 ? whole : `${planned} from the free end`
}

/** The other side of the bottom is beyond the paper too. */
const diameter = (x: number, y: number, at: number, end: number, texts: readonly string[]): Markup[] => [
  line([x - 1, y], [at - 1.5, y]),
  line([at, y], [at, end + 3]),
  head([at, y], -90),
  ...paragraph(
    [at - 1.5, y + 3 + TEXT / 3],
    texts.map((text, i) => (i === 0 ? `\u00d8 ${text}` : text)),
    { anchor: 'end', rim: true },
  ),
]

/** Those that are not drawn, and those with limits that are. */
export const otherSizes = (view: View, called: readonly string[]): string[] => {
  const { feature, sheet } = view
  const drawn: readonly string[] = [...DRAWN.filter((id) => id !== 'near' || !byCenter(view)), ...called]
  const told = feature.proof.lines.filter(
    ({ id, settled, limits }) =>
      !settled && (!drawn.includes(id) || (limits !== null && (id === 'near' || id === 'center'))),
  )
  return told.length === 0 ? [] : [told.map((one) => `${one.label} ${sizeText(one, sheet.units)}`).join(';  ')]
}
