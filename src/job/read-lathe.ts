import type * as z from 'zod/mini'
import type { AsRead } from '../diagnostics/given.ts'
import { INSTRUMENT_NAMES, type InstrumentName, type Instruments, usualInstruments } from '../lathe/instruments.ts'
import type { Accuracy, Lathe, Scale } from '../lathe/lathe.ts'
import type { carriageSchema, compoundSchema, crossFeedSchema, latheSchema } from '../lathe/schema.ts'
import { exact, say } from '../phrase/say.ts'
import { words } from '../phrase/words.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import { MOST_TURNS, muchBacklash } from './backlash.ts'
import type { GivenLookup } from './read-feature.ts'

export type LatheRead = AsRead<z.output<typeof latheSchema>>
type ScaleRead =
  | AsRead<z.output<typeof crossFeedSchema>>
  | AsRead<z.output<typeof compoundSchema>>
  | AsRead<z.output<typeof carriageSchema>>

/**
 * Null if something is missing or impossible; the reason has then been reported. `outer`: the units if the lathe names
 * none.
 */
export const readLathe = (values: LatheRead, outer: Units, givenOf: GivenLookup): Lathe | null => {
  const units = values.units ?? outer
  const { name, 'cross-feed': crossFeed, compound, carriage, 'spindle-speeds': speeds } = values
  const scales = [crossFeed, compound, carriage].map((scale) => (scale ? readAny(scale, units, givenOf) : null))
  const [crossScale, compoundScale, carriageScale] = scales
  if (!name || !crossScale || !compoundScale || (carriage && !carriageScale) || !speeds) return null
  return {
    name,
    units,
    crossFeed: crossScale,
    ...(crossFeed?.stop === true ? { crossFeedStop: true as const } : {}),
    compound: {
      scale: compoundScale,
      angle: compound?.angle ?? 0,
      travel: compound?.travel ?? null,
      scaleZero: compound?.['scale-zero'] ?? 'parallel',
    },
    carriage: carriageScale ?? null,
    spindleSpeeds: speeds.filter((speed) => speed !== undefined).sort((a, b) => a - b),
    jawClearance: values['jaw-clearance'] ?? (units === 'inch' ? INCH / 4 : 6 * MM),
    ...(values['widest-edge'] === undefined ? {} : { widestEdge: values['widest-edge'] }),
    accuracy: readAccuracy(values.accuracy ?? {}, units, givenOf),
    ...(values.instruments === undefined ? {} : { instruments: readInstruments(values.instruments, units, givenOf) }),
  }
}

const DIAL_KEYS = ['graduation', 'per-turn', 'backlash', 'read-to'] as const

const readAny = (values: ScaleRead, units: Units, givenOf: GivenLookup): Scale | null => {
  const indicator = readIndicator(values, units, givenOf)
  return indicator === undefined ? readScale(values, units, givenOf) : indicator
}

/** An indicator that bears on the carriage; undefined if the keys do not describe one. */
const readIndicator = (values: ScaleRead, units: Units, givenOf: GivenLookup): Scale | null | undefined => {
  const given = givenOf(values as AsRead<z.output<typeof carriageSchema>>)
  const { indicator, range } = given.values
  if (!given.has('indicator')) {
    if (!given.has('range')) return undefined
    given.report('range', 'missing-key', 'a range, and no indicator', 'give indicator: what one mark of it is worth')
    return null
  }
  for (const key of [...DIAL_KEYS, 'readout'] as const)
    if (given.has(key))
      given.report(key, 'too-many-keys', `an indicator has no ${key}`, 'keep indicator and range, or give a dial')
  if (!given.has('range'))
    given.report(
      null,
      'missing-key',
      'the indicator has no range',
      'give how far its plunger follows, such as range: 1',
    )
  return indicator && range ? { kind: 'readout', units, resolution: indicator, reads: 'depth', range } : null
}

