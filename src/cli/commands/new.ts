import type { Io } from '../io.ts'
import type { OutputOptions } from '../output.ts'
import { deliver } from '../output.ts'
import { starter } from '../starters.ts'

/** A file to start from, with comments that explain what may be written there. */
export const newCommand = (kind: 'job' | 'lathe' | 'toolbox' | 'exercise', options: OutputOptions, io: Io): number => {
  deliver(starter(kind), options, io)
  return 0
}
