import { compile } from '../../compile.ts'
import type { Diagnostic } from '../../diagnostics/diagnostic.ts'
import type { Instrument } from '../../moves/operation.ts'
import { plain } from '../../phrase/words.ts'
import { labelOf } from '../../plan/labels.ts'
import type { FeaturePlan, Plan } from '../../plan/plan.ts'
import type { Units } from '../../units/length.ts'
import { type Compared, compareWith } from '../against.ts'
import { type Paint, paintFor } from '../color.ts'
import { findJobs } from '../find-jobs.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor, STDIN } from '../load.ts'
import { refusalProblem, reportDiagnostics, warningProblems } from '../report.ts'

export type CheckOptions = { readonly format: 'text' | 'json'; readonly color?: boolean; readonly against?: string }

type Verdict = 'good' | 'may not hold' | 'refused' | 'unreadable'
type Checked = {
  readonly file: string
  readonly verdict: Verdict
  readonly features: readonly CheckedFeature[]
  readonly problems: readonly Diagnostic[]
  /** Null where it is not asked for, or nothing is planned. */
  readonly against: Compared | null
}
type CheckedFeature = {
  readonly name: string
  readonly kind: string
  readonly status: 'planned' | 'refused'
  /** Dimensions that may not hold, and a spindle too fast to form at; empty for a refused feature. */
  readonly mayNotHold: readonly string[]
  readonly refusal: { readonly code: string; readonly reason: string; readonly remedy: string } | null
}

const STATUS: Readonly<Record<Verdict, number>> = { good: 0, 'may not hold': 1, refused: 1, unreadable: 2 }

const KEPT: Readonly<Record<Compared['outcome'], number>> = { same: 0, different: 1, missing: 1, unreadable: 2 }

/** Every job is checked, whatever becomes of the others; the status is the worst of them. */
export const checkCommand = async (paths: readonly string[], options: CheckOptions, io: Io): Promise<number> => {
  const stdin = paths.includes('-') ? await io.stdin.read() : null
  if (options.against !== undefined && stdin !== null)
    throw new UsageError('--against goes by the names of jobs, and standard input has none')
  const found = findJobs(paths, io)
  for (const { path, why } of found.missing)
    io.stderr.write(`groovewright: cannot read ${JSON.stringify(path)}: ${why}\n`)
  const checked: Checked[] = []
  for (const file of found.jobs) checked.push(await checkOne(file, stdin, options, io))
  io.stdout.write(
    options.format === 'json'
      ? asJson(checked, found.skipped)
      : asText(checked, found.skipped.length, await paintFor(options.color, io.env, io.stdout)),
  )
  if (options.format === 'text') for (const file of found.skipped) io.stderr.write(`skipped, not a job: ${file}\n`)
  if (checked.length === 0) io.stderr.write('groovewright: no job found: a job is a YAML file with "features:"\n')
  if (checked.length === 0 || found.missing.length > 0) return 2
  return Math.max(
    ...checked.flatMap(({ verdict, against }) => [STATUS[verdict], against === null ? 0 : KEPT[against.outcome]]),
  )
}

const checkOne = async (path: string, stdin: Uint8Array | null, options: CheckOptions, io: Io): Promise<Checked> => {
  const file = path === '-' ? STDIN : path
  const { plan, diagnostics, sources } = compile(file, loaderFor(io, stdin))
  await reportDiagnostics(diagnostics, sources, options.color, io)
  const refused = plan === null ? [] : plan.features.filter((feature) => feature.status === 'refused')
  await reportDiagnostics(
    refused.map((one) => refusalProblem(one, plan!.units)),
    sources,
    options.color,
    io,
  )
  if (plan !== null) await reportDiagnostics(warningProblems(plan), sources, options.color, io)
  const features = plan === null ? [] : plan.features.map((feature) => checkedFeature(feature, plan.units))
  const against = plan === null || options.against === undefined ? null : compareWith(options.against, file, plan, io)
  return { file, verdict: verdictOf(plan, features), features, problems: diagnostics, against }
}

