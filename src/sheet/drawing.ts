import type { Edge, Form } from '../moves/form.ts'
import type { GrindFacts } from '../moves/grinding.ts'
import type { Region, Setup } from '../moves/operation.ts'
import type { Plan } from '../plan/plan.ts'
import type { Pass } from '../replay/passes.ts'
import type { Sheet, SheetFeature } from './sheet.ts'

/** What a picture of one feature is drawn from: all of it as the replay has it. pm; in forms d = −radius. */
export type Drawing = {
  /** The part before this feature is cut, and when it is finished. */
  readonly before: Form
  readonly finished: Form
  /** What the drawing asks for; `atLeast` where it leaves the corners open. */
  readonly wanted: Form
  readonly atLeast: Form | null
  readonly region: Region
  /** The part after each step that took metal; `move`: which of the operation, as the pieces of a form name what cut them. */
  readonly passes: readonly { readonly step: number; readonly move: number; readonly form: Form }[]
  /** The tool with its reference point at 0: how far it reaches, and its shank. */
  readonly edge: Edge
  /** How it is ground for this form. */
  readonly ground: GrindFacts | null
}

/** The whole part in the machine. */
export type PartDrawing = Setup

/** The sheet with what pictures are drawn from. `passes`: of each feature of the plan, in its order; none of a refused one. */
export const withDrawings = (sheet: Sheet, plan: Plan, passes: readonly (readonly Pass[])[]): Sheet => ({
  ...sheet,
  drawing: plan.setup,
  features: sheet.features.map((feature, position): SheetFeature => {
    const planned = plan.features[position]!
    if (feature.status === 'refused' || planned.status === 'refused') return feature
    const { operation, trace, before } = planned
    const first = sheet.steps.find((step) => step.feature === position)?.number ?? 1
    return {
      ...feature,
      drawing: {
        before: before.surely,
        finished: trace.surely,
        wanted: operation.wanted,
        atLeast: operation.atLeast ?? null,
        region: operation.region,
        passes: (passes[position] ?? []).map(({ move, form }) => ({ step: first + move, move, form })),
        edge: operation.edge,
        ground: planned.ground ?? null,
      },
    }
  }),
})

/** The same from a step on: what was cut before it is the part as it stands. */
export const drawingFrom = (drawing: Drawing, step: number): Drawing => ({
  ...drawing,
  before: drawing.passes.findLast((pass) => pass.step < step)?.form ?? drawing.before,
  passes: drawing.passes.filter((pass) => pass.step >= step),
})
