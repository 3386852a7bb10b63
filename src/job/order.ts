import type { Draft } from '../features/draft.ts'

export type Entry = { readonly draft: Draft; readonly angle: number }
export type Ordered<E> = { readonly entries: readonly E[]; readonly reasons: readonly string[] }

/**
 * Order of work: the job's own `order:` first; then features that share a compound angle and a tool together, from the
 * free end on; a group that leaves less than half of the diameter goes last, because it weakens the work for the
 * others.
 */
export function orderFeatures<E extends Entry>(entries: readonly E[]): Ordered<E> {
  if (entries.length < 2) return { entries, reasons: [] }
  const groups = groupBy(entries, (one) => `${one.angle} ${one.draft.tool.name}`)
  groups.sort((a, b) => roughsNone(a) - roughsNone(b) || weakest(a) - weakest(b) || nearest(a) - nearest(b))
  const grouped = groups.flatMap((group) => group.toSorted((a, b) => a.draft.region.from - b.draft.region.from))
  const sorted = roughedFirst(grouped)
  const forced = sorted.some((one) => one.draft.feature.cutting.order !== null)
  const ordered = forced ? sorted.toSorted((a, b) => rank(a) - rank(b)) : sorted
  return { entries: ordered, reasons: reasons(ordered, groups.length, forced) }
}

/** 0 for a group with steps that are roughed for another tool, else 1. */
const roughsNone = (group: readonly Entry[]): number => (group.some(({ draft }) => draft.roughs !== undefined) ? 0 : 1)

/** Nothing is finished before its steps are roughed: where the groups would do that, all steps come first. */
function roughedFirst<E extends Entry>(entries: readonly E[]): readonly E[] {
  const early = entries.some(
    ({ draft }, i) =>
      draft.roughs !== undefined && entries.slice(0, i).some((one) => one.draft.feature.index === draft.feature.index),
  )
  const rough = ({ draft }: E): number => (draft.roughs === undefined ? 1 : 0)
  return early ? entries.toSorted((a, b) => rough(a) - rough(b)) : entries
}

const rank = (entry: Entry): number => entry.draft.feature.cutting.order ?? Number.POSITIVE_INFINITY

function groupBy<E>(entries: readonly E[], key: (entry: E) => string): E[][] {
  const groups = new Map<string, E[]>()
  for (const entry of entries) groups.set(key(entry), [...(groups.get(key(entry)) ?? []), entry])
  return [...groups.values()]
}

const nearest = (group: readonly Entry[]): number => Math.min(...group.map((one) => one.draft.region.from))

/** 1 for a group that leaves less than half of the diameter somewhere, else 0. */
const weakest = (group: readonly Entry[]): number =>
  group.some((one) => bottom(one.draft) < one.draft.surface / 2) ? 1 : 0

const bottom = (draft: Draft): number =>
  draft.dimensions.find((one) => one.id === 'bottomDiameter')?.aim ?? draft.surface

function reasons(entries: readonly Entry[], groups: number, forced: boolean): string[] {
  const names = entries.map((one) => one.draft.feature.name)
  const sentences = [`${names.join(', then ')}.`]
  if (forced) sentences.push('The job gives the order.')
  else {
    if (groups < entries.length)
      sentences.push('Features cut with the same tool and compound setting follow each other, so each is set up once.')
    if (entries.some(({ draft }) => draft.roughs !== undefined))
      sentences.push('What is roughed in steps comes before the tool that finishes it.')
    sentences.push('From the free end on.')
    if (weakest(entries.slice(-1)) === 1 && weakest(entries.slice(0, 1)) === 0)
      sentences.push('The form that weakens the work most comes last.')
  }
  return sentences
}
