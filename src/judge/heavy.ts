import type { Move, Operation } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Length } from '../units/length.ts'

/**
 * A cut that takes more at once than one pass may. `most`: the limit; `of`: where the limit comes from. pm, radially.
 */
export type Heavy = {
  readonly move: number
  readonly takes: Length
  readonly most: Length
  readonly of: 'infeed' | 'sheet'
  readonly across: boolean
}

type List = { readonly operation: Operation; readonly trace: OperationTrace }

/**
 * Cuts are compared with the job's infeed; those fed across, with what roughing leaves plus one infeed. What the
 * sheet's own list takes is never too much: beside a steep flank a little along the work is much in depth.
 */
export const heavyCuts = (list: List, sheet: List): readonly Heavy[] => {
  const { passes } = sheet.operation
  const most = (across: boolean): Pick<Heavy, 'most' | 'of'> => {
    const own = Math.max(0, ...takenBy(sheet, across).map(({ takes }) => takes))
    if (passes === undefined) return { most: own, of: 'sheet' }
    const { infeed, leave } = passes
    const set = across ? leave + (infeed ?? leave) : (infeed ?? 0)
    return own > set + SLACK ? { most: own, of: 'sheet' } : { most: set, of: 'infeed' }
  }
  const [inward, across] = [most(false), most(true)]
  return [
    ...takenBy(list, false).map((one) => ({ ...one, ...inward })),
    ...takenBy(list, true).map((one) => ({ ...one, ...across })),
  ]
    .filter(
      ({ takes, most: allowed, of }) => allowed > 0 && takes > (of === 'sheet' ? allowed * MUCH : allowed) + SLACK,
    )
    .toSorted((a, b) => a.move - b.move)
}

/**
 * If no infeed is set, the sheet's own passes are no strict limit: half as much again is reported. Common practice, no
 * source.
 */
const MUCH = 1.5

/** A nanometer is rounding error. */
const SLACK: Length = 1000

const takenBy = ({ operation, trace }: List, across: boolean): readonly Pick<Heavy, 'move' | 'takes' | 'across'>[] =>
  Object.entries(trace.taken).flatMap(([index, takes]) => {
    const move: Move = operation.moves[Number(index)]!
    return (move.action === 'feed-across') === across ? [{ move: Number(index), takes, across }] : []
  })
