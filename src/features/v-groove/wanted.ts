import type { Form } from '../../moves/form.ts'
import type { WantedDimension } from '../../moves/operation.ts'
import { linePiece } from '../../moves/pieces.ts'
import type { Prose } from '../../phrase/phrase.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'
import type { Bench, PlacedStep } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { placeDimensions } from '../place.ts'
import type { VForm } from './form.ts'

export type Shape = VForm & { near: Length; t: number; drop: Length; angle: Degrees; notes: readonly Prose[] }

/** Two flanks and a flat; d = −radius. */
export function vForm(near: Length, form: VForm & { t: number }, surface: Length): Form {
  const run = form.depth * form.t
  const floor = surface + form.depth
  const far = near + form.width
  const flanks = [linePiece(near, surface, near + run, floor), linePiece(far - run, floor, far, surface)] as const
  return form.root > 0 ? [flanks[0], linePiece(near + run, floor, far - run, floor), flanks[1]] : [...flanks]
}

/** As an inspector measures them on the real surface: limits given from the nominal surface move with it. */
export function dimensions(bench: Bench, feature: VGrooveFeature, step: PlacedStep, shape: Shape): WantedDimension[] {
  const at = feature.widthAt
  const width = at === null ? shape.width : shape.width - (step.measured - at) * shape.t
  const widthShift = at === null ? 2 * shape.drop * shape.t : 0
  return [
    {
      id: 'width',
      aim: width,
      limits: lowered(feature.width?.limits, widthShift),
      ...(at !== null && { atDiameter: at }),
    },
    { id: 'depth', aim: shape.depth, limits: lowered(feature.depth?.limits, shape.drop) },
    {
      id: 'bottomDiameter',
      aim: step.measured - 2 * shape.depth,
      limits: feature.bottomDiameter?.limits ?? null,
      fixed: true,
    },
    { id: 'root', aim: shape.root, limits: feature.root?.limits ?? null },
    { id: 'angle', aim: shape.angle, limits: feature.angle.limits },
    ...placeDimensions(bench, feature.place, shape.near, shape.width),
  ]
}

const lowered = (limits: readonly [Length, Length] | null | undefined, by: Length): readonly [Length, Length] | null =>
  limits == null ? null : [limits[0] - by, limits[1] - by]
