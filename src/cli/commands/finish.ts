import { compile } from '../../compile.ts'
import { suggest } from '../../diagnostics/suggest.ts'
import { stopOf } from '../../finish/stop.ts'
import { readSize } from '../../job/read-measure.ts'
import { words } from '../../phrase/words.ts'
import type { FeaturePlan, Plan } from '../../plan/plan.ts'
import { type Format, formatNamed, printerOf } from '../../print/registry.ts'
import { sheetAfter } from '../../sheet-after.ts'
import type { Length, Units } from '../../units/length.ts'
import { type CutOptions, sourceOf } from '../cut-sheet.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import { deliver, guardInputs, type OutputOptions } from '../output.ts'
import { reportDiagnostics } from '../report.ts'
import { tell } from '../tell.ts'

export type FinishOptions = OutputOptions &
  CutOptions & {
    readonly feature?: string
    readonly bottomDiameter: string
    readonly width?: string
    readonly outsideDiameter?: string
    readonly measuredAgain?: boolean
    readonly format: Format
    readonly color?: boolean
  }

/**
 * Prints what remains of one feature, planned from what its bottom (and width) measured at the stop. Status 1 if it is
 * scrap.
 */
export const finishCommand = async (job: string, options: FinishOptions, io: Io): Promise<number> => {
  const stdin = job === '-' ? await readStdin(io) : null
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, loaderFor(io, stdin))
  await reportDiagnostics(diagnostics, sources, options.color, io)
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
  const drawn = formatNamed(options.format).drawn === true
  const sheet = sheetAfter(plan, index, taken, sourceOf(plan, index, options, io), drawn)
  const print = await printerOf('finish', options.format)
  deliver(print(sheet), options, io)
  const feature = sheet.features[0]!
  if (feature.status === 'planned') return 0
  tell(
    `cannot be finished: ${feature.name}: ${words(feature.reason, plan.units)}; ${words(feature.remedy, plan.units)}`,
    io,
  )
  return 1
}

/** Without a name it is the only feature of the job, or the only one of them that stops to measure. */
const indexOf = (plan: Plan, name: string | undefined): number => {
  const names = plan.features.map((feature) => feature.name)
  const quoted = (some: readonly string[]): string => some.map((one) => JSON.stringify(one)).join(', ')
  if (name === undefined) {
    const stopping = plan.features.flatMap((feature, index) => (stops(feature) ? [index] : []))
    if (names.length === 1) return 0
    if (stopping.length === 1) return stopping[0]!
    const some = stopping.length === 0 ? names : stopping.map((index) => names[index]!)
    throw new UsageError(
      `--feature is missing, and the job has more than one; give --feature with one of ${quoted(some)}`,
    )
  }
  const index = names.indexOf(name)
  if (index >= 0) return index
  const meant = suggest(name, names)
  const rest = meant === null ? `the job has ${quoted(names)}` : `did you mean ${JSON.stringify(meant)}?`
  throw new UsageError(`there is no feature ${JSON.stringify(name)}; ${rest}`)
}

const stops = (feature: FeaturePlan): boolean =>
  feature.status === 'planned' && stopOf(feature.operation, feature.trace) !== null

/** A number on the command line is read like a length in the job file. */
const lengthOf = (option: string, text: string, units: Units): Length => {
  const read = readSize(option, text, units)
  if (!read.ok) throw new UsageError(`${read.message}; ${read.hint}`)
  return read.value
}
