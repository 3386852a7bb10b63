import { decimals, figure } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import type { ChangedStep } from '../sheet.ts'
import { aligned } from './align.ts'
import { type Data, dataIn, isData, listIn, numberIn, sameData, textIn } from './data.ts'

/** Steps of one feature with another action, and steps that came or went. Steps that change alike are grouped. */
export const changedSteps = (before: readonly Data[], now: readonly Data[], kept: Data, today: Data): ChangedStep[] => {
  const changes = aligned(before, now, sameAction, sameKind).flatMap(({ before: old, now: fresh }): ChangedStep[] => {
    if (old === null) return [unpaired('came', fresh!)]
    if (fresh === null) return [unpaired('went', old)]
    return sameAction(old, fresh) ? [] : changedStep(old, fresh, kept, today)
  })
  return grouped(changes)
}

/** The same move of the same slide for the same reason. */
const sameKind = (a: Data, b: Data): boolean =>
  a.action === b.action && a.slide === b.slide && (a.purpose === b.purpose || a.slide === undefined)

/** The machinist does the same: what it does to the work is shown by the sizes. */
const sameAction = (a: Data, b: Data): boolean =>
  sameKind(a, b) &&
  sameData(readingOf(a), readingOf(b)) &&
  sameLines(a, b) &&
  sameTable(a.corrections, b.corrections) &&
  sameTable(a.widthCorrections, b.widthCorrections)

/** The numbers of the steps that a table refers to may differ: every step reports its own change. */
const sameTable = (a: unknown, b: unknown): boolean => sameData(unnumbered(a), unnumbered(b))

const unnumbered = (table: unknown): unknown =>
  isData(table)
    ? {
        ...table,
        rows: listIn(table.rows).map((row) => ({
          ...dataIn(row),
          finishes: listIn(dataIn(row).finishes).map((finish) => ({ ...dataIn(finish), step: null })),
        })),
      }
    : table

const readingOf = ({ reading, turns, mark }: Data): unknown => [reading ?? null, turns ?? null, mark ?? null]

/** A sheet that was kept before these lines were on it is compared without them. */
const sameLines = (a: Data, b: Data): boolean =>
  [a, b].some(({ does }) => does === undefined) || sameData(lines(a), lines(b))

/**
 * A reading is what the machinist does, whatever the words around it; without a reading the first words are, and for
 * steps by hand the lines below them too. The tables are compared as data.
 */
const lines = (step: Data): readonly string[] =>
  numberIn(step.reading) === null ? [textIn(step.does), ...listIn(step.lines).map(textIn)] : []

const thingOf = (step: Data): string => textIn(step.thing) || textIn(step.action)
const numberOf = (step: Data): number => numberIn(step.number) ?? 0

const unpaired = (fate: 'came' | 'went', step: Data): ChangedStep => ({
  fate,
  numbers: fate === 'came' ? [numberOf(step)] : [],
  were: fate === 'went' ? [numberOf(step)] : [],
  thing: thingOf(step),
  what: textIn(step.does),
  before: null,
  now: null,
})

const changedStep = (old: Data, fresh: Data, kept: Data, today: Data): ChangedStep[] => {
  const common = { fate: 'changed' as const, numbers: [numberOf(fresh)], were: [numberOf(old)], thing: thingOf(fresh) }
  if (!sameData(readingOf(old), readingOf(fresh))) {
    const what = [ACTIONS[textIn(fresh.action)] ?? textIn(fresh.action), PURPOSES[textIn(fresh.purpose)] ?? ''].join('')
    return [{ ...common, what, before: reading(old, kept), now: reading(fresh, today) }]
  }
  const [a, b] = sameLines(old, fresh) ? [[], []] : [lines(old), lines(fresh)]
  const [gone, come] = [a.filter((line) => !b.includes(line)), b.filter((line) => !a.includes(line))]
  const changes = Array.from({ length: Math.max(gone.length, come.length) }, (_, i): ChangedStep => {
    const [was, is] = [gone[i], come[i]].map((line): Phrase | null => (line === undefined ? null : [line]))
    return { ...common, what: '', before: was!, now: is! }
  })
  const tables = [
    ...(sameTable(old.corrections, fresh.corrections) ? [] : ['the table to finish by the bottom']),
    ...(sameTable(old.widthCorrections, fresh.widthCorrections) ? [] : ['the table to finish by the width']),
  ]
  return [...changes, ...tables.map((what): ChangedStep => ({ ...common, what, before: null, now: ['other rows'] }))]
}

const ACTIONS: Readonly<Record<string, string>> = {
  'take-up': 'take up the backlash',
  'feed-in': 'in',
  'back-out': 'out',
  shift: 'over',
  'go-past': 'back past',
  return: 'forward onto',
  'feed-across': 'feed across',
  'move-carriage': 'move',
}
const PURPOSES: Readonly<Record<string, string>> = { rough: ', rough', finish: ', finish' }

/** A reading as the dial shows it, from the numbers of the sheet: "1 turn and 25", "50 (.050 out)". */
const reading = (step: Data, sheet: Data): Phrase => {
  const dial = dialOf(textIn(step.slide), sheet)
  const [value, turns, mark] = [numberIn(step.reading), numberIn(step.turns), numberIn(step.mark)]
  if (value === null) return [textIn(step.does)]
  const units: Units = dial.units === 'mm' ? 'mm' : 'inch'
  const plain = figure('reading', Math.abs(value), units, decimals(value, units === 'mm' ? 2 : 3, 5))
  if (turns === null || mark === null) return [value < 0 ? { ...plain, value } : plain]
  const named = dial.graduation === (units === 'mm' ? 0.01 : 0.001) ? '' : 'mark '
  const shownMark = figure('mark', mark, 'mark', decimals(mark, 0, 4))
  if (value < 0) return [named, shownMark, ' (', plain, step.slide === 'cross-feed' ? ' out)' : ' before 0)']
  if (turns === 0) return [named, shownMark]
  const whole: Phrase = [figure('turns', turns, 'turn'), turns === 1 ? ' turn' : ' turns']
  return mark === 0 ? [...whole, ', on 0'] : [...whole, ` and ${named}`, shownMark]
}

const dialOf = (slide: string, sheet: Data): Data => {
  const lathe = dataIn(sheet.lathe)
  return dataIn(slide === 'cross-feed' ? lathe.crossFeed : slide === 'compound' ? lathe.compound : lathe.carriage)
}

/** One line for steps that change in the same way, with all their numbers, at the place of the first. */
const grouped = (steps: readonly ChangedStep[]): ChangedStep[] => {
  const found = new Map<string, ChangedStep>()
  for (const step of steps) {
    const { thing, what, before, now, fate } = step
    const key = JSON.stringify([fate, thing, what, before, now, fate === 'changed' ? '' : [step.numbers, step.were]])
    const known = found.get(key)
    found.set(
      key,
      known === undefined
        ? step
        : { ...known, numbers: [...known.numbers, ...step.numbers], were: [...known.were, ...step.were] },
    )
  }
  return [...found.values()]
}
