import type { CorrectionTable, Row } from '../../finish/table.ts'
import type { Tables } from '../../finish/tables.ts'
import type { Scale } from '../../lathe/lathe.ts'
import { marks, readingOf, shownOn } from '../../phrase/dial.ts'
import { identify, length } from '../../phrase/figure.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import { joinedBy, say, stepsNamed } from '../../phrase/say.ts'
import type { Plan } from '../../plan/plan.ts'
import { inUnits } from '../../units/length.ts'
import type { Planned } from '../scene.ts'
import type { Corrections, SheetStep, StopTable } from '../sheet.ts'
import { afterFinish } from './after-finish.ts'
import { gapsBetween, joined, neighbors, noTable, shortRules, tableRules } from './rows.ts'
import { type InWords, widthData, widthInWords, widthLines } from './width-corrections.ts'

/** Puts the tables under the step where the work is measured. `first` is the number of the feature's first step. */
export const withCorrections = (
  plan: Plan,
  feature: Planned,
  { bottom, width, after }: Tables,
  steps: readonly SheetStep[],
  first: number,
): readonly SheetStep[] => {
  if (after !== null) {
    const under = (step: SheetStep): SheetStep => {
      const { lines, data } = afterFinish(plan, feature, after, first, `step.${step.number}.left`)
      const more = lines.map((line, i) => identify(`step.${step.number}.after.${i + 1}`, line))
      return {
        ...step,
        ownLines: step.more.length,
        more: [...step.more, ...more],
        ...(data.sizes.length === 0 ? {} : { metalLeft: data }),
      }
    }
    const lined = steps.map((step, index) => (index === after.again.end ? under(step) : step))
    return withCorrections(plan, feature, { bottom, width, after: null }, lined, first)
  }
  if (bottom === null && width === null) return steps
  const ofBottom = bottom === null ? [] : linesOf(plan, feature, bottom, first)
  const lines = [...ofBottom, ...(width === null ? [] : widthLines(plan, width, first, hasRows(bottom)))]
  const untilTable = hasRows(bottom) ? 0 : hasRows(width) ? ofBottom.length : lines.length
  return steps.map((step, index) => {
    if (index !== (bottom ?? width)!.at) return step
    const place = `step.${step.number}.corrections`
    const more = [...step.more, ...lines.map((line, i) => identify(`${place}.line.${i + 1}`, line))]
    return {
      ...step,
      ownLines: step.more.length + untilTable,
      more,
      ...tablesOf(plan, feature, { bottom, width }, first, place, step.more.length),
      ...(!hasRows(bottom) ? {} : { corrections: dataOf(plan, feature, bottom, first, place) }),
      ...(!hasRows(width) ? {} : { widthCorrections: widthData(plan, width, first, `step.${step.number}.width`) }),
    }
  })
}

const hasRows = <T extends { readonly rows: readonly unknown[] }>(table: T | null): table is T =>
  table !== null && table.rows.length > 0

/** The tables that have rows, in words. */
const tablesOf = (
  plan: Plan,
  feature: Planned,
  { bottom, width }: Pick<Tables, 'bottom' | 'width'>,
  first: number,
  place: string,
  own: number,
): Pick<SheetStep, 'tables'> => {
  const ofBottom = bottom === null ? 0 : linesOf(plan, feature, bottom, first).length
  const at = (table: InWords, from: number): StopTable => ({ ...table, lines: { from, count: 2 + table.rules.length } })
  const tables = [
    ...(hasRows(bottom) ? [at(tableInWords(plan, feature, bottom, first), own)] : []),
    ...(hasRows(width) ? [at(widthInWords(plan, width, first), own + ofBottom)] : []),
  ]
  return tables.length === 0 ? {} : { tables: tables.map((table) => named(table, `${place}.${table.by}`)) }
}

const named = ({ by, lines, head, at, expected, rows, rules, short }: StopTable, place: string): StopTable => ({
  by,
  lines,
  head: identify(`${place}.head`, head),
  at: identify(`${place}.at`, at),
  expected: { ...expected, id: `${place}.expected` },
  rows: rows.map(({ keys, reading }, i) => ({
    keys: identify(`${place}.${i + 1}.keys`, keys),
    reading: identify(`${place}.${i + 1}.reading`, reading),
  })),
  rules: rules.map((rule, i) => identify(`${place}.rule.${i + 1}`, rule)),
  short: short.map((rule, i) => identify(`${place}.short.${i + 1}`, rule)),
})

const tableInWords = (plan: Plan, feature: Planned, table: CorrectionTable, first: number): InWords => ({
  by: table.byDepth ? 'outsideLessBottom' : 'bottomDiameter',
  head: headOf(plan, feature, table, first),
  at: stepsOf(table, first),
  expected: length('expected', keyOf(feature, table, table.expected), plan.units),
  rows: alike(table).map((rows) => rowWords(plan, feature, table, rows)),
  rules: tableRules(
    table,
    gapsBetween(alike(table), table.quantum) ? 'shallower' : null,
    length('spare', table.most, plan.units),
    (measured) => length('expected', keyOf(feature, table, measured), plan.units),
  ),
  short: shortRules(
    table,
    gapsBetween(alike(table), table.quantum) ? 'shallower' : null,
    length('spare', table.most, plan.units),
    (measured) => length('expected', keyOf(feature, table, measured), plan.units),
  ),
})

