import type { HideWord } from '../words.ts'
import type { Ask } from './ask.ts'
import { readings } from './readings.ts'
import { shift } from './shift.ts'

/** Every word of `hide`, in the order in which its blanks are worked out. */
export const ASKS: Readonly<Record<HideWord, Ask>> = { shift, readings }
