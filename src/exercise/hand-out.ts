import type { Plan } from '../plan/plan.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { Scene } from './asks/ask.ts'
import { mistaken } from './asks/mistake.ts'
import { blanksOf, type Placed } from './blanks.ts'
import type { Exercise } from './exercise.ts'
import { fileName } from './file-name.ts'
import type { KeySheet } from './key.ts'
import { type Handed, shopOf } from './manifest.ts'
import { outlineOf } from './outline.ts'
import { setName } from './set-name.ts'
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
  { index, learner, values, job, plan, gives }: Variant,
  sheetFor: (plan: Plan) => Sheet,
): HandOut => {
  const number = sheetNumber(index, learners.length)
  const planned = sheetFor(plan)
  const scene: Scene = {
    plan,
    sheet: planned,
    tolerance,
    gives,
    sheetOf: sheetFor,
    seed: `${seed}/${number}`,
    hides: new Set(hide),
  }
  const blanks = blanksOf(scene, hide)
  const wrong = hide.includes('mistake') ? mistaken(scene) : null
  const sheet = wrong === null ? planned : sheetFor(wrong)
  const who = { sheet: number, learner: learner.name, title, teaches }
  const name = fileName(number, learner.name)
  return {
    name,
    worksheet: worksheetOf(who, sheet, blanks, hide, plan.features.map(outlineOf)),
    key: {
      sheet: number,
      learner: learner.name,
      values,
      answers: keyAnswers(blanks),
    },
    handed: {
      sheet: number,
      set: setName({ title, seed, sheet: number, job }),
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

/** With as many figures as the last has, so that files sort. */
export const sheetNumber = (index: number, all: number): string =>
  String(index + 1).padStart(Math.max(2, String(all).length), '0')

export const keyAnswers = (blanks: readonly Placed[]): KeySheet['answers'] =>
  blanks.map(({ id, number, outOf, asks, key, within, working }) => ({ id, number, outOf, asks, key, within, working }))
