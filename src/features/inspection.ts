import { radiusGauges } from '../handbook/pins.ts'
import { type InstrumentName, readsTo } from '../lathe/instruments.ts'
import type { Check, OverPins, Taken, TextPart } from '../moves/inspection.ts'
import { formatFraction, formatLength } from '../units/format.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import type { Bench, Draft } from './draft.ts'
import type { Place } from './feature.ts'
import { byUnits, datum } from './place.ts'

/** The finished sizes as replayed, and their limits on the drawing: pm or degrees. */
export type Sizes = {
  readonly planned: (id: string) => number | null
  readonly limits: (id: string) => readonly [number, number] | null
  /** The most that the cut size may be off when each stated error is at its worst; null if it has no such size. */
  readonly cut: (id: string) => number | null
}

/** What an instrument must be sure of: of two limits, and of whether the cut is as planned. */
export type Need = { readonly limits: Check['limits']; readonly cut: number | null }
export const NO_NEED: Need = { limits: null, cut: null }
export const needOf = ({ sizes }: Inspected, id: string): Need => ({ limits: sizes.limits(id), cut: sizes.cut(id) })
/** Of a bottom diameter, with the limits that follow from those of the depth. */
export const bottomNeed = (inspected: Inspected): Need => ({
  limits: bottomLimits(inspected),
  cut: inspected.sizes.cut('bottomDiameter'),
})
/** Of a depth by which a diameter is judged: twice what it is off by counts. */
export const halfOf = ({ limits, cut }: Need): Need => ({
  limits: limits && [limits[0] / 2, limits[1] / 2],
  cut: cut === null ? null : cut / 2,
})

/** What every kind may use to say how it is inspected. */
export type Inspected = { readonly bench: Bench; readonly draft: Draft; readonly sizes: Sizes }

/** How a size is taken: in words, with what, and how far that may be off. */
export type Way = { readonly using: readonly TextPart[]; readonly by?: Taken | null; readonly over?: OverPins }

/** Nothing at hand takes it: it is not asked for. */
const NOTHING: Way = { using: ['not asked for: nothing at hand takes it'], by: null }

/**
 * The first of several ways for which the instrument is at hand and sure enough; where none is, the surest. Sure enough:
 * the limits are four times as far apart as the interval of its uncertainty, which is twice as wide as U (ASME
 * B89.7.3.1, N to one by the interval). By U alone, as four to one is often read, it might be twice as uncertain. And it
 * is surer than the cut itself, or nothing could be corrected by it.
 * `times`: the size is read so many times over.
 */
export function firstAtHand(
  bench: Bench,
  { limits, cut }: Need,
  ways: readonly (readonly [name: InstrumentName, using: readonly TextPart[], times?: number] | false)[],
): Way {
  const atHand = ways.flatMap((way): (Way & { by: Taken })[] => {
    if (way === false) return []
    const [name, using, times = 1] = way
    const within = bench.instruments[name]
    if (within === null) return []
    const reads = name === 'protractor' ? 0 : readsTo(name, within, bench.units)
    return [{ using, by: { with: name, within: within * times, reads: reads * times } }]
  })
  const surest = atHand.toSorted((one, other) => one.by.within - other.by.within)[0]
  const enough = ({ within }: Taken): boolean =>
    (limits === null || sureEnough(within, limits)) && (cut === null || within < cut)
  return atHand.find(({ by }) => enough(by)) ?? surest ?? NOTHING
}

const sureEnough = (within: number, limits: readonly [number, number]): boolean =>
  limits[1] - limits[0] >= 4 * (2 * within)

