import * as z from 'zod/mini'
import type { Diagnostic, Path } from '../diagnostics/diagnostic.ts'
import type { AsRead } from '../diagnostics/given.ts'
import { suggest } from '../diagnostics/suggest.ts'
import type { SourceFile } from '../source/source.ts'
import type { Units } from '../units/length.ts'
import { measures } from '../units/measure-schema.ts'
import { readMapping } from './read-mapping.ts'
import { readMeasure } from './read-measure.ts'
import type { AnySchema, Options } from './schema-walk.ts'
import { choicesOf, expected, isMapping, optionFor, quoted, unwrap } from './schema-walk.ts'

/** Where each mapping that was read stands, and which keys were given in it (a misspelt key under the one that was meant). */
export type Places = Map<object, { readonly file: string; readonly path: Path; readonly keys: ReadonlyMap<string, Path> }>

export type Reader = {
  readonly source: SourceFile
  readonly places: Places
  readonly report: (problem: Omit<Diagnostic, 'severity' | 'origin'> & { readonly path: Path }) => void
}

/**
 * Reads a file against its schema in one walk: every scalar becomes a value, every problem is reported where it stands, and what could be
 * read is returned without what could not. A walk of our own and not the library's parse, because a measure needs the text as written and
 * the units of the mapping it stands in, and because a misspelt key or kind must not hide the problems behind it.
 */
export const readShape = <S extends AnySchema>(
  schema: S,
  source: SourceFile,
  units: Units,
): { value: AsRead<z.output<S>> | undefined; places: Places; problems: Diagnostic[] } => {
  const problems: Diagnostic[] = []
  const places: Places = new Map()
  const reader: Reader = {
    source,
    places,
    report: ({ path, ...problem }) => problems.push({ severity: 'error', origin: { file: source.file, path }, ...problem }),
  }
  const value = readValue(reader, schema, source.data, [], units)
  return { value: value as AsRead<z.output<S>> | undefined, places, problems }
}

/** undefined where nothing usable stands there; the reason has then been reported. */
export const readValue = (reader: Reader, asked: AnySchema, data: unknown, path: Path, units: Units): unknown => {
  const schema = unwrap(asked)
  const measure = measures.get(schema)
  // What the source refused has been reported there.
  if (data === undefined) return undefined
  if (data === null) return empty(reader, schema, path)
  if (measure) return readMeasure(reader, schema, measure, data, path, units)
  const def = schema._zod.def
  switch (def.type) {
    case 'object':
      return isMapping(data) ? readMapping(reader, schema, data, path, units) : wrongType(reader, schema, path)
    case 'array':
      return Array.isArray(data) ? readList(reader, schema, data, path, units) : wrongType(reader, schema, path)
    case 'union':
      return readUnion(reader, schema, data, path, units)
    default:
      return readPlain(reader, schema, data, path)
  }
}

const readList = (reader: Reader, schema: AnySchema, data: unknown[], path: Path, units: Units): unknown => {
  const { element } = schema._zod.def as unknown as { element: AnySchema }
  if (data.length === 0) {
    reader.report({ code: 'empty', path, message: `${label(path)} is an empty list`, hint: 'give at least one entry' })
    return undefined
  }
  return data.map((item, index) => readValue(reader, element, item, [...path, index], units))
}

const readUnion = (reader: Reader, schema: AnySchema, data: unknown, path: Path, units: Units): unknown => {
  const def = schema._zod.def as unknown as Options
  if (def.discriminator === undefined) {
    const option = def.options.find((each) => {
      const wanted = unwrap(each)
      const accepts = wanted._zod.def.type === 'object' ? 'object' : measures.has(wanted) ? 'number or string' : 'string'
      return isMapping(data) ? accepts === 'object' : accepts.includes(typeof data)
    })
    return option ? readValue(reader, option, data, path, units) : wrongType(reader, schema, path)
  }
  if (!isMapping(data)) return wrongType(reader, schema, path)
  const chosen = optionFor(reader, schema, data, path)
  return chosen && readMapping(reader, chosen.option, chosen.data, path, units)
}

/** Text, numbers and choices: the library's own checks, in our words. */
const readPlain = (reader: Reader, schema: AnySchema, data: unknown, path: Path): unknown => {
  const result = schema._zod.run({ value: data, issues: [] }, { async: false }) as { value: unknown; issues: unknown[] }
  if (result.issues.length === 0) return result.value
  return wrongType(reader, schema, path)
}

const empty = (reader: Reader, schema: AnySchema, path: Path): undefined => {
  reader.report({ code: 'empty', path, at: 'key', message: `${label(path)} has no value`, hint: `give ${expected(schema)}` })
}

export const wrongType = (reader: Reader, schema: AnySchema, path: Path): undefined => {
  const shown = reader.source.scalarSource(path)
  const message = shown === undefined ? `${label(path)} is not of the right kind` : `${label(path)} cannot be ${quoted(shown)}`
  // A number is not a misspelling of another number.
  const near = shown === undefined || /\d/.test(shown) ? null : suggest(shown, choicesOf(schema))
  reader.report({ code: 'wrong-value', path, message, hint: near ? `did you mean "${near}"?` : `give ${expected(schema)}` })
}

/** What a message calls the thing at a path: its key, or its place in a list. */
export const label = (path: Path): string => {
  const last = path.at(-1)
  if (last === undefined) return 'the file'
  return typeof last === 'string' ? last : `entry ${last + 1} of ${label(path.slice(0, -1))}`
}
