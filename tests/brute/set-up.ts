import { crossContact, faceAt, faceContact } from './contact.ts'
import type { EdgeCurve } from './edges.ts'
import type { Screw, SlideName } from './screws.ts'
import type { EdgePoint, Sheet, SheetFeature } from './sheet-shape.ts'
import type { WorkGrid } from './work-grid.ts'

/**
 * Where the reference point of the edge stands when all slides stand at 0: from the free end, and from the axis. null =
 * nobody knows yet. `near`: brought close to a face, so that the place along the work is no zero yet.
 */
export type Stand = { z: number | null; tip: number | null; near: boolean }

export type SetUp = {
  sheet: Sheet
  grid: WorkGrid
  feature: SheetFeature
  edge: EdgeCurve
  screws: Record<SlideName, Screw>
  stand: Stand
  locked: boolean
  cos: number
  sin: number
}

/** The hand brings the tool along by the carriage until a point of its edge stands where the sheet says, wherever the slides stand. */
export function align(set: SetUp): string[] {
  const { placing } = set.feature
  if (placing === undefined) return ['aligned on nothing: the sheet names no place']
  const { against } = placing
  const problems: string[] = []
  if (set.locked) problems.push('aligned with the carriage locked')
  if (set.screws.carriage.zeroed) problems.push('aligned after the carriage was set to zero')
  if ('line' in against) {
    problems.push(...unscribed(set, against.line))
    bring(set, placing.point, against.line)
  } else if ('between' in against) {
    problems.push(...against.between.flatMap((line) => unscribed(set, line)))
    bring(set, placing.point, (against.between[0] + against.between[1]) / 2)
  } else if ('face' in against) {
    problems.push(...noFace(set, placing.point, against.face))
    bring(set, placing.point, against.face)
  } else {
    if (faceAt(set.sheet, against.beside) !== 'tailstock')
      problems.push(`no face that looks to the tailstock at ${against.beside}`)
    bring(set, placing.point, against.beside - against.gap)
  }
  set.stand.near = 'beside' in against
  return problems
}

/** Only the ends of the whole edge can touch a face, each the face that looks at it. */
function noFace({ sheet }: SetUp, point: EdgePoint, z: number): string[] {
  const looks = point === 'headstock-corner' ? 'tailstock' : point === 'tailstock-corner' ? 'headstock' : null
  return looks !== null && faceAt(sheet, z) === looks ? [] : [`no face at ${z} that the ${point} can touch`]
}

function unscribed({ sheet, feature }: SetUp, line: number): string[] {
  const near = (z: number): boolean => Math.abs(z - line) <= tiny(sheet)
  const known = (feature.lines ?? []).some(near) || sheet.part.steps.some(({ from, to }) => near(from) || near(to))
  return known ? [] : [`aligned on a line at ${line} that nobody scribed`]
}

function bring(set: SetUp, point: EdgePoint, z: number): void {
  set.stand.z = z - pointOf(set.edge, point) - set.screws.carriage.slide - set.screws.compound.slide * set.cos
}

function pointOf(edge: EdgeCurve, point: EdgePoint): number {
  if (point === 'tailstock-corner') return edge.from
  if (point === 'headstock-corner') return edge.to
  if (point === 'nose-tailstock-corner') return edge.peakFrom
  return point === 'nose-headstock-corner' ? edge.peakTo : (edge.peakFrom + edge.peakTo) / 2
}

export function touchOff(set: SetUp, slide: SlideName | null): string[] {
  if (slide === 'cross-feed') return touchAcross(set)
  return slide === 'compound' ? touchAlong(set) : ['touched off, and no slide named that can be fed to a touch']
}

/** The cross-feed is fed in until the edge meets metal: from there its depth is known. */
function touchAcross(set: SetUp): string[] {
  const { touch } = set.feature
  if (touch === undefined) return ['touched off on nothing: the sheet names no diameter']
  const problems = touch.at === null || set.locked ? [] : bringOver(set, touch.at)
  if (set.stand.z === null) return [...problems, 'touched off before the tool was brought anywhere']
  const { sheet, grid, edge, screws, stand } = set
  const met = crossContact(sheet, grid, edge, alongNow(set))
  if (met === null) return [...problems, 'the cross-feed is fed in where there is no metal']
  if (Math.abs(met.metal - touch.diameter) > micrometer(sheet)) {
    problems.push(`touches a diameter of ${met.metal.toFixed(6)}, told is ${touch.diameter}`)
  }
  const cross = screws['cross-feed']
  if (stand.tip === null) stand.tip = met.tip + cross.slide + screws.compound.slide * set.sin
  else cross.slide = stand.tip - screws.compound.slide * set.sin - met.tip
  cross.dial = cross.slide
  return problems
}

