import type { Blank } from '../exercise/blank.ts'
import type { Handed } from '../exercise/manifest.ts'
import { solve } from '../exercise/solve.ts'
import { type Lathe, readable } from '../lathe/lathe.ts'
import { type Parsed, parsed } from '../units/parsed.ts'
import type { Answers } from './answers.ts'
import type { Cause } from './causes/cause.ts'
import { CAUSES } from './causes/registry.ts'
import type { FormPicture, GradedBlank, GradedLearner, Verdict } from './grades.ts'
import { movesFrom } from './moves.ts'
import { type Changed, type Cut, type Replays, replaysOf } from './replays.ts'
import { valuesOf } from './value.ts'

/** An answer that was read, and its verdict so far. */
type Read = {
  readonly blank: Blank
  readonly given: string
  readonly values: Parsed<readonly number[]>
  verdict: Verdict
  own: number | null
}

/** Every blank of one learner against the key; readings by replay. */
export const gradeSheet = (handed: Handed, answers: Answers): GradedLearner => {
  const { blanks, sheet, learner, shop, units } = handed
  const read = new Map<string, Read>()
  for (const blank of earliestFirst(blanks)) {
    const given = answers.values.get(blank.id) ?? ''
    read.set(
      blank.id,
      blank.facts.sort === 'moves' ? listVerdict(blank, given, shop) : firstVerdict(blank, given, read),
    )
  }
  const all = blanks.map(({ id }) => read.get(id)!)
  const replays = replaysOf(shop, units)
  const lists = new Map(all.map((one) => [one.blank.id, listCut(one, shop.lathe, replays)]))
  const cuts = byReplay(all, lists, replays, shop)
  const graded = all.map((one) => gradedBlank(one, all, lists.get(one.blank.id) ?? null, replays))
  const counted = graded.filter(({ verdict }) => verdict !== 'ungraded')
  return {
    sheet,
    learner,
    score: counted.reduce((sum, { marks }) => sum + marks, 0),
    outOf: counted.reduce((sum, { outOf }) => sum + outOf, 0),
    blanks: graded,
    cuts: cuts.says,
    pictures: cuts.pictures,
    note: null,
  }
}

/** What follows from another answer is looked at after it, wherever it stands on the paper. */
const earliestFirst = (blanks: readonly Blank[]): readonly Blank[] => {
  const later = ({ follows }: Blank, i: number): boolean =>
    follows.some(({ id }) => blanks.findIndex((one) => one.id === id) > i)
  return [...blanks.filter((one, i) => !later(one, i)), ...blanks.filter(later)]
}

/** Rounding error of a division is no error of a learner. pm. */
const SLACK = 10

const near = (value: number, wanted: number, { tolerance }: Pick<Blank, 'tolerance'>): boolean =>
  Math.abs(value - wanted) <= tolerance + (tolerance > 0 ? SLACK : 1e-9)

const firstVerdict = (blank: Blank, given: string, before: ReadonlyMap<string, Read>): Read => {
  const values = valuesOf(given, blank)
  const read = (verdict: Verdict, own: number | null): Read => ({ blank, given, values, verdict, own })
  if (given.trim() === '') return read('blank', null)
  const { right } = blank
  if (typeof right !== 'number') return read(sameWords(given, right) ? 'right' : 'wrong', null)
  if (!values.ok) return read('ungraded', null)
  const hit = values.value.find((value) => near(value, right, blank))
  if (hit !== undefined) return read('right', hit)
  const followed = followOn(blank, values.value, before)
  return followed === null ? read('wrong', values.value[0] ?? null) : read('follow-on', followed)
}

/** A list is right by its replay alone, the sheet's own as well. */
const listVerdict = (blank: Blank, given: string, { lathe }: Handed['shop']): Read => {
  const { facts } = blank
  const list = facts.sort === 'moves' ? movesFrom(given, facts, lathe) : null
  const verdict = given.trim() === '' ? 'blank' : list?.ok === true ? 'wrong' : 'ungraded'
  return { blank, given, values: list?.ok === false ? list : parsed([]), verdict, own: null }
}

const listCut = ({ blank: { facts }, given }: Read, lathe: Lathe, replays: Replays): Cut | null => {
  if (facts.sort !== 'moves') return null
  const list = movesFrom(given, facts, lathe)
  return list.ok ? replays.listed(facts.feature, facts.first, facts.last, list.value) : null
}

const sameWords = (given: string, right: string | readonly string[]): boolean => {
  if (typeof right !== 'string') return lettersIn(given).join(' ') === right.join(' ')
  const plain = (text: string): string =>
    text
      .toLowerCase()
      .replace(/^\s*(?:step|job|letter)\b/, '')
      .replace(/[^a-z0-9]+/g, '')
  return plain(given) === plain(right)
}

/** What follows from an earlier answer that is wrong is an error only once. */
const followOn = (blank: Blank, values: readonly number[], before: ReadonlyMap<string, Read>): number | null => {
  for (const { id, factor, plus } of blank.follows) {
    const earlier = before.get(id)
    if (earlier === undefined || earlier.own === null || earlier.verdict === 'right') continue
    const wanted = earlier.own * factor + plus
    const hit = values.find((value) => near(value, wanted, blank))
    if (hit !== undefined) return hit
  }
  return null
}

/** "C A D B", "CADB" and "c, a, d, b" are one order. */
const lettersIn = (given: string): string[] => given.toUpperCase().match(/[A-Z]/g) ?? []