const checkedFeature = (feature: FeaturePlan, units: Units): CheckedFeature => {
  const { name, kind, status } = feature
  if (feature.status === 'refused') {
    const [reason, remedy] = [plain(feature.reason, units), plain(feature.remedy, units)]
    const { code } = feature
    return { name, kind, status, mayNotHold: [], refusal: { code, reason, remedy } }
  }
  // A spindle that cannot turn slowly enough is no way to form, however well the sizes come out.
  const tooFast = feature.spindle.tooFast ? ['no spindle speed is low enough'] : []
  const dimensions = feature.budget.filter(({ verdict }) => verdict === 'may not hold').map(({ id }): string => id)
  const mayNotHold = [...tooFast, ...dimensions]
  return { name, kind, status, mayNotHold, refusal: null }
}

const verdictOf = (plan: Plan | null, features: readonly CheckedFeature[]): Verdict => {
  if (plan === null) return 'unreadable'
  if (features.some(({ status }) => status === 'refused')) return 'refused'
  return features.some(({ mayNotHold }) => mayNotHold.length > 0) ? 'may not hold' : 'good'
}

/** A job whose sheet on the wall is another one (or that has none there, where one is asked for) is not counted as good. */
const counted = ({ verdict, against }: Checked): boolean =>
  verdict !== 'good' || against === null || against.outcome === 'same'

const asText = (checked: readonly Checked[], skipped: number, { red, yellow, green }: Paint): string => {
  const paint = { good: green, 'may not hold': yellow, refused: red, unreadable: red }
  const lines = checked.map(
    ({ file, verdict, features, against }) =>
      `${file}: ${paint[verdict](verdict)}${told(verdict, features)}${kept(against)}`,
  )
  const counts = (['good', 'may not hold', 'refused', 'unreadable'] as const)
    .map((verdict) => [verdict, checked.filter((each) => each.verdict === verdict && counted(each)).length] as const)
    .filter(([verdict, n]) => n > 0 || verdict === 'good')
    .map(([verdict, n]) => `${n} ${verdict}`)
  const others = checked.filter((each) => !counted(each)).length
  const notKept = others === 0 ? [] : [`${others} good but not as kept`]
  const summary = `${checked.length} ${checked.length === 1 ? 'job' : 'jobs'}: ${[...counts, ...notKept, ...(skipped > 0 ? [`${skipped} skipped`] : [])].join(', ')}`
  return `${[...lines, summary].join('\n')}\n`
}

/** Nothing of a sheet that is the same; otherwise the lines of the difference, below the job and indented. */
const kept = (against: Compared | null): string => {
  if (against === null || against.outcome === 'same') return ''
  const head = against.outcome === 'different' ? '; not the sheet that is kept (kept -> planned today):' : ';'
  return [head, ...against.lines.map((line) => `    ${line}`)].join('\n')
}

/** A size by its name on the sheet; whatever else may not hold is said in words already. */
const named = (one: string): string => labelOf(one as Instrument) ?? one

const told = (verdict: Verdict, features: readonly CheckedFeature[]): string => {
  switch (verdict) {
    case 'good':
      return `, ${features.length} ${features.length === 1 ? 'feature' : 'features'}`
    case 'unreadable':
      return ''
    case 'refused':
      return `: ${features.flatMap(({ name, refusal }) => (refusal === null ? [] : [`${name}: ${refusal.reason}`])).join('; ')}`
    case 'may not hold':
      return `: ${features
        .filter(({ mayNotHold }) => mayNotHold.length > 0)
        .map(({ name, mayNotHold }) => `${name} (${mayNotHold.map(named).join(', ')})`)
        .join('; ')}`
  }
}

const asJson = (checked: readonly Checked[], skipped: readonly string[]): string => {
  const count = (wanted: Verdict) => checked.filter((each) => each.verdict === wanted && counted(each)).length
  const jobs = checked.map(({ file, verdict, features, problems, against }) => ({
    file,
    verdict,
    features,
    problems: problems.map(({ code, severity, message, hint, origin }) => ({
      code,
      severity,
      file: origin.file,
      path: origin.path,
      message,
      hint: hint ?? null,
    })),
    ...(against === null ? {} : { against: { outcome: against.outcome, differences: against.lines } }),
  }))
  const summary = {
    jobs: checked.length,
    good: count('good'),
    ...(checked.every(({ against }) => against === null)
      ? {}
      : { goodButNotAsKept: checked.filter((each) => !counted(each)).length }),
    mayNotHold: count('may not hold'),
    refused: count('refused'),
    unreadable: count('unreadable'),
    skipped: skipped.length,
  }
  return `${JSON.stringify({ format: 'groovewright.check/1', jobs, skipped, summary }, null, 2)}\n`
}
