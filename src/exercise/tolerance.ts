import { formatExact } from '../units/format.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import type { Scene } from './asks/ask.ts'

/** Of a length that is worked out: half a thousandth of an inch, or a hundredth of a millimeter. pm. */
export const toleranceFor = ({ tolerance, plan }: Pick<Scene, 'tolerance' | 'plan'>): Length =>
  tolerance ?? (plan.units === 'inch' ? INCH / 2000 : MM / 100)

export const withinText = (tolerance: Length, units: Units): string => `±${formatExact(tolerance, units)}`
