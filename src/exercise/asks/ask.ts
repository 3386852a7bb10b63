import type { FeaturePlan, Plan } from '../../plan/plan.ts'
import type { Sheet, SheetStep } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Blank } from '../blank.ts'

/** What blanks are made from: the plan of one variant and its sheet. */
export type Scene = {
  readonly plan: Plan
  readonly sheet: Sheet
  /** Of the exercise; null: the usual one. pm. */
  readonly tolerance: Length | null
  /** Whether the job gives a key of a feature, such as depth: what it gives is not asked. */
  readonly gives: (feature: number, key: string) => boolean
  /** The sheet of another plan of the same job. */
  readonly sheetOf: (plan: Plan) => Sheet
  /** Of this sheet alone: for what is drawn on it. */
  readonly seed: string
  /** What else is hidden on the sheet: no question may tell it. */
  readonly hides: ReadonlySet<string>
}

export type Planned = Extract<FeaturePlan, { status: 'planned' }>

export type Part = 'reading' | 'turns' | 'mark' | 'shift'

/** A blank before it is numbered. */
export type Made = Omit<Blank, 'number' | 'outOf'> & {
  readonly outOf?: number
  /** Where on the paper it stands: in a step, or in a question of its own. */
  readonly place: { readonly step: number; readonly part: Part } | { readonly question: string }
}

/** One word of `hide`, and the blanks that it opens. */
export type Ask = { readonly says: string; readonly make: (scene: Scene) => readonly Made[] }

/** The planned features with their steps. */
export const cutsOf = ({ plan, sheet }: Scene): { feature: Planned; index: number; steps: readonly SheetStep[] }[] =>
  plan.features.flatMap((feature, index) =>
    feature.status === 'planned'
      ? [{ feature, index, steps: sheet.steps.filter((step) => step.feature === index) }]
      : [],
  )
