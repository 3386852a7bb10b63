import { degrees, exact, say } from '../../phrase/say.ts'
import { type Ask, cutsOf } from './ask.ts'
import { aimOf, workedLength } from './worked.ts'

/** The size of a form that the drawing leaves to be worked out: of a V its depth or width, of a segment its width. */
export const form: Ask = {
  says: 'the size of a V or of a segment that the drawing leaves to be worked out',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }) => {
      const { units } = scene.plan
      const { feature: own } = feature.operation
      const [angle, width, depth, radius] = ['angle', 'width', 'depth', 'radius'].map((id) => aimOf(feature, id))
      const root = aimOf(feature, 'root') ?? feature.edge.nose ?? 0
      const common = { id: `${index + 1}.form`, feature }
      const length = (value: number) => exact('drawing', value, units)
      if (angle != null && width != null && depth != null && !scene.gives(own, 'depth'))
        return workedLength(scene, {
          ...common,
          what: 'depth of the V',
          formula: 'vDepth',
          given: { angle, width, root },
          working: say`half of ${length(width)} less the flat ${length(root)}, over the tangent of half of ${degrees('drawing', angle)}`,
          planned: depth,
        })
      if (angle != null && width != null && depth != null && !scene.gives(own, 'width'))
        return workedLength(scene, {
          ...common,
          what: 'width of the V',
          formula: 'vWidth',
          given: { angle, depth, root },
          working: say`the flat ${length(root)} and twice ${length(depth)} times the tangent of half of ${degrees('drawing', angle)}`,
          planned: width,
        })
      if (radius == null || depth == null || width == null || scene.gives(own, 'width')) return []
      return workedLength(scene, {
        ...common,
        what: 'width at the surface',
        formula: 'segmentWidth',
        given: { radius, depth },
        working: say`twice the root of the square of ${length(radius)} less that of what is left of it under ${length(depth)}`,
        planned: width,
      })
    }),
}
