import type { Figure, Phrase } from '../../phrase/phrase.ts'
import { heldWords, words } from '../../phrase/words.ts'
import type { Sheet, SheetFeature, SheetStep } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'

export type Planned = Extract<SheetFeature, { status: 'planned' }>

/** A feature that is cut as another one before it: the same steps and readings, at another place. */
export type Again = {
  readonly feature: Planned
  readonly like: Planned
  readonly from: number
  readonly to: number
  /** The steps of the other that are done again, and what is another thing in them. */
  readonly first: number
  readonly last: number
  readonly differs: readonly { readonly step: number; readonly thing: string; readonly says: readonly string[] }[]
}

/** What may be another thing, besides that the first of them explains more: where it is, and how far its edges are from the end. */
const MAY_DIFFER: ReadonlySet<string> = new Set(['layout', 'align', 'measure'])

/** By the index of the feature; only features that follow each other, each like the first of them. */
export const againIn = (sheet: Sheet): ReadonlyMap<number, Again> => {
  const found = new Map<number, Again>()
  let like: SheetFeature | undefined
  for (const feature of sheet.features) {
    const again = like?.status === 'planned' && feature.status === 'planned' ? alike(sheet, like, feature) : null
    if (again === null) like = feature
    else found.set(feature.index, again)
  }
  return found
}

const alike = (sheet: Sheet, like: Planned, feature: Planned): Again | null => {
  const [before, now] = [stepsOf(sheet, like), stepsOf(sheet, feature)]
  const { units } = sheet
  if (before.length === 0 || before.length !== now.length || !sameHead(like, feature, units)) return null
  const pairs = now.map((step, i) => [before[i]!, step] as const)
  if (!pairs.every(([one, two]) => sameMove(one, two, units))) return null
  const differs = pairs.flatMap(([one, two]) => {
    const says = differences(one, two, before[0]!.number, now[0]!.number, units)
    return says.length === 0 || one.action === 'layout' ? [] : [{ step: one.number, thing: one.thing, says }]
  })
  // Lines that are scribed, a compound, a tool and a speed that are set stay so.
  const kept = pairs.findIndex(([one]) => !SET_ONCE.has(one.action))
  return {
    feature,
    like,
    from: now[0]!.number,
    to: now.at(-1)!.number,
    first: before[kept]!.number,
    last: before.at(-1)!.number,
    differs,
  }
}

const SET_ONCE: ReadonlySet<string> = new Set(['layout', 'swing', 'fit-tool', 'set-speed'])

const stepsOf = ({ steps }: Sheet, { index }: Planned): SheetStep[] => steps.filter(({ feature }) => feature === index)

/** The same tool on the same diameter at the same speed, and nothing else to be said. */
const sameHead = (one: Planned, two: Planned, units: Units): boolean => {
  const head = ({ kind, tool, edge, compoundAngle, surface, spindle, warnings, notes, gains }: Planned): string =>
    JSON.stringify([
      [kind, tool, edge, compoundAngle, surface, spindle],
      [...warnings, ...notes].map((phrase) => words(phrase, units)),
      gains?.map(({ says }) => words(says, units)),
    ])
  return head(one) === head(two)
}

const sameMove = (one: SheetStep, two: SheetStep, units: Units): boolean => {
  const move = (step: SheetStep): string => {
    const { action, purpose, group, slide, thing, reading, turns, mark, atLeast, takeUp, place } = step
    const does = MAY_DIFFER.has(action) ? '' : words([...(step.first ?? []), ...step.does], units)
    return JSON.stringify([
      [action, purpose, group, slide, thing, reading, turns, mark, atLeast, takeUp, place, does],
      words(step.effect, units),
    ])
  }
  return move(one) === move(two)
}

/** What the second says that the first does not; steps are counted from the first of each. */
const differences = (one: SheetStep, two: SheetStep, first: number, second: number, units: Units): string[] => {
  const known = new Set([one.does, ...one.more].map((phrase) => counted(phrase, first, units)))
  return [two.does, ...two.more]
    .filter((phrase) => !known.has(counted(phrase, second, units)))
    .map((phrase) => heldWords(phrase, units))
}

const counted = (phrase: Phrase, first: number, units: Units): string =>
  words(
    phrase.map((part): string | Figure =>
      typeof part !== 'string' && part.role === 'count' && part.value >= first
        ? { ...part, value: part.value - first }
        : part,
    ),
    units,
  )
