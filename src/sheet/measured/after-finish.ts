import type { Again } from '../../finish/again.ts'
import { bottomWanted, type Stop } from '../../finish/stop.ts'
import { readable } from '../../lathe/lathe.ts'
import type { Slide } from '../../moves/operation.ts'
import { markFigure } from '../../phrase/dial.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase, Role } from '../../phrase/phrase.ts'
import { say, stepsNamed, together } from '../../phrase/say.ts'
import type { Plan } from '../../plan/plan.ts'
import { scaleOf } from '../../plan/scale.ts'
import { inUnits, type Length } from '../../units/length.ts'
import type { Planned } from '../scene.ts'
import type { MetalLeft } from '../sheet.ts'

/** One size that the finishing pass, repeated, can still correct. Lengths in pm. */
type Left = {
  readonly measure: MetalLeft['sizes'][number]['measure']
  /** On this side of `limit` there is metal left. */
  readonly when: 'under' | 'over'
  readonly limit: Length
  /** Beyond this the part is scrap; null if the drawing gives no limits. */
  readonly past: Length | null
  readonly slide: Slide
  /** Indexes of the moves that go a readable step further, for every `perStep`. */
  readonly further: readonly number[]
  /** -1, further back: for a place where the feed across begins. */
  readonly by: 1 | -1
  readonly perStep: Length
}

/**
 * Under the last measuring: what can still be corrected, and what is scrap. `first` is the number of the feature's
 * first step.
 */
export const afterFinish = (
  plan: Plan,
  feature: Planned,
  { again, stop }: { readonly again: Again; readonly stop: Stop },
  first: number,
  place: string,
): { readonly lines: readonly Phrase[]; readonly data: MetalLeft } => {
  const all = [bottomLeft(feature, again, stop), widthLeft(feature, again)].filter((one) => one !== null)
  const [from, to] = [first + again.from, first + again.to]
  const steps = say`steps ${from}\u00a0to\u00a0${to} again`
  return {
    lines: [
      ...all.map((one, i) => lineOf(plan, one, i === 0 ? steps : null, first, again.across)),
      ...linesLeft(plan, feature, again, all.length === 0 ? steps : null),
    ],
    data: { from, to, sizes: all.map((one) => dataOf(plan, one, first, `${place}.${one.measure}`)) },
  }
}

/** If the drawing gives no limits, a step of the dial is the least that can be taken off. */
const bottomLeft = ({ operation }: Planned, { perStep }: Again, { by, finishes }: Stop): Left | null => {
  if (perStep === null) return null
  const { aim, limits } = bottomWanted(operation)
  const mouth = limits === null ? veeWidthOf(operation) : null
  if (mouth !== null) {
    // Fed to the lines, it is as wide as the distance of the lines, at any depth.
    if (operation.moves.some(({ action, place }) => action === 'feed-across' && place !== undefined)) return null
    const [limit, past] = mouth.limits
    const wide = perStep * Math.tan((mouth.angle * Math.PI) / 360)
    return { measure: 'width', when: 'under', limit, past, slide: by, further: finishes, by: 1, perStep: wide }
  }
  const [low, high] = limits ?? hollowBottoms(operation) ?? [null, aim + perStep]
  const hangs = !operation.dimensions.some(({ id, fixed }) => id === 'bottomDiameter' && fixed === true)
  const edge = (value: Length): Length => (hangs ? operation.surface - value : value)
  return {
    measure: hangs ? 'outsideLessBottom' : 'bottomDiameter',
    when: hangs ? 'under' : 'over',
    limit: edge(high),
    past: low === null ? null : edge(low),
    slide: by,
    further: finishes,
    by: 1,
    perStep,
  }
}

/**
 * A V that the drawing dimensions by its width at the surface, not by its bottom: each cut in diameter opens it by the
 * tangent of half its angle.
 */
const veeWidthOf = ({ dimensions }: Planned['operation']) => {
  const angle = dimensions.find(({ id }) => id === 'angle')?.aim
  const width = dimensions.find(({ id }) => id === 'width')
  const limits = width?.atDiameter === undefined ? (width?.limits ?? null) : null
  return angle === undefined || limits === null ? null : { angle, limits }
}

/**
 * Of a hollow that the drawing dimensions by its width: the bottoms at which its limits are met, as its bottom is taken surer than its chord. h = r − √(r² − c²/4)
 * (plane geometry).
 */
