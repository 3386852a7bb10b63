import { dirname, isAbsolute, join } from 'node:path'
import type { Load } from '../job/read-job.ts'
import { MOST_TABLE_BYTES } from '../source/text.ts'
import type { Io } from './io.ts'
import { reasonOf, UsageError } from './io.ts'
import { isBelow, usualRoots } from './roots.ts'

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
  const folders = new Set<string>()
  return (path, from) => {
    const file = from === null || from === STDIN || isAbsolute(path) ? path : join(dirname(from), path)
    if (from === null) folders.add(path === STDIN ? '.' : dirname(path))
    else if (!mayInclude(file, folders, io)) return { ok: false, ...outside(file) }
    if (from === null && path === STDIN && stdin !== null) return { ok: true, file: STDIN, bytes: stdin }
    try {
      const bytes = read.get(file) ?? io.readFile(file, { most: MOST_TABLE_BYTES, pipe: named && from === null })
      read.set(file, bytes)
      return { ok: true, file, bytes }
    } catch (error) {
      return { ok: false, message: `cannot read ${JSON.stringify(file)}: ${reasonOf(error)}`, hint: hintFor(from) }
    }
  }
}

const mayInclude = (file: string, folders: ReadonlySet<string>, io: Io): boolean =>
  isBelow(file, [...(io.roots ?? []), ...[...folders].flatMap((folder) => usualRoots(folder, io))], io)

const outside = (file: string) => ({
  message: `${JSON.stringify(file)} is not read: it is outside of the folders that a job may name files in`,
  hint: 'these are the one above the folder of the job and the one you are in; for another say --root and its folder',
})

const hintFor = (from: string | null): string =>
  from === null
    ? 'name a file that is there, or - for standard input'
    : 'paths are relative to the file that names them'
