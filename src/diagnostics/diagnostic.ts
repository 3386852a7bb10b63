/** Keys and indexes from the root of a YAML file to a value. */
export type Path = readonly (string | number)[]

/** Where something was asked for: a file as the user named it, and the path in it. Includes make a path alone ambiguous. */
export type Origin = { readonly file: string; readonly path: Path }

export type Severity = 'error' | 'warning'

/** A problem as data. Prose is complete; file, line, column and caret are added once, when it is printed. */
export type Diagnostic = {
  readonly code: string
  readonly severity: Severity
  readonly origin: Origin
  /** Point at the key rather than at the value (for unknown and missing keys). */
  readonly at?: 'key' | 'value'
  /** What is wrong, with the number that is wrong in it. One sentence, no final period. */
  readonly message: string
  /** What would be right. One sentence, no final period. */
  readonly hint?: string
}
