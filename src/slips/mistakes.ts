import { stepTravel } from '../dials/travel.ts'
import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Form } from '../moves/form.ts'
import type { Move, Operation } from '../moves/operation.ts'
import { arcPiece, linePiece } from '../moves/pieces.ts'
import { type EdgePoint, isOnLine } from '../moves/placing.ts'
import type { Length } from '../units/length.ts'
import { downASlant, downTheFlank } from './flank.ts'
import { alongTheSteps } from './steps.ts'
import { swungTo } from './swung.ts'

/** The single mistakes of a machinist, each made once. */
export type Mistake =
  | 'turn-more'
  | 'turn-less'
  | 'numbers-misread'
  | 'finish-forgotten'
  | 'sense-mistaken'
  | 'shift-forgotten'
  | 'turn-more-along'
  | 'tool-width-forgotten'
  | 'backlash-left'
  | 'swing-forgotten'
  | 'wrong-corner'
  | 'turn-less-down'
  | 'short-of-zero'
  | 'other-scale-zero'
  | 'not-turned-back'
  | 'back-turn-short'
  | 'wrong-side'
  | 'other-side-of-square'
  | 'place-left-out'
  | 'next-line-read'
  | 'place-backward'
  | 'touched-burr'
  | 'measured-behind'
  | 'worn-corners'
  | 'askew'

/** The operation with one mistake in it. */
export type Mutant = { readonly mistake: Mistake; readonly operation: Operation }

/** The single mistakes that can be made on this operation and this lathe; the replay finds whether one shows. */
export const mutantsOf = (operation: Operation, lathe: Lathe): readonly Mutant[] => {
  const { moves } = operation
  const bySlant = downASlant(operation)
  const made: [Mistake, readonly Move[] | null][] = [
    ['turn-more', deeper(moves, turn(lathe.crossFeed), true)],
    ['turn-less', deeper(moves, negative(turn(lathe.crossFeed)), false)],
    ['numbers-misread', deeper(moves, tenMarks(lathe.crossFeed), true)],
    ['finish-forgotten', without(moves, forTheFinish)],
    ['sense-mistaken', otherSense(moves, lathe.crossFeed)],
    ['shift-forgotten', bySlant ? null : without(moves, (move) => toPlace(move) || move.purpose === 'take-out-floor')],
    ['turn-more-along', further(moves, turn(alongScale(operation, lathe)))],
    ['tool-width-forgotten', further(moves, toolWidth(operation, lathe))],
    ['backlash-left', bySlant ? null : without(moves, ({ action }) => action === 'go-past')],
    ['swing-forgotten', swingForgotten(operation, lathe)],
  ]
  const changed = made.flatMap(([mistake, wrong]) =>
    wrong === null ? [] : [{ mistake, operation: { ...operation, moves: wrong } }],
  )
  const corner = wrongCorner(operation)
  const beside: readonly Mutant[] = corner === null ? [] : [{ mistake: 'wrong-corner', operation: corner }]
  return [
    ...changed,
    ...beside,
    ...wrongSide(operation, lathe),
    ...downTheFlank(operation, turn(lathe.compound.scale), turn(lathe.crossFeed)),
    ...alongTheSteps(operation, lostCounts(lathe.compound.scale)),
    { mistake: 'touched-burr', operation: { ...operation, off: { along: 0, deep: -BURR } } },
    ...otherEdge(operation),
  ]
}

