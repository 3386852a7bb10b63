import { plain } from '../phrase/words.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import type { Placed } from './blanks.ts'
import { REASONS, reasonFor } from './reasons.ts'
import { shuffledList } from './shuffle.ts'

const LETTERS = 'ABCDEFGH'

/** One of the jobs that a learner chooses among. */
export type Candidate = { readonly plan: Plan; readonly lines: readonly string[] }

type Refused = Extract<FeaturePlan, { status: 'refused' }>

/** The one refusal among the jobs; null where there are more, or none, or one whose reason is not asked. */
export const onlyRefusal = (
  candidates: readonly Candidate[],
): { readonly at: number; readonly refused: Refused } | null => {
  const all = candidates.flatMap(({ plan }, at) =>
    plan.features.flatMap((feature) => (feature.status === 'refused' ? [{ at, refused: feature }] : [])),
  )
  return all.length === 1 && reasonFor(all[0]!.refused.code) !== null ? all[0]! : null
}

/** Two blanks: which of the jobs cannot be cut, and why. */
export const amongBlanks = (candidates: readonly Candidate[], seed: string): readonly Placed[] => {
  const found = onlyRefusal(candidates)
  if (found === null) return []
  const { units } = candidates[0]!.plan
  const { reason, remedy, code } = found.refused
  const reasons = shuffledList(REASONS, `${seed}/reasons`)
  const why = LETTERS[reasons.findIndex(([, codes]) => codes.includes(code))]!
  const working = `${plain(reason, units)}; ${plain(remedy, units)}`
  const common = {
    outOf: 1,
    tolerance: 0,
    within: 'that letter',
    working,
    follows: [],
    move: null,
    facts: { sort: 'choice', units },
  } as const
  return [
    {
      ...common,
      id: 'which',
      number: 1,
      asks: 'which job cannot be cut',
      right: LETTERS[found.at]!,
      key: LETTERS[found.at]!,
      place: { question: 'One of these jobs cannot be cut as it is written. Which?' },
      choices: candidates.flatMap(({ lines }, i) => [`JOB ${LETTERS[i]}`, ...lines.map((line) => `   ${line}`)]),
    },
    {
      ...common,
      id: 'why',
      number: 2,
      asks: 'why it cannot be cut',
      right: why,
      key: why,
      place: { question: 'Why not?' },
      choices: reasons.map(([text], i) => `${LETTERS[i]}  ${text}`),
    },
  ]
}
