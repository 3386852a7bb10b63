import type { Io } from './io.ts'
import { reasonOf, UsageError } from './io.ts'

export type OutputOptions = { readonly output?: string; readonly force?: boolean }

/** A sheet is never written over a file that the job was read from, not even with --force. */
export const guardInputs = (inputs: Iterable<string>, { output }: OutputOptions, io: Io): void => {
  if (output === undefined || output === '-') return
  for (const input of inputs)
    if (io.samePath(input, output))
      throw new UsageError(
        `${JSON.stringify(output)} is a file that the job is read from: write the sheet to another one`,
      )
}

/** To a file if one is named, otherwise (or for `-`) to standard output. */
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
