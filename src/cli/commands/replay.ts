import { compile } from '../../compile.ts'
import { heavyCuts } from '../../judge/heavy.ts'
import { judge } from '../../judge/judge.ts'
import { plain } from '../../phrase/words.ts'
import type { FeaturePlan, Plan } from '../../plan/plan.ts'
import { type Format, printerOf } from '../../print/registry.ts'
import { type Progress, replayNext, startOf } from '../../replay/replay.ts'
import { readMoves, type Written } from '../../written/written.ts'
import type { Io } from '../io.ts'
import { loaderFor, readStdin, STDIN } from '../load.ts'
import { mistakenFiles } from '../mistaken-files.ts'
import type { OutputOptions } from '../output.ts'
import { deliver, guardInputs } from '../output.ts'
import { replayReport } from '../replay-report.ts'
import type { LineOf, Replayed } from '../replayed.ts'
import { reportDiagnostics } from '../report.ts'
import { tell } from '../tell.ts'

export type ReplayOptions = OutputOptions & { readonly format: Format; readonly color?: boolean }

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/**
 * Replays a list of moves that somebody wrote on the lathe of a job. 0: proven within the limits, 1: not, 2:
 * unreadable.
 */
export const replayCommand = async (job: string, moves: string, options: ReplayOptions, io: Io): Promise<number> => {
  if (job === '-' && moves === '-') {
    tell('job and moves cannot both be read from standard input', io)
    return 2
  }
  const stdin = job === '-' || moves === '-' ? await readStdin(io) : null
  const load = loaderFor(io, stdin)
  const mistaken = mistakenFiles(job, moves, load)
  if (mistaken !== null) {
    tell(mistaken, io)
    return 2
  }
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, load)
  await reportDiagnostics(diagnostics, sources, options.color, io)
  const list = load(moves === '-' ? STDIN : moves, null)
  if (!list.ok) tell(list.message, io)
  if (plan === null || !list.ok) return 2
  const written = readMoves(list.bytes, list.file, {
    lathe: plan.lathe,
    units: plan.units,
    features: plan.features.map(({ name }) => name),
  })
  await reportDiagnostics(written.diagnostics, new Map([[list.file, written.source]]), options.color, io)
  if (written.operations === null) return 2
  const replayed = replayAll(plan, written)
  const proven = replayed.every((one) => one.status === 'replayed' && one.judgment.proven)
  const lineOf: LineOf = (move) => written.source.locate(move.origin.path, 'value')
  const print = await printerOf('replay', options.format)
  const text = print(replayReport(plan.units, replayed, proven, list.file, lineOf))
  guardInputs([...sources.keys(), list.file], options, io)
  deliver(text, options, io)
  return proven ? 0 : 1
}

/**
 * In the order of the list, each on the part as the one before has left it; then the features that the list leaves out.
 */
function replayAll(plan: Plan, { operations }: Written): Replayed[] {
  let progress: Progress = startOf(plan.setup)
  const done = (operations ?? []).map(({ feature, moves }, index): Replayed => {
    const planned = plan.features[feature]!
    if (planned.status === 'refused')
      return {
        name: planned.name,
        status: 'refused',
        why: `it cannot be cut as asked, so there is nothing to replay against: ${plain(planned.reason, plan.units)}`,
      }
    const operation = { ...(planned as Planned).operation, moves }
    const before = progress
    const { trace, faults, after } = replayNext(plan.lathe, plan.setup, before, operation, index)
    progress = after
    return {
      name: planned.name,
      status: 'replayed',
      operation,
      judgment: judge(plan.lathe, operation, before, trace, faults),
      heavy: heavyCuts({ operation, trace }, planned as Planned),
    }
  })
  const listed = new Set((operations ?? []).map(({ feature }) => feature))
  const missing = plan.features.flatMap(({ name }, index): Replayed[] =>
    listed.has(index) ? [] : [{ name, status: 'not in the list', why: 'the list has no moves for it: it is not cut' }],
  )
  return [...done, ...missing]
}
