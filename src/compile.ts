import { budget } from './budget/budget.ts'
import type { Diagnostic } from './diagnostics/diagnostic.ts'
import { withGains } from './gains/gains.ts'
import type { Job } from './job/job.ts'
import { benchOf, setupOf } from './job/lower.ts'
import { type Load, readJob } from './job/read-job.ts'
import { planFeatures } from './planning/features.ts'
import type { Plan } from './sheet/plan.ts'
import type { SourceFile } from './source/source.ts'

export type Compiled = {
  readonly plan: Plan | null
  readonly diagnostics: readonly Diagnostic[]
  readonly sources: ReadonlyMap<string, SourceFile>
}

/** The whole pipeline: read, check, lower, sequence, replay, budget. What is planned has been proved; what cannot be proved is refused. */
export function compile(entry: string, load: Load): Compiled {
  const { job, diagnostics, sources } = readJob(entry, load)
  if (job === null) return { plan: null, diagnostics, sources }
  return { plan: withGains(job, planOf(job), planOf), diagnostics, sources }
}

const planOf = (job: Job): Plan => {
  const bench = benchOf(job)
  const setup = setupOf(bench)
  const planned = planFeatures(job, bench, setup)
  return planned.toPlan(budget(job.lathe, setup, planned.operations))
}
