import type { Degrees } from '../units/dimension.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import { findMaterial } from './materials.ts'

export type Range = readonly [low: Degrees, high: Degrees]

/**
 * Grooving and form tools, in use; common practice, no source. A Navy manual (14345) only says: somewhat less than for
 * turning.
 */
export const END_RELIEF: Range = [8, 10]
export const SIDE_RELIEF: Range = [4, 6]
export const BACK_CLEARANCE: Range = [2, 4]
/** A tool with less side clearance in use than this rubs: common practice, no source. */
export const LEAST_CLEARANCE: Degrees = 1
/** A rocker-post holder that tilts the bit, from memory; makers differ (14 1/2°, 15°, 16 1/2°). */
export const USUAL_TILT: Degrees = 14.5
/**
 * How far the relieved sides go on past the depth, least and most: 1/16 to 1/8 in; a blocky tool carries the heat away.
 * Common practice, no source.
 */
export const pastDepth = (units: Units): readonly [Length, Length] =>
  units === 'inch' ? [INCH / 16, INCH / 8] : [1.5 * MM, 3 * MM]

export type RakeRow = {
  /** As ground on a grooving or form tool; null: more than in steel, and no table gives how much. */
  readonly forming: Range | null
  readonly formingSource: string
  /** Back rake of a plain turning tool for the metal; null if no table has the metal. */
  readonly turning: Range | null
  readonly turningSource: string | null
  readonly grade: 'A' | null
}

/**
 * Rake in use by work material. Grooving tools have none in the Navy manual; steel allows a little, soft metals more
 * (common practice, no source).
 */
export function rakeFor(material: string): RakeRow {
  const group = GROUPS[findMaterial(material)?.name ?? '']
  const turning = group === undefined ? null : TURNING[group]
  return {
    forming: group === 'aluminum' || group === 'copper' ? null : group === 'steel' ? [0, 2] : [0, 0],
    formingSource: group === 'steel' || group === 'aluminum' || group === 'copper' ? PRACTICE : NAVY,
    turning,
    turningSource: turning === null ? null : TEXTBOOK,
    grade: turning === null ? null : 'A',
  }
}

type Group = 'steel' | 'tool steel' | 'stainless steel' | 'cast iron' | 'brass' | 'bronze' | 'copper' | 'aluminum'

const PRACTICE = 'common practice'
const NAVY = 'US Navy training manual 14345, grooving tools'
const TEXTBOOK = 'machine-shop textbook, Table A-I-1, HSS tool angles, p. 484'

/** Back rake, degrees. */
const TURNING: Readonly<Record<Group, Range>> = {
  steel: [8, 15],
  'tool steel': [8, 8],
  'stainless steel': [8, 8],
  'cast iron': [5, 5],
  brass: [0, 0],
  bronze: [0, 0],
  copper: [16, 16],
  aluminum: [35, 35],
}

/** The rows of the table of cutting speeds, by the group they belong to for grinding. */
const GROUPS: Readonly<Record<string, Group>> = {
  'mild steel': 'steel',
  'free-machining steel': 'steel',
  'medium-carbon steel': 'steel',
  'cast steel': 'steel',
  'high-carbon steel': 'tool steel',
  'alloy steel': 'tool steel',
  'hard alloy steel': 'tool steel',
  'tool steel': 'tool steel',
  'stainless steel': 'stainless steel',
  'free-machining stainless steel': 'stainless steel',
  'cast iron': 'cast iron',
  'soft cast iron': 'cast iron',
  'hard cast iron': 'cast iron',
  brass: 'brass',
  bronze: 'bronze',
  copper: 'copper',
  aluminum: 'aluminum',
}

export type RadiusGauge = {
  readonly radius: Length
  /** The marking on the leaf: "3/32", ".060", "2.5 mm". */
  readonly label: string
  readonly source: string
  readonly fromMemory: boolean
}