/** A dial or a readout, but not a mixture of the two. */
const readScale = (values: ScaleRead, units: Units, givenOf: GivenLookup): Scale | null => {
  const given = givenOf(values as AsRead<z.output<typeof crossFeedSchema>>)
  const reads = given.values.reads ?? 'depth'
  if (given.has('readout')) {
    for (const key of DIAL_KEYS)
      if (given.has(key))
        given.report(key, 'too-many-keys', `a readout has no ${key}`, `keep readout, or give a dial without it`)
    const fine = tooFine(values.readout, units)
    if (fine !== null) given.report('readout', 'impossible', ...fine)
    return values.readout ? { kind: 'readout', units, resolution: values.readout, reads } : null
  }
  if (!given.has('graduation'))
    given.report(
      null,
      'missing-key',
      'the dial has no graduation',
      'give what one mark is worth, or readout for a digital readout',
    )
  if (!given.has('per-turn'))
    given.report(null, 'missing-key', 'the dial has no per-turn', 'give what one whole turn is worth, such as 0.100')
  if (!given.has('backlash')) given.report(null, 'missing-key', 'the dial has no backlash', WHY_BACKLASH)
  const { graduation, 'per-turn': perTurn, backlash } = values
  const fine = tooFine(graduation, units)
  if (fine !== null) given.report('graduation', 'impossible', ...fine)
  if (graduation && perTurn && perTurn % graduation !== 0) {
    const marks = perTurn / graduation
    given.report(
      'per-turn',
      'not-whole',
      `per-turn is ${Number(marks.toFixed(3))} graduations`,
      'it must be a whole number of graduations, or a turn would not end on a mark',
    )
    return null
  }
  if (graduation && perTurn && perTurn / graduation > MOST_MARKS) {
    given.report(
      'per-turn',
      'impossible',
      `a dial of ${perTurn / graduation} marks a turn: none has more than ${MOST_MARKS}`,
      'give what one whole turn is worth, such as 0.100, in the same units as the graduation',
    )
    return null
  }
  if (!graduation || !perTurn || backlash === undefined) return null
  if (backlash > MOST_TURNS * perTurn) {
    const { message, hint } = muchBacklash({ graduation, perTurn, backlash }, units)
    given.report('backlash', 'impossible', words(message, units), words(hint, units))
  }
  return { kind: 'dial', units, graduation, perTurn, reads, backlash, readTo: part(values['read-to'] ?? 1) }
}

/** A ten-thousandth of a millimeter: no slide of a manual lathe can be set, and no dial read, so finely. Common practice, no source. */
const FINEST: Length = MM / 10_000

const tooFine = (mark: Length | undefined, units: Units): [message: string, hint: string] | null =>
  mark === undefined || mark >= FINEST
    ? null
    : [
        words(say`${exact('reading', mark, units)} is finer than any slide of a manual lathe can be set`, units),
        `look for a zero too many: ${units === 'inch' ? '0.001, or 0.00005' : '0.02, or 0.001'} for a fine readout`,
      ]

/** No dial has so many marks that a hand could set; most have 50 to 500. Common practice, no source. */
const MOST_MARKS = 20_000

const WHY_BACKLASH =
  'measure the lost motion on the dial and give a little more (0 if there is none): the sheet is proved for everything from 0 to this'

const part = (written: string | number): number =>
  typeof written === 'number' ? written : 1 / Number(written.slice(2))

/** An eighth of an inch: no hand, no eye and no instrument of a shop is off by more. Common practice, no source. */
const MOST_OFF: Length = INCH / 8

/** Tables are worked out as far as the stated errors reach. */
const tooFar = (error: Length | null | undefined, units: Units): [message: string, hint: string] | null =>
  error === null || error === undefined || error <= MOST_OFF
    ? null
    : [
        words(say`an error of ${exact('spare', error, units)} is more than any hand, eye or instrument makes`, units),
        `give how far it may be off at most, ${units === 'inch' ? '1/8' : '3.175'} or less: look for a decimal point, or the other unit`,
      ]

const LENGTHS = ['reading', 'touch-off', 'layout', 'tool', 'stock', 'runout'] as const

const readAccuracy = (values: NonNullable<LatheRead['accuracy']>, units: Units, givenOf: GivenLookup): Accuracy => {
  for (const key of LENGTHS) {
    const far = tooFar(values[key], units)
    if (far !== null) givenOf(values).report(key, 'impossible', ...far)
  }
  const or = (given: Length | undefined, inch: number, mm: number): Length =>
    given ?? Math.round(units === 'inch' ? inch * INCH : mm * MM)
  return {
    reading: values.reading ?? null,
    touchOff: or(values['touch-off'], 0.001, 0.02),
    layout: or(values.layout, 0.005, 0.1),
    tool: or(values.tool, 0.0005, 0.01),
    stock: or(values.stock, 0.0005, 0.01),
    runout: values.runout ?? 0,
    swivel: values.swivel ?? 1 / 2,
    trued: values.trued ?? 1 / 20,
    toolAngle: values['tool-angle'] ?? 1 / 2,
  }
}

const readInstruments = (
  values: NonNullable<LatheRead['instruments']>,
  units: Units,
  givenOf: GivenLookup,
): Instruments => {
  const given = givenOf(values)
  for (const name of INSTRUMENT_NAMES)
    if (given.has(name) && values.missing?.includes(name) === true)
      given.report(name, 'too-many-keys', `${name} is given, and missing too`, 'keep one of the two')
  for (const name of INSTRUMENT_NAMES) {
    const far = name === 'protractor' ? null : tooFar(values[name], units)
    if (far !== null) given.report(name, 'impossible', ...far)
  }
  const usual = usualInstruments(units)
  const at = (name: InstrumentName): number | null =>
    values.missing?.includes(name) === true ? null : (values[name] ?? usual[name])
  return Object.fromEntries(INSTRUMENT_NAMES.map((name) => [name, at(name)])) as Record<InstrumentName, number | null>
}
