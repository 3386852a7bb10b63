import type { Bench, Draft } from '../features/draft.ts'
import { draftFeature } from '../features/registry.ts'
import { type JobWarning, warning } from '../job/checks/warnings.ts'
import type { Job } from '../job/job.ts'
import type { Setup } from '../moves/operation.ts'
import { say } from '../phrase/say.ts'
import type { Progress } from '../replay/replay.ts'
import { type Planned, planOne } from './one.ts'

/** More moves than this for one form are a morning at the dials. Common practice, no source. */
const MANY = 60

/**
 * A form that is stepped along by very many moves, where a tool that is ground to it takes less than half of them: both
 * numbers, the second from a plan that was made and replayed. Otherwise nothing.
 */
export const byFormTool = (
  { job, bench, setup }: { readonly job: Job; readonly bench: Bench; readonly setup: Setup },
  { draft, operation }: Planned,
  before: readonly Draft[],
  progress: Progress,
): readonly JobWarning[] => {
  const { feature, cuts } = draft
  const moves = operation.moves.length
  if (cuts.style !== 'steps' || moves <= MANY || feature.tool === null) return []
  const drafted = draftFeature(bench, { ...feature, tool: null })
  if (!drafted.ok) return []
  const angle = drafted.draft.angle ?? feature.cutting.compoundAngle ?? job.lathe.compound.angle
  const other = planOne(job, bench, setup, drafted.draft, angle, before, progress)
  if (!('planned' in other) || other.planned.operation.moves.length > moves / 2) return []
  const filed = OUTSIDE.has(operation.kind) ? '; or turn a chamfer and file it round, by a radius gauge' : ''
  return [
    warning(
      'many-moves',
      say`Stepped along with tool "${draft.tool.name}" it takes ${moves} moves; a tool that is ground to the form takes ${other.planned.operation.moves.length}`,
      `grind a tool to the form, unless none can be ground: leave tool: out of the feature, and the sheet tells what to grind${filed}`,
      feature.origin,
    ),
  ]
}

/** What a file reaches. Common practice, no source. */
const OUTSIDE: ReadonlySet<string> = new Set(['corner radius'])
