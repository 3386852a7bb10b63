import { CAUSES } from './causes/registry.ts'
import type { GradedBlank, GradedLearner, GradedQuestion, Grades } from './grades.ts'

/** Counts of a class, gathered a learner at a time, so that nothing but counts is kept. */
export const gatherer = () => {
  const questions = new Map<string, { right: number; wrong: number; blank: number; causes: Map<string, number> }>()
  return {
    add: ({ blanks }: GradedLearner): void => {
      for (const blank of blanks) count(questions, blank)
    },
    questions: (): GradedQuestion[] =>
      [...questions].map(([asks, { causes, ...counts }]) => ({ asks, ...counts, causes: worded(causes) })),
    teach: (): Grades['teach'] => {
      const times = new Map<string, number>()
      for (const { causes } of questions.values())
        for (const [code, n] of causes) {
          const { teach } = CAUSES.find((cause) => cause.code === code)!
          times.set(teach, (times.get(teach) ?? 0) + n)
        }
      return [...times].map(([teach, n]) => ({ teach, times: n })).sort((a, b) => b.times - a.times)
    },
  }
}

type Counts = Map<string, { right: number; wrong: number; blank: number; causes: Map<string, number> }>

const count = (questions: Counts, { asks, verdict, causes }: GradedBlank): void => {
  const now = questions.get(asks) ?? { right: 0, wrong: 0, blank: 0, causes: new Map<string, number>() }
  if (verdict === 'right' || verdict === 'follow-on') now.right++
  else if (verdict === 'wrong') now.wrong++
  else if (verdict === 'blank') now.blank++
  for (const code of causes) now.causes.set(code, (now.causes.get(code) ?? 0) + 1)
  questions.set(asks, now)
}

const worded = (causes: ReadonlyMap<string, number>): GradedQuestion['causes'] =>
  [...causes]
    .map(([code, times]) => ({ code, times, says: '', teach: '', ...CAUSES.find((cause) => cause.code === code) }))
    .map(({ code, says, teach, times }) => ({ code, says, teach, times }))
    .sort((a, b) => b.times - a.times)
