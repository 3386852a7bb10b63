import type { Part } from '../moves/part.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { asDrawn, called, exact, say } from '../phrase/say.ts'
import type { SourceFile } from '../source/source.ts'
import { type Length, perUnit, type Units } from '../units/length.ts'
import { tidy } from '../units/number-text.ts'
import { splitUnit } from '../units/parse-length.ts'
import { muchBacklash } from './backlash.ts'
import { type JobWarning, warning } from './checks/warnings.ts'
import { likelyMeasured, measuredOff } from './measured.ts'
import type { GivenLookup } from './read-feature.ts'
import type { LatheRead } from './read-lathe.ts'
import type { PartRead } from './read-part.ts'

/** What can be cut as written but is probably a typing mistake: questioned on the sheet and by `check`. */
export function doubtsOf(
  source: SourceFile,
  values: PartRead,
  part: Part,
  units: Units,
  givenOf: GivenLookup,
): JobWarning[] {
  return [...part.steps.flatMap((step) => farFromDrawn(step, units)), ...inOtherUnits(source, values, units, givenOf)]
}

function farFromDrawn({ diameter, measured, origin }: Part['steps'][number], units: Units): JobWarning[] {
  const off = measuredOff(diameter, measured)
  if (off === 0) return []
  const show = (length: Length) => exact('stock', length, units)
  const likely = likelyMeasured(diameter, measured, units)
  return [
    warning(
      'measured-far-from-drawn',
      say`The diameter measures ${show(measured)}, ${show(off)} ${measured > diameter.nominal ? 'over' : 'under'} the ${asDrawn(diameter, units)} drawn`,
      likely === null
        ? 'measure it again, or correct diameter'
        : say`measure it again, or correct diameter; write ${likely}`,
      { ...origin, path: [...origin.path, 'measured-diameter'] },
    ),
  ]
}

/** More than a turn of lost motion, on any dial. `outer`: the units if the lathe names none. */
export function slackDoubts(values: LatheRead, outer: Units, givenOf: GivenLookup): JobWarning[] {
  const units = values.units ?? outer
  const scales = [values['cross-feed'], values.compound, values.carriage].filter((scale) => scale !== undefined)
  return scales.flatMap((scale) => {
    const { graduation, 'per-turn': perTurn, backlash } = scale
    if (graduation === undefined || perTurn === undefined || backlash === undefined || backlash <= perTurn) return []
    const { message, hint } = muchBacklash({ graduation, perTurn, backlash }, units)
    const { origin } = givenOf(scale)
    const at = { ...origin, path: [...origin.path, 'backlash'] }
    return [warning('much-backlash', capital(message), hint, at)]
  })
}

const capital = ([first, ...rest]: Phrase): Phrase =>
  typeof first === 'string' ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest] : [first!, ...rest]

type Size = { readonly path: readonly (string | number)[]; readonly length: Length }

/**
 * A size of the part in the other units that is more than ten times every other size or less than a tenth of each, and
 * that would fit them as a bare number: the unit is probably the mistake (40" among millimeters). Common practice, no
 * source.
 */
function inOtherUnits(source: SourceFile, values: PartRead, units: Units, givenOf: GivenLookup): JobWarning[] {
  const sizes = sizesOf(values, givenOf)
  return sizes.flatMap((size) => {
    const written = source.scalarSource(size.path)
    const split = written === undefined ? null : splitUnit(tidy(written))
    const unit = split?.ok ? split.value.unit : null
    if (written === undefined || unit !== (units === 'mm' ? 'in' : 'mm')) return []
    const others = sizes.filter((other) => other !== size).map(({ length }) => length)
    const [least, most] = [Math.min(...others), Math.max(...others)]
    const bare = (size.length / perUnit(units === 'mm' ? 'inch' : 'mm')) * perUnit(units)
    const keeps = (length: Length): boolean => length <= 10 * most && length >= least / 10
    if (others.length === 0 || keeps(size.length) || !keeps(bare)) return []
    const large = size.length > most
    const own = units === 'mm' ? 'mm' : 'in'
    const show = (length: Length) => say`${exact('stock', Math.round(length), units)} ${own}`
    return [
      warning(
        'unit-out-of-keeping',
        say`${size.path.at(-1)!} is ${called('stock', written, size.length, units)}, which is ${show(size.length)}; the ${large ? 'largest' : 'smallest'} other size of the part is ${show(large ? most : least)}`,
        say`is the unit right? if it is ${show(bare)}, write ${called('stock', written.replace(/\s*(in\.?|inch|inches|"|''|”|″|mm)\s*$/i, ''), bare, units)} without a unit`,
        { file: source.file, path: size.path },
      ),
    ]
  })
}

const KEYS = ['diameter', 'length', 'measured-diameter', 'overhang', 'dog'] as const

function sizesOf(values: PartRead, givenOf: GivenLookup): Size[] {
  const rows: object[] = [values, ...(values.steps ?? []).filter((step) => step !== undefined)]
  return rows.flatMap((row) =>
    KEYS.flatMap((key) => {
      const value = (row as PartRead)[key]
      if (value === undefined) return []
      return [{ path: [...givenOf(row).origin.path, key], length: typeof value === 'number' ? value : value.aim }]
    }),
  )
}
