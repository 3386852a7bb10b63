import type { Io } from './io.ts'
import { reasonOf, UsageError } from './io.ts'

export type OutputOptions = { readonly output?: string; readonly force?: boolean }

/** To a file where one is named, otherwise (or for `-`) to standard output. */
export const deliver = (text: string, options: OutputOptions, io: Io): void => {
  const { output, force } = options
  if (output === undefined || output === '-') {
    io.stdout.write(text)
    return
  }
  try {
    io.writeFile(output, text, force === true)
  } catch (error) {
    throw new UsageError(`cannot write ${JSON.stringify(output)}: ${reasonOf(error)}`)
  }
}
