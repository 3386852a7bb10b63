import { brief, oneLine } from '../diagnostics/escaped.ts'
import type { Io } from './io.ts'

/** One line on standard error, whatever names and values stand in it. */
export const tell = (message: string, io: Io): void => io.stderr.write(`groovewright: ${brief(oneLine(message))}\n`)
