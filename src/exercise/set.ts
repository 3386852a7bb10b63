import type { Plan } from '../plan/plan.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { type Candidate, onlyRefusal } from './among.ts'
import type { Exercise, Learner } from './exercise.ts'
import { type HandOut, handOut } from './hand-out.ts'
import { handOutAmong } from './hand-out-among.ts'
import { jobLines } from './job-lines.ts'
import type { Base } from './read.ts'
import { shuffled, shuffledList } from './shuffle.ts'
import { flow, type Tree } from './tree.ts'
import { ENOUGH, type NoVariant, notProven, variantsOf } from './variants.ts'
import { DRAWN_WORDS } from './words.ts'

/** The job of a text; null with the reason where it cannot be read. */
export type Compile = (text: string) => { readonly plan: Plan | null; readonly why: string | null }

export type Own = (learner: Learner) => (tree: Tree) => Tree

/** What is made for one learner; `holds`: so many unlike ones there are, said of one that is like an earlier one. */
export type OneOfSet = HandOut & { readonly holds: number | null }

export type Asked = Exercise & { readonly bases: readonly Base[] }

/** The sheets of a set one after the other, so that no more than one is in memory. */
export function* setOf(
  exercise: Asked,
  compile: Compile,
  own: Own,
  sheetFor: (plan: Plan) => Sheet,
): Generator<OneOfSet | NoVariant> {
  if (exercise.hide.includes('refusal')) yield* among(exercise, compile, own)
  else yield* ofOneJob(exercise, compile, own, sheetFor)
}

function* ofOneJob(
  exercise: Asked,
  compile: Compile,
  own: Own,
  sheetFor: (plan: Plan) => Sheet,
): Generator<OneOfSet | NoVariant> {
  const planner: Compile = (text) => {
    const { plan, why } = compile(text)
    const no = plan === null ? why : notProven(plan)
    return no === null ? { plan, why: null } : { plan: null, why: no }
  }
  // Where the sheet itself is drawn, the same job twice is no sheet twice.
  const drawn = exercise.hide.some((word) => DRAWN_WORDS.includes(word))
  for (const variant of variantsOf(exercise, exercise.bases[0]!, planner, own))
    yield 'tried' in variant
      ? variant
      : { ...handOut(exercise, variant, sheetFor), holds: drawn ? null : variant.holds }
}

function* among(exercise: Asked, compile: Compile, own: Own): Generator<OneOfSet | NoVariant> {
  const { learners, seed, bases } = exercise
  for (const [index, learner] of learners.entries()) {
    const order = shuffledList([...bases.keys()], `${seed}/jobs/${index}`)
    const draws = bases.map(({ space }, i) => shuffled(space.size, `${seed}/jobs/${index}/${i}`))
    let [tried, why] = [0, 'none of the jobs is refused, or more than one']
    let made: OneOfSet | null = null
    while (made === null && tried < ENOUGH) {
      const drawn = order.map((i) => {
        const next = draws[i]!.next()
        return next.done === true ? null : bases[i]!.space.element(next.value, own(learner))
      })
      if (drawn.some((one) => one === null)) break
      tried++
      const candidates = drawn.flatMap((one): Candidate[] => {
        if (one === null || !one.ok) return []
        const { plan, why: no } = compile(flow(one.value))
        why = no ?? why
        return plan === null ? [] : [{ plan, lines: jobLines(one.value) }]
      })
      if (candidates.length === bases.length && onlyRefusal(candidates) !== null)
        made = { ...handOutAmong(exercise, index, candidates, {}), holds: null }
    }
    yield made ?? {
      index,
      tried,
      why,
      hint: 'of the jobs under base exactly one must be refused: groovewright check shows which are',
    }
  }
}