/** The leaf nearest to a radius, of the sets sold in these units; the smaller one if two are equally near. */
export function nearestGauge(radius: Length, units: Units): RadiusGauge {
  const leaves = units === 'inch' ? INCH_LEAVES : METRIC_LEAVES
  return leaves.reduce((best, leaf) => (Math.abs(leaf.radius - radius) < Math.abs(best.radius - radius) ? leaf : best))
}

const FRACTIONAL = 'fractional set, 1/64 to 17/64 by 64ths and 9/32 to 1/2 by 32nds, from memory'
const DECIMAL = "decimal set, instrument maker's page"
const METRIC = 'metric sets, 1 to 25 by 0.5, from memory'

const fraction = (over: number, under: number): string =>
  over % 2 === 0 ? fraction(over / 2, under / 2) : `${over}/${under}`

const leaf64 = (count: number): RadiusGauge => ({
  radius: (count * INCH) / 64,
  label: fraction(count, 64),
  source: FRACTIONAL,
  fromMemory: true,
})

const leafDecimal = (thou: number): RadiusGauge => ({
  radius: (thou * INCH) / 1000,
  label: (thou / 1000).toFixed(3).slice(1),
  source: DECIMAL,
  fromMemory: false,
})

const INCH_LEAVES: readonly RadiusGauge[] = [
  ...Array.from({ length: 17 }, (_, i) => leaf64(i + 1)),
  ...Array.from({ length: 8 }, (_, i) => leaf64(18 + 2 * i)),
  // Of its twenty leaves the page gives .020 to .100 by .010, and the largest.
  ...Array.from({ length: 9 }, (_, i) => leafDecimal(20 + 10 * i)),
  leafDecimal(400),
].sort((a, b) => a.radius - b.radius)

const METRIC_LEAVES: readonly RadiusGauge[] = Array.from({ length: 49 }, (_, i) => ({
  radius: (1 + i / 2) * MM,
  label: `${1 + i / 2} mm`,
  source: METRIC,
  fromMemory: true,
}))

/** Warnings before the grinder is started; numbers are lengths in pm. `source` null: common practice. */
export type GrinderCaution = {
  readonly say: readonly (string | Length | { readonly degrees: number })[]
  readonly source: string | null
}

/** All sources of grade A: federal rules, an OSHA instruction on them, a college's lesson. */
export const GRINDER_CAUTIONS: readonly GrinderCaution[] = [
  {
    say: ['Eye protection on, with side shields; the shield of the wheel does not replace safety glasses.'],
    source: '29 CFR 1910.133(a)(1) and (2)',
  },
  {
    say: [
      'Before a wheel is mounted: the speed of the spindle is not above the one marked on the wheel; look the wheel over and ring it, dry: a light tap, not with metal, ',
      { degrees: 45 },
      ' each side of straight up, ',
      INCH,
      ' to ',
      2 * INCH,
      ' inward from the rim, then turned as much and once more. A dull sound: do not use it.',
    ],
    source: '29 CFR 1910.215(d)(1)',
  },
  {
    say: ['Work rest no more than ', INCH / 8, ' from the wheel, set with the wheel standing.'],
    source: '29 CFR 1910.215(a)(4)',
  },
  { say: ['Tongue guard no more than ', INCH / 4, ' from the wheel.'], source: '29 CFR 1910.215(b)(9)' },
  {
    say: [
      'Stand to one side while the wheel comes up to speed. No gloves, no loose sleeves. Grind on the face of the wheel, not its side.',
    ],
    source: null,
  },
  {
    say: [
      'Only what the wheel is made for: no brass, aluminum or other soft metal, which loads it until it can burst. Draw the dust off, or wear a mask.',
    ],
    source: null,
  },
  {
    say: [
      'Dip a high-speed steel bit often, before it is hot. One that has overheated cools in the air: quenched, it cracks.',
    ],
    source: 'technical-college lathe safety lesson',
  },
]
