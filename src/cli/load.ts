import { dirname, isAbsolute, join } from 'node:path'
import type { Load } from '../job/read-job.ts'
import type { Io } from './io.ts'
import { reasonOf } from './io.ts'

/** The name of standard input in messages. */
export const STDIN = '<standard input>'

/**
 * The reader of a job and its includes: relative to the file that names them, or to the current folder for standard
 * input.
 */
export const loaderFor =
  (io: Io, stdin: Uint8Array | null): Load =>
  (path, from) => {
    if (from === null && path === STDIN && stdin !== null) return { ok: true, file: STDIN, bytes: stdin }
    const file = from === null || from === STDIN || isAbsolute(path) ? path : join(dirname(from), path)
    try {
      return { ok: true, file, bytes: io.readFile(file) }
    } catch (error) {
      return { ok: false, message: `cannot read ${JSON.stringify(file)}: ${reasonOf(error)}`, hint: hintFor(from) }
    }
  }

const hintFor = (from: string | null): string =>
  from === null ? 'name a job file, or - for standard input' : 'paths are relative to the file that names them'
