import { compile } from '../../compile.ts'
import type { Span } from '../../diagnostics/diagnostic.ts'
import { type Heavy, heavyCuts } from '../../judge/heavy.ts'
import { type Judged, type Judgment, judge } from '../../judge/judge.ts'
import { heavyText, outcome, sizeText } from '../../judge/say.ts'
import type { Move, Operation } from '../../moves/operation.ts'
import type { Fault } from '../../moves/trace.ts'
import { type Progress, replayNext, startOf } from '../../replay/replay.ts'
import { labelOf } from '../../sheet/dimensions.ts'
import type { FeaturePlan, Plan } from '../../sheet/plan.ts'
import { inUnits, type Units } from '../../units/length.ts'
import { readMoves, type Written } from '../../written/written.ts'
import type { Io } from '../io.ts'
import { loaderFor, STDIN } from '../load.ts'
import type { OutputOptions } from '../output.ts'
import { deliver, guardInputs } from '../output.ts'
import { reportDiagnostics } from '../report.ts'

export type ReplayOptions = OutputOptions & { readonly format: 'text' | 'json'; readonly color?: boolean }

type Planned = Extract<FeaturePlan, { status: 'planned' }>
type Replayed =
  | {
      readonly name: string
      readonly status: 'replayed'
      readonly operation: Operation
      readonly judgment: Judgment
      readonly heavy: readonly Heavy[]
    }
  | { readonly name: string; readonly status: 'not in the list' | 'refused'; readonly why: string }

/** Replays a list of moves that somebody wrote on the lathe of a job. 0: proven within the limits, 1: not, 2: unreadable. */
export const replayCommand = async (job: string, moves: string, options: ReplayOptions, io: Io): Promise<number> => {
  if (job === '-' && moves === '-') {
    io.stderr.write('groovewright: job and moves cannot both be read from standard input\n')
    return 2
  }
  const stdin = job === '-' || moves === '-' ? await io.stdin.read() : null
  const load = loaderFor(io, stdin)
  const { plan, diagnostics, sources } = compile(job === '-' ? STDIN : job, load)
  reportDiagnostics(diagnostics, sources, options.color, io)
  const list = load(moves === '-' ? STDIN : moves, null)
  if (!list.ok) io.stderr.write(`groovewright: ${list.message}\n`)
  if (plan === null || !list.ok) return 2
  const written = readMoves(list.bytes, list.file, {
    lathe: plan.lathe,
    units: plan.units,
    features: plan.features.map(({ name }) => name),
  })
  reportDiagnostics(written.diagnostics, new Map([[list.file, written.source]]), options.color, io)
  if (written.operations === null) return 2
  const replayed = replayAll(plan, written)
  const proven = replayed.every((one) => one.status === 'replayed' && one.judgment.proven)
  const lineOf: LineOf = (move) => written.source.locate(move.origin.path, 'value')
  const text =
    options.format === 'json'
      ? asJson(plan, replayed, proven, list.file, lineOf)
      : asText(plan, replayed, proven, list.file, lineOf)
  guardInputs([...sources.keys(), list.file], options, io)
  deliver(text, options, io)
  return proven ? 0 : 1
}

type LineOf = (move: Move) => Span

