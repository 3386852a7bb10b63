import type { GrindFacts } from '../../moves/grinding.ts'
import { identify, length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { together } from '../../phrase/say.ts'
import type { Plan } from '../../plan/plan.ts'
import { type Length, MM, type Units } from '../../units/length.ts'
import type { Labeled } from '../sheet.ts'
import { orderOf } from './order.ts'
import { blocksOf, warningsOf } from './says.ts'
import { angle } from './words.ts'

/** What the grinder needs: every tool of the job, measured or still to be ground. */
export type GrindSheet = {
  readonly title: string
  readonly drawingNumber: string | null
  readonly units: Units
  readonly tools: readonly GroundTool[]
  readonly cautions: readonly Phrase[]
  /** Features without a plan, for which no tool is listed. */
  readonly left: readonly { readonly name: string; readonly reason: Phrase }[]
}

export type GroundTool = {
  readonly name: string
  readonly says: readonly Labeled[]
  readonly order: readonly Phrase[]
  readonly warnings: readonly Phrase[]
  /** One for each feature that the tool cuts; `features` are their indexes in the plan. */
  readonly features: readonly number[]
  readonly facts: readonly GrindFacts[]
}

/** What a handbook says before the grinder is started; numbers are lengths in pm. */
export type Caution = {
  readonly say: readonly (string | Length | { readonly degrees: number })[]
  readonly source: string | null
}

/** A tool that cuts several forms is ground once: for the deepest of them, and compared with each. */
export const grindSheet = (plan: Plan, cautions: readonly Caution[]): GrindSheet => {
  const names = [...new Set(plan.features.flatMap((one) => (one.tool !== undefined && one.ground ? [one.tool] : [])))]
  return {
    title: plan.title,
    drawingNumber: plan.drawingNumber,
    units: plan.units,
    tools: names.map((name, position) => toolOf(plan, name, position + 1)),
    cautions: cautions.map((caution, i) => identify(`grind.caution.${i + 1}`, cautionWords(caution, plan.units))),
    left: plan.features.flatMap((one) =>
      one.status === 'refused' && !one.ground ? [{ name: one.name, reason: together([one.reason]) }] : [],
    ),
  }
}

const toolOf = (plan: Plan, name: string, number: number): GroundTool => {
  const cuts = plan.features.flatMap((one, index) =>
    one.tool === name && one.ground ? [{ index, facts: one.ground }] : [],
  )
  const facts = cuts.map((cut) => cut.facts)
  const place = `grind.${number}`
  return {
    name,
    says: blocksOf(facts, plan.units).map(({ label, says }) => ({
      label,
      says: says.map((phrase, i) => identify(`${place}.${label.toLowerCase().replace(/\W+/g, '-')}.${i + 1}`, phrase)),
    })),
    order: orderOf(facts, plan.units).map((phrase, i) => identify(`${place}.order.${i + 1}`, phrase)),
    warnings: warningsOf(facts, plan.units).map((phrase, i) => identify(`${place}.warning.${i + 1}`, phrase)),
    features: cuts.map((cut) => cut.index),
    facts,
  }
}

const cautionWords = ({ say, source }: Caution, units: Units): Phrase => [
  ...say.flatMap((part): Phrase => {
    if (typeof part === 'string') return [part]
    return typeof part === 'number' ? atMost(part, units) : [angle(part.degrees)]
  }),
  ` (${source ?? 'common practice'})`,
]

/** The greatest gap of a rule in inches, on a metric scale: the whole millimeters that it allows, never more. */
const atMost = (most: Length, units: Units): Phrase =>
  units === 'inch'
    ? [length('limit', most, units)]
    : [{ ...length('limit', Math.floor(most / MM) * MM, units), digits: 0 }, ' mm']
