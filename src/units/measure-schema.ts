import * as z from 'zod/mini'
import type { AngleDimension, Degrees, Dimension } from './dimension.ts'
import type { Length } from './length.ts'

/** How a scalar of a file becomes a value, once the file's units and the exact text of the scalar are known. */
export type Measure =
  | { readonly kind: 'length' | 'dimension' | 'dimension-or-most'; readonly range: LengthRange }
  | {
      readonly kind: 'angle' | 'angle-dimension'
      readonly above: Degrees
      /** The lower bound itself is allowed. */
      readonly from?: true
      readonly below: Degrees
      readonly upTo?: true
    }
  | { readonly kind: 'text' }
export type LengthRange = 'more than zero' | 'zero or more' | 'any'

/** Marks the schemas whose scalars are measures. A registry, because the JSON Schema must not show it. */
export const measures = z.registry<Measure>()

/** The same two under every measure: a start makes some hundred of them. */
const NUMBER_OR_TEXT = [z.number(), z.string()] as const

/**
 * The schemas below describe what is written in the file (a number or text) but are typed as what the reader makes of
 * it, so that a schema's output type is the type of the value as read.
 */
const measure = <T>(say: string, examples: (string | number)[], how: Measure): z.ZodMiniType<T, string | number> => {
  const schema = z.union(NUMBER_OR_TEXT).register(z.globalRegistry, { description: say, examples })
  measures.add(schema, how)
  return schema as unknown as z.ZodMiniType<T, string | number>
}

type Written = string | number

const LENGTHS = [0.125, '1/8', '1 3/16', '5/32 in', '12 thou', '4.5 mm']
const DIMENSIONS = ['0.125 ±0.005', '0.125 +0.003 -0', '0.120 to 0.125', '5/32', '20 h11']
const ANGLES = [34, '34 deg', '14 1/2 deg', "84° 16'"]

/** The example of the key itself first, then the other ways to write such a value. */
const beginning = (example: Written, others: readonly Written[]): Written[] => [
  example,
  ...others.filter((other) => other !== example),
]

export const length = (say: string, example: Written, range: LengthRange = 'more than zero') =>
  measure<Length>(say, beginning(example, LENGTHS), { kind: 'length', range })

export const dimension = (say: string, example: Written, range: LengthRange = 'more than zero') =>
  measure<Dimension>(say, beginning(example, DIMENSIONS), { kind: 'dimension', range })

/** A dimension, or a length followed by "max": anything from 0 up to it. */
export const dimensionOrMost = (say: string) =>
  measure<Dimension>(say, ['0.010 max', '0.2 mm max', '1/16 ±0.005'], {
    kind: 'dimension-or-most',
    range: 'zero or more',
  })

/** Degrees above one bound and below the other; with `upTo` the upper bound itself is allowed. */
export const angle = (say: string, example: Written, above: Degrees, below: Degrees, upTo = false) =>
  measure<Degrees>(say, beginning(example, ANGLES), {
    kind: 'angle',
    above,
    below,
    ...(upTo ? { upTo: true as const } : {}),
  })

/** Degrees from zero up to less than a bound. */
export const angleFromZero = (say: string, example: Written, below: Degrees) =>
  measure<Degrees>(say, beginning(example, ANGLES), { kind: 'angle', above: 0, below, from: true })

export const angleDimension = (say: string, above: Degrees, below: Degrees) =>
  measure<AngleDimension>(say, [38, '38 ±0.5', "84° 16'"], { kind: 'angle-dimension', above, below })

/** A name or a sentence. A bare number is kept as written: a drawing may be called 14. */
export const text = (say: string, ...examples: Written[]) => measure<string>(say, examples, { kind: 'text' })

/** One of a few words. The first is the usual one, the last is the example. */
export const choice = <const T extends readonly string[]>(say: string, options: T) =>
  z
    .enum(options as unknown as T & [string, ...string[]])
    .register(z.globalRegistry, { description: say, examples: [options.at(-1)] })

/**
 * What applies if a key is left out, as the end of a sentence. A registry, because the reader of files uses the code
 * and not the words.
 */
export const defaults = z.registry<{ readonly says: string }>()

/** A key that may be left out, and what applies then. */
export const byDefault = <T extends z.core.$ZodType>(says: string, schema: T): z.ZodMiniOptional<T> => {
  const key = z.optional(schema)
  defaults.add(key, { says })
  return key
}
