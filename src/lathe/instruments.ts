import type { Degrees } from '../units/dimension.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'

/** What a size is taken with at the bench, by the name of its key. */
export const INSTRUMENT_NAMES = [
  'rule',
  'caliper',
  'inside-caliper',
  'micrometer',
  'blade-micrometer',
  'depth-micrometer',
  'depth-indicator',
  'gauge-blocks',
  'pins',
  'radius-gauges',
  'protractor',
] as const
export type InstrumentName = (typeof INSTRUMENT_NAMES)[number]

/**
 * How far a reading may be off, as plus or minus: pm, of the protractor degrees. Null: there is none at hand.
 */
export type Instruments = Readonly<Record<InstrumentName, Length | Degrees | null>>

const thou = INCH / 1000

/** What holds without a key, in inches and in millimeters; where each is from stands in the schema. */
const USUAL: Readonly<Record<InstrumentName, readonly [inch: number, mm: number]>> = {
  rule: [INCH / 64, MM / 2],
  caliper: [thou, 0.03 * MM],
  'inside-caliper': [2 * thou, 0.05 * MM],
  micrometer: [thou / 2, 0.01 * MM],
  'blade-micrometer': [thou / 2, 0.01 * MM],
  'depth-micrometer': [thou, 0.02 * MM],
  'depth-indicator': [thou, 0.02 * MM],
  'gauge-blocks': [thou / 2, 0.01 * MM],
  pins: [thou / 2, 0.01 * MM],
  'radius-gauges': [INCH / 128, MM / 4],
  protractor: [1 / 2, 1 / 2],
}

export const usualInstruments = (units: Units): Instruments => {
  const of = (name: InstrumentName): number => USUAL[name][units === 'inch' ? 0 : 1]
  return Object.fromEntries(INSTRUMENT_NAMES.map((name) => [name, of(name)])) as Record<InstrumentName, number>
}

/** Those of a lathe file, or the usual ones. */
export const instrumentsOf = ({ instruments, units }: { readonly instruments?: Instruments; readonly units: Units }) =>
  instruments ?? usualInstruments(units)

/**
 * The smallest step that is read, pm. Gauge blocks are wrung together by half thousandths. A caliper: ASME B89.1.14-2018, least count 0.001 in; a micrometer: half of its
 * mark of 0.001 in or 0.01 mm, by eye. One that is surer than that reads as finely as it is sure.
 */
export const readsTo = (name: InstrumentName, within: Length, units: Units): Length => {
  const [inch, mm] = READS[name]
  return Math.min(within, units === 'inch' ? inch : mm)
}

const MICROMETER = [thou / 2, 0.005 * MM] as const
const READS: Readonly<Record<InstrumentName, readonly [inch: Length, mm: Length]>> = {
  rule: [INCH / 64, MM / 2],
  caliper: [thou, 0.02 * MM],
  'inside-caliper': [thou, 0.02 * MM],
  micrometer: MICROMETER,
  'blade-micrometer': MICROMETER,
  'depth-micrometer': MICROMETER,
  'depth-indicator': [thou, 0.01 * MM],
  'gauge-blocks': [thou / 2, 0.01 * MM],
  pins: MICROMETER,
  'radius-gauges': [INCH / 64, MM / 2],
  protractor: [0, 0],
}