function bringOver(set: SetUp, at: NonNullable<NonNullable<SheetFeature['touch']>['at']>): string[] {
  const { against, point } = at
  set.stand.near = true
  if ('past' in against) {
    bring(set, point, against.past + against.by)
    return faceAt(set.sheet, against.past) === 'tailstock' ? [] : [`no face at ${against.past} to be past of`]
  }
  const [from, to] = against.over
  const found = [from, to, (from + to) / 2].map((z) => {
    bring(set, point, z)
    return crossContact(set.sheet, set.grid, set.edge, alongNow(set))?.tip ?? Number.NaN
  })
  const same = found.every((tip) => Math.abs(tip - found[0]!) <= tiny(set.sheet))
  return same ? [] : [`the touch is not the same everywhere over ${from} to ${to}`]
}

/** The compound is fed forward from where it stands until the edge, at the depth where it is held, meets a face. */
function touchAlong(set: SetUp): string[] {
  const { sheet, grid, edge, screws, stand, cos, sin } = set
  if (stand.tip === null) return ['fed to a face at a depth that nobody knows yet']
  if (stand.z === null) return ['fed to a face before the tool was brought anywhere']
  const problems: string[] = []
  if (!set.locked) problems.push('fed to a face before the carriage is locked')
  if (Math.abs(sin) > 1e-9 && screws['cross-feed'].zeroed)
    problems.push('a swung compound fed to a face after the cross-feed was set to zero')
  if (cos < 1e-9) return [...problems, 'a compound set square is fed to no face']
  const now = alongNow(set)
  const tip = stand.tip - screws['cross-feed'].slide - screws.compound.slide * sin
  const met = faceContact(sheet, grid, edge, tip, now - tiny(sheet))
  if (met === null) return [...problems, 'the compound is fed forward and meets no face']
  screws.compound.slide += (met - now) / cos
  screws.compound.dial = screws.compound.slide
  stand.near = false
  return problems
}

function alongNow({ stand, screws, cos }: SetUp): number {
  return stand.z! + screws.carriage.slide + screws.compound.slide * cos
}

/** A dial is set to another reading and the slide is not moved: only what its readings are counted from changes. */
export function rename(set: SetUp, slide: SlideName, reading: number): void {
  const { stand, cos, sin } = set
  const screw = set.screws[slide]
  const by = reading - screw.slide
  const [along, inward] = slide === 'cross-feed' ? [0, 1] : slide === 'compound' ? [cos, sin] : [1, 0]
  if (stand.z !== null) stand.z -= by * along
  if (stand.tip !== null) stand.tip += by * inward
  screw.dial = reading
  screw.slide = reading
}

/** What was found against what the sheet says was found. Where nothing was found, the sheet's is taken to go on with. */
export function zeroProblems({ sheet, feature, stand }: SetUp): string[] {
  const told = feature.zero
  const problems: string[] = []
  if (stand.z === null || stand.near) problems.push('no place along the work was found for zero')
  else if (told && Math.abs(stand.z - told.fromEnd) > sameZero(sheet))
    problems.push(`zero stands at ${stand.z.toFixed(7)} along the work, told is ${told.fromEnd}`)
  if (stand.tip === null) problems.push('no depth was found for zero')
  else if (told && Math.abs(2 * stand.tip - told.diameter) > sameZero(sheet))
    problems.push(`zero stands at a diameter of ${(2 * stand.tip).toFixed(7)}, told is ${told.diameter}`)
  stand.z ??= told?.fromEnd ?? 0
  stand.tip ??= (told?.diameter ?? 0) / 2
  stand.tip -= feature.off ?? 0
  return problems
}

const sameZero = ({ units }: Sheet): number => (units === 'inch' ? 2e-6 : 5e-5)
const micrometer = ({ units }: Sheet): number => (units === 'inch' ? 1 / 25_400 : 0.001)
/** Rounding in printed numbers, and no more. */
const tiny = ({ units }: Sheet): number => (units === 'inch' ? 1e-7 : 2e-6)
