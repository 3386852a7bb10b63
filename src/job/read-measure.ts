import type { Code } from '../diagnostics/codes.ts'
import type { Path } from '../diagnostics/diagnostic.ts'
import type { AngleDimension, Dimension } from '../units/dimension.ts'
import { type Length, MM, type Units } from '../units/length.ts'
import type { Measure } from '../units/measure-schema.ts'
import { LONGEST_TEXT } from '../units/number-text.ts'
import { parseAngle, parseAngleDimension } from '../units/parse-angle.ts'
import { parseDimension } from '../units/parse-dimension.ts'
import { parseLength } from '../units/parse-length.ts'
import { label, type Reader, wrongType } from './reader.ts'
import { type AnySchema, MEASURES } from './schema-walk.ts'

/** A scalar as a measure. Bare numbers are read as written, because a double loses digits. */
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
  const read = measureOf(label(path), measure, written, units)
  if (read.ok) return read.value
  const { ok: _, ...problem } = read
  reader.report({ path, ...problem })
  return undefined
}

/**
 * One size that is not in a file: read as a plain length in a file is read, with the same messages about what is wrong
 * with it.
 */
export const readSize = (name: string, given: string, units: Units): Read<Length> => {
  const written = given.trim()
  const measure = { kind: 'length', range: 'more than zero' } as const
  if (written !== '') return measureOf(name, measure, written, units) as Read<Length>
  return { ok: false, code: 'empty', message: `${name} is empty`, hint: `give ${MEASURES.length}` }
}

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: Code; readonly message: string; readonly hint: string }

const measureOf = (
  name: string,
  measure: Exclude<Measure, { kind: 'text' }>,
  written: string,
  units: Units,
): Read<Length | Dimension | AngleDimension> => {
  const parsed = parse(measure, written, units)
  if (parsed.ok) {
    const problem = outOfRange(measure, parsed.value)
    if (!problem) return parsed
    return { ok: false, code: 'out-of-range', message: `${name} is ${written}`, hint: problem }
  }
  const toleranced =
    measure.kind === 'length'
      ? parseDimension(written, units)
      : measure.kind === 'angle'
        ? parseAngleDimension(written)
        : parsed
  const message = toleranced.ok ? `"${written}" has a tolerance, and none is taken here` : parsed.message
  const hint = toleranced.ok ? 'give the plain size' : parsed.hint
  return { ok: false, code: 'bad-measure', message: `${name}: ${message}`, hint }
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
  // Too long a text is refused first: to look through one of nothing but blanks would take forever.
  const most = written.length > LONGEST_TEXT ? null : /^(.*?)\s*max\.?$/i.exec(written)
  if (most === null) return parseDimension(written, units)
  const parsed = parseLength(most[1]!, units)
  if (!parsed.ok) return parsed
  const { value } = parsed
  return { ok: true as const, value: { nominal: value, limits: [0, value] as const, aim: value, text: written } }
}

/** What would be in range; undefined if it is in range. */
const outOfRange = (
  measure: Exclude<Measure, { kind: 'text' }>,
  value: Length | Dimension | AngleDimension,
): string | undefined => {
  const [least, most] = typeof value === 'number' ? [value, value] : (value.limits ?? [value.nominal, value.nominal])
  if (!('above' in measure)) {
    if (Math.abs(nominal(value)) > LONGEST) return 'no lathe holds so long a bar'
    if (measure.range === 'more than zero' && nominal(value) > 0 && nominal(value) < SHORTEST)
      return 'it must be more than zero, and so much that it can be made or measured'
    if (measure.range === 'zero or more') return nominal(value) >= 0 ? undefined : 'it must be zero or more'
    return measure.range === 'any' || least > 0
      ? undefined
      : `it must be more than zero${nominal(value) > 0 ? ', its lower limit too' : ''}`
  }
  const inside =
    (measure.from ? least >= measure.above : least > measure.above) &&
    (measure.upTo ? most <= measure.below : most < measure.below)
  const upper = measure.upTo ? `not more than ${measure.below}` : `less than ${measure.below}`
  const lower = measure.from ? `at least ${measure.above}` : `more than ${measure.above}`
  return inside ? undefined : `it must be ${lower} and ${upper} degrees`
}

/** 100 meters, and a hundred-thousandth of a millimeter (less than half a millionth of an inch). */
const LONGEST: Length = 100_000 * MM
const SHORTEST: Length = MM / 100_000

const nominal = (value: Length | Dimension | AngleDimension): number =>
  typeof value === 'number' ? value : value.nominal
