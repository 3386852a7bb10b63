import { figure } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import type { Plan } from '../plan/plan.ts'

/** What figures of the sheet rest on, each once, in the order in which the sheet names them. */
const sourcesOf = ({ features }: Plan): readonly string[] => [
  ...new Set(features.flatMap((feature) => (feature.status === 'planned' ? [feature.spindle.source] : []))),
]

/** The number of its note. */
export const noteOf = (plan: Plan, source: string): Phrase => [
  '[',
  figure('count', sourcesOf(plan).indexOf(source) + 1, 'count'),
  ']',
]

/** The notes at the foot of the sheet: of what has a number, and of the cautions of the material. */
export const notes = (plan: Plan): readonly Phrase[] => [
  ...sourcesOf(plan).map((source): Phrase => [...noteOf(plan, source), ` ${source}`]),
  ...(plan.part.care?.cautions ?? []).map(
    ({ source }): Phrase => [`cautions of ${plan.part.material}: ${source ?? 'common practice'}`],
  ),
]
