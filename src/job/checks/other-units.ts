import { exact, say } from '../../phrase/say.ts'
import { INCH, MM } from '../../units/length.ts'
import type { Case } from './refusals.ts'
import { type JobWarning, warning } from './warnings.ts'

/**
 * Sizes that suggest the other units: a bar over 24 in through or 10 ft long is no bench work, and one under 3 mm or
 * shorter than 6 mm is hardly formed on a bench lathe. Common practice, no source.
 */
export function otherUnits({ units, steps }: Case['bench']): JobWarning[] {
  const length = steps.at(-1)?.end ?? 0
  const most = Math.max(...steps.map(({ measured }) => measured))
  const strange = units === 'inch' ? most > 24 * INCH || length > 120 * INCH : most < 3 * MM || length < 6 * MM
  const first = steps[0]
  if (!strange || first === undefined) return []
  const [asked, other] = units === 'inch' ? ['inch', 'mm'] : ['mm', 'inch']
  return [
    warning(
      'other-units',
      say`The part is ${exact('drawing', most, units)} in diameter and ${exact('drawing', length, units)} long in ${units === 'inch' ? 'inches' : 'millimeters'}`,
      say`is units: ${asked} right? if the drawing is in ${units === 'inch' ? 'millimeters' : 'inches'}, write units: ${other}`,
      first.origin,
    ),
  ]
}
