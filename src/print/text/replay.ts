import type { Fault } from '../../moves/trace.ts'
import type { ListedMove, ReplayedFault, ReplayedSize, ReplayReport, ShownNumber } from '../replay-report.ts'

/** The report for people: every fault of every feature by its line, the first one marked, and the finished sizes. */
export const printReplay = ({ features, proven, file }: ReplayReport): string => {
  const where = ({ line, does }: ListedMove) => `${file}:${line}: ${does}`
  const lines = features.flatMap((one) =>
    one.status === 'replayed'
      ? [
          `${one.name}: ${one.proven ? 'proven' : 'NOT PROVEN'}`,
          ...one.faults.map(
            (fault, index) =>
              `  ${(index === 0 ? 'first fault' : 'fault').padEnd(11)}  ${fault.move === null ? 'at the end' : where(fault.move)}: ${fault.say}${amount(fault)}`,
          ),
          ...one.sizes.map(sizeLine),
          ...one.outcome.map((say) => `  the part     ${say}`),
          ...one.heavy.map(({ move, say }) => `  warning      ${where(move)}: ${say}`),
          '',
        ]
      : [`${one.name}: NOT PROVEN: ${one.why}`, ''],
  )
  const end = proven
    ? 'Proven by replay, within the limits, for every backlash from nothing to what is stated.'
    : 'Not proven: do not cut by this list.'
  return `${[...lines, end].join('\n')}\n`
}

/** A smaller amount is rounding error: the place is just met. */
const amount = ({ kind, by }: ReplayedFault): string =>
  by === null || Math.abs(by.value) < 1000 ? '' : ` (${AMOUNTS[kind](by.text)})`

/** The size that the figure of a fault measures. */
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
  'no-peck': (by) => `${by} more than a peck`,
  'counted-in': (by) => by,
  'into-wall': (by) => `${by} high`,
  'no-wall-plunge': (by) => by,
  ledge: (by) => `${by} high`,
  binding: (by) => `${by} too deep for it`,
  'open-zero': (by) => `${by} of it`,
  'spindle-standing': (by) => `by ${by}`,
  'open-form': (by) => `${by} deeper with some backlash than with another`,
  'carriage-lock': (by) => `by ${by}`,
  'metal-left': (by) => `${by} of it`,
}

const sizeLine = ({ id, label, aim, limits, surely, possibly, verdict, maybe }: ReplayedSize): string => {
  const show = (number: ShownNumber | null) => number?.text ?? 'none'
  const wanted = limits === null ? `wanted ${show(aim)}` : `limits ${show(limits[0])} to ${show(limits[1])}`
  const both = surely !== null && possibly !== null
  const same = both && Math.abs(surely.value - possibly.value) < (id === 'angle' ? 1e-6 : 1000)
  // The range of the size, whatever the backlash is.
  const [least, most] = both && surely.value > possibly.value ? [possibly, surely] : [surely, possibly]
  const cut = same ? `cut ${show(surely)}` : `cut ${show(least)} to ${show(most)}`
  const holds = verdict === 'holds' ? 'holds' : maybe ? 'does not hold for every backlash' : 'does not hold'
  return `  ${label.padEnd(20)} ${wanted}; ${cut}; ${holds}`
}
