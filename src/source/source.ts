import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic, Path, Span } from '../diagnostics/diagnostic.ts'

/** A YAML file as read: plain data, what is wrong with it, and the place of everything in it. */
export type SourceFile = {
  /** As the user named it. */
  readonly file: string
  /** Without a byte-order mark. */
  readonly text: string
  /**
   * Plain objects, arrays, strings, numbers, booleans and nulls; undefined if the YAML itself is broken or the file is
   * empty, and in place of each value that was refused (with a diagnostic).
   */
  readonly data: unknown
  /**
   * In the order of their places. If it is not empty the file must not be used, but what could be read of it can be
   * checked.
   */
  readonly diagnostics: readonly Diagnostic[]
  /** The range of a path. A missing path is located at the nearest thing above it that exists. */
  locate(path: Path, at: 'key' | 'value'): Span
  /** A scalar exactly as written (a number keeps every digit; quotes are removed); undefined for anything else. */
  scalarSource(path: Path): string | undefined
}

/** A place in the tree of the file: offsets into its text, and its children. */
export type Place = {
  /** The range of the key; null for items of a list and for the root. */
  readonly key: readonly [from: number, to: number] | null
  readonly value: readonly [from: number, to: number]
  /** True if anything is written where the value should be. */
  readonly written: boolean
  readonly scalar: string | undefined
  readonly children: ReadonlyMap<string, Place>
}

/** Makes a diagnostic of this file about the offsets `from` to `to`. */
export type Report = (code: Code, from: number, to: number, message: string, hint: string) => Diagnostic
