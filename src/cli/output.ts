import type { Io } from './io.ts'
import { reasonOf, UsageError } from './io.ts'

export type OutputOptions = { readonly output?: string; readonly force?: boolean }

/** Nothing is written over a file that it was made from, not even with --force: asked before the work is done. */
export const guardInputs = (inputs: Iterable<string>, { output }: OutputOptions, io: Io): void => {
  if (output === undefined || output === '-') return
  for (const input of inputs)
    if (io.samePath(input, output))
      throw new UsageError(`${JSON.stringify(output)} is a file that this was read from: write to another one`)
}

/** To a file if one is named, otherwise (or for `-`) to standard output. */
export const deliver = (text: string, options: OutputOptions, io: Io): void => {
  const { output, force } = options
  if (output === undefined || output === '-') {
    if (io.stdout.closed === true)
      throw new UsageError('standard output is closed, so it would be lost: give -o FILE, or send it on with > or |')
    io.stdout.write(text)
    return
  }
  guardInputs(io.inputs ?? [], options, io)
  try {
    io.writeFile(output, text, force === true)
  } catch (error) {
    throw new UsageError(`cannot write ${JSON.stringify(output)}: ${reasonOf(error)}`)
  }
}