const stepsOf = ({ finishes }: CorrectionTable, first: number): Phrase =>
  stepsNamed(finishes.map((index) => first + index))

const headOf = (plan: Plan, feature: Planned, table: CorrectionTable, first: number): Phrase => {
  const key = table.byDepth ? 'outside diameter less bottom diameter' : 'bottom diameter'
  const expected = length('expected', keyOf(feature, table, table.expected), plan.units)
  return say`FINISH BY ${key}, ${stepsOf(table, first)} (${expected} expected):`
}

const linesOf = (plan: Plan, feature: Planned, table: CorrectionTable, first: number): Phrase[] => {
  if (table.rows.length === 0) return [noTable('THE BOTTOM', table.reason)]
  const { head, rows, rules } = tableInWords(plan, feature, table, first)
  const each = rows.map(({ keys, reading }, i): Phrase => {
    const leads = i === 0 && alike(table)[0]![0]!.counts.every((count, _, all) => count === all[0] && count >= 0)
    // The size and its reading stay on one line.
    return [...keys, ...(leads ? [': finish at '] : [':\u00a0']), ...reading]
  })
  return [head, joinedBy('; ', each), ...rules]
}

/** Neighbors that are finished at the same reading are grouped. */
const alike = (table: CorrectionTable): readonly (readonly Row[])[] => {
  const groups: Row[][] = []
  for (const row of table.rows) {
    const last = groups.at(-1)
    const next = last !== undefined && neighbors(table, last.at(-1)!, row)
    if (next && last[0]?.deeper === row.deeper && last[0].within === row.within) last.push(row)
    else groups.push([row])
  }
  return groups
}

const rowWords = (
  plan: Plan,
  feature: Planned,
  table: CorrectionTable,
  rows: readonly Row[],
): StopTable['rows'][number] => {
  const row = rows[0]!
  const key = (one: Row): Figure => keyFigure(plan, feature, table, one)
  const keys: Phrase = rows.length === 1 ? [key(row)] : [key(row), joined(rows, table.quantum), key(rows.at(-1)!)]
  const scale = finishingScale(plan, table)
  const same = row.counts.every((count) => count === row.counts[0] && count >= 0)
  const reading = same ? shownOn(scale, row.counts[0]!) : otherwise(scale, row.deeper)
  const nearest = row.within === false ? [' (nearest, NOT within limits)'] : []
  return { keys, reading: [...reading, ...nearest] }
}

/** The compound if the form is fed down a flank. */
const finishingScale = ({ lathe }: Plan, { by }: CorrectionTable): Scale =>
  by === 'cross-feed' ? lathe.crossFeed : lathe.compound.scale

/** All rows with as many decimals as the one that needs most. */
const keyFigure = (plan: Plan, feature: Planned, table: CorrectionTable, row: Row): Figure => {
  const figures = table.rows.map(({ measured }) => length('expected', keyOf(feature, table, measured), plan.units))
  return { ...figures[table.rows.indexOf(row)]!, digits: Math.max(...figures.map(({ digits }) => digits)) }
}

/** If the finishes have different readings, all of them move by the same amount. */
const otherwise = (scale: Scale, deeper: number): Phrase => {
  if (deeper === 0) return ['as written']
  const by = scale.kind === 'dial' ? marks(scale, Math.abs(deeper)) : shownOn(scale, Math.abs(deeper))
  return [...by, deeper > 0 ? ' deeper' : ' less deep']
}

const keyOf = ({ operation }: Planned, table: CorrectionTable, measured: number): number =>
  table.byDepth ? operation.surface - measured : measured

const dataOf = (plan: Plan, feature: Planned, table: CorrectionTable, first: number, place: string): Corrections => {
  const scale = finishingScale(plan, table)
  const named = (name: string, role: 'expected' | 'spare' | 'planned', value: number) => ({
    ...length(role, value, plan.units),
    id: `${place}.${name}`,
  })
  return {
    byDepth: table.byDepth,
    expected: named('expected', 'expected', keyOf(feature, table, table.expected)),
    most: named('most', 'spare', table.most),
    between: table.between,
    rows: table.rows.map((row, i) => ({
      measured: named(`row.${i + 1}.measured`, 'expected', keyOf(feature, table, row.measured)),
      bottom: named(`row.${i + 1}.bottom`, 'planned', row.bottom),
      within: row.within,
      finishes: row.counts.map((count, j) => {
        const { value, turns, mark } = readingOf(scale, count)
        const reading = Number(inUnits(value, scale.units).toFixed(9))
        return { step: first + table.finishes[j]!, reading, turns, mark }
      }),
    })),
  }
}
