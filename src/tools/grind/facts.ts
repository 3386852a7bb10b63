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
import { shapeOf } from '../registry.ts'
import type { Tool } from '../tool.ts'
import { backToGrind, flankPlane, flankRelief, type Mounting, sideInUse } from './clearance.ts'
import * as onFace from './form.ts'

/** The form that a tool is ground for. Lengths pm; `surface` and `bottom` are diameters. */
export type FormToCut = {
  readonly feature: string
  readonly units: Units
  readonly work: 'one-off' | 'repeat'
  readonly material: string
  readonly surface: Length
  readonly depth: Length
  /** Width of a groove at the surface, and the width of the square edge ground for it; null for another form. */
  readonly width: Length | null
  readonly aimedWidth: Length | null
  /** The groove is wider than any edge that is ground for it. */
  readonly severalPlaces: boolean
  /** Height of a nearby step above the surface, which the sides must pass as well; 0 without one. */
  readonly shoulder: Length
  /** Half of the included angle, and the radius, as on the drawing. */
  readonly half: Degrees | null
  readonly radius: Length | null
}

/** All that the grinding sheet shows about one tool, worked out for one form. */
export function grindFacts(tool: Tool, form: FormToCut): GrindFacts {
  const rakeGround = tool.rakeInUse - tool.holderAngle
  const cut = formFacts(tool, form)
  const { grinding } = shapeOf(tool)
  return {
    tool: tool.name,
    shape: tool.shape,
    bit: tool.bit,
    measured: tool.measured,
    work: form.work,
    blank: blankFor(tool, grinding.carried(tool, cut), form.units),
    width: null,
    severalPlaces: false,
    nose: null,
    cornerRadius: null,
    ...grinding.sizes(tool, form),
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
    gauge: gaugeFor(grinding.gauged(tool, cut), form.units),
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
    vee: null,
    round: null,
    corner: null,
    ...shapeOf(tool).grinding.onFace(tool, form, { face, floor }),
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
  const mounting = { tilt: tool.holderAngle, rakeGround }
  return form.vee === null ? straightSides(mounting) : flanks(form.vee.ground, mounting)
}

/**
 * Least and greatest over the ranges ground: with a tilted bit whose top is leveled, the most relief leaves the least
 * clearance.
 */
function straightSides(mounting: Mounting): SideFacts {
  const planes = SIDE_RELIEF.flatMap((relief) => BACK_CLEARANCE.map((back) => ({ relief, back })))
  const used = planes.map((plane) => sideInUse(plane, mounting))
  const backInUse = rangeOf(used.map(({ edge }) => edge))
  const short = backInUse[0] < LEAST_CLEARANCE
  return {
    relief: SIDE_RELIEF,
    reliefInUse: rangeOf(used.map(({ relief }) => relief)),
    back: BACK_CLEARANCE,
    backInUse,
    backNeeded: short ? Math.max(...SIDE_RELIEF.map((relief) => backToGrind(LEAST_CLEARANCE, relief, mounting))) : null,
  }
}

/** Flanks widen going back; the relief that the tilt takes is ground in addition. */
function flanks(half: Degrees, mounting: Mounting): SideFacts {
  const relief = rangeOf(SIDE_RELIEF.map((wanted) => flankRelief(wanted, half, mounting)))
  const used = relief.map((ground) => sideInUse(flankPlane(half, ground, mounting.rakeGround), mounting).relief)
  return { relief, reliefInUse: rangeOf(used), back: null, backInUse: null, backNeeded: null }
}

const rangeOf = (values: readonly number[]): AngleRange => [Math.min(...values), Math.max(...values)]

function gaugeFor(radius: Length, units: Units): GaugeFacts | null {
  if (radius <= 0) return null
  const gauge = nearestGauge(radius, units)
  return { radius: gauge.radius, label: gauge.label, off: radius - gauge.radius, source: gauge.source }
}
