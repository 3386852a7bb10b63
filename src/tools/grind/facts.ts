import {
  BACK_CLEARANCE,
  END_RELIEF,
  LEAST_CLEARANCE,
  nearestGauge,
  pastDepth,
  rakeFor,
  SIDE_RELIEF,
  USUAL_TILT,
} from '../../handbook/grinding.ts'
import { stockBits } from '../../handbook/tool-bits.ts'
import type { AngleRange, FormFacts, GaugeFacts, GrindFacts, SideFacts } from '../../moves/grinding.ts'
import type { Degrees } from '../../units/dimension.ts'
import type { Length, Units } from '../../units/length.ts'
import type { Tool } from '../tool.ts'
import { backToGrind, flankPlane, flankRelief, type Stand, sideInUse } from './clearance.ts'
import * as onFace from './form.ts'

/** The form that a tool is ground for. Lengths pm; `surface` and `bottom` are diameters. */
export type FormToCut = {
  readonly feature: string
  readonly units: Units
  readonly work: 'one-off' | 'repeat'
  readonly material: string
  readonly surface: Length
  readonly depth: Length
  /** Width of a groove at the surface, and the width that a square edge is ground to for it; null for another form. */
  readonly width: Length | null
  readonly aimedWidth: Length | null
  /** The groove is wider than any edge that is ground for it. */
  readonly severalPlaces: boolean
  /** How much higher than the surface a step close by stands, which the sides must pass as well; 0 without one. */
  readonly shoulder: Length
  /** Half of the included angle, and the radius, as the drawing has them. */
  readonly half: Degrees | null
  readonly radius: Length | null
}

/** Everything that the grinding sheet says of one tool, worked out for one form. */
export function grindFacts(tool: Tool, form: FormToCut): GrindFacts {
  const rakeGround = tool.rakeInUse - tool.holderAngle
  const cut = formFacts(tool, form)
  const carried = carriedWidth(tool, cut)
  return {
    tool: tool.name,
    shape: tool.shape,
    bit: tool.bit,
    measured: tool.measured,
    work: form.work,
    blank: blankFor(tool, carried, form.units),
    width:
      tool.shape === 'square'
        ? { drawn: form.width, aim: form.aimedWidth ?? tool.width.aim, edge: tool.width.aim }
        : null,
    severalPlaces: tool.shape === 'square' && form.severalPlaces,
    nose: tool.shape === 'vee' ? tool.nose : null,
    cornerRadius: tool.shape === 'square' && tool.cornerRadius > 0 ? tool.cornerRadius : null,
    reach: tool.reach,
    holderAngle: tool.holderAngle,
    rakeGround,
    rakeInUse: tool.rakeInUse,
    rakeAdvice: rakeFor(form.material),
    endRelief: {
      use: END_RELIEF,
      ground: plus(END_RELIEF, tool.holderAngle),
      tilted: plus(END_RELIEF, USUAL_TILT),
    },
    sides: sidesOf(tool, cut, rakeGround),
    form: cut,
    gauge: gaugeFor(tool, cut, form.units),
  }
}

const plus = ([low, high]: AngleRange, by: Degrees): AngleRange => [low + by, high + by]

function formFacts(tool: Tool, form: FormToCut): FormFacts {
  const surface = form.surface / 2
  const floor = surface - form.depth
  const rake = tool.rakeInUse
  const face = onFace.faceLength(form.depth, floor, rake)
  const past = onFace.faceLength(form.depth + form.shoulder, floor, rake)
  const [least, most] = pastDepth(form.units)
  return {
    feature: form.feature,
    depth: form.depth,
    surface: form.surface,
    face,
    sidesReach: [past + least, past + most],
    shoulder: form.shoulder,
    squareToFront: onFace.squareToFront(face, (END_RELIEF[0] + END_RELIEF[1]) / 2, rake),
    shallow: form.depth - onFace.depthReached(form.depth, surface, rake),
    vee: tool.shape === 'vee' ? flank(form.half ?? tool.angle / 2, form.depth, face, floor, rake) : null,
    round: tool.shape === 'round' ? segment(form.radius ?? tool.radius, form, rake) : null,
    corner: tool.shape === 'corner' ? hollow(form.radius ?? tool.radius, surface, rake) : null,
  }
}

const flank = (half: Degrees, depth: Length, face: Length, floor: Length, rake: Degrees): FormFacts['vee'] => ({
  half,
  ground: onFace.halfAngleToGrind(half, depth, face),
  cut: onFace.halfAngleCut(half, depth, face),
  strays: onFace.flankStrays(depth, face, floor, rake),
})

