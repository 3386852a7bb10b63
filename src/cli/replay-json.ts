import type { Judged } from '../judge/judge.ts'
import { heavyText, outcome } from '../judge/say.ts'
import type { Plan } from '../plan/plan.ts'
import { inUnits } from '../units/length.ts'
import type { LineOf, Replayed } from './replayed.ts'

/** The same as data. */
export function replayJson(
  plan: Plan,
  replayed: readonly Replayed[],
  proven: boolean,
  file: string,
  lineOf: LineOf,
): string {
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
