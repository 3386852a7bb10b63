import { exact, say } from '../../phrase/say.ts'
import { type Ask, cutsOf } from './ask.ts'
import { aimOf, workedLength } from './worked.ts'

/** What a V measures over two pins that lie in it. */
export const pin: Ask = {
  says: 'what a V measures over two pins',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }) => {
      const { units } = scene.plan
      const [angle, width] = [aimOf(feature, 'angle'), aimOf(feature, 'width')]
      const over = feature.inspection?.find((check) => check.pin !== null)
      if (angle === null || width === null || over === undefined || over.pin === null) return []
      const { surface } = feature.operation
      return workedLength(scene, {
        id: `${index + 1}.over-pins`,
        feature,
        what: 'size over two pins',
        formula: 'overPins',
        given: { surface, width, angle, pin: over.pin },
        working: say`pins of ${exact('instrument', over.pin, units)}, by half of the width ${exact('drawing', width, units)}, the sine and the tangent of half of the angle`,
        planned: over.planned,
        note: say`, two pins of ${exact('instrument', over.pin, units)} in it`,
      })
    }),
}
