import { inUnits } from '../../units/length.ts'
import type { ReplayReport, ShownNumber } from '../replay-report.ts'

/** The same as data. */
export const printReplayJson = ({ units, proven, file, features }: ReplayReport): string => {
  const plain = (value: number) => Number(inUnits(value, units).toFixed(9))
  const size = (id: string, shown: ShownNumber | null) => {
    if (shown === null) return null
    return id === 'angle' ? Number(shown.value.toFixed(9)) : plain(shown.value)
  }
  const data = features.map((one) => {
    if (one.status !== 'replayed') return { name: one.name, status: one.status, proven: false, why: one.why }
    return {
      name: one.name,
      status: one.status,
      proven: one.proven,
      saved: one.saved,
      outcome: one.outcome,
      beside: one.beside.map(({ side, along, deep, maybe }) => ({
        side,
        along: plain(along),
        deep: plain(deep),
        maybe,
      })),
      sizes: one.sizes.map(({ id, aim, limits, surely, possibly, verdict }) => ({
        id,
        aim: size(id, aim),
        limits: limits === null ? null : limits.map((limit) => size(id, limit)),
        surely: size(id, surely),
        possibly: size(id, possibly),
        verdict,
      })),
      faults: one.faults.map(({ kind, move, by, say }) => ({
        kind,
        file,
        line: move === null ? null : move.line,
        by: size('depth', by),
        say,
      })),
      warnings: one.heavy.map(({ move, takes, most, say }) => ({
        kind: 'heavy-cut',
        file,
        line: move.line,
        takes: plain(takes),
        most: plain(most),
        say,
      })),
    }
  })
  return `${JSON.stringify({ format: 'groovewright.replay/1', units, proven, features: data }, null, 2)}\n`
}
