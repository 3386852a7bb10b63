import type { Operation } from '../moves/operation.ts'

/**
 * The operation with the compound at another angle; the tool is brought to its place and touches with the compound at
 * that angle.
 */
export const swungTo = (angle: number, operation: Operation): Operation => ({ ...operation, angle })
