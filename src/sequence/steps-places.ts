import { stepTravel, travelAt } from '../dials/travel.ts'
import type { Scale } from '../lathe/lathe.ts'
import type { StepCuts, StepPoint } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import { countFor } from './dial.ts'
import { fewestPlaces, type Ridges } from './steps-fewest.ts'

/**
 * The places of the finish on the compound's dial, ascending, with the tallest ridge they leave, square to the form.
 */
export type StepPlaces = {
  readonly counts: readonly number[]
  /** There is a floor between two stretches: fed across from the last place of the one to the first of the other. */
  readonly across: { readonly from: number; readonly to: number } | null
  readonly ridge: Length
  /**
   * The least ridge that whole marks along the work leave even if every depth were exact: no choice of places makes it
   * lower.
   */
  readonly exact: Length
}

/** Both dials: places are whole marks of the compound, and the depth at each is rounded to the cross-feed. */
export type StepDials = { readonly along: Scale; readonly inward: Scale }

/**
 * The fewest whole marks that keep the cusp with the depths as rounded for the cross-feed, and among those the ones
 * that leave the lowest ridges. If no marks keep it, the lowest ridge that they can leave is used instead.
 */
export function stepPlaces(cuts: StepCuts, dials: StepDials): StepPlaces {
  const scale = dials.along
  const { floor, touches } = cuts
  const stretches: readonly Stretch[] =
    floor === undefined
      ? [{ ...marksOf(scale, cuts.first, cuts.last, touches), level: null }]
      : [
          level(marksOf(scale, cuts.first, floor.from, [touches[0], floor.from]), 'high'),
          level(marksOf(scale, floor.to, cuts.last, [floor.to, touches[1]]), 'low'),
        ]
  const chosen = stretches.map((stretch) => {
    const rounded = ridgesOf(cuts, dials, stretch, true)
    const counts = fewestOf(stretch, rounded, cuts.cusp)
    return { counts, tops: topsOf(rounded, counts) }
  })
  const tops = chosen.flatMap((one) => one.tops)
  const ridge = Math.max(0, ...tops.map(cuts.outside))
  return {
    counts: [...new Set(chosen.flatMap(({ counts }) => counts))],
    across: chosen.length < 2 ? null : { from: chosen[0]!.counts.at(-1)!, to: chosen[1]!.counts[0]! },
    ridge,
    exact: ridge <= cuts.cusp ? ridge : exactRidge(cuts, dials, stretches),
  }
}

/** Counts of a stretch, and which of its ends is on the floor between two of them. */
type Stretch = { readonly low: number; readonly high: number; readonly level: 'low' | 'high' | null }

const level = (range: { low: number; high: number }, end: 'low' | 'high'): Stretch => ({ ...range, level: end })

/**
 * From the mark at or beyond the first place to the mark at or beyond the last, never more than half a mark past where
 * the tool can touch the form.
 */
function marksOf(scale: Scale, first: Length, last: Length, [from, to]: StepCuts['touches']) {
  const step = stepTravel(scale)
  return {
    low: Math.max(Math.floor(first / step + 1e-6), countFor(scale, from, 'higher')),
    high: Math.min(Math.ceil(last / step - 1e-6), countFor(scale, to, 'lower')),
  }
}

/** Of how many marks the places are chosen: more would take long, and a hand could not tell them apart. */
const MOST_MARKS = 2000

/** On a dial that has more marks along the form, of every second, third … of them, and of the last. */
function fewestOf({ low, high }: Stretch, ridges: Ridges, cusp: Length): number[] {
  const each = Math.ceil((high - low) / MOST_MARKS)
  if (each <= 1) return fewestPlaces({ low, high }, ridges, cusp)
  const mark = (i: number) => Math.min(high, low + i * each)
  const coarser: Ridges = {
    anyEnd: ridges.anyEnd,
    before: (i) => ridges.before(mark(i)),
    after: (i) => ridges.after(mark(i)),
    between: (near, far) => ridges.between(mark(near), mark(far)),
    near: (near, far) => ridges.near(mark(near), mark(far)),
  }
  return fewestPlaces({ low: 0, high: Math.ceil((high - low) / each) }, coarser, cusp).map(mark)
}

type Tops = Ridges & { readonly top: (near: number | null, far: number | null) => StepPoint | null }

/** The tops between counts, with exact depths or as rounded for the cross-feed. */
function ridgesOf(cuts: StepCuts, { along, inward }: StepDials, stretch: Stretch, rounded: boolean): Tops {
  const at = (count: number) => travelAt(along, count)
  const exact = (count: number) =>
    stretch.level !== null && count === stretch[stretch.level] ? cuts.floor!.depth : cuts.depthAt(at(count))
  const known = new Map<number, Length>()
  const deep = (count: number) => {
    const before = known.get(count)
    if (before !== undefined) return before
    const depth = rounded ? Math.max(0, travelAt(inward, countFor(inward, exact(count), 'lower'))) : exact(count)
    known.set(count, depth)
    return depth
  }
  const { ends } = cuts
  const top = (near: number | null, far: number | null): StepPoint | null => {
    if (near === null) return ends === null ? null : ends.before(at(far!), deep(far!))
    if (far === null) return ends === null ? null : ends.after(at(near), deep(near))
    return cuts.between(at(near), at(far), [deep(near), deep(far)])
  }
  const out = (point: StepPoint | null) => (point === null ? 0 : cuts.outside(point))
  return {
    top,
    anyEnd: ends !== null,
    before: (count) => out(top(null, count)),
    after: (count) => out(top(count, null)),
    between: (near, far) => out(top(near, far)),
    // With exact depths a ridge only grows with the distance; rounding makes it smaller by at most two marks.
    near: (near, far) => cuts.outside(cuts.between(at(near), at(far))) <= cuts.cusp + 2 * stepTravel(inward),
  }
}

const topsOf = ({ top }: Tops, counts: readonly number[]): StepPoint[] =>
  [null, ...counts].flatMap((near, i) => top(near, counts[i] ?? null) ?? [])

/** The least ridge of places on every mark. */
function exactRidge(cuts: StepCuts, dials: StepDials, stretches: readonly Stretch[]): Length {
  let most = 0
  for (const stretch of stretches) {
    const { between } = ridgesOf(cuts, dials, stretch, false)
    for (let mark = stretch.low; mark < stretch.high; mark++) most = Math.max(most, between(mark, mark + 1))
  }
  return most
}
