import { stepTravel } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import { INCH, type Length } from '../units/length.ts'

/**
 * Counts by which the tool is backed away before hands come near: at least half an inch of slide travel. Common
 * practice, no source.
 */
export const awayToMeasure = (scale: Scale): number => Math.ceil(((INCH / 2) satisfies Length) / stepTravel(scale))
