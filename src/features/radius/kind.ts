import type { Draft } from '../draft.ts'
import type { Kind } from '../kind.ts'
import { draftConcave } from './concave.ts'
import { draftCorner } from './corner.ts'
import type { ConcaveFeature, CornerFeature } from './feature.ts'
import { inspectConcave, inspectCorner } from './inspect.ts'
import { radiusSchema, readRadius } from './schema.ts'

type RadiusFeature = ConcaveFeature | CornerFeature

/** A round form: a round groove, or a rounded corner. */
export const radius: Kind<RadiusFeature, typeof radiusSchema> = {
  schema: radiusSchema,
  read: readRadius,
  named: 'Radius',
  called: ({ shape }) => `${shape} radius`,
  stepKeys: ['from', 'corner-of'],
  draft: (bench, feature) => (feature.shape === 'concave' ? draftConcave(bench, feature) : draftCorner(bench, feature)),
  inspect: (inspected, feature) =>
    feature.shape === 'concave' ? inspectConcave(inspected, feature) : inspectCorner(inspected, feature),
  formToGrind: (_, draft, feature) => ({
    radius: radiusToGrind(draft, feature),
    // A hollow meets the step beside it in another way.
    ...(feature.shape === 'corner' ? { shoulder: 0 } : {}),
  }),
}

/**
 * The drawing's radius if the tool has the form's own radius; a smaller tool that steps along it is ground to its own
 * radius.
 */
function radiusToGrind({ tool, cuts }: Draft, feature: RadiusFeature): number | null {
  if (tool.shape !== 'round' && tool.shape !== 'corner') return null
  const { aim, limits } = feature.radius
  // On a sloping face the form's own radius measures less than the drawing's.
  if (tool.rakeInUse !== 0) return cuts.style === 'steps' ? null : aim
  const [low, high] = limits ?? [aim * 0.99, aim * 1.01]
  return tool.radius >= low && tool.radius <= high ? aim : null
}
