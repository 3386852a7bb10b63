import { compile } from '../../compile.ts'
import { suggest } from '../../diagnostics/suggest.ts'
import { remainingSheet } from '../../planning/finish.ts'
import { PRINTERS } from '../../print/registry.ts'
import type { Plan } from '../../sheet/plan.ts'
import type { Length, Units } from '../../units/length.ts'
import { parseLength } from '../../units/parse-length.ts'
import { type CutOptions, sourceOf } from '../cut-sheet.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor, STDIN } from '../load.ts'
import { deliver, guardInputs, type OutputOptions } from '../output.ts'
import { reportDiagnostics } from '../report.ts'

export type FinishOptions = OutputOptions &
  CutOptions & {
    readonly feature: string
    readonly bottomDiameter: string
    readonly width?: string
    readonly outsideDiameter?: string
    readonly measuredAgain?: boolean
    readonly format: 'text' | 'json'
    readonly color?: boolean
  }

/** Prints what remains of one feature, planned from what its bottom (and width) measured at the stop. Status 1 where it is past saving. */
export const finishCommand = async (job: string, options: FinishOptions, io: Io): Promise<number> => {
  const stdin = job === '-' ? await io.stdin.read() : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  reportDiagnostics(diagnostics, sources, options.color, io)
  if (plan === null) return 2
  guardInputs(sources.keys(), options, io)
  const given = (option: string, text: string | undefined): Length | null =>
    text === undefined ? null : lengthOf(option, text, plan.units)
  const taken = {
    bottom: lengthOf('--bottom-diameter', options.bottomDiameter, plan.units),
    width: given('--width', options.width),
    outside: given('--outside-diameter', options.outsideDiameter),
    again: options.measuredAgain === true,
  }
  if (taken.outside !== null && taken.outside <= taken.bottom)
    throw new UsageError(
      '--outside-diameter is no more than --bottom-diameter: the one is over the groove, the other in it',
    )
  const index = indexOf(plan, options.feature)
  const sheet = remainingSheet(plan, index, taken, sourceOf(plan, index, options, io))
  deliver(PRINTERS[options.format](sheet), options, io)
  const feature = sheet.features[0]!
  if (feature.status === 'planned') return 0
  io.stderr.write(`groovewright: cannot be finished: ${feature.name}: ${feature.reason}; ${feature.remedy}\n`)
  return 1
}

const indexOf = (plan: Plan, name: string): number => {
  const names = plan.features.map((feature) => feature.name)
  const index = names.indexOf(name)
  if (index >= 0) return index
  const meant = suggest(name, names)
  const rest =
    meant === null
      ? `the job has ${names.map((one) => JSON.stringify(one)).join(', ')}`
      : `did you mean ${JSON.stringify(meant)}?`
  throw new UsageError(`there is no feature ${JSON.stringify(name)}; ${rest}`)
}

const lengthOf = (option: string, text: string, units: Units): Length => {
  const read = parseLength(text, units)
  if (!read.ok) throw new UsageError(`${option}: ${read.message}; ${read.hint}`)
  if (!(read.value > 0)) throw new UsageError(`${option}: ${JSON.stringify(text)} is no size of a part`)
  return read.value
}
