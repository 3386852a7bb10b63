import type { Lathe } from '../lathe/lathe.ts'
import type { Form, Piece } from '../moves/form.ts'
import type { Operation, Setup, Slide } from '../moves/operation.ts'
import type { Fault, FaultKind, Interval, Size } from '../moves/trace.ts'
import { INCH, type Length } from '../units/length.ts'
import { depthAt, peak } from './form/curve.ts'
import type { Box } from './form/dilate.ts'
import { grown } from './form/dilate.ts'
import { kept } from './form/kept.ts'
import { fresh, goneOn, isKnown, placeOf, type SlideState, stepOf } from './slide.ts'
import type { Ways } from './ways.ts'

/** A small error of the hand: at one reading of one slide (or at all of its readings), or at a place found by eye. pm of travel. `from`: only from that move on. */
export type Shift =
  | { readonly slide: Slide; readonly count: number | 'every'; readonly by: Length; readonly from?: number }
  | { readonly slide: Slide; readonly place: Length; readonly by: Length }
/**
 * `rules: false` only cuts and measures. It is for replays with an error in them, whose faults nobody reads. `after`: the index of the first move
 * whose faults are wanted; where the slides went is not recorded then.
 */
export type RunOptions = { readonly rules: boolean; readonly shift: Shift | null; readonly after?: number }
/** The part before an operation, and the form that may not be cut beyond. */
export type Before = { readonly surely: Form; readonly possibly: Form; readonly allowed: Form }
export type Seen = Omit<Fault, 'operation'>

/** The lathe in the middle of an operation. */
export type Bench = {
  readonly lathe: Lathe
  readonly setup: Setup
  readonly operation: Operation
  readonly options: RunOptions
  readonly before: Before
  /** Nothing may be cut beyond this: the allowed form grown by half a readable step along each axis. */
  readonly limit: Form
  /** Depth of the outermost surface of the part. */
  readonly top: Length
  /** The deepest point of the edge. */
  readonly tip: Length
  /** What one unit of compound travel is along the work and into the work. */
  readonly way: { readonly z: number; readonly d: number }
  /** The two ends of the edge, and of edge and shank together. Measured from the reference point. */
  readonly ends: Interval
  readonly body: Interval
  surely: Piece[]
  /** The same array as `surely` until a cut depends on lost motion. */
  possibly: Piece[]
  readonly slides: Record<Slide, SlideState>
  turning: boolean
  /** The reading that the cross-feed last came in to with the spindle standing, pm; where a stop would be set. */
  stopSetAt: Length | null
  locked: boolean
  /** The reference point has been brought to its place, by eye or by touch. */
  found: boolean
  /** The reference point with every slide at its zero: its distance from the free end and its depth (d = −radius), pm. Null until it is found. */
  fromEnd: Length | null
  depth: Length | null
  cut: boolean
  /** Depth of metal taken out by plunges since the tool was last clear of the work, pm. */
  bite: Length
  /** The walls that have had a plunge of their own. */
  wallsDone: { readonly near: boolean; readonly far: boolean }
  /** The edge where it touches the work when both zeros are set. Kept until the next move. */
  touched: Form
  /** Index of the back-out that must still keep the tool clear; null if there is none. */
  backOut: number | null
  /** Lowest and highest reading used so far, for the slides whose travel is limited. pm of reading. */
  readonly asked: Record<'compound' | 'carriage', [lowest: Length, highest: Length]>
  readonly faults: Seen[]
  readonly at: Record<number, readonly Size[]>
  readonly clearance: Record<number, Length>
  readonly taken: Record<number, Length>
  readonly met: Record<number, Length>
  /** Everything the edge has passed through with the spindle turning, in metal or in air. Null if nobody needs it. */
  readonly gathered: Gathered | null
  /** The path of the last cut. Going back along it removes no metal. */
  lastCut: { readonly possible: Ways; readonly sure: Ways | null } | null
  /** The part is not needed any more: cuts only go into `gathered`. */
  onlyGathers: boolean
  /** The sizes from the last measuring; null if metal has been cut since. */
  sizes: readonly Size[] | null
}

/** Both are the same array until a cut depends on lost motion, as with the part. */
export type Gathered = { surely: Piece[]; possibly: Piece[] }

export const setUp = (lathe: Lathe, setup: Setup, operation: Operation, before: Before, options: RunOptions): Bench => {
  const surely = [...before.surely]
  const possibly = before.possibly === before.surely ? surely : [...before.possibly]
  return { ...atRest(lathe, setup, operation, before, options), surely, possibly }
}

