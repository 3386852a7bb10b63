import type { EdgeCurve } from './edges.ts'
import { edgeCurve } from './edges.ts'
import type { Screw, SlideName } from './screws.ts'
import { dialOf, travelPerUnit, turnTo } from './screws.ts'
import type { Stand } from './set-up.ts'
import { align, rename, touchOff, zeroProblems } from './set-up.ts'
import type { Sheet, SheetFeature, SheetStep } from './sheet-shape.ts'
import { widthAt } from './sheet-shape.ts'
import type { Place, Touch, WorkGrid } from './work-grid.ts'
import {
  cutAt,
  depthInStock,
  gridOf,
  highest,
  joinTouch,
  sweepLevel,
  sweepSlanting,
  untouched,
  widthBelow,
} from './work-grid.ts'

export type Lost = { crossFeed: number; compound: number; carriage: number }
/** `fed`: where the reference point stood when it was fed, exactly: the nodes tell a width only by whole cells. */
export type RanFeature = { first: number; last: number; fed: Place[]; problems: string[] }
export type Ran = {
  lost: Lost
  grid: WorkGrid
  features: RanFeature[]
  /** Where the tool stood after a step, how deep its edge was in the stock there, and what there was to measure. */
  places: Map<number, { z: number; tip: number; surface: number; inside: number | null }>
  measured: Map<number, { width: number; depth: number; bottom: number; fed: readonly Place[] }>
}

type State = {
  sheet: Sheet
  grid: WorkGrid
  feature: SheetFeature
  result: RanFeature
  ran: Ran
  edge: EdgeCurve
  screws: Record<SlideName, Screw>
  stand: Stand
  turning: boolean
  locked: boolean
  live: boolean
  touched: boolean
  hasCut: boolean
  cos: number
  sin: number
}

/** Contact below this is rounding in the printed numbers, not metal: 5 millionths of an inch, or a tenth of a micrometer. */
const NOTHING = { inch: 5e-6, mm: 1e-4 }

/** A touch-off names its slide too, but no reading. */
const onDial = new Set([
  'take-up',
  'zero',
  'feed-in',
  'back-out',
  'shift',
  'go-past',
  'return',
  'feed-across',
  'move-carriage',
])

const mayTouch = new Set(['feed-in', 'feed-across'])

/** Executes the sheet once, for one amount of lost motion in each screw. */
export function replayOnce(sheet: Sheet, lost: Lost, before: WorkGrid | null = null): Ran {
  const grid = gridOf(sheet, before)
  const features = sheet.features.map(() => ({
    first: Number.POSITIVE_INFINITY,
    last: -1,
    fed: [],
    problems: [] as string[],
  }))
  sheet.features.forEach((feature, index) => {
    if (feature.status !== 'planned' && sheet.steps.some((step) => step.feature === index)) {
      features[index]!.problems.push('refused, and yet it has steps')
    }
  })
  const ran: Ran = { lost, grid, features, places: new Map(), measured: new Map() }
  let state: State | null = null
  let current = -1
  let turning = false
  sheet.steps.forEach((step, at) => {
    const feature = sheet.features[step.feature]
    if (!feature?.edge) return
    if (step.feature !== current || state === null) {
      turning = state?.turning ?? turning
      state = begin(sheet, ran, feature, features[step.feature]!, turning)
      current = step.feature
    }
    execute(state, step)
    if (!state.live && !zeroStillToCome(sheet, at)) goLive(state, step)
  })
  return ran
}

function begin(sheet: Sheet, ran: Ran, feature: SheetFeature, result: RanFeature, turning: boolean): State {
  const { lost, grid } = ran
  const angle = ((feature.compoundAngle ?? 0) * Math.PI) / 180
  const screw = (motion: number): Screw => ({ dial: 0, slide: 0, lost: motion, zeroed: false, tight: false })
  return {
    sheet,
    grid,
    feature,
    result,
    ran,
    edge: edgeCurve(feature.edge!),
    screws: { 'cross-feed': screw(lost.crossFeed), compound: screw(lost.compound), carriage: screw(lost.carriage) },
    stand: { z: null, tip: null, near: false },
    turning,
    locked: false,
    live: false,
    touched: false,
    hasCut: false,
    cos: Math.abs(feature.compoundAngle ?? 0) === 90 ? 0 : Math.cos(angle),
    sin: Math.sin(angle),
  }
}

/**
 * The tool stands where it touched. A corner tool touched with its tip overlapping the face takes the sharp edge of the
 * stock off by less than a thousandth: metal gone, which counts for the form, but no fault of a clear move.
 */
