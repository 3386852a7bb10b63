import { amongBlanks, type Candidate } from './among.ts'
import { cautionsIn } from './cautions.ts'
import type { Exercise } from './exercise.ts'
import { fileName } from './file-name.ts'
import { type HandOut, keyAnswers, sheetNumber } from './hand-out.ts'
import { shopOf } from './manifest.ts'
import { setName } from './set-name.ts'
import { worksheetAmong } from './worksheet.ts'

/** A sheet with several jobs on it. */
export const handOutAmong = (
  { title, teaches, learners, seed }: Exercise,
  index: number,
  candidates: readonly Candidate[],
  values: Readonly<Record<string, string>>,
): HandOut => {
  const sheet = sheetNumber(index, learners.length)
  const learner = learners[index]!.name
  const blanks = amongBlanks(candidates, `${seed}/${sheet}`)
  const name = fileName(sheet, learner)
  const { plan } = candidates[0]!
  return {
    name,
    worksheet: worksheetAmong({ sheet, learner, title, teaches }, plan.units, blanks, cautionsIn()),
    key: { sheet, learner, values, answers: keyAnswers(blanks) },
    handed: {
      sheet,
      set: setName({ title, seed, sheet, job: '' }),
      learner,
      form: `answers/${name}.yaml`,
      units: plan.units,
      values,
      job: '',
      blanks: blanks.map(({ place: _, ...blank }) => blank),
      shop: { ...shopOf(plan), operations: [] },
    },
  }
}
