import type { Units } from '../../units/length.ts'
import type { Io } from '../io.ts'
import type { OutputOptions } from '../output.ts'
import { deliver } from '../output.ts'
import { surveySheet } from '../survey.ts'

/** A page to fill in at a lathe that is not known yet. */
export const surveyCommand = (options: OutputOptions & { readonly units: Units }, io: Io): number => {
  deliver(surveySheet(options.units), options, io)
  return 0
}