function goLive(state: State, step: SheetStep): void {
  state.live = true
  for (const problem of zeroProblems(state)) complain(state, step, problem)
  const { z, tip } = place(state)
  note(state.result, cutAt(state.grid, state.edge, z, tip))
}

/** Where the tool stands is known only when every dial that this feature sets to zero has been set. */
function zeroStillToCome(sheet: Sheet, at: number): boolean {
  const feature = sheet.steps[at]!.feature
  for (let i = at + 1; i < sheet.steps.length && sheet.steps[i]!.feature === feature; i++) {
    if (sheet.steps[i]!.action === 'zero') return true
  }
  return false
}

function execute(state: State, step: SheetStep): void {
  const slide = onDial.has(step.action) ? (step.slide ?? null) : null
  const unread = step.reading === null || step.reading === undefined
  if (slide === null) withoutSlide(state, step)
  else if (step.action === 'zero') zero(state, step, slide)
  else if (step.action === 'take-up' && unread) takeUp(state, step, slide)
  else move(state, step, slide)
}

/**
 * Turned forward by what the step says: a tool that was aligned before is carried on by that. Only the carriage, which is
 * what the eye brings to the line, goes away from it and comes back onto it.
 */
function takeUp(state: State, step: SheetStep, slide: SlideName): void {
  const screw = state.screws[slide]
  const dial = dialOf(state.sheet, slide)
  if (dial !== null && slide !== 'carriage')
    turnTo(screw, screw.dial + (step.atLeast ?? 0) * travelPerUnit(state.sheet, dial))
  if (slide === 'carriage') screw.dial = screw.slide
  screw.tight = true
}

function withoutSlide(state: State, step: SheetStep): void {
  if (step.action === 'start') {
    state.turning = true
    checkStart(state, step)
  }
  if (step.action === 'stop') state.turning = false
  if (step.action === 'lock') state.locked = true
  if (step.action === 'unlock') state.locked = false
  if (step.action === 'align') for (const problem of align(state)) complain(state, step, problem)
  if (step.action === 'touch-off') {
    state.touched = true
    for (const problem of touchOff(state, step.slide ?? null)) complain(state, step, problem)
  }
  if (step.action === 'measure') takeSizes(state, step)
  if (step.action === 'measure' && state.turning) complain(state, step, 'measured with the spindle turning')
}

/** The spindle starts with the tool against nothing: not over metal, and not beside a shoulder by as little as the grid can tell. */
function checkStart(state: State, step: SheetStep): void {
  if (!state.live) return
  const { z, tip } = place(state)
  const { grid, edge } = state
  const beside = [-2 * grid.step, 0, 2 * grid.step]
  if (beside.some((by) => depthInStock(grid, edge, z + by, tip) > NOTHING[state.sheet.units]))
    complain(state, step, 'the spindle starts with the tool touching the work')
}

function takeSizes(state: State, step: SheetStep): void {
  const { grid, result, ran } = state
  if (result.last < 0) return
  let [depth, smallest] = [0, Number.POSITIVE_INFINITY]
  for (let i = result.first; i <= result.last; i++) {
    depth = Math.max(depth, grid.raw[i]! - grid.now[i]!)
    smallest = Math.min(smallest, grid.now[i]!)
  }
  const width = widthBelow(grid, result.first, result.last, widthAt(state.feature))
  ran.measured.set(step.number, { width, depth, bottom: smallest * 2, fed: result.fed.slice() })
}

function zero(state: State, step: SheetStep, slide: SlideName): void {
  const screw = state.screws[slide]
  if (!screw.tight && !state.touched && screw.lost > 0)
    complain(state, step, `${slide} set to zero with its lost motion open`)
  if (state.hasCut) complain(state, step, `${slide} set to zero after the first cut`)
  if (!state.locked && slide !== 'cross-feed')
    complain(state, step, `${slide} set to zero before the carriage is locked`)
  rename(state, slide, (step.reading ?? 0) * travelPerUnit(state.sheet, dialOf(state.sheet, slide)!))
  screw.zeroed = true
  state.touched = false
}

function move(state: State, step: SheetStep, slide: SlideName): void {
  if (typeof step.placeFromEnd === 'number') {
    moveByEye(state, step, slide, step.placeFromEnd)
    return
  }
  const dial = dialOf(state.sheet, slide)
  const to = typeof step.reading === 'number' && dial !== null ? step.reading * travelPerUnit(state.sheet, dial) : null
  if (dial === null) complain(state, step, `this lathe has no dial on the ${slide}`)
  else if (!state.live) moveUnseen(state, step, slide, to)
  else if (to === null) complain(state, step, 'a dial move without a reading')
  else moveSeen(state, step, slide, to)
}

