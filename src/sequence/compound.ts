import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

/** Travel along the work of a compound set at an angle from parallel. pm. */
export const alongFor = (travel: Length, angle: Degrees): Length => travel * Math.cos(angle * (Math.PI / 180))

/** Travel into the work of a compound set at an angle from parallel. pm. */
export const depthShift = (travel: Length, angle: Degrees): Length => travel * Math.sin(angle * (Math.PI / 180))
