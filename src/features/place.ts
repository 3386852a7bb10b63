import type { WantedDimension } from '../moves/operation.ts'
import type { LayoutLine } from '../moves/stated.ts'
import type { Prose } from '../phrase/phrase.ts'
import { asDrawn, exact, say } from '../phrase/say.ts'
import type { Length, Units } from '../units/length.ts'
import type { Bench, PlacedStep, Refusal } from './draft.ts'
import type { Place } from './feature.ts'

/** Steps of the part with the start and the end of each, pm from the free end. */
export function placeSteps(steps: Bench['part']['steps']): PlacedStep[] {
  let start = 0
  return steps.map((step) => {
    const placed = { ...step, start, end: start + step.length }
    start += step.length
    return placed
  })
}

/** Distance of a datum from the free end: the end itself, or the tailstock-side end of a step. */
export function datum(bench: Bench, from: string): Length {
  if (from === 'end') return 0
  const step = bench.steps.find((one) => one.name === from)
  if (step === undefined) throw new Error(`no step is named ${from}: the reader should have refused it`)
  return step.start
}

/** Tailstock-side edge of a form `width` wide, pm from the free end. */
export function nearOf(bench: Bench, place: Place, width: Length): Length {
  const at = datum(bench, place.from) + place.distance.aim
  if (place.by === 'near') return at
  return place.by === 'far' ? at - width : at - width / 2
}

/** The step whose surface carries the whole stretch, or why there is none. */
export function surfaceUnder(bench: Bench, near: Length, far: Length): PlacedStep | Refusal {
  const show = (length: Length) => exact('drawing', length, bench.units)
  const last = bench.steps[bench.steps.length - 1]!
  if (near < 0 || far > last.end)
    return {
      code: 'off-the-part',
      reason: say`it reaches from ${show(near)} to ${show(far)} from the free end, but the part is ${show(last.end)} long`,
      remedy: 'move it onto the part, or correct the lengths of the steps',
    }
  const step = bench.steps.find((one) => near >= one.start && far <= one.end)
  if (step !== undefined) return step
  const crossed = bench.steps.find((one) => near < one.end && far > one.end)!
  return {
    code: 'crosses-a-step',
    reason: say`it reaches from ${show(near)} to ${show(far)}, across the end of step "${crossed.name}" at ${show(crossed.end)}`,
    remedy: 'place it on one step: far: 0 from the next step sets it against the shoulder',
  }
}

/** The place as an inspector checks it: always the tailstock-side edge, and the dimension that the drawing gives. */
export function placeDimensions(bench: Bench, place: Place, near: Length, width: Length): WantedDimension[] {
  const from = datum(bench, place.from)
  const limits = place.distance.limits
  const absolute = limits === null ? null : ([from + limits[0], from + limits[1]] as const)
  if (place.by === 'near') return [{ id: 'near', aim: near, limits: absolute }]
  const drawn = place.by === 'far' ? near + width : near + width / 2
  const named: WantedDimension[] = absolute === null ? [] : [{ id: place.by, aim: drawn, limits: absolute }]
  return [{ id: 'near', aim: near, limits: null, drawn: { id: place.by, aim: drawn } }, ...named]
}

/**
 * The lines to scribe for a form between two edges, from the datum that the drawing uses. An edge on the face of a step
 * needs none.
 */
export function edgeLines(bench: Bench, place: Place, near: Length, far: Length): LayoutLine[] {
  const end = place.from === 'end' ? 'the free end' : `the tailstock-side end of "${place.from}"`
  const step = place.from === 'end' ? null : place.from
  const line = (at: Length, edge: string): LayoutLine => {
    const distance = at - datum(bench, place.from)
    return distance < 0
      ? { fromEnd: at, from: end, step, distance: -distance, say: `${edge}, on the tailstock side of that end` }
      : { fromEnd: at, from: end, step, distance, say: edge }
  }
  const onFace = (at: Length) => bench.steps.some((step) => step.start === at || step.end === at)
  return [line(near, 'tailstock-side edge'), line(far, 'headstock-side edge')].filter((one) => !onFace(one.fromEnd))
}

/** How a place is given on the drawing, in words. */
export function drawnPlace(units: Units, place: Place): Prose {
  const edge = place.by === 'center' ? 'center' : `${place.by} edge`
  return say`${edge} ${asDrawn(place.distance, units)} from ${place.from === 'end' ? 'the free end' : `"${place.from}"`}`
}

/** The default of a cutting key that is a length: an inch value in inch work, a metric one in metric work. */
export const byUnits = (units: Units, inch: Length, mm: Length): Length => (units === 'inch' ? inch : mm)
