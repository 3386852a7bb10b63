import { type Compiled, compile, drawnSheetFor, sheetFor, slipsFor } from '../../compile.ts'
import { GRINDER_CAUTIONS } from '../../handbook/grinding.ts'
import { either } from '../../job/schema-walk.ts'
import type { Plan } from '../../plan/plan.ts'
import { type Format, formatNamed, formatsOf, printerOf } from '../../print/registry.ts'
import { changedSince } from '../../sheet/changed/changed.ts'
import { grindSheet } from '../../sheet/grind/grind.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import { type Io, UsageError } from '../io.ts'
import { dataOf, readKept } from '../kept.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import type { OutputOptions } from '../output.ts'
import { deliver, guardInputs } from '../output.ts'
import { refusalProblem, reportDiagnostics } from '../report.ts'

export type SheetOptions = OutputOptions & {
  readonly format: Format
  readonly color?: boolean
  readonly inspection?: boolean
  readonly grind?: boolean
  readonly slips?: boolean
  /** A sheet that was kept, as data. */
  readonly since?: string
}

/** Prints the sheet of one job. If a feature is refused the others are still printed, and the status is 1. */
export const sheetCommand = async (job: string, options: SheetOptions, io: Io): Promise<number> => {
  const stdin = job === '-' ? await readStdin(io) : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  await reportDiagnostics(diagnostics, sources, options.color, io)
  if (plan === null) return 2
  guardInputs(sources.keys(), options, io)
  deliver(printerOf('sheet', options.format)(sinceKept(sheetOf(plan, options), options, io), options), options, io)
  return refusals(plan, sources, options, io)
}

const sheetOf = (plan: Plan, { grind, slips, format }: SheetOptions): Sheet => ({
  ...(formatNamed(format).drawn === true ? drawnSheetFor(plan) : sheetFor(plan)),
  ...(grind === true ? { grind: grindSheet(plan, GRINDER_CAUTIONS) } : {}),
  ...(slips === true ? { slips: slipsFor(plan) } : {}),
})

/** The sheet, with its differences from the one that was kept. */
const sinceKept = (sheet: Sheet, { since, format }: SheetOptions, io: Io): Sheet => {
  if (since === undefined) return sheet
  const { movesAlone } = formatNamed(format)
  if (movesAlone !== undefined) {
    const others = formatsOf('sheet').filter((each) => formatNamed(each).movesAlone === undefined)
    throw new UsageError(`--since has no place in ${movesAlone}: leave it out, or print ${either(others)}`)
  }
  const kept = readKept(since, io)
  if (!kept.ok) throw new UsageError(`--since: ${kept.why}`)
  return { ...sheet, changed: changedSince(kept.data, dataOf(sheet)) }
}

/** Each refused feature with its place in the file, in addition to what the sheet prints about it. */
const refusals = async (plan: Plan, sources: Compiled['sources'], options: SheetOptions, io: Io): Promise<number> => {
  const refused = plan.features.flatMap((feature) =>
    feature.status === 'refused' ? [refusalProblem(feature, plan.units)] : [],
  )
  await reportDiagnostics(refused, sources, options.color, io)
  return refused.length > 0 ? 1 : 0
}
