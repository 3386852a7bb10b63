import type { Judged } from '../judge/judge.ts'
import { differenceText, heavyText, outcome, sizeText } from '../judge/say.ts'
import type { Move } from '../moves/operation.ts'
import { labelOf } from '../plan/labels.ts'
import type { ListedMove, ReplayedFeature, ReplayedSize, ReplayReport } from '../print/replay-report.ts'
import type { Units } from '../units/length.ts'
import type { LineOf, Replayed } from './replayed.ts'

/** The data that is printed of a replay: its numbers, and their words. */
export const replayReport = (
  units: Units,
  replayed: readonly Replayed[],
  proven: boolean,
  file: string,
  lineOf: LineOf,
): ReplayReport => ({ units, proven, file, features: replayed.map((one) => featureOf(one, units, lineOf)) })

const featureOf = (one: Replayed, units: Units, lineOf: LineOf): ReplayedFeature => {
  if (one.status !== 'replayed') return one
  const { name, status, operation, judgment, heavy } = one
  const listed = (move: Move): ListedMove => ({
    line: lineOf(move).line,
    does: [move.action, move.slide].filter(Boolean).join(' '),
  })
  return {
    name,
    status,
    proven: judgment.proven,
    saved: judgment.saved,
    outcome: outcome(judgment, units),
    beside: judgment.beside,
    sizes: judgment.sizes.map((size) => sizeOf(size, units)),
    faults: judgment.faults.map(({ kind, move, by, say }) => {
      const made = operation.moves[move]
      const text = by === null ? '' : differenceText('depth', Math.abs(by), units)
      return { kind, move: made === undefined ? null : listed(made), by: by === null ? null : { value: by, text }, say }
    }),
    heavy: heavy.map((cut) => ({
      move: listed(operation.moves[cut.move]!),
      takes: cut.takes,
      most: cut.most,
      say: heavyText(cut, units),
    })),
  }
}

const sizeOf = ({ id, aim, limits, surely, possibly, verdict, maybe }: Judged, units: Units): ReplayedSize => {
  const shown = (value: number) => ({ value, text: sizeText(id, value, units) })
  return {
    id,
    label: labelOf(id),
    aim: shown(aim),
    limits: limits === null ? null : [shown(limits[0]), shown(limits[1])],
    surely: surely === null ? null : shown(surely),
    possibly: possibly === null ? null : shown(possibly),
    verdict,
    maybe,
  }
}
