import { CommanderError } from 'commander'
import type { Io } from './io.ts'
import { codeOf, isUsageError, reasonOf } from './io.ts'
import { programFor } from './program.ts'
import { tell } from './tell.ts'

/** Finds the command and runs it. Whatever it throws becomes a status and a line. */
export const runCommand = async (args: readonly string[], io: Io): Promise<number> => {
  let status = 0
  const program = programFor(io, (reported) => {
    status = reported
  })
  try {
    await program.parseAsync([...args], { from: 'user' })
    return status
  } catch (error) {
    return failed(error, io)
  }
}

const failed = (error: unknown, io: Io): number => {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
  if (isUsageError(error)) {
    tell(error.message, io)
    return 2
  }
  if (codeOf(error) === 'ENOSPC') {
    tell(reasonOf(error), io)
    return 2
  }
  tell(`this is a bug: ${firstLine(error)} (DEBUG=1 shows where)`, io)
  const debug = io.env.DEBUG
  if (debug !== undefined && debug !== '' && error instanceof Error) io.stderr.write(`${error.stack ?? ''}\n`)
  return 70
}

const firstLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n')[0] ?? ''