/** In the order of the list, each on the part as the one before has left it; then what the list leaves out. */
function replayAll(plan: Plan, { operations }: Written): Replayed[] {
  let progress: Progress = startOf(plan.setup)
  const done = (operations ?? []).map(({ feature, moves }, index): Replayed => {
    const planned = plan.features[feature]!
    if (planned.status === 'refused')
      return {
        name: planned.name,
        status: 'refused',
        why: `it cannot be cut as asked, so there is nothing to replay against: ${planned.reason}`,
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

function asText(plan: Plan, replayed: readonly Replayed[], proven: boolean, file: string, lineOf: LineOf): string {
  const lines = replayed.flatMap((one) =>
    one.status === 'replayed'
      ? [
          `${one.name}: ${one.judgment.proven ? 'proven' : 'NOT PROVEN'}`,
          ...featureLines(plan, one.operation, one.judgment, file, lineOf),
          ...one.heavy.map((cut) => `  warning      ${heavyLine(cut, one.operation, plan, file, lineOf)}`),
          '',
        ]
      : [`${one.name}: NOT PROVEN: ${one.why}`, ''],
  )
  const end = proven
    ? 'Proven by replay, within the limits, for every backlash from nothing to what is stated.'
    : 'Not proven: do not cut by this list.'
  return `${[...lines, end].join('\n')}\n`
}

function featureLines(plan: Plan, operation: Operation, judgment: Judgment, file: string, lineOf: LineOf): string[] {
  const [first, ...more] = judgment.faults
  return [
    ...(first === undefined ? [] : [`  first fault  ${faultText(first, operation, plan, file, lineOf)}`]),
    ...(more.length === 0 ? [] : [`  and ${more.length} more  ${elsewhere(more, operation, lineOf)}`]),
    ...judgment.sizes.map((size) => sizeLine(size, plan.units)),
    ...outcome(judgment, plan.units).map((say) => `  the part     ${say}`),
  ]
}

const faultText = (fault: Fault, operation: Operation, plan: Plan, file: string, lineOf: LineOf): string => {
  const move = operation.moves[fault.move]
  // Less is arithmetic's: such a place is just met.
  const by =
    fault.by === null || Math.abs(fault.by) < 1000
      ? ''
      : ` (${AMOUNTS[fault.kind](sizeText('depth', Math.abs(fault.by), plan.units))})`
  const where =
    move === undefined
      ? 'at the end'
      : `${file}:${lineOf(move).line}: ${[move.action, move.slide].filter(Boolean).join(' ')}`
  return `${where}: ${fault.say}${by}`
}

const heavyLine = (cut: Heavy, { moves }: Operation, { units }: Plan, file: string, lineOf: LineOf): string => {
  const move = moves[cut.move]!
  return `${file}:${lineOf(move).line}: ${[move.action, move.slide].filter(Boolean).join(' ')}: ${heavyText(cut, units)}`
}

/** What the figure of a fault is of. */
const AMOUNTS: Readonly<Record<Fault['kind'], (by: string) => string>> = {
  'outside-form': (by) => `${by} deep`,
  'moved-in-contact': (by) => `by ${by}`,
  'shank-or-obstacle': (by) => `by ${by}`,
  'beyond-travel': (by) => `by ${by}`,
  'not-clear': (by) => `${by} still in the work`,
  'between-marks': (by) => `by ${by}`,
  'set-up': (by) => `${by} in depth`,
  'shifted-zero': (by) => by,
  ridge: (by) => `${by} more`,
  'open-zero': (by) => `${by} of it`,
  'spindle-standing': (by) => `by ${by}`,
  'open-form': (by) => `${by} deeper with some backlash than with another`,
  'carriage-lock': (by) => `by ${by}`,
  'metal-left': (by) => `${by} of it`,
}

const elsewhere = (faults: readonly Fault[], operation: Operation, lineOf: LineOf): string => {
  const lines = [
    ...new Set(
      faults.flatMap(({ move }) => (operation.moves[move] === undefined ? [] : [lineOf(operation.moves[move]!).line])),
    ),
  ]
  const shown = lines.slice(0, 10).join(', ')
  if (lines.length === 0) return 'at the end'
  return `${lines.length === 1 ? 'in line' : 'in lines'} ${shown}${lines.length > 10 ? ' …' : ''}`
}

function sizeLine({ id, aim, limits, surely, possibly, verdict, maybe }: Judged, units: Units): string {
  const show = (value: number | null) => (value === null ? 'none' : sizeText(id, value, units))
  const wanted = limits === null ? `wanted ${show(aim)}` : `limits ${show(limits[0])} to ${show(limits[1])}`
  const same = surely !== null && possibly !== null && Math.abs(surely - possibly) < (id === 'angle' ? 1e-6 : 1000)
  // What it can come to, whatever the backlash is.
  const [least, most] =
    surely !== null && possibly !== null && surely > possibly ? [possibly, surely] : [surely, possibly]
  const cut = same ? `cut ${show(surely)}` : `cut ${show(least)} to ${show(most)}`
  const holds = verdict === 'holds' ? 'holds' : maybe ? 'does not hold for every backlash' : 'does not hold'
  return `  ${labelOf(id).padEnd(20)} ${wanted}; ${cut}; ${holds}`
}

function asJson(plan: Plan, replayed: readonly Replayed[], proven: boolean, file: string, lineOf: LineOf): string {
  const plain = (id: Judged['id'], value: number | null) =>
    value === null ? null : Number((id === 'angle' ? value : inUnits(value, plan.units)).toFixed(9))
  const features = replayed.map((one) => {
    if (one.status !== 'replayed') return { name: one.name, status: one.status, proven: false, why: one.why }
    const { operation, judgment, heavy } = one
    return {
      name: one.name,
      status: one.status,
      proven: judgment.proven,
      saved: judgment.saved,
      outcome: outcome(judgment, plan.units),
      beside: judgment.beside.map(({ side, along, deep, maybe }) => ({
        side,
        along: plain('width', along),
        deep: plain('depth', deep),
        maybe,
      })),
      sizes: judgment.sizes.map(({ id, aim, limits, surely, possibly, verdict }) => ({
        id,
        aim: plain(id, aim),
        limits: limits === null ? null : limits.map((limit) => plain(id, limit)),
        surely: plain(id, surely),
        possibly: plain(id, possibly),
        verdict,
      })),
      faults: judgment.faults.map(({ kind, move, by, say }) => {
        const made = operation.moves[move]
        return { kind, file, line: made === undefined ? null : lineOf(made).line, by: plain('depth', by), say }
      }),
      warnings: heavy.map((cut) => ({
        kind: 'heavy-cut',
        file,
        line: lineOf(operation.moves[cut.move]!).line,
        takes: plain('depth', cut.takes),
        most: plain('depth', cut.most),
        say: heavyText(cut, plan.units),
      })),
    }
  })
  return `${JSON.stringify({ format: 'groovewright.replay/1', units: plan.units, proven, features }, null, 2)}\n`
}
