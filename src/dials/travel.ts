import { readable, type Scale } from '../lathe/lathe.ts'
import type { Length } from '../units/length.ts'

/** From readings to travel of the slide, for every room but the replay, which does it for itself. pm. */

/** Slide travel behind a difference of readings: a scale that reads diameter shows twice the travel. */
export const travelOf = (scale: Scale, reading: Length): Length => (scale.reads === 'diameter' ? reading / 2 : reading)

/** Slide travel of one readable step. */
export const stepTravel = (scale: Scale): Length => travelOf(scale, readable(scale))

/** Slide travel at a count of readable steps. */
export const travelAt = (scale: Scale, count: number): Length => count * stepTravel(scale)

/** Lost motion as slide travel; a readout has none. */
export const lostTravel = (scale: Scale): Length => (scale.kind === 'readout' ? 0 : travelOf(scale, scale.backlash))
