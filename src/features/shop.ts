import { INCH, type Length, MM, type Units } from '../units/length.ts'
import type { Cutting } from './feature.ts'

/** Shop defaults of the `cutting:` keys; common practice, no source. Lengths of slide travel in pm. */
const thou = INCH / 1000
const both =
  (inch: Length, mm: Length) =>
  (units: Units): Length =>
    units === 'inch' ? inch : mm

/** Floor left for the finish pass: 0.020 in or a quarter of the depth, whichever is smaller. */
export const defaultLeave = (units: Units, depth: Length): Length => Math.min(both(20 * thou, MM / 2)(units), depth / 4)
/** What is left for the finish: as the job gives it; otherwise the default, and never more than an infeed. */
export const leftFor = (units: Units, cutting: Pick<Cutting, 'leave' | 'infeed'>, depth: Length): Length =>
  Math.min(cutting.leave ?? Math.min(defaultLeave(units, depth), cutting.infeed ?? depth), depth)
/**
 * A plunge of a straight-sided edge that is deeper than the edge is wide goes in by pecks: "groove deeper than the insert
 * is wide: plunge in steps" (a tool maker's grooving recommendations, 2020). How deep a peck is, and that a quarter more
 * is still one bite: common practice, no source.
 */
export const peckFor = (given: Length | null, width: Length, depth: Length): Length | null =>
  given ?? (depth > oneBite(width) ? width : null)
export const oneBite = (width: Length): Length => width * 1.25
/**
 * A slot no wider than its tool binds it: four widths deep it is widened before it goes deeper (a trade journal on
 * V-belt grooves, 2023, for a carbide blade in cast iron; an old recipe for carbon steel has 3.3, so four is the most).
 */
export const deepestSlot = (width: Length): Length => 4 * width
export const defaultClear = both(30 * thou, 0.75 * MM)
export const defaultVeeInfeed = both(60 * thou, 1.5 * MM)
/**
 * A few thousandths on each wall for a plunge of its own. Common practice, no source; that the walls are finished last:
 * a tool maker's guide for external grooving (2016-2017).
 */
/**
 * Limits of a width closer together than this call for a plunge at each wall: a tool that is dragged sideways into a wall springs by a thousandth or two.
 * 0.008 in, 0.2 mm: common practice, no source.
 */
export const closeWidth = both(8 * thou, 0.2 * MM)
export const defaultWallAllowance = both(3 * thou, 0.08 * MM)
/**
 * What a tool that roughs in steps leaves on each flank for the tool that finishes it: both are brought to the lines by eye. 0.015 in, 0.4 mm; it steps
 * by a third of its width. Common practice, no source.
 */
export const defaultRoughSides = both(15 * thou, 0.4 * MM)
export const roughStep = (width: Length): Length => width / 3
/** A V with a keener nose than this, 0.020 in or 0.5 mm, is not roughed with: common practice, no source. */
export const roughNose = both(20 * thou, MM / 2)
export const defaultVeeMargin = both(3 * thou, 0.08 * MM)
export const defaultCornerInfeed = both(5 * thou, 0.12 * MM)
/** How far the ground sides of a tool reach past the depth: 1/16 in, 1.5 mm. */
export const pastTheDepth = both(INCH / 16, 1.5 * MM)
/** How much under the drawing a tool for one part is ground: 0.004 in, 0.1 mm. */
export const oneOffUndersize = both(4 * thou, 0.1 * MM)
/**
 * How near a face a tool is brought by eye, and how deep its side is beside the face when it is fed to it: 0.010 in,
 * 0.25 mm.
 */
export const besideFace = both(10 * thou, 0.25 * MM)
/**
 * How far a tip of a hollow overlaps the work while it is touched alone, t: brought over it by eye, 0.005 in or 0.12
 * mm, and by a dial, 0.003 in or 0.08 mm. The hollow touches a little beside its very tip, t²/2R early: so t is no
 * larger than the eye can set.
 */
export const tipByEye = both(5 * thou, 0.12 * MM)
export const tipByDial = both(3 * thou, 0.08 * MM)
/** Sizes that differ by less cannot be distinguished by measuring a tool: 0.0001 in. */
export const belowMeasuring: Length = thou / 10
/**
 * Widest edge that is asked for when a tool must still be ground: 3/16 in, 5 mm; a wider groove is cut in several
 * places.
 */
export const widestToGrind = both((3 * INCH) / 16, 5 * MM)
/**
 * The tallest ridge left when a round tool steps along a round form: 0.0005 in, 0.01 mm; with a square tool, to be
 * filed: 0.003 in, 0.08 mm.
 */
export const defaultCusp = both(thou / 2, MM / 100)
export const defaultFiledCusp = both(3 * thou, 0.08 * MM)
/** Infeed of one pass when a form is cut step by step: 0.020 in, 0.5 mm. */
export const defaultStepInfeed = both(20 * thou, MM / 2)
