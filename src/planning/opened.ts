import type { Bench, Draft, Drafted, Refusal } from '../features/draft.ts'
import { edgeFormOf } from '../features/on-face.ts'
import { draftFeature } from '../features/registry.ts'
import { draftAfterRough, draftRough, leaveAfterRough, roughToolOf } from '../features/rough.ts'
import { touchedBeside, touchedOver } from '../features/touched.ts'
import { edgeOf } from '../tools/edge.ts'

/** The steps that another tool roughs under a feature, and the feature as it is finished after them. */
export type Opened =
  | { readonly ok: true; readonly steps: Draft; readonly after: Draft }
  | { readonly ok: false; readonly refusal: Refusal }

/** `draft` is the feature as its own tool would cut it alone; null: it does. */
export function openedUp(bench: Bench, draft: Draft): Opened | null {
  const tool = roughToolOf(draft.feature)
  if (tool === null) return null
  const rough = draftRough(bench, draft, tool)
  if (!rough.ok) return rough
  const { feature, cuts } = draft
  const depth = cuts.style === 'corner' ? cuts.radius : cuts.depth
  const own = draftFeature(bench, {
    ...feature,
    cutting: { ...feature.cutting, leave: leaveAfterRough(bench, feature, depth) },
  })
  if (!own.ok) return own
  const edge = edgeOf(own.draft.tool, edgeFormOf(own.draft)).pieces
  const after = draftAfterRough(bench, { ...own.draft, feature }, edge, rough.draft)
  return after.ok ? { ok: true, steps: rough.draft, after: after.draft } : after
}

/** The part of it that `one` was, drafted from the feature as a whole. */
export const samePart = (opened: Opened, one: Draft): Drafted =>
  opened.ok ? { ok: true, draft: one.roughs === undefined ? opened.after : opened.steps } : opened

/** An opened form is touched off beside its lines, a corner that is stepped around on its cylinder: clear of what is cut before it. */
export const touchedClear = (bench: Bench, draft: Draft, before: readonly Draft[]): Drafted => {
  if (draft.touch.at === null) return { ok: true, draft }
  const edge = edgeOf(draft.tool, edgeFormOf(draft)).pieces
  const cut = before.map(({ region }) => region)
  if (roughToolOf(draft.feature) !== null) return touchedBeside(bench, draft, edge, cut)
  return { ok: true, draft: touchedOver(bench, draft, edge, cut) }
}
