import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Curve, Form, Piece } from '../moves/form.ts'
import type { Instrument, Operation, Slide } from '../moves/operation.ts'
import { isOnLine } from '../moves/placing.ts'
import type { OperationTrace } from '../moves/trace.ts'
import type { Before, Shift } from '../replay/bench.ts'
import { TOLERANCE } from '../replay/form/compare.ts'
import { moved } from '../replay/form/curve.ts'
import { stepOf, travel } from '../replay/slide.ts'
import type { Degrees } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'
import type { CauseName } from './budgeted.ts'
import { tilted } from './tilted.ts'
import { worn } from './worn.ts'

/** One replay with one error. `rigid`: only the zeros are wrong, by this much, pm. */
export type Way = {
  readonly operation: Operation
  readonly before: Before
  readonly shift: Shift | null
  readonly rigid?: { readonly along: Length; readonly deep: Length }
}
/**
 * One stated error, made both ways. `of`: it is one of several readings of that slide. `every`: all readings of that slide are wrong the same way.
 * One cut that is too shallow is hidden by the deepest of several cuts, but not if all are too shallow.
 */
export type Cause = {
  readonly name: CauseName
  readonly ways: readonly [Way, Way]
  readonly of?: Slide
  readonly every?: boolean
  /** One reading that is turned to twice, and not alike: only what lies between the two shows it. */
  readonly only?: Instrument
  /** What is measured at the stop and corrected by removes it. */
  readonly removedBy?: 'bottom' | 'width'
}

/**
 * What is measured at the stop and corrected by, pm. `within`: how far that may be off, of the bottom as a depth; `step`:
 * by how much a correction changes it at the least; `slide`: what corrects it, whose reading at the stop may be off too.
 */
export type AtStop = {
  readonly bottom: (Corrects & { readonly byDepth: boolean }) | null
  readonly width: Corrects | null
}
type Corrects = { readonly within: Length; readonly step: Length; readonly slide: Slide; readonly reading: Length }

/** All errors that a machinist cannot avoid in one operation, each on its own. One that is stated as 0 is left out. */
export const causesOf = (
  lathe: Lathe,
  operation: Operation,
  before: Before,
  planned: OperationTrace,
  atStop: AtStop = { bottom: null, width: null },
): readonly Cause[] => {
  const { accuracy } = lathe
  const both = (name: Cause['name'], by: Length, change: (by: Length) => Partial<Way>) => {
    const way = (amount: Length): Way => ({ operation, before, shift: null, ...change(amount) })
    return { name, by, ways: [way(by), way(-by)] as const }
  }
  const off = operation.off ?? { along: 0, deep: 0 }
  const set = (by: Partial<typeof off>): Partial<Way> => ({
    operation: { ...operation, off: { along: off.along + (by.along ?? 0), deep: off.deep + (by.deep ?? 0) } },
    rigid: { along: 0, deep: 0, ...by },
  })
  const place = isOnLine(operation.placing)
    ? (['layout', accuracy.layout] as const)
    : (['touch-off', accuracy.touchOff] as const)
  const wider = (by: Length): Partial<Way> => ({ operation: { ...operation, edge: worn(operation.edge, by) } })
  /** What stays of a size that was measured: the measuring, the whole marks, and the reading at which it was measured. */
  const left = (name: 'bottom' | 'width', corrects: Corrects | null, change: (by: Length) => Partial<Way>) =>
    corrects === null
      ? []
      : [
          both(name, corrects.within, change),
          both('marks', corrects.step / 2, change),
          both(READING[corrects.slide], corrects.reading, change),
        ]
  const shown = readings(lathe, operation, before, planned)
  const every = [...new Set(shown.map(({ slide }) => slide))].map((slide) => ({
    slide,
    count: 'every' as const,
    error: readingError(lathe, slide),
  }))
  return [
    ...[...shown, ...every].map(({ slide, count, error }) => ({
      ...both(READING[slide], error, (by) => ({ shift: { slide, count, by } })),
      of: slide,
      every: count === 'every',
    })),
    ...metAgain(operation, before, planned).map(({ count, from }) => ({
      ...both(READING['cross-feed'], readingError(lathe, 'cross-feed'), (by) => ({
        shift: { slide: 'cross-feed', count, by, from },
      })),
      only: 'flatness' as const,
    })),
    ...linesMet(operation, before, planned).map(({ name, place: met }) =>
      both(name, accuracy.layout, (by) => ({ shift: { slide: 'carriage', place: met, by } })),
    ),
    { ...both('touch-off', accuracy.touchOff, (by) => set({ deep: by })), removedBy: 'bottom' as const },
    both(place[0], place[1], (by) => set({ along: by })),
    { ...both('tool', accuracy.tool, wider), removedBy: 'width' as const },
    ...(operation.edge.angleWithin !== undefined
      ? [
          both('tool-angle', operation.edge.angleWithin ?? accuracy.toolAngle, (by) => ({
            operation: { ...operation, edge: tilted(operation.edge, by) },
          })),
        ]
      : []),
    both('swivel', swivelError(accuracy, operation.angle), (by) => ({
      operation: { ...operation, angle: operation.angle + by },
    })),
    {
      ...both('stock', accuracy.stock, (by) => otherStock(operation, before, by)),
      ...(atStop.bottom?.byDepth === false ? { removedBy: 'bottom' as const } : {}),
    },
    { ...both('runout', accuracy.runout, (by) => set({ deep: by })), removedBy: 'bottom' as const },
    ...left('bottom', atStop.bottom, (by) => set({ deep: by })),
    ...left('width', atStop.width, wider),
  ].flatMap(({ by, ...cause }: Cause & { readonly by: Length }): Cause[] =>
    by === 0 || (cause.removedBy !== undefined && atStop[cause.removedBy] !== null) ? [] : [cause],
  )
}

