import type { Form } from '../../moves/form.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import { between, depthsOf, type Frame, frameAt, replaced, scaleFor } from './curves.ts'
import type { PlannedFeature } from './part.ts'
import { roomBeside } from './sizes.ts'

/** As wide as a page leaves room for, and as a phone shows at once. mm of paper. */
const WIDTH = 180
const LEAST = 94
/** The form, the work beside it, and room for the tool, for sizes above, and for the work below. */
const FORM = 64
const BESIDE = 10
const DEEP = 46
export const TOOL = { from: 9, high: 17 } as const
const ROWS = 18
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
  /** On paper: how wide the picture is, the lower end of the tool's room, the highest of the work, and its lower end. */
  readonly width: number
  readonly toolEnd: number
  readonly top: number
  readonly workEnd: number
}

/** Where all of it stands on paper. */
export const viewOf = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing): View => {
  const { region, finished, before } = drawing
  const inside = between(drawing.wanted, region.from, region.to)
  const [, deepest] = depthsOf(inside)
  const surface = -feature.surface / 2
  // A shoulder beside it may stand higher than the surface that it stands on.
  const highest = Math.min(surface, depthsOf(between(before, region.from - 1e6, region.to + 1e6))[0])
  const scale = scaleFor([
    [region.to - region.from, FORM],
    [deepest - highest, DEEP],
  ])
  const beside = (BESIDE / scale) * 1e9
  const [from, to] = [region.from - beside, region.to + beside]
  const room = roomBeside(sheet, feature)
  const formEnd = room.left + ((to - from) / 1e9) * scale
  // The tool may stand beside the form with its dials at 0.
  const reference = formEnd + ((from - feature.zero.fromEnd) / 1e9) * scale
  const near = formEnd - ((region.from - from) / 1e9) * scale + room.near
  const right = Math.max(formEnd + room.right, near, reference + 4)
  // The reference point may stand well over the lowest of the edge.
  const toolEnd = TOOL.from + Math.max(TOOL.high, (depthsOf(drawing.edge.pieces)[1] / 1e9) * scale + 8)
  const top = toolEnd + ROWS
  const frame = frameAt(scale, [formEnd + (from / 1e9) * scale, top - (highest / 1e9) * scale])
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
    top,
    deepest,
    width: Math.max(LEAST, Math.min(WIDTH, right)),
    toolEnd,
    workEnd: frame.y(bottom) + UNDER,
  }
}
