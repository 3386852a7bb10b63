import type { Heavy } from '../judge/heavy.ts'
import type { Judged, Judgment } from '../judge/judge.ts'
import { differenceText, heavyText, outcome, sizeText } from '../judge/say.ts'
import type { Operation } from '../moves/operation.ts'
import type { Fault } from '../moves/trace.ts'
import { labelOf } from '../plan/labels.ts'
import type { Plan } from '../plan/plan.ts'
import type { Units } from '../units/length.ts'
import type { LineOf, Replayed } from './replayed.ts'

/** What a person reads: every fault of every feature by its line, the first marked, and what each size comes to. */
export function replayText(
  plan: Plan,
  replayed: readonly Replayed[],
  proven: boolean,
  file: string,
  lineOf: LineOf,
): string {
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
  return [
    ...judgment.faults.map(
      (fault, index) =>
        `  ${(index === 0 ? 'first fault' : 'fault').padEnd(11)}  ${faultText(fault, operation, plan, file, lineOf)}`,
    ),
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
      : ` (${AMOUNTS[fault.kind](differenceText('depth', Math.abs(fault.by), plan.units))})`
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
