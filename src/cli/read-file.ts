import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs'
import type { ReadLimits } from './io.ts'
import { Unfit } from './io.ts'

/**
 * A file as bytes, never more than one beyond the limit, so that whoever reads it can tell that it is too large. What
 * it is is asked before it is opened: opening a pipe waits for its other end, and a device never ends.
 */
export const readLimited = (path: string, { most, pipe }: ReadLimits): Uint8Array => {
  const unfit = unfitToRead(statSync(path), pipe)
  if (unfit !== null) throw new Unfit(unfit)
  // What was a file a moment ago may be a pipe by now: then opening does not wait, and it is refused.
  const file = openSync(path, pipe ? constants.O_RDONLY : constants.O_RDONLY | constants.O_NONBLOCK)
  try {
    const opened = unfitToRead(fstatSync(file), pipe)
    if (opened !== null) throw new Unfit(opened)
    return upTo(most + 1, (buffer, from) => readSync(file, buffer, from, buffer.length - from, null))
  } finally {
    closeSync(file)
  }
}

/** Why a thing of this sort is not read; null if it is. A folder is left to the system, which says so in its own words. */
const unfitToRead = (found: Stats, pipe: boolean): string | null => {
  if (found.isFile() || found.isDirectory()) return null
  if (found.isFIFO()) return pipe ? null : 'it is a pipe, not a file'
  return found.isSocket() ? 'it is a socket, not a file' : 'it is a device, not a file'
}

const FIRST = 64 * 1024

/** Reads until the end, or until there are as many bytes as wanted; the room grows with what comes. */
const upTo = (wanted: number, read: (buffer: Buffer, from: number) => number): Uint8Array => {
  let buffer = Buffer.allocUnsafe(Math.min(wanted, FIRST))
  for (let length = 0; ; ) {
    const more = read(buffer, length)
    length += more
    if (more === 0 || length === wanted) return buffer.subarray(0, length)
    if (length === buffer.length) {
      const larger = Buffer.allocUnsafe(Math.min(wanted, 2 * length))
      buffer.copy(larger)
      buffer = larger
    }
  }
}

/**
 * A stream as bytes, never more than one beyond the limit. As a stream: a synchronous read of a pipe that is not ready
 * yet fails with EAGAIN. Ending the loop early closes it.
 */
export const readStream = async (stream: NodeJS.ReadableStream, most: number): Promise<Uint8Array> => {
  const chunks: Buffer[] = []
  let length = 0
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk)
    chunks.push(bytes)
    length += bytes.length
    if (length > most) break
  }
  return Buffer.concat(chunks).subarray(0, most + 1)
}
