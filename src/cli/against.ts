import { basename, join } from 'node:path'
import { sheetFor } from '../compile.ts'
import type { Plan } from '../plan/plan.ts'
import type { Compared } from '../print/check-report.ts'
import { changedLines } from '../print/text/changed.ts'
import { plain } from '../print/text/columns.ts'
import { changedSince } from '../sheet/changed/changed.ts'
import { type Data, isData } from '../sheet/changed/data.ts'
import type { Io } from './io.ts'
import { dataOf, readKept } from './kept.ts'

/** Compares `NAME.json` in the folder, as `sheet --format json` wrote it, with the plan of `NAME.yaml`. */
export const compareWith = (folder: string, job: string, plan: Plan, io: Io): Compared => {
  const file = join(folder, `${basename(job).replace(/\.ya?ml$/i, '')}.json`)
  const kept = readKept(file, io)
  if (!kept.ok && kept.missing) return { outcome: 'missing', lines: [`no sheet is kept: ${file}`] }
  if (!kept.ok) return { outcome: 'unreadable', lines: [kept.why] }
  const lines = comparedWith(kept.data, plan)
  if (lines === null) return { outcome: 'unreadable', lines: [`${file} cannot be compared: its parts are no sheet`] }
  return lines.length === 0 ? { outcome: 'same', lines } : { outcome: 'different', lines: shortened(lines) }
}

/**
 * Null where the file has the keys of a sheet and something else under them: one such file must not lose the results of
 * all other jobs.
 */
const comparedWith = (kept: Data, plan: Plan): readonly string[] | null => {
  const today = dataOf(sheetFor(plan))
  try {
    return differences(plainSheet(kept), today, plan)
  } catch (error) {
    if (error instanceof TypeError || error instanceof RangeError) return null
    throw error
  }
}

/**
 * Without what is added only on request: a sheet kept with its slips or its grinding is compared in all that every
 * sheet has.
 */
const plainSheet = ({ slips: _, changed: __, ...sheet }: Data): Data => ({
  ...sheet,
  ...(Array.isArray(sheet.features) ? { features: sheet.features.map(withoutGrinding) } : {}),
})

const withoutGrinding = (feature: unknown): unknown => {
  if (!isData(feature)) return feature
  const { grind: _, ...rest } = feature
  return rest
}

/** The changes as a sheet prints them; if there are none of that kind, every value that differs, by its path. */
const differences = (stored: Data, today: Data, plan: Plan): string[] => {
  const lines = changedLines(changedSince(stored, today), plan.units).map(plain)
  return lines.length > 0 ? lines : changes('', stored, today)
}

/** Every value that differs, by its path. */
const changes = (path: string, before: unknown, now: unknown): string[] => {
  if (Object.is(before, now)) return []
  if (isData(before) && isData(now))
    return [...new Set([...Object.keys(before), ...Object.keys(now)])].flatMap((key) =>
      changes(path === '' ? key : `${path}.${key}`, before[key], now[key]),
    )
  if (Array.isArray(before) && Array.isArray(now))
    return Array.from({ length: Math.max(before.length, now.length) }).flatMap((_, i) =>
      changes(`${path}.${i + 1}`, before[i], now[i]),
    )
  return [`${path}: ${shown(before)} -> ${shown(now)}`]
}

const shown = (value: unknown): string => {
  if (value === undefined) return '(none)'
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

const MOST = 12
const shortened = (lines: readonly string[]): string[] =>
  lines.length <= MOST ? [...lines] : [...lines.slice(0, MOST), `and ${lines.length - MOST} more`]