const READING: Readonly<Record<Slide, CauseName>> = {
  'cross-feed': 'reading-cross-feed',
  compound: 'reading-compound',
  carriage: 'reading-carriage',
}

/** Parallel or square, the compound is set with an indicator; at any other angle by the marks of the swivel. Degrees. */
const swivelError = ({ swivel, trued }: Lathe['accuracy'], angle: Degrees): Degrees =>
  angle === 0 || Math.abs(angle) === 90 ? trued : swivel

/** Every reading that affects the finished form: one error each, made wherever that reading is used. */
const readings = (
  lathe: Lathe,
  operation: Operation,
  before: Before,
  planned: OperationTrace,
): readonly { readonly slide: Slide; readonly count: number; readonly error: Length }[] => {
  const found = new Map<string, { slide: Slide; count: number; error: Length }>()
  const add = (slide: Slide, count: number): void => {
    found.set(`${slide} ${count}`, { slide, count, error: readingError(lathe, slide) })
  }
  for (const step of stepsThatShow(before, planned)) {
    for (const slide of ['cross-feed', 'compound', 'carriage'] as const)
      for (const count of inForce(operation, step, slide)) add(slide, count)
  }
  for (const count of atTouch(operation)) add('compound', count)
  return [...found.values()]
}

/** A depth that the tool is fed in to at two places, and the finished form shows both: the second may be read a little otherwise. */
const metAgain = (
  { moves }: Operation,
  before: Before,
  planned: OperationTrace,
): readonly { readonly count: number; readonly from: number }[] => {
  const shows = stepsThatShow(before, planned)
  const fedIn = new Map<number, number[]>()
  for (const [index, { action, slide, count }] of moves.entries()) {
    if (action !== 'feed-in' || (slide ?? 'cross-feed') !== 'cross-feed' || typeof count !== 'number') continue
    const cuts = shows.has(index) || (moves[index + 1]?.action === 'feed-across' && shows.has(index + 1))
    if (cuts) fedIn.set(count, [...(fedIn.get(count) ?? []), index])
  }
  return [...fedIn].flatMap(([count, at]) => (at.length < 2 ? [] : [{ count, from: at.at(-1)! }]))
}

