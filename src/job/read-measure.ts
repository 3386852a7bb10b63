import type { Path } from '../diagnostics/diagnostic.ts'
import type { AngleDimension, Dimension } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'
import type { Measure } from '../units/measure-schema.ts'
import { parseAngle, parseAngleDimension } from '../units/parse-angle.ts'
import { parseDimension } from '../units/parse-dimension.ts'
import { parseLength } from '../units/parse-length.ts'
import { label, type Reader, wrongType } from './reader.ts'
import type { AnySchema } from './schema-walk.ts'

/** A scalar as a measure. Bare numbers are taken as they are written, because a double loses digits. */
export const readMeasure = (
  reader: Reader,
  schema: AnySchema,
  measure: Measure,
  data: unknown,
  path: Path,
  units: Units,
): string | Length | Dimension | AngleDimension | undefined => {
  const written =
    typeof data === 'string' ? data.trim() : typeof data === 'number' ? reader.source.scalarSource(path) : undefined
  if (written === undefined) return wrongType(reader, schema, path)
  if (measure.kind === 'text') return written
  const parsed = parse(measure, written, units)
  if (!parsed.ok) {
    const toleranced =
      measure.kind === 'length'
        ? parseDimension(written, units)
        : measure.kind === 'angle'
          ? parseAngleDimension(written)
          : parsed
    const message = toleranced.ok ? `"${written}" has a tolerance, and none is taken here` : parsed.message
    const hint = toleranced.ok ? 'give the plain size' : parsed.hint
    reader.report({ code: 'bad-measure', path, message: `${label(path)}: ${message}`, hint })
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
    case 'dimension-or-most':
      return dimensionOrMost(written, units)
    case 'dimension':
      return parseDimension(written, units)
    case 'angle':
      return parseAngle(written)
    case 'angle-dimension':
      return parseAngleDimension(written)
  }
}

const dimensionOrMost = (written: string, units: Units) => {
  const most = written.match(/^(.*?)\s*max\.?$/i)
  if (most === null) return parseDimension(written, units)
  const parsed = parseLength(most[1]!, units)
  if (!parsed.ok) return parsed
  const { value } = parsed
  return { ok: true as const, value: { nominal: value, limits: [0, value] as const, aim: value, text: written } }
}

/** What would be in range; undefined where it is. */
const outOfRange = (
  measure: Exclude<Measure, { kind: 'text' }>,
  value: Length | Dimension | AngleDimension,
): string | undefined => {
  const [least, most] = typeof value === 'number' ? [value, value] : (value.limits ?? [value.nominal, value.nominal])
  if (!('above' in measure)) {
    if (measure.range === 'zero or more') return nominal(value) >= 0 ? undefined : 'it must be zero or more'
    return measure.range === 'any' || least > 0
      ? undefined
      : `it must be more than zero${nominal(value) > 0 ? ', its lower limit too' : ''}`
  }
  const inside = least > measure.above && (measure.upTo ? most <= measure.below : most < measure.below)
  const upper = measure.upTo ? `not more than ${measure.below}` : `less than ${measure.below}`
  return inside ? undefined : `it must be more than ${measure.above} and ${upper} degrees`
}

const nominal = (value: Length | Dimension | AngleDimension): number =>
  typeof value === 'number' ? value : value.nominal
