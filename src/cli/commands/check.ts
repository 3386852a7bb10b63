import { type Compiled, compile } from '../../compile.ts'
import type { Diagnostic } from '../../diagnostics/diagnostic.ts'
import { brief, oneLine } from '../../diagnostics/escaped.ts'
import type { Load } from '../../job/read-files.ts'
import { plain } from '../../phrase/words.ts'
import { labelOf } from '../../plan/labels.ts'
import type { FeaturePlan, Plan } from '../../plan/plan.ts'
import type { CheckedFeature, CheckedJob, Compared, Found, Paint, Verdict } from '../../print/check-report.ts'
import { type Format, formatNamed, printerOf } from '../../print/registry.ts'
import type { Units } from '../../units/length.ts'
import { paintFor } from '../color.ts'
import { findJobs } from '../find-jobs.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import { refusalProblem, reportDiagnostics, warningProblems } from '../report.ts'
import { tell } from '../tell.ts'

export type CheckOptions = { readonly format: Format; readonly color?: boolean; readonly against?: string }

const STATUS: Readonly<Record<Verdict, number>> = { good: 0, 'may not hold': 1, refused: 1, unreadable: 2 }

const KEPT: Readonly<Record<Compared['outcome'], number>> = { same: 0, different: 1, missing: 1, unreadable: 2 }

/** Every job is checked, whatever the result of the others; the status is the worst of them. */
export const checkCommand = async (paths: readonly string[], options: CheckOptions, io: Io): Promise<number> => {
  const stdin = paths.includes('-') ? await readStdin(io) : null
  if (options.against !== undefined && stdin !== null)
    throw new UsageError('--against goes by the names of jobs, and standard input has none')
  const found = findJobs(paths, io)
  for (const { path, why } of found.missing) tell(`cannot read ${JSON.stringify(path)}: ${why}`, io)
  const checked: CheckedJob[] = []
  for (const file of found.jobs)
    checked.push(await checkOne(file, loaderFor(io, stdin, paths.includes(file)), options, io))
  const print = await printerOf('check', options.format)
  io.stdout.write(print({ jobs: checked, skipped: found.skipped }, await paintOf(options, io)))
  if (formatNamed(options.format).namesSkipped !== true)
    for (const file of found.skipped) io.stderr.write(`skipped, not a job: ${oneLine(file)}\n`)
  if (checked.length === 0) tell('no job found: a job is a YAML file with "features:"', io)
  if (checked.length === 0 || found.missing.length > 0) return 2
  return Math.max(
    ...checked.flatMap(({ verdict, against }) => [STATUS[verdict], against === null ? 0 : KEPT[against.outcome]]),
  )
}

const checkOne = async (path: string, load: Load, options: CheckOptions, io: Io): Promise<CheckedJob> => {
  const file = path === '-' ? STDIN : path
  const { plan, diagnostics, sources } = compile(file, load)
  await reportDiagnostics(diagnostics, sources, options.color, io)
  const refused = plan === null ? [] : plan.features.filter((feature) => feature.status === 'refused')
  const refusals = refused.map((one) => refusalProblem(one, plan!.units))
  await reportDiagnostics(refusals, sources, options.color, io)
  const warnings = plan === null ? [] : warningProblems(plan)
  await reportDiagnostics(warnings, sources, options.color, io)
  const found = [...diagnostics, ...refusals, ...warnings].map((one) => foundAt(one, sources))
  const features = plan === null ? [] : plan.features.map((feature) => checkedFeature(feature, plan.units))
  const against =
    plan === null || options.against === undefined
      ? null
      : (await import('../against.ts')).compareWith(options.against, file, plan, io)
  return { file, verdict: verdictOf(plan, features), features, problems: diagnostics.map(problemOf), found, against }
}

const checkedFeature = (feature: FeaturePlan, units: Units): CheckedFeature => {
  const { name, kind, status } = feature
  if (feature.status === 'refused') {
    const [reason, remedy] = [plain(feature.reason, units), plain(feature.remedy, units)]
    const { code } = feature
    return { name, kind, status, mayNotHold: [], refusal: { code, reason, remedy } }
  }
  // A spindle that cannot turn slowly enough is not usable for forming, even if all sizes hold.
  const tooFast = feature.spindle.tooFast ? [{ id: TOO_FAST, label: TOO_FAST }] : []
  const sizes = feature.budget.filter(({ verdict }) => verdict === 'may not hold')
  const mayNotHold = [...tooFast, ...sizes.map(({ id }) => ({ id, label: labelOf(id) }))]
  return { name, kind, status, mayNotHold, refusal: null }
}

const TOO_FAST = 'no spindle speed is low enough'

const problemOf = ({ code, severity, message, hint, origin }: Diagnostic): CheckedJob['problems'][number] => ({
  code,
  severity,
  file: origin.file,
  path: origin.path,
  message: brief(message),
  hint: hint === undefined ? null : brief(hint),
})

const foundAt = (one: Diagnostic, sources: Compiled['sources']): Found => {
  const { code, severity, origin, message, hint } = one
  const span = one.span ?? sources.get(origin.file)?.locate(origin.path, one.at ?? 'value') ?? null
  const at = { line: span?.line ?? null, column: span?.column ?? null }
  return {
    code,
    severity,
    file: origin.file,
    ...at,
    message: brief(message),
    hint: hint === undefined ? null : brief(hint),
  }
}

const verdictOf = (plan: Plan | null, features: readonly CheckedFeature[]): Verdict => {
  if (plan === null) return 'unreadable'
  if (features.some(({ status }) => status === 'refused')) return 'refused'
  return features.some(({ mayNotHold }) => mayNotHold.length > 0) ? 'may not hold' : 'good'
}

const paintOf = async ({ color }: CheckOptions, io: Io): Promise<Paint> => {
  const { green, yellow, red } = await paintFor(color, io.env, io.stdout)
  return { good: green, 'may not hold': yellow, refused: red, unreadable: red }
}