/** A check without pins or pairs; null if the replayed form has no such size. */
export function check(
  id: string,
  label: string,
  planned: number | null,
  limits: Check['limits'],
  way: Way,
  unit: Check['unit'] = 'length',
): Check | null {
  return planned === null ? null : { id, label, unit, ...way, planned, limits, pin: null, pair: null }
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
export function forBottom(bench: Bench, opening: Length, below: Length, need: Need): Way {
  const { units } = bench
  const why: TextPart[] = ['an anvil of ', anvil(units), ' does not enter ', { length: opening }]
  const depth = forDepth(bench, opening, halfOf(need))
  const [enters, bladed] = [anvilEnters(units, opening), bladeEnters(units, opening) && below < bladeReach(units).size]
  const way = firstAtHand(bench, need, [
    enters && ['micrometer', ['micrometer: an anvil of ', anvil(units), ' enters']],
    bladed && ['blade-micrometer', ['blade micrometer, blades ', blade(units), ...(enters ? [] : [': ', ...why])]],
  ])
  return way.by === null ? twiceTheDepth(depth, enters ? [] : [': ', ...why]) : way
}

/** Off the turned diameter: whatever the depth is off by counts twice. */
export function twiceTheDepth({ by }: Way, why: readonly TextPart[] = []): Way {
  if (by === null || by === undefined) return NOTHING
  const using = ['depth from the turned surface, twice that off its diameter', ...why]
  return { using, by: { ...by, within: 2 * by.within, reads: 2 * by.reads } }
}

/** The instrument for a depth: a rod whose flat end must rest on a floor `opening` wide. */
export function forDepth(bench: Bench, opening: Length, need: Need): Way {
  const { units } = bench
  return firstAtHand(bench, need, [
    opening > depthRod(units).size && ['depth-micrometer', ['depth micrometer, rod of ', depthRod(units)]],
    opening > caliperRod(units).size && ['inside-caliper', ['depth rod of a caliper, ', caliperRod(units), ' thick']],
    ['depth-indicator', NEEDLE],
  ])
}

/** No flat end rests on the bottom of an arc, or of a sharp V. */
const NEEDLE: readonly TextPart[] = ['depth indicator with a needle point, zeroed on the turned surface']

export const forBottomOfArc = (bench: Bench): Way => firstAtHand(bench, NO_NEED, [['depth-indicator', NEEDLE]])

export function forWidth(bench: Bench, opening: Length, need: Need): Way {
  const narrow = opening <= insideJaws(bench.units).size
  return firstAtHand(bench, need, [
    !narrow && ['inside-caliper', ['caliper, inside jaws, lightly']],
    ['gauge-blocks', [`gauge blocks or feelers, by their fit${narrow ? ': too narrow for inside jaws' : ''}`]],
  ])
}

/** The gauge of a stock set nearest to a radius, and its difference from it. */
export function forRadius(bench: Bench, radius: Length): Way {
  const { units } = bench
  const nearest = radiusGauges(units).reduce((a, b) => (Math.abs(b - radius) < Math.abs(a - radius) ? b : a))
  const off = radius - nearest
  const label = units === 'inch' ? `${formatFraction(nearest)} in` : formatLength(nearest, units)
  const named: TextPart[] = ['radius gauge ', { size: nearest, label }]
  const same = Math.abs(off) < byUnits(units, INCH / 20_000, MM / 1000)
  const far: TextPart[] = [', the nearest: the form is ', { length: Math.abs(off) }, off > 0 ? ' larger' : ' smaller']
  return firstAtHand(bench, NO_NEED, [['radius-gauges', same ? named : [...named, ...far]]])
}

/**
 * Over pins with a micrometer: what both may be off. On a floor each pin counts by its diameter, as often as `times` says; between flanks by half of 1 + 1/sin
 * α, α half of the included angle.
 */
export function overPinsWay(bench: Bench, using: readonly TextPart[], times = 1): Way {
  const { micrometer, pins } = bench.instruments
  if (micrometer === null || pins === null) return NOTHING
  const reads = readsTo('micrometer', micrometer, bench.units)
  return { using, by: { with: 'pins', within: micrometer + pins * times, reads } }
}

/** A place along the work: by the rule where its marks are fine enough. */
const forPlace = (bench: Bench, limits: Check['limits'], from: string): Way =>
  firstAtHand(bench, { limits, cut: null }, [
    ['rule', [`rule, from ${from}`]],
    ['caliper', [`caliper, from ${from}`]],
  ])

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
  const given: Check['limits'] = limits === null ? null : [limits[0] - from, limits[1] - from]
  const side = place.from === 'end' ? 'the free end' : `the tailstock-side end of "${place.from}"`
  const taken = check(
    'place',
    `${edge} from ${place.from === 'end' ? 'end' : place.from}`,
    at - from,
    given,
    forPlace(bench, given, side),
  )
  if (taken === null || place.from === 'end') return taken
  return { ...taken, datum: { name: place.from, at: from } }
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