/** Moved until the tool is seen to stand at its place: the slide goes there whatever its screw has lost. */
function moveByEye(state: State, step: SheetStep, slide: SlideName, fromEnd: number): void {
  if (slide !== 'carriage') complain(state, step, `only a carriage is moved by eye, not the ${slide}`)
  if (step.reading !== null) complain(state, step, 'a place by eye, and a reading too')
  if (state.locked) complain(state, step, 'the carriage moved while locked')
  if (!state.live) complain(state, step, 'moved by eye before the last dial was set to zero')
  const before = place(state)
  state.screws.carriage.slide += fromEnd - before.z
  judge(state, step, slide, before, place(state))
}

/** Before every dial is at zero nobody can tell where the tool stands: only the screw is followed. */
function moveUnseen(state: State, step: SheetStep, slide: SlideName, to: number | null): void {
  if (mayTouch.has(step.action)) complain(state, step, 'fed before the last dial was set to zero')
  if (to === null) return
  if (state.screws[slide].zeroed) turnTo(state.screws[slide], to)
  else complain(state, step, `a reading of the ${slide}, whose dial was not set to zero`)
}

function moveSeen(state: State, step: SheetStep, slide: SlideName, to: number): void {
  if (slide === 'carriage' && state.locked) complain(state, step, 'the carriage moved while locked')
  const before = place(state)
  turnTo(state.screws[slide], to)
  const after = place(state)
  judge(state, step, slide, before, after)
  const inside = step.action === 'back-out' ? depthInStock(state.grid, state.edge, after.z, after.tip) : null
  state.ran.places.set(step.number, {
    ...after,
    surface: state.feature.surface ?? 2 * state.stand.tip!,
    inside,
  })
  if (inside !== null && slide === 'cross-feed') checkClear(state, step, inside)
}

function place(state: State): Place {
  const { screws, stand, cos, sin } = state
  const z = stand.z! + screws.carriage.slide + screws.compound.slide * cos
  return { z, tip: stand.tip! - screws['cross-feed'].slide - screws.compound.slide * sin }
}

function pass(state: State, from: Place, to: Place): Touch {
  const { grid, edge } = state
  if (from.tip === to.tip) return sweepLevel(grid, edge, from.z, to.z, to.tip)
  if (from.z === to.z) return cutAt(grid, edge, to.z, Math.min(from.tip, to.tip))
  const lowest = Math.min(from.tip, to.tip)
  if (highest(grid, edge, from.z, to.z, grid.now) <= lowest) return cutAt(grid, edge, to.z, to.tip)
  const pieces = Math.max(1, Math.ceil(Math.hypot(to.z - from.z, to.tip - from.tip) / (grid.step / 2)))
  if (edge.bulges) return sweepSlanting(grid, edge, from, to, pieces)
  let touch = untouched()
  for (let i = 0; i <= pieces; i++) {
    const part = i / pieces
    const here = cutAt(grid, edge, from.z + (to.z - from.z) * part, from.tip + (to.tip - from.tip) * part)
    touch = joinTouch(touch, here)
  }
  return touch
}

function judge(state: State, step: SheetStep, slide: SlideName, from: Place, to: Place): void {
  const touch = pass(state, from, to)
  const { result, feature, sheet } = state
  note(result, touch)
  if (mayTouch.has(step.action) || slide === 'carriage') result.fed.push(from, to)
  if (touch.removed <= NOTHING[sheet.units]) return
  state.hasCut = true
  const allowed = mayTouch.has(step.action) || (slide === 'carriage' && step.action === 'move-carriage')
  if (!allowed) complain(state, step, `the tool cuts during a clear move (${step.action})`)
  if (!state.locked && slide !== 'carriage') complain(state, step, 'the tool cuts while the carriage is not locked')
  if (!state.turning) complain(state, step, 'the tool cuts while the spindle stands still')
  const reach = feature.edge!.reach
  if (reach !== null && reach !== undefined && touch.buried > reach + NOTHING[sheet.units]) {
    complain(state, step, 'the edge is in deeper than its reach')
  }
}

function note(result: RanFeature, touch: Touch): void {
  if (touch.removed <= 0) return
  result.first = Math.min(result.first, touch.first)
  result.last = Math.max(result.last, touch.last)
}

/** After backing out the whole edge must stand clear of the stock as it was, not only of what is left under it. */
function checkClear(state: State, step: SheetStep, inside: number): void {
  if (state.feature.edge!.shape === 'corner') return
  if (inside > NOTHING[state.sheet.units]) complain(state, step, 'backed out, and not clear of the work')
}

function complain(state: State, step: SheetStep, text: string): void {
  state.result.problems.push(`step ${step.number}: ${text}`)
}
