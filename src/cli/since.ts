import { either } from '../job/schema-walk.ts'
import { type Format, formatNamed, formatsOf } from '../print/registry.ts'
import { changedSince } from '../sheet/changed/changed.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { type Io, UsageError } from './io.ts'
import { dataOf, readKept } from './kept.ts'

/** The sheet, with its differences from the one that was kept in a file. */
export const sinceKept = (sheet: Sheet, since: string, format: Format, io: Io): Sheet => {
  const { movesAlone } = formatNamed(format)
  if (movesAlone !== undefined) {
    const others = formatsOf('sheet').filter((each) => formatNamed(each).movesAlone === undefined)
    throw new UsageError(`--since has no place in ${movesAlone}: leave it out, or print ${either(others)}`)
  }
  const kept = readKept(since, io)
  if (!kept.ok) throw new UsageError(`--since: ${kept.why}`)
  return { ...sheet, changed: changedSince(kept.data, dataOf(sheet)) }
}