/** A straight edge that is not as it was said to be. */
function otherEdge(operation: Operation): readonly Mutant[] {
  const width = straightWidth(operation)
  const { edge, dimensions } = operation
  // Of steps that another tool finishes nothing is measured.
  if (width === null || dimensions.length === 0) return []
  const [from, to] = [edge.pieces[0]!.from, edge.pieces[0]!.from + width]
  const worn = [
    arcPiece(from, from + WORN, from + WORN, -WORN, WORN, 1),
    linePiece(from + WORN, 0, to - WORN, 0),
    arcPiece(to - WORN, to, to - WORN, -WORN, WORN, 1),
  ]
  const by = (mistake: Mistake, pieces: Form): Mutant => ({
    mistake,
    operation: { ...operation, edge: { ...edge, pieces } },
  })
  const corners = by('worn-corners', worn)
  const asked = [...dimensions, { id: 'cornerRadius' as const, aim: 0, limits: null }]
  return [
    by('measured-behind', [linePiece(from, 0, to + RELIEVED, 0)]),
    by('askew', [linePiece(from, 0, to, -width * ASKEW)]),
    ...(width > 2 * WORN ? [{ ...corners, operation: { ...corners.operation, dimensions: asked } }] : []),
  ]
}

/** A degree out of square: the other end of the edge is so much higher, of its width. */
const ASKEW = Math.tan(Math.PI / 180)

/** How much narrower a tool is 1.5 mm behind its edge, where each side is relieved by 2 degrees (plane geometry; the angle and the place: common practice, no source). */
const RELIEVED: Length = Math.round(2 * 1_500_000_000 * Math.tan((2 * Math.PI) / 180))

/** Corners that have worn round: .2 mm. Common practice, no source. */
const WORN: Length = 200_000_000

/** A burr, or a lump of dye and oil, that the edge touches before the metal: .05 mm. Common practice, no source. */
const BURR: Length = 50_000_000

const cutsIn = ({ action, slide, count }: Move): boolean =>
  action === 'feed-in' && slide === 'cross-feed' && typeof count === 'number'

/** At the last feed in, or at all of the finish: a lost turn is lost for the rest of the finish. */
function deeper(moves: readonly Move[], by: number | null, lastOnly: boolean): readonly Move[] | null {
  const last = moves.findLastIndex(cutsIn)
  if (by === null || last < 0 || moves[last]!.count! + by <= 0) return null
  return moves.map((move, index) =>
    index === last || (!lastOnly && cutsIn(move) && move.purpose === 'finish')
      ? { ...move, count: move.count! + by }
      : move,
  )
}

const without = (moves: readonly Move[], dropped: (move: Move) => boolean): readonly Move[] | null =>
  moves.some(dropped) ? moves.filter((move) => !dropped(move)) : null

const toPlace = ({ slide, purpose, place }: Move): boolean =>
  place !== undefined || ((slide === 'compound' || slide === 'carriage') && purpose === 'to-place')

/** The dial mistaken for one of the other sense: twice as deep, or half. */
function otherSense(moves: readonly Move[], scale: Scale): readonly Move[] | null {
  const factor = scale.reads === 'depth' ? 2 : 0.5
  const deep = (move: Move): boolean => cutsIn(move) && move.count! > 0
  if (!moves.some(deep)) return null
  return moves.map((move) => (deep(move) ? { ...move, count: Math.round(move.count! * factor) } : move))
}

/** The furthest place along the work, overrun by a given number of steps. */
function further(moves: readonly Move[], by: number | null): readonly Move[] | null {
  if (by === null || by <= 0) return null
  const counts = moves.flatMap((move) => (goesAlong(move) ? [move.count ?? 0] : []))
  const last = Math.max(...counts)
  const at = moves.findLastIndex((move) => goesAlong(move) && move.count === last)
  if (at < 0 || (last <= 0 && moves[at]!.action !== 'feed-in')) return null
  return moves.map((move, index) => (index === at ? { ...move, count: last + by } : move))
}

const goesAlong = (move: Move): boolean =>
  (move.slide === 'compound' || move.slide === 'carriage') &&
  (toPlace(move) || move.action === 'feed-across' || move.action === 'feed-in')

const forTheFinish = ({ action, purpose, place }: Move): boolean =>
  purpose === 'finish' || purpose === 'take-out-floor' || (place !== undefined && action === 'feed-across')

