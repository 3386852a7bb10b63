import { compile } from '../../compile.ts'
import type { Format } from '../../print/registry.ts'
import { PRINTERS } from '../../print/registry.ts'
import { buildSheet } from '../../sheet/build.ts'
import type { Plan } from '../../sheet/plan.ts'
import type { Io } from '../io.ts'
import { loaderFor, STDIN } from '../load.ts'
import type { OutputOptions } from '../output.ts'
import { deliver } from '../output.ts'
import { reportDiagnostics } from '../report.ts'

export type SheetOptions = OutputOptions & { readonly format: Format; readonly color?: boolean }

/** Prints the sheet of one job. A refused feature leaves the others printed, and the status at 1. */
export const sheetCommand = async (job: string, options: SheetOptions, io: Io): Promise<number> => {
  const stdin = job === '-' ? await io.stdin.read() : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  reportDiagnostics(diagnostics, sources, options.color, io)
  if (plan === null) return 2
  deliver(PRINTERS[options.format](buildSheet(plan)), options, io)
  return refusals(plan, io)
}

const refusals = (plan: Plan, io: Io): number => {
  const refused = plan.features.filter((feature) => feature.status === 'refused')
  for (const { name, reason } of refused) io.stderr.write(`groovewright: cannot be cut as asked: ${name}: ${reason}\n`)
  return refused.length > 0 ? 1 : 0
}
