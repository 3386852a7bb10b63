import type { Diagnostic } from './diagnostics/diagnostic.ts'
import { tablesOf } from './finish/tables.ts'
import { withGains } from './gains/gains.ts'
import type { Job } from './job/job.ts'
import { benchOf, setupOf } from './job/lower.ts'
import { type Load, readJob } from './job/read-job.ts'
import type { Plan } from './plan/plan.ts'
import { planFeatures } from './planning/features.ts'
import { toPlan } from './planning/plan.ts'
import { passesOf } from './replay/passes.ts'
import { buildSheet } from './sheet/build.ts'
import { withDrawings } from './sheet/drawing.ts'
import type { Sheet } from './sheet/sheet.ts'
import type { SourceFile } from './source/source.ts'

export type Compiled = {
  readonly plan: Plan | null
  readonly diagnostics: readonly Diagnostic[]
  readonly sources: ReadonlyMap<string, SourceFile>
}

/**
 * The whole pipeline: the job is read; its features are drafted, put in order, and planned one after the other, each
 * replayed and its errors summed up; and if a size may miss its limits, changes that would help are tried. What cannot
 * be proved is refused.
 */
export function compile(entry: string, load: Load): Compiled {
  const { job, diagnostics, sources } = readJob(entry, load)
  if (job === null) return { plan: null, diagnostics, sources }
  return { plan: withGains(job, planOf(job), planOf), diagnostics, sources }
}

/** The same without trying what would help: for many jobs at a time. */
export function compilePlain(entry: string, load: Load): Compiled {
  const { job, diagnostics, sources } = readJob(entry, load)
  return { plan: job === null ? null : planOf(job), diagnostics, sources }
}

/** The sheet of a plan without the tables of its stops, which take longer than all else. */
export const bareSheetFor = (plan: Plan): Sheet =>
  buildSheet(
    plan,
    plan.features.map(() => ({ bottom: null, width: null, after: null })),
  )

const planOf = (job: Job): Plan => {
  const bench = benchOf(job)
  const setup = setupOf(bench)
  return toPlan(job, bench, setup, planFeatures(job, bench, setup))
}

/** The sheet of a plan, with the tables that are worked out for its stops. */
export const sheetFor = (plan: Plan): Sheet => buildSheet(plan, tablesOf(plan))

/** The same with what pictures of it are drawn from. */
export const drawnSheetFor = (plan: Plan): Sheet =>
  withDrawings(
    sheetFor(plan),
    plan,
    plan.features.map((feature) =>
      feature.status === 'planned' ? passesOf(plan.lathe, plan.setup, feature.operation, feature.before) : [],
    ),
  )
