import type { Handed, Manifest } from '../exercise/manifest.ts'
import type { Answers } from './answers.ts'
import type { GradedLearner } from './grades.ts'
import { valuesOf } from './value.ts'

/** So many wrong answers that fit another sheet are no accident. */
const ENOUGH = 2

/** What is odd about a form: it is of another set, or its answers are those of another sheet. Null where nothing is. */
export const foreign = (manifest: Manifest, handed: Handed, answers: Answers, graded: GradedLearner): string | null => {
  const ids = new Set(handed.blanks.map(({ id }) => id))
  const unknown = [...answers.values].filter(([id, value]) => !ids.has(id) && value !== '')
  if (unknown.length > 0) return 'the form has answers that are not asked on this sheet: it may be of another set'
  const wrong = graded.blanks.filter(({ verdict }) => verdict === 'wrong' || verdict === 'follow-on')
  if (wrong.length < ENOUGH) return null
  // A form that is copied is right there as a whole: a few small numbers are the same by chance.
  const fits = (other: Handed): boolean =>
    graded.blanks.every(({ id, given }) => {
      const blank = other.blanks.find((one) => one.id === id)
      if (blank === undefined) return false
      if (typeof blank.right !== 'number') return true
      const values = valuesOf(given, blank)
      return values.ok && values.value.some((value) => Math.abs(value - (blank.right as number)) <= blank.tolerance)
    })
  const other = manifest.learners.find((one) => one !== handed && fits(one))
  return other === undefined ? null : `the wrong answers are right on sheet ${other.sheet}`
}
