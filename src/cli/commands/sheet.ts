import { type Compiled, compile, drawnSheetFor, sheetFor } from '../../compile.ts'
import type { Plan } from '../../plan/plan.ts'
import { type Format, formatNamed, printerOf } from '../../print/registry.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Io } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import { noPlaceIn } from '../no-place.ts'
import type { OutputOptions } from '../output.ts'
import { deliver, guardInputs } from '../output.ts'
import { refusalProblem, reportDiagnostics } from '../report.ts'

export type SheetOptions = OutputOptions & {
  readonly format: Format
  readonly color?: boolean
  readonly inspection?: boolean
  readonly grind?: boolean
  readonly slips?: boolean
  readonly supervised?: boolean
  readonly card?: boolean
  readonly width?: number
  /** A small drawing of each form; on a terminal also where nothing is said of it. */
  readonly drawing?: boolean
  /** A sheet that was kept, as data. */
  readonly since?: string
}

/** Prints the sheet of one job. If a feature is refused the others are still printed, and the status is 1. */
export const sheetCommand = async (job: string, options: SheetOptions, io: Io): Promise<number> => {
  if (options.card !== undefined || options.width !== undefined) (await import('../in-lines.ts')).inLinesOnly(options)
  const stdin = job === '-' ? await readStdin(io) : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  await reportDiagnostics(diagnostics, sources, options.color, io)
  if (plan === null) return 2
  guardInputs(sources.keys(), options, io)
  const print = await printerOf('sheet', options.format)
  deliver(print(await sheetOf(plan, options, io), options), options, io)
  return refusals(plan, sources, options, io)
}

/** What is added on request is loaded on request. */
export const sheetOf = async (
  plan: Plan,
  { grind, slips, since, supervised, format, drawing, card, output }: SheetOptions,
  io: Io,
): Promise<Sheet> => {
  if (supervised === true) noPlaceIn('--supervised', format)
  const sketched =
    formatNamed(format).inLines === true && card !== true && (drawing ?? (output === undefined && io.stdout.isTTY))
  const bare = formatNamed(format).drawn === true || sketched ? drawnSheetFor(plan) : sheetFor(plan)
  const sheet: Sheet = {
    ...bare,
    ...(supervised === true
      ? { supervised: (await import('../../sheet/supervised.ts')).supervisedFor(plan, bare) }
      : {}),
    ...(grind === true ? { grind: (await import('../../grind-for.ts')).grindFor(plan) } : {}),
    ...(slips === true ? { slips: (await import('../../slips-for.ts')).slipsFor(plan) } : {}),
  }
  return since === undefined ? sheet : (await import('../since.ts')).sinceKept(sheet, since, format, io)
}

/** Each refused feature with its place in the file, in addition to what the sheet prints about it. */
export const refusals = async (
  plan: Plan,
  sources: Compiled['sources'],
  options: SheetOptions,
  io: Io,
): Promise<number> => {
  const refused = plan.features.flatMap((feature) =>
    feature.status === 'refused' ? [refusalProblem(feature, plan.units)] : [],
  )
  await reportDiagnostics(refused, sources, options.color, io)
  return refused.length > 0 ? 1 : 0
}
