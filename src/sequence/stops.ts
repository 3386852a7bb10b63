import { stepTravel } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import { biteOf, type PlungeCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'

/** The limit of an infeed, in readable steps of the dial that feeds, and from where it counts. */
export type Passes = {
  /** Where the edge first touches metal, in steps; not always a whole number. */
  readonly contact: number
  /** The largest infeed of one pass, in steps; null: no limit is set. */
  readonly most: number | null
  /**
   * Where the finish ends, if the allowance for it was meant to be no more than an infeed; null: the job asked for that
   * allowance.
   */
  readonly finish: number | null
}

/**
 * Readings to stop at on the way to the last of `wanted`, ascending. Rounding to marks makes no pass larger than the
 * largest infeed: it stops a mark short, and one more pass makes up for what many passes lose that way. A dial cannot
 * feed less than a mark.
 */
export function stopsWithin(wanted: readonly number[], { contact, most, finish }: Passes): number[] {
  const target = wanted.at(-1)
  if (most === null || target === undefined) return [...wanted]
  const furthest = (from: number) => Math.max(Math.floor(from + most + 1e-6), Math.floor(from) + 1)
  const last = finish !== null && finish > furthest(target) ? Math.ceil(finish - Math.max(1, most) - 1e-6) : target
  const stops: number[] = []
  let at = contact
  for (const count of [...wanted.slice(0, -1), last]) {
    if (count <= at) {
      // Before the contact nothing is cut.
      if (stops.length === 0) stops.push(count)
      continue
    }
    at = Math.min(count, furthest(at))
    stops.push(at)
  }
  for (; at < last; stops.push(at)) at = Math.min(last, furthest(at))
  return stops.length > wanted.length ? shared(stops, contact, most) : stops
}

/** A very thin last pass would only rub: the last two are made equal. */
function shared(stops: readonly number[], contact: number, most: number): number[] {
  const [before, next, last] = [stops.at(-3) ?? contact, stops.at(-2)!, stops.at(-1)!]
  return last - next < most / 4 ? stops.with(-2, Math.ceil((before + last) / 2)) : [...stops]
}

/** Readable steps for a largest infeed. pm. */
export const mostSteps = (infeed: Length | null, step: Length): number | null =>
  infeed === null ? null : infeed / step

/** Passes of plunges to `finish`, from where the edge meets the surface. Steps of the dial. */
export function passesTo(
  { infeed, peck, depth, roughDepths }: PlungeCuts,
  scale: Scale,
  finish: number,
  contact = 0,
): Passes {
  const meant = infeed !== null && depth - (roughDepths.at(-1) ?? 0) <= infeed + 1
  return { contact, most: mostSteps(biteOf(infeed, peck), stepTravel(scale)), finish: meant ? finish : null }
}
