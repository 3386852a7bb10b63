import { exact, say } from '../../phrase/say.ts'
import { type Ask, cutsOf } from './ask.ts'
import { aimOf, workedLength } from './worked.ts'

/** The diameter at the bottom, from the depth. */
export const bottomDiameter: Ask = {
  says: 'the diameter at the bottom, from the depth',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }) => {
      const depth = aimOf(feature, 'depth')
      const { surface } = feature.operation
      const { units } = scene.plan
      if (depth === null || scene.gives(feature.operation.feature, 'bottom-diameter')) return []
      return workedLength(scene, {
        id: `${index + 1}.bottom-diameter`,
        feature,
        what: 'bottom diameter',
        formula: 'bottomDiameter',
        given: { surface, depth },
        working: say`${exact('stock', surface, units)} less twice ${exact('depth', depth, units)}`,
        planned: aimOf(feature, 'bottomDiameter') ?? surface - 2 * depth,
      })
    }),
}