const hollowBottoms = ({ dimensions, surface }: Planned['operation']): readonly [Length, Length] | null => {
  const size = (id: string) => dimensions.find((one) => one.id === id)
  const [radius, width] = [size('radius'), size('width')]
  if (radius === undefined || width === undefined || width.limits === null || width.atDiameter !== undefined)
    return null
  const [narrow, wide] = width.limits
  if (wide >= 2 * radius.aim) return null
  const bottom = (chord: Length): Length => surface - 2 * (radius.aim - Math.sqrt(radius.aim ** 2 - chord ** 2 / 4))
  return [bottom(wide), bottom(narrow)]
}

/** The width of a V follows its depth: only the bottom is listed there. */
const widthLeft = ({ operation: { dimensions } }: Planned, { across }: Again): Left | null => {
  const width = dimensions.find(({ id }) => id === 'width')
  if (across === null || width === undefined || dimensions.some(({ id }) => id === 'angle')) return null
  const [limit, past] = width.limits ?? [width.aim - across.perStep, null]
  const { slide, indexes, by, perStep } = across
  return { measure: 'width', when: 'under', limit, past, slide, further: indexes, by, perStep }
}

/** If it was fed to the lines by eye, it is fed to them again: no reading goes further. */
const linesLeft = (plan: Plan, { operation }: Planned, { toLines }: Again, again: Phrase | null): Phrase[] => {
  const limits = operation.dimensions.find(({ id }) => id === 'width')?.limits ?? null
  if (toLines.length === 0 || limits === null) return []
  const [low, high] = limits.map((limit) => length('limit', limit, plan.units))
  const when: Phrase = [
    ...(again === null ? ['and if the width is under '] : ['STILL TO CUT if the width is under ']),
    low!,
  ]
  return [say`${when}: ${again ?? 'likewise'}, feeding to both lines again; over ${high!} it is scrap`]
}

const lineOf = (plan: Plan, left: Left, again: Phrase | null, first: number, across: Again['across']): Phrase => {
  const { measure, when, limit, past, slide, further, by, perStep } = left
  const show = (value: Length, role: Role = 'limit') => length(role, value, plan.units)
  const wide = measure === 'width' && further === across?.indexes
  const step = stepsNamed(further.map((index) => first + index))
  const lost: Phrase = past === null ? [] : [`; ${when === 'under' ? 'over' : 'under'} `, show(past), ' it is scrap']
  // A part of a step counts as a whole step, if a whole step is still within the limits.
  const part = past === null || Math.abs(past - limit) >= perStep ? ' or part of it' : ''
  const each: Phrase = [' for every ', show(perStep, 'spare'), `${part} past that limit`, ...lost]
  // Across, or down a V: there the whole finish goes deeper.
  if (wide)
    return together([
      again === null ? 'and if the width is under ' : 'STILL TO CUT if the width is under ',
      say`${show(limit)}: ${again ?? 'likewise'}, ${step}: `,
      mark(plan, slide),
      by === 1 ? ' further' : ' further back',
      each,
    ])
  const what = WHAT[measure]
  const deeper: Phrase = [...mark(plan, slide), ' deeper than before', ...each]
  return say`STILL TO CUT if ${what} ${when} ${show(limit)}: ${again ?? 'likewise'}, ${step}: ${deeper}`
}

const WHAT: Readonly<Record<Left['measure'], string>> = {
  bottomDiameter: 'the bottom is',
  outsideLessBottom: 'outside less bottom is',
  width: 'the width is',
}

const mark = (plan: Plan, slide: Slide): Phrase => {
  const scale = scaleOf(plan, slide)!
  if (scale.kind === 'readout') return [`one step of the ${scale.range === undefined ? 'readout' : 'indicator'}`]
  return [{ ...markFigure(scale, scale.readTo), role: 'take-up' }, ' mark']
}

const dataOf = (plan: Plan, left: Left, first: number, place: string): MetalLeft['sizes'][number] => {
  const { measure, when, limit, past, slide, further, by, perStep } = left
  const scale = scaleOf(plan, slide)!
  const named = (name: string, role: Role, value: Length) => ({
    ...length(role, value, plan.units),
    id: `${place}.${name}`,
  })
  return {
    measure,
    when,
    limit: named('limit', 'limit', limit),
    past: past === null ? null : named('past', 'limit', past),
    steps: further.map((index) => first + index),
    reading: Number(inUnits(by * readable(scale), scale.units).toFixed(9)),
    perStep: named('perStep', 'spare', perStep),
  }
}
