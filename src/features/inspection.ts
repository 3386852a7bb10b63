import { radiusGauges } from '../handbook/pins.ts'
import type { Check, TextPart } from '../moves/inspection.ts'
import { formatFraction, formatLength } from '../units/format.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import type { Bench, Draft } from './draft.ts'
import type { Place } from './feature.ts'
import { byUnits, datum } from './place.ts'

/** The finished sizes as replayed, and their limits on the drawing: pm or degrees. */
export type Sizes = {
  readonly planned: (id: string) => number | null
  readonly limits: (id: string) => readonly [number, number] | null
}

/** What every kind may use to say how it is inspected. */
export type Inspected = { readonly bench: Bench; readonly draft: Draft; readonly sizes: Sizes }

/** A check without pins or pairs; null if the replayed form has no such size. */
export function check(
  id: string,
  label: string,
  planned: number | null,
  limits: Check['limits'],
  using: readonly TextPart[],
  unit: Check['unit'] = 'length',
): Check | null {
  return planned === null ? null : { id, label, unit, using, planned, limits, pin: null, pair: null }
}

export const present = (checks: readonly (Check | null)[]): Check[] => checks.filter((one) => one !== null)

/** An instrument that goes into a groove, and its name in a shop. */
type Gauge = { readonly size: Length; readonly label: string }

/** Instruments of a usual toolbox: common sizes, no source. */
const gauge =
  (inch: Length, inchLabel: string, mm: Length, mmLabel: string) =>
  (units: Units): Gauge =>
    units === 'inch' ? { size: inch, label: inchLabel } : { size: mm, label: mmLabel }
const anvil = gauge(INCH / 4, '1/4 in', 6.5 * MM, '6.5 mm')
const blade = gauge((INCH * 30) / 1000, '.030 in', 0.75 * MM, '0.75 mm')
const bladeReach = gauge(INCH / 4, '1/4 in', 6.5 * MM, '6.5 mm')
const depthRod = gauge((INCH * 3) / 32, '3/32 in', 2.5 * MM, '2.5 mm')
const caliperRod = gauge(INCH / 16, '1/16 in', 1.6 * MM, '1.6 mm')
const insideJaws = gauge(INCH / 8, '1/8 in', 3 * MM, '3 mm')

export const anvilEnters = (units: Units, opening: Length): boolean => opening > anvil(units).size
export const bladeEnters = (units: Units, opening: Length): boolean => opening > blade(units).size

/** The instrument for a bottom diameter between parallel walls `opening` apart, and `below` the surface. */
export function forBottom(units: Units, opening: Length, below: Length): readonly TextPart[] {
  if (anvilEnters(units, opening)) return ['micrometer: an anvil of ', anvil(units), ' enters']
  const why: TextPart[] = ['an anvil of ', anvil(units), ' does not enter ', { length: opening }]
  if (bladeEnters(units, opening) && below < bladeReach(units).size)
    return ['blade micrometer, blades ', blade(units), ': ', ...why]
  return ['depth from the turned surface, twice that off its diameter: ', ...why]
}

/** The instrument for a depth: a rod whose flat end must rest on a floor `opening` wide. */
export function forDepth(units: Units, opening: Length): readonly TextPart[] {
  if (opening > depthRod(units).size) return ['depth micrometer, rod of ', depthRod(units)]
  if (opening > caliperRod(units).size) return ['depth rod of a caliper, ', caliperRod(units), ' thick']
  return NEEDLE
}

/** No flat end rests on the bottom of an arc, or of a sharp V. */
export const NEEDLE: readonly TextPart[] = ['depth indicator with a needle point, zeroed on the turned surface']

export function forWidth(units: Units, opening: Length): readonly TextPart[] {
  return opening > insideJaws(units).size
    ? ['caliper, inside jaws, lightly']
    : ['gauge blocks or feelers: too narrow for inside jaws']
}

/** The gauge of a stock set nearest to a radius, and its difference from it. */
export function forRadius(units: Units, radius: Length): readonly TextPart[] {
  const nearest = radiusGauges(units).reduce((a, b) => (Math.abs(b - radius) < Math.abs(a - radius) ? b : a))
  const off = radius - nearest
  const label = units === 'inch' ? `${formatFraction(nearest)} in` : formatLength(nearest, units)
  const named: TextPart[] = ['radius gauge ', { size: nearest, label }]
  if (Math.abs(off) < byUnits(units, INCH / 20_000, MM / 1000)) return named
  return [...named, ', the nearest: the form is ', { length: Math.abs(off) }, off > 0 ? ' larger' : ' smaller']
}

/** The place from the datum and to the edge that the drawing uses; null for an edge that is the face of a shoulder. */
export function placeCheck({ bench, sizes }: Inspected, place: Place): Check | null {
  const near = sizes.planned('near')
  const width = sizes.planned('width')
  if (near === null || width === null) return null
  const from = datum(bench, place.from)
  const at = sizes.planned(place.by) ?? near + (place.by === 'far' ? width : width / 2)
  const limits = sizes.limits(place.by)
  if (at === from && limits === null) return null
  const edge = place.by === 'center' ? 'center' : `${place.by} edge`
  return check(
    'place',
    `${edge} from ${place.from === 'end' ? 'end' : place.from}`,
    at - from,
    limits === null ? null : [limits[0] - from, limits[1] - from],
    [`caliper or rule, from ${place.from === 'end' ? 'the free end' : `the tailstock-side end of "${place.from}"`}`],
  )
}

/** The largest diameter that an anvil resting on pins at `from` to `to` could meet. */
export function besideOf({ bench, draft }: Inspected, from: Length, to: Length): Length {
  const past = anvil(bench.units).size
  const steps = bench.steps.filter((step) => step.end > from - past && step.start < to + past)
  return Math.max(draft.surface, ...steps.map((step) => step.measured))
}

/** Limits of the bottom diameter: as drawn, or from those of the depth and the measured diameter of the surface. */
export function bottomLimits({ draft, sizes }: Inspected): readonly [Length, Length] | null {
  const depth = sizes.limits('depth')
  if (depth === null) return sizes.limits('bottomDiameter')
  return [draft.surface - 2 * depth[1], draft.surface - 2 * depth[0]]
}
