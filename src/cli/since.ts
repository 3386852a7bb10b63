import type { Format } from '../print/registry.ts'
import { changedSince } from '../sheet/changed/changed.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { type Io, UsageError } from './io.ts'
import { dataOf, readKept } from './kept.ts'
import { noPlaceIn } from './no-place.ts'

/** The sheet, with its differences from the one that was kept in a file. */
export const sinceKept = (sheet: Sheet, since: string, format: Format, io: Io): Sheet => {
  noPlaceIn('--since', format)
  const kept = readKept(since, io)
  if (!kept.ok) throw new UsageError(`--since: ${kept.why}`)
  return { ...sheet, changed: changedSince(kept.data, dataOf(sheet)) }
}
