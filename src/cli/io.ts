/** Everything outside the program that it uses, so that a test can replace it. Paths are as the user gave them. */
export type Io = {
  readonly stdin: { readonly isTTY: boolean; readonly read: (most: number) => Promise<Uint8Array> }
  readonly stdout: Sink
  readonly stderr: Sink
  readonly env: Readonly<Record<string, string | undefined>>
  /** Throws an Error with a `code` (ENOENT, EISDIR …) as Node does, or an `Unfit` for what is no file. */
  readonly readFile: (path: string, limits: ReadLimits) => Uint8Array
  /** Entries of a folder, or null if the path is not one. */
  readonly readDir: (path: string) => readonly Entry[] | null
  /** Makes a folder, and those above it, where they are not there. */
  readonly makeFolder: (path: string) => void
  /** The files that were read so far, as they were named: nothing is written over them. */
  readonly inputs?: ReadonlySet<string>
  /** The folders given by --root. */
  readonly roots?: string[]
  /** The path without links; throws like `readFile`. */
  readonly realPath: (path: string) => string
  /** Whether two paths lead to one file. */
  readonly samePath: (one: string, other: string) => boolean
  /**
   * Writes the whole file or nothing. Without `force` an existing file is left alone, and the error's code is EEXIST.
   * What exists and is no file (a device, a pipe) is never replaced: `Unfit`.
   */
  readonly writeFile: (path: string, text: string, force: boolean, how?: Writing) => void
}

/** `ofMany`: one of many files, so it need not be on the disk before the next one is written. */
export type Writing = { readonly ofMany: boolean }

/** `most` bytes are read, and one more where there are more. A pipe is read only where the user named it. */
export type ReadLimits = { readonly most: number; readonly pipe: boolean }

export type Sink = {
  readonly isTTY: boolean
  readonly write: (text: string) => void
  /** It was closed before the program began, so that what is written is lost without an error. */
  readonly closed?: boolean
  /** Marks a control of our own, so that it is written as it is; every other is escaped. */
  readonly control?: (sequence: string) => string
}
export type Entry = { readonly name: string; readonly folder: boolean }

/** A user's mistake on the command line: reported on standard error, status 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError'
}

/** Something that is neither read nor written, whatever the system would allow; the message says why. */
export class Unfit extends Error {
  override readonly name = 'Unfit'
  readonly code = 'UNFIT'
}

/**
 * By its name: in dist/ the code that throws it and the code that catches it are bundled apart, each with a class of
 * its own.
 */
export const isUsageError = (error: unknown): error is UsageError =>
  error instanceof Error && error.name === 'UsageError'

/** Why the system refused, in plain words. */
export const reasonOf = (error: unknown): string => {
  const code = codeOf(error)
  return (code !== null && REASONS[code]) || (error instanceof Error ? error.message : String(error))
}

export const codeOf = (error: unknown): string | null =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of the path is not a folder',
  EACCES: 'it may not be read or written: permission denied',
  EPERM: 'it may not be read or written: permission denied',
  EEXIST: 'it exists already; say --force to replace it',
  ENOSPC: 'no space is left on the disk',
  EROFS: 'the disk can only be read',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'too many links lead to one another',
  EBADF: 'it is not open for that',
  EAGAIN: 'it is not ready to be read',
  EIO: 'the disk or the terminal failed',
}
