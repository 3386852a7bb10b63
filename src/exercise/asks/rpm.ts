import { figure } from '../../phrase/figure.ts'
import { exact, say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { INCH, MM } from '../../units/length.ts'
import { FORMULAS } from '../formulas.ts'
import { type Ask, cutsOf, type Made } from './ask.ts'

/** The speed of the spindle, from the cutting speed and the speeds of the lathe. */
export const rpm: Ask = {
  says: 'the speed of the spindle',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }): readonly Made[] => {
      const { spindle, operation, name } = feature
      const { units, lathe } = scene.plan
      const perMinute = spindle.speedUnits === 'ft/min' ? 12 * INCH : 1000 * MM
      const speed = spindle.cuttingSpeed * spindle.factor
      const speeds = Object.fromEntries(lathe.spindleSpeeds.map((one, i) => [`speed${i}`, one]))
      const given = { cutting: speed * perMinute, diameter: operation.surface, ...speeds }
      const right = FORMULAS.rpm(given)
      if (right !== spindle.rpm) return []
      const cutting = figure('speed', speed, spindle.speedUnits, 0)
      const all = words(
        lathe.spindleSpeeds.flatMap((one, i) => [i === 0 ? '' : ', ', figure('speed', one, 'rpm')]),
        units,
      )
      return [
        {
          id: `${index + 1}.rpm`,
          asks: `spindle speed for ${name}`,
          facts: { sort: 'worked', formula: 'rpm', given, unit: 'rpm', units },
          right,
          tolerance: 0,
          key: words(say`${figure('speed', right, 'rpm')} rpm`, units),
          within: 'that speed',
          working: words(
            say`${cutting} over the circumference of ${exact('stock', operation.surface, units)}: ${figure('speed', Math.round(spindle.wanted), 'rpm')} wanted, and the nearest of the lathe that is not faster`,
            units,
          ),
          follows: [],
          move: null,
          place: {
            question: words(say`The spindle speed for "${name}", by ${cutting}; the lathe has ${all}:`, units),
          },
        },
      ]
    }),
}