/** An order that proves is right, whether it is the sheet's or not. */
const provenOrder = ({ blank, given }: Read, replays: Replays): boolean => {
  const { facts } = blank
  if (facts.sort !== 'order') return false
  const letters = lettersIn(given)
  const all = Object.keys(facts.lines)
  if (
    letters.length !== all.length ||
    new Set(letters).size !== all.length ||
    letters.some((one) => !all.includes(one))
  )
    return false
  return (
    replays.ordered(
      facts.feature,
      letters.map((letter) => facts.lines[letter]!),
    ) === true
  )
}

/** Lists and readings that prove are right, whether they are the sheet's or not: readings all together, and then each alone. */
const byReplay = (
  read: readonly Read[],
  lists: ReadonlyMap<string, Cut | null>,
  replays: Replays,
  shop: Handed['shop'],
): Pick<GradedLearner, 'pictures'> & { readonly says: readonly string[] } => {
  const says: string[] = []
  const pictures: FormPicture[] = []
  for (const one of read) if (one.verdict === 'wrong' && provenOrder(one, replays)) one.verdict = 'right'
  for (const one of read) {
    const cut = one.verdict === 'wrong' ? (lists.get(one.blank.id) ?? null) : null
    if (cut === null) continue
    if (cut.proven) one.verdict = 'right'
    else {
      says.push(...cut.says)
      pictures.push(cut.picture)
    }
  }
  const moved = read.filter(({ blank, own }) => blank.move !== null && own !== null)
  for (const feature of new Set(moved.map(({ blank }) => blank.move!.feature))) {
    const own = moved.filter(({ blank }) => blank.move!.feature === feature)
    const other = own.filter(({ verdict }) => verdict !== 'right')
    if (other.length === 0) continue
    const together = replays.cut(feature, own.map(changed))
    if (together === null) continue
    if (together.proven) for (const one of other) one.verdict = roughsEnough(one, shop) ? 'right' : one.verdict
    else {
      says.push(...together.says)
      pictures.push(together.picture)
    }
    for (const one of other)
      if (one.verdict === 'wrong' && roughsEnough(one, shop) && replays.cut(feature, [changed(one)])?.proven === true)
        one.verdict = 'right'
  }
  return { says: [...new Set(says)], pictures }
}

/**
 * The finish takes whatever roughing leaves, so any less would prove. A hand that roughs by the sheet comes within a quarter of its reading; that is
 * common practice, no source.
 */
const roughsEnough = ({ blank: { move, right }, own }: Read, { operations }: Handed['shop']): boolean => {
  const roughs = move === null ? undefined : operations[move.feature]?.moves[move.index]
  if (roughs?.purpose !== 'rough' || roughs.slide !== 'cross-feed') return true
  return typeof right === 'number' && own !== null && Math.abs(own - right) <= Math.abs(right) / 4
}

const changed = ({ blank, own }: Read): Changed => ({ blank, value: own! })

const gradedBlank = (read: Read, all: readonly Read[], list: Cut | null, replays: Replays): GradedBlank => {
  const { blank, given, values, verdict } = read
  const causes = verdict === 'wrong' ? causesOf(read) : []
  const cut = verdict === 'wrong' ? (list ?? cutBy(read, all, replays)) : null
  return {
    id: blank.id,
    number: blank.number,
    asks: blank.asks,
    given,
    right: blank.key,
    working: blank.working,
    verdict,
    marks: verdict === 'right' || verdict === 'follow-on' ? blank.outOf : 0,
    outOf: blank.outOf,
    causes: causes.map(({ code }) => code),
    says: verdict === 'ungraded' && !values.ok ? [values.message, values.hint] : causes.map(({ says }) => says),
    wouldCut: cut === null || cut.says.length === 0 ? null : cut.says.join('; '),
  }
}

/** A wrong reading alone; or, of a size that was worked out, the readings that follow from it. */
const cutBy = (read: Read, all: readonly Read[], replays: Replays): Cut | null => {
  const { blank, own } = read
  if (own === null) return null
  if (blank.move !== null) return replays.cut(blank.move.feature, [changed(read)])
  const followers = all.flatMap(({ blank: other }): Changed[] => {
    const how = other.follows.find(({ id }) => id === blank.id)
    return how === undefined || other.move === null
      ? []
      : [{ blank: other, value: onMark(own * how.factor + how.plus, other) }]
  })
  const feature = followers[0]?.blank.move?.feature
  return feature === undefined ? null : replays.cut(feature, followers)
}

/** A learner who goes on by a size stops at the nearest mark. */
const onMark = (value: number, { facts }: Blank): number =>
  facts.sort === 'reading' ? Math.round(value / readable(facts.scale)) * readable(facts.scale) : value

/** Every cause that leads from the facts to what was answered. */
const causesOf = ({ blank, values }: Read): readonly Cause[] =>
  values.ok
    ? CAUSES.filter((cause) =>
        ledTo(cause, blank).some((value) => values.value.some((given) => near(given, value, blank))),
      )
    : []

/** What a cause leads to, where that is not right all the same. */
export const ledTo = (cause: Cause, { facts, tolerance }: Pick<Blank, 'facts' | 'tolerance'>): readonly number[] => {
  const right = solve(facts)
  return madeBy(cause, facts).filter((value) => typeof right === 'number' && !near(value, right, { tolerance }))
}

const madeBy = (cause: Cause, facts: Blank['facts']): readonly number[] => {
  if (facts.sort === 'reading') return cause.reading?.(facts) ?? []
  return facts.sort === 'worked' ? (cause.worked?.(facts) ?? []) : []
}
