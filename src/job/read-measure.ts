import type { Path } from '../diagnostics/diagnostic.ts'
import type { AngleDimension, Dimension } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'
import type { LengthRange, Measure } from '../units/measure-schema.ts'
import { parseAngle, parseAngleDimension } from '../units/parse-angle.ts'
import { parseDimension } from '../units/parse-dimension.ts'
import { parseLength } from '../units/parse-length.ts'
import { label, type Reader } from './read-shape.ts'
import { type AnySchema, expected } from './schema-walk.ts'

/** A scalar as a measure. Bare numbers are taken as they are written, because a double loses digits. */
export const readMeasure = (
  reader: Reader,
  schema: AnySchema,
  measure: Measure,
  data: unknown,
  path: Path,
  units: Units,
): string | Length | Dimension | AngleDimension | undefined => {
  const written = typeof data === 'string' ? data.trim() : typeof data === 'number' ? reader.source.scalarSource(path) : undefined
  if (written === undefined || written === null) {
    const shown = reader.source.scalarSource(path)
    const message = shown ? `${label(path)} cannot be ${shown}` : `${label(path)} is not of the right kind`
    reader.report({ code: 'wrong-value', path, message, hint: `give ${expected(schema)}` })
    return undefined
  }
  if (written === '') {
    reader.report({ code: 'empty', path, message: `${label(path)} is empty`, hint: `give ${expected(schema)}` })
    return undefined
  }
  if (measure.kind === 'text') return written
  const parsed = parse(measure, written, units)
  if (!parsed.ok) {
    reader.report({ code: 'bad-measure', path, message: `${label(path)}: ${parsed.message}`, hint: parsed.hint })
    return undefined
  }
  const problem = outOfRange(measure, parsed.value)
  if (!problem) return parsed.value
  reader.report({ code: 'out-of-range', path, message: `${label(path)} is ${written}`, hint: problem })
  return undefined
}

const parse = (measure: Exclude<Measure, { kind: 'text' }>, written: string, units: Units) => {
  switch (measure.kind) {
    case 'length':
      return parseLength(written, units)
    case 'greatest':
      return parseLength(written.replace(/\s*max\.?$/i, ''), units)
    case 'dimension':
      return parseDimension(written, units)
    case 'angle':
      return parseAngle(written)
    case 'angle-dimension':
      return parseAngleDimension(written)
  }
}

/** What would be in range; undefined where it is. */
const outOfRange = (measure: Exclude<Measure, { kind: 'text' }>, value: Length | Dimension | AngleDimension): string | undefined => {
  const least = typeof value === 'number' ? value : Math.min(value.nominal, value.limits?.[0] ?? value.nominal)
  const most = typeof value === 'number' ? value : Math.max(value.nominal, value.limits?.[1] ?? value.nominal)
  if (!('above' in measure)) return LENGTHS[measure.range](least) ? undefined : `it must be ${measure.range}`
  const inside = least > measure.above && (measure.upTo ? most <= measure.below : most < measure.below)
  const upper = measure.upTo ? `not more than ${measure.below}` : `less than ${measure.below}`
  return inside ? undefined : `it must be more than ${measure.above} and ${upper} degrees`
}

const LENGTHS: Readonly<Record<LengthRange, (value: Length) => boolean>> = {
  'more than zero': (value) => value > 0,
  'zero or more': (value) => value >= 0,
  any: () => true,
}
