import type { Code } from './codes.ts'
/** Keys and indexes from the root of a YAML file to a value. */
export type Path = readonly (string | number)[]

/**
 * Where something was given: a file as the user named it, and the path in it. With includes a path alone is ambiguous.
 */
export type Origin = { readonly file: string; readonly path: Path }

/** A range of a text: lines and columns from 1, columns and length in UTF-16 units as editors count them. */
export type Span = { readonly line: number; readonly column: number; readonly length: number }

type Severity = 'error' | 'warning'

/** A problem as data. The sentences are complete; file, line, column and caret are added once, when it is printed. */
export type Diagnostic = {
  readonly code: Code
  readonly severity: Severity
  readonly origin: Origin
  /** Point at the key rather than at the value (for unknown and missing keys). */
  readonly at?: 'key' | 'value'
  /** The range in the text, for problems that have no path: those of the YAML itself. It is used before `path`. */
  readonly span?: Span
  /** What is wrong, with the number that is wrong in it. One sentence, no final period. */
  readonly message: string
  /** What would be right. One sentence, no final period. */
  readonly hint?: string
}
