import { exact, say } from '../../phrase/say.ts'
import { type Ask, cutsOf } from './ask.ts'
import { aimOf, workedLength } from './worked.ts'

/** How deep it is: from the diameter at its bottom, or of a round groove from its width. */
export const depth: Ask = {
  says: 'the depth, from the bottom diameter, or of a radius from its width',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }) => {
      const { units } = scene.plan
      const { surface, feature: own } = feature.operation
      const [planned, radius, width, bottom] = ['depth', 'radius', 'width', 'bottomDiameter'].map((id) =>
        aimOf(feature, id),
      )
      const common = { id: `${index + 1}.depth`, feature, what: 'depth' }
      if (scene.gives(own, 'depth')) return []
      if (radius != null && width != null && scene.gives(own, 'width'))
        return workedLength(scene, {
          ...common,
          formula: 'segmentDepth',
          given: { radius, width },
          working: say`radius ${exact('drawing', radius, units)} less the root of its square less that of half of ${exact('drawing', width, units)}`,
          planned: planned ?? (bottom == null ? null : (surface - bottom) / 2),
        })
      if (bottom == null || !scene.gives(own, 'bottom-diameter')) return []
      return workedLength(scene, {
        ...common,
        formula: 'depthBelow',
        given: { surface, bottom },
        working: say`half of ${exact('stock', surface, units)} less ${exact('drawing', bottom, units)}`,
        planned: planned ?? (surface - bottom) / 2,
      })
    }),
}
