import type { WidthRow, WidthTable } from '../../finish/width-table.ts'
import type { Scale } from '../../lathe/lathe.ts'
import { readingOf, shownBefore, shownOn } from '../../phrase/dial.ts'
import { length } from '../../phrase/figure.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import { joinedBy, say } from '../../phrase/say.ts'
import type { Plan } from '../../plan/plan.ts'
import { scaleOf } from '../../plan/scale.ts'
import { inUnits } from '../../units/length.ts'
import type { StopTable, WidthCorrections } from '../sheet.ts'
import { gapsBetween, joined, neighbors, noTable, shortRules, tableRules } from './rows.ts'

/** A table in words, before it is known where its lines are. */
export type InWords = Omit<StopTable, 'lines'>

/** The table in words. `first` is the number of the feature's first step. */
export const widthInWords = (plan: Plan, table: WidthTable, first: number): InWords => {
  const groups = grouped(table)
  const numbers = joinedBy(
    ' and ',
    table.rows[0]!.moves.map(({ index }) => first + index),
  )
  const at = say`${table.rows[0]!.moves.length === 1 ? 'step' : 'steps'} ${numbers}`
  const expected = length('expected', table.expected, plan.units)
  return {
    by: 'width',
    head: say`AND BY THE WIDTH, ${at} (${expected} expected):`,
    at,
    expected,
    rows: groups.map((rows) => rowWords(plan, table, rows)),
    rules: tableRules(
      table,
      gapsBetween(groups, table.quantum) ? 'narrower' : null,
      length('spare', table.most, plan.units),
      (measured) => length('expected', measured, plan.units),
    ),
    short: shortRules(
      table,
      gapsBetween(groups, table.quantum) ? 'narrower' : null,
      length('spare', table.most, plan.units),
      (measured) => length('expected', measured, plan.units),
    ),
  }
}

/**
 * The lines under the stop that show how far to feed across for a measured width. `first` is the number of the
 * feature's first step.
 */
export const widthLines = (plan: Plan, table: WidthTable, first: number, paired: boolean): Phrase[] => {
  if (table.rows.length === 0) return [noTable('THE WIDTH', table.reason)]
  const moved = table.rows[0]!.moves
  const { head, rows: each, rules } = widthInWords(plan, table, first)
  const begins: Phrase =
    moved.length > 1 ? [] : [table.begins ? 'begin at ' : table.over ? 'over to ' : 'feed across to ']
  return [
    head,
    joinedBy(
      '; ',
      each.map(({ keys, reading }, i): Phrase => [...keys, ...(i === 0 ? [': ', ...begins] : [':\u00a0']), ...reading]),
    ),
    ...rules,
    ...(moved.length === 1 ? [] : [['back past to the first reading, then onto the second']]),
    ...(paired
      ? [
          [
            `use both tables: the bottom sets the depth, the width the ${table.over ? 'place of the wall' : 'feed across'}`,
          ],
        ]
      : []),
  ]
}

/** Neighbors with one reading are grouped. */
const grouped = (table: WidthTable): WidthRow[][] => {
  const groups: WidthRow[][] = []
  for (const row of table.rows) {
    const last = groups.at(-1)
    const next = last !== undefined && neighbors(table, last.at(-1)!, row)
    const alike = last?.[0]?.moves.every(({ count }, i) => count === row.moves[i]!.count) === true
    if (next && alike) last.push(row)
    else groups.push([row])
  }
  return groups
}

const rowWords = (plan: Plan, table: WidthTable, rows: readonly WidthRow[]): { keys: Phrase; reading: Phrase } => {
  const key = (i: number): Figure => keyFigure(plan, table, rows[i]!)
  const readings = rows[0]!.moves.map(({ count }) => shownAnywhere(scaleOf(plan, table.slide)!, count))
  return {
    keys: rows.length === 1 ? [key(0)] : [key(0), joined(rows, table.quantum), key(rows.length - 1)],
    reading: readings.flatMap((one, i) => [...(i === 0 ? [] : [', then ']), ...one]),
  }
}

/** A reading, also before zero: "80 (.020 before 0)". */
const shownAnywhere = (scale: Scale, count: number): Phrase =>
  scale.kind === 'readout' || count >= 0 ? shownOn(scale, count) : shownBefore(scale, count)

/** All rows with as many decimals as the one that needs most. */
const keyFigure = (plan: Plan, table: WidthTable, row: WidthRow): Figure => {
  const figures = table.rows.map(({ measured }) => length('expected', measured, plan.units))
  return { ...figures[table.rows.indexOf(row)]!, digits: Math.max(...figures.map(({ digits }) => digits)) }
}

export const widthData = (plan: Plan, table: WidthTable, first: number, place: string): WidthCorrections => {
  const scale = scaleOf(plan, table.slide)!
  const named = (name: string, role: 'expected' | 'spare' | 'planned', value: number) => ({
    ...length(role, value, plan.units),
    id: `${place}.${name}`,
  })
  return {
    expected: named('expected', 'expected', table.expected),
    most: named('most', 'spare', table.most),
    between: table.between,
    rows: table.rows.map((row, i) => ({
      measured: named(`row.${i + 1}.measured`, 'expected', row.measured),
      width: named(`row.${i + 1}.width`, 'planned', row.width),
      within: row.within,
      finishes: row.moves.map(({ index, count }) => {
        const { value, turns, mark } = readingOf(scale, count)
        return { step: first + index, reading: Number(inUnits(value, scale.units).toFixed(9)), turns, mark }
      }),
    })),
  }
}
