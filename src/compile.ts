import type { Diagnostic } from './diagnostics/diagnostic.ts'
import { withGains } from './gains/gains.ts'
import type { Job } from './job/job.ts'
import { benchOf, setupOf } from './job/lower.ts'
import { type Load, readJob } from './job/read-job.ts'
import type { Plan } from './plan/plan.ts'
import { planFeatures } from './planning/features.ts'
import { toPlan } from './planning/plan.ts'
import type { SourceFile } from './source/source.ts'

export type Compiled = {
  readonly plan: Plan | null
  readonly diagnostics: readonly Diagnostic[]
  readonly sources: ReadonlyMap<string, SourceFile>
}

/**
 * The whole pipeline: the job is read; its features are drafted, put in order, and planned one after the other, each replayed and with its errors summed
 * up; and where a size may miss its limits, what would help is tried. What cannot be proved is refused.
 */
export function compile(entry: string, load: Load): Compiled {
  const { job, diagnostics, sources } = readJob(entry, load)
  if (job === null) return { plan: null, diagnostics, sources }
  return { plan: withGains(job, planOf(job), planOf), diagnostics, sources }
}

const planOf = (job: Job): Plan => {
  const bench = benchOf(job)
  const setup = setupOf(bench)
  return toPlan(job, bench, setup, planFeatures(job, bench, setup))
}
