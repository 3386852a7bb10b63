import { sheetFor } from '../compile.ts'
import { roughedAt, type Source } from '../finish/source.ts'
import type { Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import { textIn } from '../sheet/changed/data.ts'
import { type Io, UsageError } from './io.ts'
import { dataOf, readKept } from './kept.ts'
import { otherFacts } from './kept-facts.ts'
import { movesIn } from './kept-moves.ts'
import { readingIn } from './reading.ts'

export type CutOptions = { readonly sheet?: string; readonly roughedAt?: string }

/**
 * How the moves before the stop are known: from a sheet that was kept, a roughing reading, or otherwise the job as it
 * is.
 */
export const sourceOf = (plan: Plan, index: number, { sheet, roughedAt: reading }: CutOptions, io: Io): Source => {
  if (sheet !== undefined && reading !== undefined)
    throw new UsageError('give --sheet or --roughed-at, not both: the sheet says what it was roughed to')
  if (sheet !== undefined) return keptSource(plan, index, sheet, io)
  return reading === undefined ? { how: 'job' } : readingSource(plan, index, reading)
}

const keptSource = (plan: Plan, index: number, file: string, io: Io): Source => {
  const kept = readKept(file, io)
  if (!kept.ok) throw new UsageError(`--sheet: ${kept.why}`)
  const { data } = kept
  if (data.continues !== undefined)
    throw new UsageError(`--sheet: ${file} is a sheet of what remains: give the one that was cut before it`)
  const today = dataOf(sheetFor(plan))
  const moves = movesIn(data, plan)
  const other = otherFacts(data, today, plan.features[index]!.name)
  if (other.length > 0) return { how: 'other', differs: other }
  if (!moves.ok) throw new UsageError(`--sheet: ${file}: ${moves.why}`)
  const identity = textIn(data.identity)
  return { how: 'kept', identity: identity === '' ? null : identity, moves: moves.moves }
}

const readingSource = (plan: Plan, index: number, text: string): Source => {
  const feature = plan.features[index]!
  const rough = roughedAt(feature)
  if (rough === null) return { how: 'job' }
  const scale = scaleOf(plan, rough.slide)!
  const read = readingIn(text, scale, rough.count)
  if (!read.ok) throw new UsageError(`--roughed-at: ${read.why}`)
  if (read.count <= 0 || read.count > rough.finish)
    throw new UsageError(
      `--roughed-at: ${JSON.stringify(text)} is no reading that this form is roughed to: roughing stops after 0 and before the finish`,
    )
  return { how: 'reading', count: read.count }
}
