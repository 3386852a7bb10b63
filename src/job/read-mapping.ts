import type { Path, Span } from '../diagnostics/diagnostic.ts'
import { suggest } from '../diagnostics/suggest.ts'
import { NOT_BESIDE } from '../lathe/schema.ts'
import type { Units } from '../units/length.ts'
import { readValue } from './read-shape.ts'
import { label, type Reader } from './reader.ts'
import {
  type AnySchema,
  expected,
  isMapping,
  isOptional,
  listed,
  type Mapping,
  quoted,
  type Shape,
  shapeOf,
  title,
} from './schema-walk.ts'

/** Reads every key of a mapping; a `units` key in it applies to everything below it. */
export const readMapping = (reader: Reader, schema: AnySchema, data: Mapping, path: Path, outer: Units): Mapping => {
  const { shape, others } = shapeOf(schema)
  const keys = others ? freeNames(reader, schema, shape, data, path) : namedKeys(reader, schema, shape, data, path)
  const units = 'units' in shape && (data.units === 'inch' || data.units === 'mm') ? data.units : outer
  const values: Mapping = {}
  for (const [key, at] of keys) {
    const known = Object.hasOwn(shape, key) ? shape[key] : others
    const value = known && readValue(reader, known, data[String(at.at(-1))], at, units)
    if (value !== undefined) values[key] = value
  }
  for (const [key, wanted] of Object.entries(shape))
    if (!isOptional(wanted) && !keys.has(key)) missing(reader, schema, wanted, key, path)
  reader.places.set(values, { file: reader.source.file, path, keys })
  return values
}

/**
 * Names that the file chooses are kept as written, except a name that is nearly a key and has no mapping under it: the
 * key was meant.
 */
const freeNames = (reader: Reader, schema: AnySchema, shape: Shape, data: Mapping, path: Path): Map<string, Path> => {
  const keys = new Map<string, Path>()
  for (const [key, value] of Object.entries(data)) {
    const meant = isMapping(value) || Object.hasOwn(shape, key) ? null : suggest(key, Object.keys(shape))
    if (meant) unknownKey(reader, schema, [...path, key], `did you mean "${meant}"?`)
    else keys.set(key, [...path, key])
  }
  return keys
}

const unknownKey = (reader: Reader, schema: AnySchema, path: Path, hint: string): void =>
  reader.report({
    code: 'unknown-key',
    path,
    at: 'key',
    message: `${title(schema)} has no key ${quoted(String(path.at(-1)))}`,
    hint,
  })

/**
 * The keys of the schema that are given, each with the spelling in the file; a misspelled key is reported and used as
 * the key that was meant.
 */
const namedKeys = (reader: Reader, schema: AnySchema, shape: Shape, data: Mapping, path: Path): Map<string, Path> => {
  const keys = new Map<string, Path>()
  const unknown: string[] = []
  for (const key of Object.keys(data)) {
    if (Object.hasOwn(shape, key)) keys.set(key, [...path, key])
    else unknown.push(key)
  }
  for (const key of unknown) {
    const free = Object.keys(shape).filter((each) => !keys.has(each))
    const meant = suggest(key, free) ?? suggest(key, Object.keys(shape))
    unknownKey(reader, schema, [...path, key], meant ? `did you mean "${meant}"?` : keysOf(fitting(free, keys)))
    if (meant && !keys.has(meant)) keys.set(meant, [...path, key])
  }
  return keys
}

const fitting = (free: readonly string[], given: ReadonlyMap<string, Path>): string[] =>
  free.filter((key) => [...given.keys()].every((one) => !NOT_BESIDE[one]?.includes(key)))

const keysOf = (free: readonly string[]): string =>
  free.length === 0 ? 'take it out' : `keys not given yet: ${listed(free)}`

/** A key that is in the file but not in its data was refused by the source, which has reported it. */
const missing = (reader: Reader, schema: AnySchema, wanted: AnySchema, key: string, path: Path): void => {
  const { source } = reader
  if (!sameSpan(source.locate([...path, key], 'key'), source.locate(path, 'key'))) return
  const whose =
    path.length === 0
      ? `the ${title(schema)}`
      : title(schema) === label(path)
        ? label(path)
        : `${title(schema)} (${label(path)})`
  reader.report({
    code: 'missing-key',
    path,
    at: 'key',
    message: `${whose} has no "${key}"`,
    hint: `give ${expected(wanted)}`,
  })
}

const sameSpan = (one: Span, other: Span): boolean => one.line === other.line && one.column === other.column
