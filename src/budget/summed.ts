import type { WantedDimension } from '../moves/operation.ts'
import type { Size } from '../moves/trace.ts'
import type { Budgeted, CauseName } from './budgeted.ts'

/** Every size with one stated error made one way, and the other way. */
export type Effect = {
  readonly name: CauseName
  readonly sizes: readonly (readonly Size[])[]
  readonly of?: string
  readonly every?: boolean
  readonly only?: string
}
/** The most by which one error, or all of one kind, makes a dimension larger and smaller; and the square for the root sum square. */
type Push = { readonly name: CauseName; readonly down: number; readonly up: number; readonly square: number }

/** Worst case: every error is at its worst at once. Root sum square: the errors combine by chance. pm, or degrees. */
export const summed = (
  dimension: WantedDimension,
  index: number,
  planned: readonly Size[],
  effects: readonly Effect[],
): Budgeted => {
  const { id, limits } = dimension
  const [least, most] = endsOf(planned[index])
  const aim = (least + most) / 2
  const push = ({ name, sizes }: Effect): Push =>
    pushOf(
      name,
      least,
      most,
      sizes.map((one) => one[index]),
    )
  const own = effects.filter(({ only }) => only === undefined || only === id)
  const pushes = grouped(own).map(({ alone, every }) => together(alone.map(push), every.map(push)))
  const lowest = least + pushes.reduce((sum, push) => sum + push.down, 0)
  const low = id === 'flatness' || id === 'root' ? Math.max(0, lowest) : lowest
  const high = most + pushes.reduce((sum, push) => sum + push.up, 0)
  const rss = Math.sqrt(pushes.reduce((sum, { square }) => sum + square, 0)) + (most - least) / 2
  const worstCause = Number.isNaN(aim) ? 'no-size' : worstOf(pushes)
  const spare = limits === null || Number.isNaN(aim) ? null : Math.min(low - limits[0], limits[1] - high)
  return { id, planned: aim, low, high, rss, limits, verdict: verdictOf(id, limits, spare), spare, worstCause }
}

/** A size that cannot be measured is NaN, and so is everything that follows from it. */
const endsOf = (size: Size | undefined): readonly [number, number] => {
  const [a, b] = [size?.surely ?? Number.NaN, size?.possibly ?? Number.NaN]
  return [Math.min(a, b), Math.max(a, b)]
}

const pushOf = (name: CauseName, least: number, most: number, sizes: readonly (Size | undefined)[]): Push => {
  const ends = sizes.map(endsOf).filter(([a]) => !Number.isNaN(a))
  const down = Math.min(0, ...ends.map(([a]) => a - least))
  const up = Math.max(0, ...ends.map(([, b]) => b - most))
  return { name, down, up, square: Math.max(up, -down) ** 2 }
}

/** The readings of one slide are one group; every other error is a group of its own. */
const grouped = (effects: readonly Effect[]): readonly { readonly alone: Effect[]; readonly every: Effect[] }[] => {
  const groups = new Map<unknown, { readonly alone: Effect[]; readonly every: Effect[] }>()
  for (const effect of effects) {
    const key = effect.of ?? effect
    const group = groups.get(key) ?? { alone: [], every: [] }
    groups.set(key, group)
    group[effect.every === true ? 'every' : 'alone'].push(effect)
  }
  return [...groups.values()]
}

/**
 * The worse of two cases, each way: every reading wrong on its own, or all of them the same way. If all together do more than the sum of each, one
 * error hides another, and chance does not make that smaller.
 */
const together = (alone: readonly Push[], every: readonly Push[]): Push => {
  const sum = (of: 'down' | 'up' | 'square'): number => alone.reduce((total, push) => total + push[of], 0)
  const [down, up] = [
    Math.min(sum('down'), ...every.map((one) => one.down)),
    Math.max(sum('up'), ...every.map((one) => one.up)),
  ]
  const hidden = [down < sum('down') ? down : 0, up > sum('up') ? up : 0].map((push) => push ** 2)
  return { name: [...alone, ...every][0]!.name, down, up, square: Math.max(sum('square'), ...hidden) }
}

/** A limit missed by no more than this is met: a nanometer, in pm; degrees for an angle. */
const exact = (id: WantedDimension['id']): number => (id === 'angle' ? 1e-9 : 1000)

const verdictOf = (
  id: WantedDimension['id'],
  limits: Budgeted['limits'],
  spare: number | null,
): Budgeted['verdict'] => {
  if (limits === null) return 'no limits given'
  return spare !== null && spare >= -exact(id) ? 'holds' : 'may not hold'
}

/** Smaller effects are rounding errors: pm, or degrees. */
const NOISE = 1e-6

/** Errors of one name count together. */
const worstOf = (pushes: readonly Push[]): CauseName => {
  const totals = new Map<CauseName, number>()
  for (const { name, up, down } of pushes) totals.set(name, (totals.get(name) ?? 0) + Math.max(up, -down))
  const ranked = [...totals].sort((a, b) => b[1] - a[1])
  return ranked[0] === undefined || ranked[0][1] < NOISE ? 'none' : ranked[0][0]
}