/** No more of a round end than its half circle has sides to speak of. */
function segment(radius: Length, form: FormToCut, rake: Degrees): FormFacts['round'] {
  const depth = Math.min(form.depth, radius)
  const floor = form.surface / 2 - form.depth
  const face = onFace.faceLength(depth, floor, rake)
  const ground = onFace.radiusToGrind(radius, depth, face)
  return {
    radius,
    ground,
    strays: onFace.roundStrays({ radius, ground, depth, floor, rake }),
    width: onFace.roundCut(radius, depth, depth).width,
    cut: onFace.roundCut(radius, depth, face),
  }
}

/** The deep tip of a hollow stands on center, the radius below the surface. */
const hollow = (radius: Length, surface: Length, rake: Degrees): FormFacts['corner'] => ({
  radius,
  down: onFace.faceLength(radius, surface - radius, rake),
  cutDown: onFace.depthReached(radius, surface, rake),
  ...(rake === 0 ? { arc: null, points: [] } : quarterOf(radius, surface, rake)),
})

/** A few points for the sheet; many to see how far a circle is off. */
function quarterOf(radius: Length, surface: Length, rake: Degrees) {
  const many = onFace.hollowPoints(radius, surface, rake, 64)
  const face = onFace.nearestCircle(many.map((point) => [point.along, point.face]))
  const cut = onFace.nearestCircle(many.map((point) => [point.along, point.uncorrected]))
  const arc = { radius: face.radius, strays: face.strays, cutsRadius: cut.radius, cutsStray: cut.strays }
  return { arc, points: onFace.hollowPoints(radius, surface, rake, 6) }
}

/** Width of the bit that the ground end takes, with its flanks as far back as they are ground. */
function carriedWidth(tool: Tool, form: FormFacts): Length {
  switch (tool.shape) {
    case 'square':
      return tool.width.aim
    case 'vee':
      return tool.nose + 2 * form.sidesReach[0] * Math.tan((form.vee?.ground ?? 0) * (Math.PI / 180))
    case 'round':
      return tool.edgeWidth ?? 2 * tool.radius
    case 'corner':
      return tool.radius
  }
}

function blankFor(tool: Tool, width: Length, units: Units): GrindFacts['blank'] {
  const stock = stockBits(units)
  if (tool.blank !== null) {
    const row = stock.find((bit) => bit.square === tool.blank)
    return { square: tool.blank, given: tool.measured, fromMemory: row?.fromMemory ?? false }
  }
  const bit = stock.find((each) => each.square >= width)
  return bit === undefined ? null : { square: bit.square, given: false, fromMemory: bit.fromMemory }
}

function sidesOf(tool: Tool, form: FormFacts, rakeGround: Degrees): SideFacts {
  const stand = { tilt: tool.holderAngle, rakeGround }
  return form.vee === null ? straightSides(stand) : flanks(form.vee.ground, stand)
}

/** Least and greatest over the ranges ground: the least clearance goes with the most relief where a tilted bit has its top leveled. */
function straightSides(stand: Stand): SideFacts {
  const planes = SIDE_RELIEF.flatMap((relief) => BACK_CLEARANCE.map((back) => ({ relief, back })))
  const used = planes.map((plane) => sideInUse(plane, stand))
  const backInUse = rangeOf(used.map(({ edge }) => edge))
  const short = backInUse[0] < LEAST_CLEARANCE
  return {
    relief: SIDE_RELIEF,
    reliefInUse: rangeOf(used.map(({ relief }) => relief)),
    back: BACK_CLEARANCE,
    backInUse,
    backNeeded: short ? Math.max(...SIDE_RELIEF.map((relief) => backToGrind(LEAST_CLEARANCE, relief, stand))) : null,
  }
}

/** Flanks widen going back; what the tilt takes of their relief is ground on top of it. */
function flanks(half: Degrees, stand: Stand): SideFacts {
  const relief = rangeOf(SIDE_RELIEF.map((wanted) => flankRelief(wanted, half, stand)))
  const used = relief.map((ground) => sideInUse(flankPlane(half, ground, stand.rakeGround), stand).relief)
  return { relief, reliefInUse: rangeOf(used), back: null, backInUse: null, backNeeded: null }
}

const rangeOf = (values: readonly number[]): AngleRange => [Math.min(...values), Math.max(...values)]

function gaugeFor(tool: Tool, form: FormFacts, units: Units): GaugeFacts | null {
  const radius = form.round?.ground ?? form.corner?.radius ?? (tool.shape === 'square' ? tool.cornerRadius : 0)
  if (radius <= 0) return null
  const gauge = nearestGauge(radius, units)
  return { radius: gauge.radius, label: gauge.label, off: radius - gauge.radius, source: gauge.source }
}