/** The reading of a swung compound that is moved before the surface is touched: the depth of every cut counts from there. */
const atTouch = ({ moves, angle }: Operation): readonly number[] => {
  const touched = moves.findLastIndex(({ action, slide }) => action === 'touch-off' && slide !== 'compound')
  if (angle === 0) return []
  const last = moves
    .slice(0, Math.max(0, touched))
    .findLast(({ slide, count }) => slide === 'compound' && typeof count === 'number')
  return last === undefined || last.action === 'zero' ? [] : [last.count!]
}

/** The moves whose cuts are still part of the finished form. Every operation counts its moves from 0, so pieces that an earlier one has cut are left out. */
const stepsThatShow = (before: Before, planned: OperationTrace): ReadonlySet<number> => {
  const old = new Set<Piece>([...before.surely, ...before.possibly])
  const made = [...planned.surely, ...planned.possibly].filter((piece) => !old.has(piece))
  return new Set(made.map((piece) => piece.step))
}

/** Every place found by eye that affects the finished form: one error each, made whenever the tool is brought there. */
const linesMet = (
  { moves }: Operation,
  before: Before,
  planned: OperationTrace,
): readonly { readonly name: CauseName; readonly place: Length }[] => {
  if (moves.every(({ place }) => place === undefined)) return []
  const found = new Map<Length, CauseName>()
  const meet = (move: Operation['moves'][number] | undefined): void => {
    if (move?.place !== undefined) found.set(move.place, LINES[move.purpose ?? ''] ?? 'place-by-eye')
  }
  for (const step of stepsThatShow(before, planned)) {
    meet(moves.slice(0, step + 1).findLast(({ place }) => place !== undefined))
    if (moves[step]?.place !== undefined) meet(moves.slice(0, step).findLast(({ place }) => place !== undefined))
  }
  return [...found].map(([place, name]) => ({ name, place }))
}

const LINES: Readonly<Record<string, CauseName>> = {
  'tailstock-line': 'tailstock-line',
  'headstock-line': 'headstock-line',
}

/** The readings that decide where a cut is: the reading each slide is at, and for a feed across also the one it started from. */
const inForce = (operation: Operation, step: number, slide: Slide): readonly number[] => {
  const current = operation.moves[step]
  if (current === undefined) return []
  const own = current.slide === slide && typeof current.count === 'number' ? [current.count] : []
  if (own.length > 0 && current.action !== 'feed-across') return own
  const earlier = operation.moves
    .slice(0, step)
    .findLast((move) => move.slide === slide && (move.action === 'zero' || typeof move.count === 'number'))
  return typeof earlier?.count === 'number' && earlier.action !== 'zero' ? [...own, earlier.count] : own
}

/** Error of one reading, pm of slide travel: as stated, or half of the smallest step that can be read. For the carriage never less than that half. */
export const readingError = (lathe: Lathe, slide: Slide): Length => {
  const scale: Scale | null =
    slide === 'cross-feed' ? lathe.crossFeed : slide === 'compound' ? lathe.compound.scale : lathe.carriage
  if (scale === null) return 0
  const half = stepOf(scale) / 2
  if (lathe.accuracy.reading === null) return half
  // The stated error is for the two fine dials. The coarse dial of a carriage is not read so closely.
  const stated = travel(scale, lathe.accuracy.reading)
  return slide === 'carriage' ? Math.max(half, stated) : stated
}

/** The stock is larger than stated by this much in diameter. The tool touches the real surface. */
const otherStock = (operation: Operation, before: Before, by: Length): Partial<Way> => {
  const { surface } = operation
  const real = (form: Form): Form =>
    form.map((piece) => (isOnSurface(piece.curve, surface) ? larger(piece, by) : piece))
  return {
    operation: { ...operation, surface: surface + by },
    before: { ...before, surely: real(before.surely), possibly: real(before.possibly) },
  }
}

const isOnSurface = (curve: Curve, surface: Length): boolean =>
  curve.kind === 'line' &&
  Math.abs(curve.d0 + surface / 2) <= TOLERANCE &&
  Math.abs(curve.d1 + surface / 2) <= TOLERANCE

const larger = (piece: Piece, by: Length): Piece => ({ ...piece, curve: moved(piece.curve, 0, -by / 2) })
