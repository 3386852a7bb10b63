import type * as z from 'zod/mini'
import type { Diagnostic, Path } from '../diagnostics/diagnostic.ts'
import type { AsRead } from '../diagnostics/given.ts'
import type { SourceFile } from '../source/source.ts'
import type { Units } from '../units/length.ts'
import { measures } from '../units/measure-schema.ts'
import { readMapping } from './read-mapping.ts'
import { readMeasure } from './read-measure.ts'
import { blank, empty, label, type Places, type Reader, wrongType } from './reader.ts'
import type { AnySchema, Options } from './schema-walk.ts'
import { isMapping, optionFor, unwrap } from './schema-walk.ts'

/**
 * Reads a file against its schema in one walk: every scalar becomes a value, every problem is reported at its place,
 * and everything that could be read is returned. It is a walk of our own and not the library's parse, because a measure
 * needs the text as written and the units of its mapping, and because a misspelled key or kind must not hide the
 * problems behind it.
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
    report: ({ path, ...problem }) =>
      problems.push({ severity: 'error', origin: { file: source.file, path }, ...problem }),
  }
  const value = readValue(reader, schema, source.data, [], units)
  return { value: value as AsRead<z.output<S>> | undefined, places, problems }
}

/** undefined if there is nothing usable; the reason has then been reported. */
export const readValue = (reader: Reader, asked: AnySchema, data: unknown, path: Path, units: Units): unknown => {
  const schema = unwrap(asked)
  const measure = measures.get(schema)
  // The source has reported what it refused there.
  if (data === undefined) return undefined
  if (data === null) return empty(reader, schema, path)
  if (typeof data === 'string' && data.trim() === '') return blank(reader, schema, path)
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
    const option = def.options.find((each) => takes(unwrap(each), data))
    return option ? readValue(reader, option, data, path, units) : wrongType(reader, schema, path)
  }
  if (!isMapping(data)) return wrongType(reader, schema, path)
  const chosen = optionFor(reader, schema, data, path)
  return chosen && readMapping(reader, chosen.option, chosen.data, path, units)
}

/** Whether this kind of data (a mapping, or a scalar) can mean an option without a word of its own. */
const takes = (option: AnySchema, data: unknown): boolean => {
  if (option._zod.def.type === 'object') return isMapping(data)
  if (option._zod.def.type === 'array') return Array.isArray(data)
  return typeof data === 'string' || (typeof data === 'number' && measures.has(option))
}

/** Text, numbers and choices: the library's own checks, with our messages. */
const readPlain = (reader: Reader, schema: AnySchema, data: unknown, path: Path): unknown => {
  const result = schema._zod.run({ value: data, issues: [] }, { async: false }) as { value: unknown; issues: unknown[] }
  if (result.issues.length === 0) return result.value
  return wrongType(reader, schema, path)
}