type AtRest = Omit<Bench, 'surely' | 'possibly'>

const atRest = (lathe: Lathe, setup: Setup, operation: Operation, before: Before, options: RunOptions): AtRest => ({
  lathe,
  setup,
  operation,
  options,
  before,
  limit: options.rules ? limitOf(before.allowed, marksBox(lathe, operation)) : [],
  top: outermost(before.surely),
  tip: innermost(operation.edge.pieces),
  way: wayOf(operation),
  ...widths(operation),
  slides: {
    'cross-feed': fresh(lathe.crossFeed),
    compound: fresh(lathe.compound.scale),
    carriage: fresh(lathe.carriage),
  },
  turning: false,
  stopSetAt: null,
  locked: false,
  found: false,
  fromEnd: null,
  depth: null,
  cut: false,
  touched: [],
  backOut: null,
  asked: { compound: [0, 0], carriage: [0, 0] },
  ...nothingSeen(),
})

/** The state before the first move of this replay. */
export const nothingSeen = () =>
  ({
    bite: 0,
    wallsDone: { near: false, far: false },
    faults: [],
    at: {},
    clearance: {},
    taken: {},
    met: {},
    gathered: null,
    lastCut: null,
    onlyGathers: false,
    sizes: null,
  }) satisfies Partial<Bench>

/** Half a readable step of each slide, turned into distance along the work and depth. The carriage counts only if the job moves it. */
export const marksBox = (lathe: Lathe, operation: Operation): Box => {
  const cross = stepOf(lathe.crossFeed)
  const compound = stepOf(lathe.compound.scale)
  const angle = radians(operation)
  return {
    along: (compound / 2) * Math.abs(Math.cos(angle)) + carriageStep(lathe, operation) / 2,
    deep: cross / 2 + (compound / 2) * Math.abs(Math.sin(angle)),
  }
}

/** A carriage moved by its dial stops on a mark. A place found by eye is written to a millionth of an inch. Otherwise the carriage adds nothing. */
const carriageStep = (lathe: Lathe, { sideFeed }: Operation): Length => {
  if (sideFeed === 'carriage') return stepOf(lathe.carriage)
  return sideFeed === 'lines' ? INCH / 1_000_000 : 0
}

/** No cut may go beyond the allowed form by more than half a mark. */
export const limitOf = (allowed: Form, box: Box): Form =>
  limits(allowed, allowed, [box.along, box.deep], () => grown(allowed, box))
const limits = kept<Form>()

const wayOf = (operation: Operation) => ({ z: Math.cos(radians(operation)), d: Math.sin(radians(operation)) })

const widths = ({ edge }: Operation): { readonly ends: Interval; readonly body: Interval } => {
  const [left, right] = [Math.min(...edge.pieces.map(leftOf)), Math.max(...edge.pieces.map(rightOf))]
  return { ends: [left, right], body: [Math.min(edge.shank.from, left), Math.max(edge.shank.to, right)] }
}

const leftOf = ({ from, to }: Piece): Length => Math.min(from, to)
const rightOf = ({ from, to }: Piece): Length => Math.max(from, to)

/** Are faults of this move wanted? */
export const ruled = ({ options }: Bench, index: number): boolean => options.rules && index >= (options.after ?? 0)

export const radians = (operation: Operation): number => (operation.angle * Math.PI) / 180

const outermost = (form: Form): Length =>
  tops(form, form, NONE, () =>
    form.reduce((top, { from, to, curve }) => {
      const least = curve.kind === 'arc' && curve.side === -1 ? curve.dc - curve.r : Number.POSITIVE_INFINITY
      return Math.min(top, depthAt(curve, from), depthAt(curve, to), least)
    }, Number.POSITIVE_INFINITY),
  )
const tops = kept<Length>()
const NONE: readonly number[] = []

const innermost = (form: Form): Length => Math.max(...form.map((piece) => peak(piece).d))

export const see = (bench: Bench, kind: FaultKind, move: number, by: Length | null, say: string): void => {
  if (bench.options.rules) bench.faults.push({ kind, move, by, say })
}

/** The tool's place is known once the cross-feed and a slide along the work have been set to zero. Until then the tool is kept clear. */
export const placeKnown = ({ slides }: Bench): boolean =>
  slides['cross-feed'].zeroed && (slides.compound.zeroed || isKnown(slides.carriage))

/** Where a slide is, from its zero. If its dial was never set: from where it was when the tool was brought to its place. */
export const standing = (slide: SlideState): Interval => (isKnown(slide) ? placeOf(slide) : goneOn(slide))
