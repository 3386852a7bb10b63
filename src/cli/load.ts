import { dirname, isAbsolute, join } from 'node:path'
import type { Load } from '../job/read-job.ts'
import { MOST_TABLE_BYTES } from '../source/text.ts'
import type { Io } from './io.ts'
import { reasonOf, UsageError } from './io.ts'

/** The name of standard input in messages. */
export const STDIN = '<standard input>'

/** Standard input, as far as anything is read that may be there. */
export const readStdin = async (io: Io): Promise<Uint8Array> => {
  try {
    return await io.stdin.read(MOST_TABLE_BYTES)
  } catch (error) {
    throw new UsageError(`cannot read standard input: ${reasonOf(error)}`)
  }
}

/**
 * The reader of a job and its includes: relative to the file that names them, or to the current folder for standard
 * input. A file is read once, because a pipe can be read only once; a pipe is read only where the user named it.
 */
export const loaderFor = (io: Io, stdin: Uint8Array | null, named = true): Load => {
  const read = new Map<string, Uint8Array>()
  return (path, from) => {
    if (from === null && path === STDIN && stdin !== null) return { ok: true, file: STDIN, bytes: stdin }
    const file = from === null || from === STDIN || isAbsolute(path) ? path : join(dirname(from), path)
    try {
      const bytes = read.get(file) ?? io.readFile(file, { most: MOST_TABLE_BYTES, pipe: named && from === null })
      read.set(file, bytes)
      return { ok: true, file, bytes }
    } catch (error) {
      return { ok: false, message: `cannot read ${JSON.stringify(file)}: ${reasonOf(error)}`, hint: hintFor(from) }
    }
  }
}

const hintFor = (from: string | null): string =>
  from === null ? 'name a job file, or - for standard input' : 'paths are relative to the file that names them'
