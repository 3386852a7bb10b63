import type { Lathe } from '../lathe/lathe.ts'
import type { Instrument, Operation, Setup } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { type Progress, replayNext, startOf } from '../replay/replay.ts'
import type { Length } from '../units/length.ts'
import { lagging } from './lagging.ts'
import { type Mistake, mutantsOf } from './mistakes.ts'
import { type Ridge, ridgeIn, SEEN } from './ridge.ts'

/** The size with the mistake minus the planned size: pm, or degrees. */
export type Change = { readonly id: Instrument; readonly by: number }
export type Slip = {
  readonly mistakes: readonly Mistake[]
  readonly changes: readonly Change[]
  readonly ridge: Ridge | null
}

/**
 * For each operation the single mistakes that people make on it, each replayed on the part as it is then, and what they
 * would measure. A mistake that shows nowhere is left out; mistakes that measure alike are grouped.
 */
export function slipsOf(lathe: Lathe, setup: Setup, operations: readonly Operation[]): readonly (readonly Slip[])[] {
  let progress = startOf(setup)
  return operations.map((operation, index) => {
    const before = progress
    const planned = replayNext(lathe, setup, before, operation, index)
    progress = planned.after
    const slips = mutantsOf(operation, lathe).flatMap((mutant): Measured[] => {
      const on = LAGS.has(mutant.mistake) ? lagging(lathe, mutant.operation) : { lathe, ...mutant }
      const { trace } = replayNext(on.lathe, setup, before, on.operation, index)
      const shown = shownBy(operation, before, planned.trace, trace, mutant.operation.dimensions)
      return shown === null ? [] : [{ mistakes: [mutant.mistake], ...shown }]
    })
    return distinguished(slips.reduce<readonly Measured[]>(grouped, []))
  })
}

/** Replayed with the largest stated lost motion: without lost motion they do not show. */
const LAGS: ReadonlySet<Mistake> = new Set<Mistake>(['backlash-left', 'place-backward'])

/** Nobody measures a smaller difference: a twentieth of a degree. */
const SEEN_DEGREES = 0.05
/** A straightedge shows that a floor is not flat from a hundredth of a millimeter on. Common practice, no source. */
const SEEN_FLAT: Length = 10_000_000
const leastSeen = (id: Instrument): number => (id === 'angle' ? SEEN_DEGREES : id === 'flatness' ? SEEN_FLAT : SEEN)

/** `asked`: the sizes of the drawing, and behind them those that are nothing on the planned form. */
function shownBy(
  operation: Operation,
  before: Progress,
  planned: OperationTrace,
  wrong: OperationTrace,
  asked: Operation['dimensions'],
) {
  const changed = asked.flatMap(({ id }, i): Change[] => {
    const drawn = i < operation.dimensions.length
    const [should, is] = [drawn ? (planned.sizes[i]?.surely ?? null) : 0, wrong.sizes[i]?.surely ?? null]
    if (should === null || is === null) return []
    return Math.abs(is - should) > leastSeen(id) ? [{ id, by: is - should }] : []
  })
  // No radius gauge seats in a fillet over a floor at another depth, or over one place cut deeper than it: the bottom
  // shows the mistake.
  const floorOff = firstOf(changed, INWARD) !== undefined
  const changes = floorOff ? changed.filter(({ id }) => id !== 'cornerRadius') : changed
  const first = [firstOf(changes, INWARD), firstOf(changes, ALONG)].flatMap((one) => (one === undefined ? [] : [one]))
  const visible = [...first, ...outOfPlace(operation, wrong, changes, first)]
  const ridgeLeft = ridgeIn(operation, planned.surely, wrong.surely)
  const buried = ridgeLeft !== null && visible.every((change) => isBuried(change, ridgeLeft))
  const nothingCut = wrong.surely.every((piece, index) => piece === before.surely[index])
  if (nothingCut || (visible.length === 0 && ridgeLeft === null)) return null
  return buried ? { all: [], changes: [], ridge: ridgeLeft } : { all: changes, changes: visible, ridge: null }
}

/** A step much higher than the error of the bottom, which is measured beside it: the machinist finds the step first. */
const isBuried = ({ id, by }: Change, { high }: Ridge): boolean =>
  (id === 'bottomDiameter' || id === 'depth') && 4 * Math.abs(by) < high

/** What is measured first of what the mistake has changed: one size into the work, one along it. */
const INWARD: readonly Instrument[] = ['bottomDiameter', 'depth', 'legDown']
const ALONG: readonly Instrument[] = [
  'width',
  'legAlong',
  'root',
  'radius',
  'near',
  'far',
  'center',
  'angle',
  'flatness',
  'cornerRadius',
]

const firstOf = (changes: readonly Change[], order: readonly Instrument[]): Change | undefined =>
  order.flatMap((id) => changes.filter((change) => change.id === id))[0]

const PLACES: readonly Instrument[] = ['near', 'far', 'center']

/** A place along the work outside the drawing's limits, if another size along it is measured first. */
function outOfPlace(
  { dimensions }: Operation,
  wrong: OperationTrace,
  changes: readonly Change[],
  first: readonly Change[],
): readonly Change[] {
  if (first.some(({ id }) => PLACES.includes(id))) return []
  const outside = changes.filter(({ id }) => {
    const i = dimensions.findIndex((one) => one.id === id)
    if (i < 0) return false
    const [limits, is] = [dimensions[i]!.limits, wrong.sizes[i]!.surely!]
    return limits !== null && (is < limits[0] || is > limits[1])
  })
  const place = firstOf(outside, PLACES)
  return place === undefined ? [] : [place]
}

/** A slip with every size that it changes, not only those that are measured first. */
type Measured = Slip & { readonly all: readonly Change[] }

/** Two mistakes that measure the same in every size cannot be distinguished: they are put on one line. */
function grouped(slips: readonly Measured[], slip: Measured): readonly Measured[] {
  const at = slips.findIndex((other) => alike(other, slip))
  if (at < 0) return [...slips, slip]
  return slips.with(at, { ...slips[at]!, mistakes: [...slips[at]!.mistakes, ...slip.mistakes] })
}

/**
 * Mistakes that are alike in the sizes measured first, but not in all, also show the first size that distinguishes
 * them.
 */
const distinguished = (slips: readonly Measured[]): readonly Slip[] =>
  slips.map((slip) => {
    const twins = slips.filter((other) => other !== slip && sameSizes(other.changes, slip.changes))
    const differs = ({ id, by }: Change) =>
      twins.some(({ all }) => !same({ id, by }, all.find((other) => other.id === id) ?? { id, by: 0 }))
    const more = firstOf(slip.all.filter(differs), [...INWARD, ...ALONG])
    return { mistakes: slip.mistakes, changes: more ? [...slip.changes, more] : slip.changes, ridge: slip.ridge }
  })

const same = (a: Change, b: Change): boolean => a.id === b.id && Math.abs(a.by - b.by) <= leastSeen(a.id)

const sameSizes = (a: readonly Change[], b: readonly Change[]): boolean =>
  a.length === b.length && a.every((change, i) => same(change, b[i]!))

const alike = (a: Measured, b: Measured): boolean =>
  sameSizes(a.all, b.all) &&
  (a.ridge === null) === (b.ridge === null) &&
  (a.ridge === null ||
    (Math.abs(a.ridge.high - b.ridge!.high) <= SEEN && Math.abs(a.ridge.wide - b.ridge!.wide) <= SEEN))