/** The dial that moves the tool along: the carriage's if it is turned to readings. */
const alongScale = ({ moves }: Operation, { carriage, compound }: Lathe): Scale =>
  carriage !== null &&
  moves.some(({ slide, action, count }) => slide === 'carriage' && action !== 'zero' && typeof count === 'number')
    ? carriage
    : compound.scale

/** The width of a straight edge in counts of the slide that moves along; null for any other edge. */
function toolWidth(operation: Operation, lathe: Lathe): number | null {
  const width = straightWidth(operation)
  const scale = alongScale(operation, lathe)
  const swung = scale === lathe.compound.scale ? Math.cos((operation.angle * Math.PI) / 180) : 1
  const along = swung * stepTravel(scale)
  return width === null || along < 1 ? null : Math.round(width / along)
}

const straightWidth = ({ edge: { pieces } }: Operation): number | null =>
  pieces.every(({ curve }) => curve.kind === 'line' && curve.d0 === 0 && curve.d1 === 0)
    ? pieces.at(-1)!.to - pieces[0]!.from
    : null

/** The cross-feed turned to the depth as if the compound had not moved the tool in or out. */
function swingForgotten({ moves, angle }: Operation, lathe: Lathe): readonly Move[] | null {
  if (angle === 0) return null
  let place = 0
  let changed = false
  const wrong = moves.map((move) => {
    if (move.slide === 'compound' && typeof move.count === 'number') place = move.count
    if (!cutsIn(move)) return move
    const carried = place * stepTravel(lathe.compound.scale) * Math.sin((angle * Math.PI) / 180)
    const by = Math.round(carried / stepTravel(lathe.crossFeed))
    changed ||= by !== 0
    return { ...move, count: move.count! + by }
  })
  return changed ? wrong : null
}

/**
 * The compound swung as far to the other side: of square if it feeds down a slant; otherwise of parallel, and also of
 * square if the scale's 0 is square.
 */
function wrongSide(operation: Operation, lathe: Lathe): readonly Mutant[] {
  const { angle } = operation
  const slant = downASlant(operation)
  const mirrored = slant ? 180 - angle : -angle
  const beyond = !slant && angle !== 0 && lathe.compound.scaleZero === 'square' ? 180 - angle : angle
  return [
    ...(mirrored === angle ? [] : [{ mistake: 'wrong-side' as const, operation: swungTo(mirrored, operation) }]),
    ...(beyond === angle ? [] : [{ mistake: 'other-side-of-square' as const, operation: swungTo(beyond, operation) }]),
  ]
}

/** The other corner of a straight edge brought to the line. */
function wrongCorner(operation: Operation): Operation | null {
  const width = straightWidth(operation)
  const { placing } = operation
  const other = OTHER_CORNER[placing.point]
  if (width === null || other === undefined || !isOnLine(placing)) return null
  return { ...operation, placing: { ...placing, point: other } }
}

const OTHER_CORNER: Partial<Record<EdgePoint, EdgePoint>> = {
  'tailstock-corner': 'headstock-corner',
  'headstock-corner': 'tailstock-corner',
  'nose-tailstock-corner': 'nose-headstock-corner',
  'nose-headstock-corner': 'nose-tailstock-corner',
}

const turn = (scale: Scale): number | null =>
  scale.kind === 'dial' ? Math.round(scale.perTurn / (scale.graduation * scale.readTo)) : null

const lostCounts = (scale: Scale): number =>
  scale.kind === 'dial' ? Math.ceil(scale.backlash / (scale.graduation * scale.readTo)) : 0

/** Dials are numbered every ten marks: the number before is mistaken for the one behind. */
const tenMarks = (scale: Scale): number | null =>
  scale.kind === 'dial' && scale.perTurn / scale.graduation >= 40 ? Math.round(10 / scale.readTo) : null

const negative = (count: number | null): number | null => (count === null ? null : -count)
