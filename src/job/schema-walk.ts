import * as z from 'zod/mini'
import type { Path } from '../diagnostics/diagnostic.ts'
import { suggest } from '../diagnostics/suggest.ts'
import { measures } from '../units/measure-schema.ts'
import type { Reader } from './reader.ts'

export type AnySchema = z.core.$ZodType
export type Mapping = Record<string, unknown>
export type Shape = Readonly<Record<string, AnySchema>>
export type Options = { readonly options: readonly AnySchema[]; readonly discriminator?: string }

export const isMapping = (data: unknown): data is Mapping =>
  typeof data === 'object' && data !== null && !Array.isArray(data)

export const unwrap = (schema: AnySchema): AnySchema =>
  schema._zod.def.type === 'optional' ? (schema._zod.def as unknown as { innerType: AnySchema }).innerType : schema

export const isOptional = (schema: AnySchema): boolean => schema._zod.def.type === 'optional'

export const shapeOf = (schema: AnySchema): { readonly shape: Shape; readonly others: AnySchema | null } => {
  const { shape, catchall } = schema._zod.def as unknown as { shape: Shape; catchall?: AnySchema }
  return { shape, others: catchall && catchall._zod.def.type !== 'never' ? catchall : null }
}

/** What the machinist would call it. */
export const title = (schema: AnySchema): string => z.globalRegistry.get(schema)?.title ?? 'mapping'

type Chosen = { readonly option: AnySchema; readonly data: Mapping }

/**
 * The option of a discriminated union that a mapping asks for, with the mapping to read. A misspelled word is reported
 * and read as the one that was probably meant, so that it hides nothing else.
 */
export const optionFor = (reader: Reader, schema: AnySchema, data: Mapping, path: Path): Chosen | undefined => {
  const { options, discriminator: key = '' } = schema._zod.def as unknown as Options
  const words = options.flatMap((option) => wordsOf(option, key))
  const given = key in data ? key : suggest(key, Object.keys(data))
  if (given === null) {
    const message = `the ${title(schema)} has no "${key}"`
    reader.report({ code: 'missing-key', path, at: 'key', message, hint: `give ${either(words)}` })
    return undefined
  }
  const word = data[given]
  // The source has reported what it refused there.
  if (word === undefined) return undefined
  const meant = words.find((each) => each === word) ?? (typeof word === 'string' ? suggest(word, words) : null)
  if (meant === null || meant !== word) {
    const at = [...path, given]
    const hint = meant ? `did you mean "${meant}"?` : `give ${either(words)}`
    reader.report({ code: 'unknown-word', path: at, message: `${key} ${notAWord(reader, word, at)}`, hint })
  }
  const option = meant === null ? undefined : options.find((each) => wordsOf(each, key).includes(meant))
  if (!option) return undefined
  const read = { ...data, [given]: meant }
  return option._zod.def.type === 'union' ? optionFor(reader, option, read, path) : { option, data: read }
}

const notAWord = (reader: Reader, word: unknown, at: Path): string => {
  if (word === null) return 'has no value'
  if (typeof word === 'string' && word.trim() === '') return 'is empty'
  return `cannot be ${quoted(reader.source.scalarSource(at))}`
}

/** The words that choose an option of a discriminated union. */
export const wordsOf = (option: AnySchema, key: string): string[] => {
  const def = option._zod.def as unknown as Options & { type: string; shape: Shape }
  if (def.type === 'union') return [...new Set(def.options.flatMap((each) => wordsOf(each, key)))]
  const word = def.shape[key]
  return word ? choicesOf(word) : []
}

/** The words that an enumeration or a literal accepts; empty for anything else. */
export const choicesOf = (asked: AnySchema): string[] => {
  const def = unwrap(asked)._zod.def as unknown as { type: string; values?: unknown[]; entries?: object }
  if (def.type === 'literal') return (def.values ?? []).map(String)
  return def.type === 'enum' ? Object.values(def.entries ?? {}) : []
}

export const quoted = (written: string | undefined): string =>
  written === undefined ? 'this' : `"${written.length > 40 ? `${written.slice(0, 40)}…` : written}"`

/** Names as a list that stays short; the most important ones come first in a schema. */
export const listed = (names: readonly string[]): string =>
  `${names.slice(0, 12).join(', ')}${names.length > 12 ? ' and others' : ''}`

export const either = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`

/** What is expected there, as the object of "give". */
export const expected = (asked: AnySchema): string => {
  const schema = unwrap(asked)
  const measure = measures.get(schema)
  if (measure) return MEASURES[measure.kind]
  const words = choicesOf(schema)
  if (words.length > 0) return either(words)
  const def = schema._zod.def
  if (def.type === 'union') {
    const { discriminator, options } = def as unknown as Options
    const say = z.globalRegistry.get(schema)?.description
    if (discriminator !== undefined) return KINDS.object
    return say ? say.charAt(0).toLowerCase() + say.slice(1).replace(/\.$/, '') : either(options.map(expected))
  }
  return numberExpected(schema) ?? KINDS[def.type as keyof typeof KINDS] ?? 'a value'
}

const numberExpected = (schema: AnySchema): string | undefined => {
  if (schema._zod.def.type !== 'number') return undefined
  const whole = (schema._zod.def.checks ?? []).some((check) => check._zod.def.check === 'multiple_of')
  return whole ? 'a whole number more than zero' : 'a number more than zero'
}

export const MEASURES = {
  length: 'a length such as 0.125, 1/8 or 4.5 mm',
  dimension: 'a length such as 1/8, or one with its tolerance such as 0.125 ±0.005',
  'dimension-or-most': 'a radius such as 0.010 max or 1/16 ±0.005',
  angle: 'degrees such as 34 or 14 1/2 deg',
  'angle-dimension': 'degrees such as 38 or 38 ±0.5',
  text: 'text',
} as const

const KINDS = {
  object: 'keys with their values, indented',
  array: 'a list, each entry behind a hyphen',
  string: 'text',
} as const
