import { compile } from '../../compile.ts'
import { grindFor } from '../../grind-for.ts'
import { type Format, printerOf } from '../../print/registry.ts'
import type { Io } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import type { OutputOptions } from '../output.ts'
import { deliver, guardInputs } from '../output.ts'
import { reportDiagnostics } from '../report.ts'

export type GrindOptions = OutputOptions & { readonly format: Format; readonly color?: boolean }

/**
 * Prints how the tools of one job are ground. Features that cannot be cut as asked are named on it, and the status is
 * 1.
 */
export const grindCommand = async (job: string, options: GrindOptions, io: Io): Promise<number> => {
  const stdin = job === '-' ? await readStdin(io) : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  await reportDiagnostics(diagnostics, sources, options.color, io)
  if (plan === null) return 2
  guardInputs(sources.keys(), options, io)
  const sheet = grindFor(plan)
  const print = await printerOf('grind', options.format)
  deliver(print(sheet), options, io)
  return sheet.left.length > 0 ? 1 : 0
}
