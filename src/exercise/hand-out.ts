import type { Plan } from '../plan/plan.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { blanksOf } from './blanks.ts'
import type { Exercise } from './exercise.ts'
import { fileName } from './file-name.ts'
import type { KeySheet } from './key.ts'
import { type Handed, shopOf } from './manifest.ts'
import { outlineOf } from './outline.ts'
import type { Variant } from './variants.ts'
import { type Worksheet, worksheetOf } from './worksheet.ts'

/** All that is made for one learner. */
export type HandOut = {
  /** Of the files, without their endings. */
  readonly name: string
  readonly worksheet: Worksheet
  readonly key: KeySheet
  readonly handed: Handed
}

export const handOut = (
  { title, teaches, learners, hide, tolerance, seed }: Exercise,
  { index, learner, values, job, plan }: Variant,
  sheetFor: (plan: Plan) => Sheet,
): HandOut => {
  const number = String(index + 1).padStart(Math.max(2, String(learners.length).length), '0')
  const sheet = sheetFor(plan)
  const blanks = blanksOf({ plan, sheet, tolerance, seed: `${seed}/${number}` }, hide)
  const who = { sheet: number, learner: learner.name, title, teaches }
  const name = fileName(number, learner.name)
  return {
    name,
    worksheet: worksheetOf(who, sheet, blanks, hide, plan.features.map(outlineOf)),
    key: {
      sheet: number,
      learner: learner.name,
      values,
      answers: blanks.map(({ id, number, outOf, asks, key, within, working }) => ({
        id,
        number,
        outOf,
        asks,
        key,
        within,
        working,
      })),
    },
    handed: {
      sheet: number,
      learner: learner.name,
      form: `answers/${name}.yaml`,
      units: plan.units,
      values,
      job,
      blanks: blanks.map(({ place: _, ...blank }) => blank),
      shop: shopOf(plan),
    },
  }
}
