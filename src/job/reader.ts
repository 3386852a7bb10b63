import type { Diagnostic, Path } from '../diagnostics/diagnostic.ts'
import { suggest } from '../diagnostics/suggest.ts'
import type { SourceFile } from '../source/source.ts'
import { type AnySchema, choicesOf, expected, quoted } from './schema-walk.ts'

/**
 * The place of each mapping that was read, and which keys were given in it (a misspelled key under the one that was
 * meant).
 */
export type Places = Map<
  object,
  { readonly file: string; readonly path: Path; readonly keys: ReadonlyMap<string, Path> }
>

export type Reader = {
  readonly source: SourceFile
  readonly places: Places
  readonly report: (problem: Omit<Diagnostic, 'severity' | 'origin'> & { readonly path: Path }) => void
}

export const empty = (reader: Reader, schema: AnySchema, path: Path): undefined => {
  reader.report({
    code: 'empty',
    path,
    at: 'key',
    message: `${label(path)} has no value`,
    hint: `give ${expected(schema)}`,
  })
}

/** Quotes with nothing between them. */
export const blank = (reader: Reader, schema: AnySchema, path: Path): undefined => {
  reader.report({ code: 'empty', path, message: `${label(path)} is empty`, hint: `give ${expected(schema)}` })
}

export const wrongType = (reader: Reader, schema: AnySchema, path: Path): undefined => {
  const shown = reader.source.scalarSource(path)
  const message =
    shown === undefined ? `${label(path)} is not of the right kind` : `${label(path)} cannot be ${quoted(shown)}`
  // A number is not a misspelling of another number.
  const near = shown === undefined || /\d/.test(shown) ? null : suggest(shown, choicesOf(schema))
  reader.report({
    code: 'wrong-value',
    path,
    message,
    hint: near ? `did you mean "${near}"?` : `give ${expected(schema)}`,
  })
}

/** The name of the thing at a path in messages: its key, or its number in a list. */
export const label = (path: Path): string => {
  const last = path.at(-1)
  if (last === undefined) return 'the file'
  return typeof last === 'string' ? last : `entry ${last + 1} of ${label(path.slice(0, -1))}`
}
