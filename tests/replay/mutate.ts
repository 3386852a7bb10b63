import type { Lathe, Scale } from '../../src/lathe/lathe.ts'
import type { Move, Operation, Slide } from '../../src/moves/operation.ts'

/** An operation with one mistake in its moves, as a hand or a planner might make it. */
export type Mutant = { readonly label: string; readonly operation: Operation }
type Moves = readonly Move[]
type Mistake = (operation: Operation, lathe: Lathe) => readonly (readonly [label: string, moves: Moves])[]

/** Every mistake at every place where it can be made. Some are harmless: those a replay may pass, if the work still comes out right. */
export const mutants = (operation: Operation, lathe: Lathe): readonly Mutant[] =>
  MISTAKES.flatMap((mistake) => mistake(operation, lathe)).map(([label, moves]) => ({
    label,
    operation: { ...operation, moves },
  }))

const dropped: Mistake = ({ moves }) =>
  moves.flatMap((move, index) =>
    move.action === 'go-past' || move.action === 'take-up' || move.action === 'lock' || move.action === 'unlock'
      ? [
          [
            `${move.action} ${move.slide ?? ''} left out at ${index}`,
            [...moves.slice(0, index), ...moves.slice(index + 1)],
          ] as const,
        ]
      : [],
  )

/** Out by no more than the backlash from a deeper reading, so that with all of it the edge has not left the surface. */
const shortened: Mistake = (operation, lathe) =>
  operation.moves.flatMap((move, index) => {
    if (move.action !== 'back-out' || typeof move.count !== 'number' || move.slide === 'compound') return []
    const lost = lathe.crossFeed.kind === 'dial' ? Math.floor(lathe.crossFeed.backlash / step(lathe.crossFeed)) : 0
    const count = -lost - swing(operation, lathe, index)
    const before = operation.moves.slice(0, index).findLast((one) => one.slide === move.slide && one.count != null)
    const wasIn = before === undefined || countAt([before], 0) > count
    return count > move.count && wasIn ? [recount(operation.moves, index, count, `back-out at ${index} shortened`)] : []
  })

const offByOne: Mistake = ({ moves }) =>
  cutting(moves).flatMap((index) =>
    [1, -1].map((by) =>
      recount(moves, index, countAt(moves, index) + by, `${by > 0 ? 'a mark more' : 'a mark less'} at ${index}`),
    ),
  )

const swapped: Mistake = ({ moves }) =>
  moves.slice(1).flatMap((move, before) => {
    const other = moves[before]!
    if (other.slide === move.slide && other.count === move.count && other.action === move.action) return []
    return [
      [
        `steps ${before} and ${before + 1} swapped`,
        [...moves.slice(0, before), move, other, ...moves.slice(before + 2)],
      ] as const,
    ]
  })

/** The last feed across stops where the tool began, as if it were as wide as the groove. */
const undersizeForgotten: Mistake = ({ moves }) => {
  const last = moves.findLastIndex(({ action, count }) => action === 'feed-across' && count !== 0)
  return last < 0 ? [] : [recount(moves, last, 0, `undersize forgotten at ${last}`)]
}

const otherSense: Mistake = ({ moves }) =>
  [2, 0.5].map((factor) => [
    factor === 2 ? 'depth dial taken for diameter' : 'diameter dial taken for depth',
    moves.map((move) =>
      move.slide === 'cross-feed' && typeof move.count === 'number'
        ? { ...move, count: Math.round(move.count * factor) }
        : move,
    ),
  ])

const swingForgotten: Mistake = (operation, lathe) => {
  if (operation.angle === 0) return []
  const changed = operation.moves.map((move, index) =>
    move.action === 'feed-in' && move.slide === 'cross-feed' && typeof move.count === 'number'
      ? { ...move, count: move.count + swing(operation, lathe, index) }
      : move,
  )
  const same = changed.every((move, index) => move.count === operation.moves[index]!.count)
  return same ? [] : [['cross-feed not corrected for the swung compound', changed]]
}

/** A turn lost or won at any reading, in the clear too. */
const turnSlipped: Mistake = ({ moves }, lathe) =>
  read(moves).flatMap((index) => {
    const scale = scaleOf(lathe, moves[index]!.slide)
    if (scale?.kind !== 'dial') return []
    const turn = Math.round(scale.perTurn / step(scale))
    return [1, -1].map((by) =>
      recount(moves, index, countAt(moves, index) + by * turn, `a turn ${by > 0 ? 'more' : 'less'} at ${index}`),
    )
  })

/** Stopped between two marks. */
const halfMark: Mistake = ({ moves }) =>
  cutting(moves).map((index) => recount(moves, index, countAt(moves, index) - 0.5, `half a mark less at ${index}`))

/** The compound taken up only when the tool stands at its place already, just before its zero. */
const takenUpLate: Mistake = ({ moves }) => {
  const from = moves.findIndex(({ action, slide }) => action === 'take-up' && slide === 'compound')
  const zero = moves.findIndex(({ action, slide }) => action === 'zero' && slide === 'compound')
  if (from < 0 || zero < from) return []
  const late = [...moves.slice(0, from), ...moves.slice(from + 1, zero), moves[from]!, ...moves.slice(zero)]
  return [['compound taken up late', late]]
}

/** The line met again, or the compound swung, when metal has been cut. */
const foundAgain: Mistake = ({ moves }) =>
  (['align', 'swing'] as const).flatMap((action) => {
    const again = moves.find((move) => move.action === action)
    const at = moves.findLastIndex((move) => move.action === 'feed-in')
    if (again === undefined || at < 0) return []
    return [[`${action} again`, [...moves.slice(0, at), again, ...moves.slice(at)]] as const]
  })

const MISTAKES: readonly Mistake[] = [
  takenUpLate,
  foundAgain,
  dropped,
  shortened,
  offByOne,
  swapped,
  undersizeForgotten,
  otherSense,
  swingForgotten,
  turnSlipped,
  halfMark,
]

const cutting = (moves: Moves): readonly number[] =>
  moves.flatMap(({ action, count }, index) =>
    (action === 'feed-in' || action === 'feed-across') && typeof count === 'number' ? [index] : [],
  )

const read = (moves: Moves): readonly number[] =>
  moves.flatMap(({ action, count }, index) => (typeof count === 'number' && action !== 'zero' ? [index] : []))

const countAt = (moves: Moves, index: number): number => moves[index]?.count ?? 0

const recount = (moves: Moves, index: number, count: number, label: string): readonly [string, Moves] => [
  label,
  moves.map((move, at) => (at === index ? { ...move, count } : move)),
]

/** What the compound's place adds to the depth, in steps of the cross-feed. */
const swing = ({ moves, angle }: Operation, lathe: Lathe, index: number): number => {
  const last = moves.slice(0, index).findLast(({ slide, count }) => slide === 'compound' && typeof count === 'number')
  const compound = travelStep(lathe.compound.scale) * (last?.count ?? 0)
  return Math.round((compound * Math.sin((angle * Math.PI) / 180)) / travelStep(lathe.crossFeed))
}

const step = (scale: Scale): number => (scale.kind === 'dial' ? scale.graduation * scale.readTo : scale.resolution)
const travelStep = (scale: Scale): number => step(scale) / (scale.reads === 'diameter' ? 2 : 1)

const scaleOf = (lathe: Lathe, slide: Slide | undefined): Scale | null => {
  if (slide === 'compound') return lathe.compound.scale
  return slide === 'carriage' ? lathe.carriage : lathe.crossFeed
}
