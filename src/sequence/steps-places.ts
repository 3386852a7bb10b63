import type { Scale } from '../lathe/lathe.ts'
import type { StepCuts, StepPoint } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { countFor, stepTravel, travelAt } from './dial.ts'

/** The places of the finish on the compound's dial, ascending, with the tallest ridge they leave, square to the form. */
export type StepPlaces = {
  readonly counts: readonly number[]
  /** Between two stretches lies a floor, fed across from the last place of the one to the first of the other. */
  readonly across: { readonly from: number; readonly to: number } | null
  readonly ridge: Length
  /** What a replay must allow straight into the work: a ridge on a steep flank is taller that way than square to it. */
  readonly allowed: Length
}

/** The fewest whole marks that keep the cusp, and among those the ones that leave the lowest ridges. */
export function stepPlaces(cuts: StepCuts, scale: Scale): StepPlaces {
  const { floor, touches } = cuts
  const stretches =
    floor === undefined
      ? [fewest(cuts, scale, marksOf(scale, cuts.first, cuts.last, touches))]
      : [
          fewest(cuts, scale, marksOf(scale, cuts.first, floor.from, [touches[0], floor.from])),
          fewest(cuts, scale, marksOf(scale, floor.to, cuts.last, [floor.to, touches[1]])),
        ]
  const tops = stretches.flatMap((counts) => topsOf(cuts, scale, counts))
  return {
    counts: [...new Set(stretches.flat())],
    across: stretches.length < 2 ? null : { from: stretches[0]!.at(-1)!, to: stretches[1]![0]! },
    ridge: Math.max(0, ...tops.map(cuts.standsOut)),
    allowed: Math.max(0, ...tops.map(cuts.standsOut), ...tops.map((top) => straightIn(cuts, scale, top))),
  }
}

function fewest(cuts: StepCuts, scale: Scale, range: Range): number[] {
  const first = walk(cuts, scale, range, cuts.cusp)
  let counts = first
  let [low, high] = [0, cuts.cusp]
  for (let i = 0; i < 16; i++) {
    const middle = (low + high) / 2
    const tried = walk(cuts, scale, range, middle)
    if (tried.length > first.length) low = middle
    else {
      high = middle
      counts = tried
    }
  }
  return counts
}

type Range = { readonly low: number; readonly high: number }

/** From the mark at or beyond the first place to the mark at or beyond the last, never more than half a mark past where the tool can touch the form. */
function marksOf(scale: Scale, first: Length, last: Length, [from, to]: StepCuts['touches']): Range {
  const step = stepTravel(scale)
  return {
    low: Math.max(Math.floor(first / step + 1e-6), countFor(scale, from, 'higher')),
    high: Math.min(Math.ceil(last / step - 1e-6), countFor(scale, to, 'lower')),
  }
}

/** From near to far, each place as far on as the ridge behind it allows. Where one mark is too far already, it is one mark. */
function walk(cuts: StepCuts, scale: Scale, { low, high }: Range, cusp: Length): number[] {
  const { ends } = cuts
  const at = (count: number) => travelAt(scale, count)
  const fine = (top: StepPoint) => cuts.standsOut(top) <= cusp
  const counts = [ends === null ? low : furthest(low, high, (count) => fine(ends.before(at(count))))]
  let here = counts[0]!
  while (here < high && (ends === null || !fine(ends.after(at(here))))) {
    const from = here
    here = furthest(from + 1, high, (count) => fine(cuts.between(at(from), at(count))))
    counts.push(here)
  }
  return counts
}

/** The largest count from `low` to `high` that is fine, when all below it are; `low` where none is. */
function furthest(low: number, high: number, fine: (count: number) => boolean): number {
  let [good, bad] = [low, high + 1]
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (fine(middle)) good = middle
    else bad = middle
  }
  return good
}

function topsOf(cuts: StepCuts, scale: Scale, counts: readonly number[]): StepPoint[] {
  const at = counts.map((count) => travelAt(scale, count))
  const between = at.slice(1).map((far, i) => cuts.between(at[i]!, far))
  return cuts.ends === null ? between : [cuts.ends.before(at[0]!), ...between, cuts.ends.after(at[at.length - 1]!)]
}

/** How much deeper the form is than a ridge, wherever it may stand within half a mark along the work. */
function straightIn(cuts: StepCuts, scale: Scale, top: StepPoint): Length {
  const half = stepTravel(scale) / 2
  return Math.min(...[-half, 0, half].map((by) => cuts.formAt(top.along + by))) - top.deep
}
