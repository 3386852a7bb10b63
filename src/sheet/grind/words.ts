import type { AngleRange, GrindFacts, LengthRange } from '../../moves/grinding.ts'
import { figure } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Degrees } from '../../units/dimension.ts'
import { inUnits, type Length, type Units } from '../../units/length.ts'

/** The form of a tool that needs the longest relieved sides. */
export const deepest = (facts: readonly GrindFacts[]): GrindFacts =>
  facts.reduce((best, each) => (each.form.sidesReach[0] > best.form.sidesReach[0] ? each : best))

/** A tool for several grooves must enter the narrowest. */
export const narrowest = (facts: readonly GrindFacts[]): GrindFacts =>
  facts.reduce((best, each) => ((each.width?.aim ?? 0) < (best.width?.aim ?? 0) ? each : best))

/** The width at which grinding ends: a measured tool cannot grow, so it is sharpened to its present width. pm. */
export const widthToGrind = (facts: readonly GrindFacts[]): Length => {
  const { width, measured } = narrowest(facts)
  if (width === null) return 0
  return measured ? width.edge : width.aim
}

export const angle = (degrees: Degrees) => figure('angle', degrees, 'deg', 2)

export const angles = ([low, high]: AngleRange): Phrase =>
  Math.abs(high - low) < 1 / 120 ? [angle(low)] : [angle(low), ' to ', angle(high)]

/** Lengths that are compared with a scale: no finer than thousandths of an inch, hundredths of a millimeter. */
export const lengths = ([low, high]: LengthRange, units: Units): Phrase => [
  scaled(low, units),
  ' to ',
  scaled(high, units),
]

const scaled = (value: Length, units: Units) => figure('tool', inUnits(value, units), units, units === 'inch' ? 3 : 2)

export const topWords = (ground: Degrees): Phrase => {
  if (ground === 0) return ['top left as it is, flat along the bit']
  return ground > 0
    ? ['top ground ', angle(ground), ', falling from the edge']
    : ['top ground ', angle(-ground), ' down toward the edge']
}
