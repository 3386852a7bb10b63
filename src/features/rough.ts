import { bounded } from '../moves/bounds.ts'
import type { StairCuts } from '../moves/cuts.ts'
import type { Curve, Form, Piece } from '../moves/form.ts'
import { linePiece } from '../moves/pieces.ts'
import type { EdgePoint } from '../moves/placing.ts'
import type { Prose } from '../phrase/phrase.ts'
import { about, degrees, exact, say } from '../phrase/say.ts'
import type { Tool } from '../tools/tool.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import { type Bench, type Draft, type Drafted, refuse } from './draft.ts'
import type { Feature } from './feature.ts'
import { onCurve } from './on-curve.ts'
import { deepestSlot, defaultLeave, defaultRoughSides, oneBite, peckFor, roughNose, roughStep } from './shop.ts'
import { freeBeside, noRoomBeside } from './touched.ts'

/** The tool that roughs a feature before its own tool finishes it; null if its own tool does all. */
export const roughToolOf = (feature: Feature): string | null => ('roughTool' in feature ? feature.roughTool : null)

/** What the steps are called on the sheet, beside the feature itself. */
const roughName = ({ name }: Feature): string => `${name}, in steps`

/**
 * Steps under the form of a draft, by a square tool or a steeper V, place by place as deep as the form allows there: metal is left on its flanks and its
 * floor. `draft` is the feature as its own tool cuts it. Lengths pm.
 */
export function draftRough(bench: Bench, draft: Draft, name: string): Drafted {
  const tool = bench.tools[name]
  if (tool === undefined) throw new Error(`no tool is named ${name}: the reader should have refused it`)
  const { feature, region, surface } = draft
  if (draft.cuts.style !== 'plunge' && draft.cuts.style !== 'flank')
    return refuse(
      'rough-tool',
      'rough-tool: opens up a form for a tool that has its shape, and this form is stepped along by its own tool',
      'leave rough-tool out for this feature',
    )
  const opener = openerOf(bench.units, tool, feature)
  if (!('width' in opener)) return opener
  const sides = Math.max(feature.cutting.leaveSides ?? 0, defaultRoughSides(bench.units))
  const whole = draft.cuts.depth
  const leave = Math.min(2 * leaveAfterRough(bench, feature, whole), whole / 2)
  const floor = Math.floor((whole - leave) / depthUnit(bench.units)) * depthUnit(bench.units)
  const form: Inside = { wanted: draft.wanted, surface, region, sides, floor }
  const stairs = stairsOf(form, opener.width, spacingOf(opener, draft.wanted[0]!.curve))
  if (stairs === null) {
    const widest = depthWide(form, whole / 2)
    return refuse(
      'rough-tool',
      say`${opener.called} is ${exact('drawing', opener.width, bench.units)} wide: it does not go halfway down this form without touching its flanks`,
      widest > 0
        ? say`rough it with a tool ${exact('drawing', Math.floor(widest / depthUnit(bench.units)) * depthUnit(bench.units), bench.units)} wide or less, or leave rough-tool out`
        : 'leave rough-tool out: this form is small enough for its own tool',
    )
  }
  const { places, first, last } = stairs
  if (stairs.depthAt(places[0]!) < sides)
    return refuse(
      'rough-tool',
      'this form is so small that steps would leave nearly all of it',
      'leave rough-tool out: its own tool takes it in light cuts',
    )
  if (places.length > MOST_PLACES)
    return refuse(
      'rough-tool',
      say`${opener.called} is ${exact('drawing', opener.width, bench.units)} wide: it would go to ${places.length} places, more than ${MOST_PLACES}`,
      say`rough it with a tool ${exact('drawing', upTo((opener.width * places.length) / MOST_PLACES, bench.units), bench.units)} wide or a little more`,
    )
  const deepest = stairs.depthAt(places[0]!)
  const layer = layerOf(opener, deepest)
  const peck = opener.run === 0 ? peckFor(feature.cutting.peck, opener.width, deepest) : (feature.cutting.peck ?? layer)
  const cuts: StairCuts = {
    style: 'stairs',
    nose: { width: opener.width, run: opener.run },
    places,
    first,
    last,
    depthAt: stairs.depthAt,
    depth: deepest,
    infeed: feature.cutting.infeed,
    peck,
    layer,
  }
  return {
    ok: true,
    draft: {
      feature: { ...feature, name: roughName(feature), tool: name },
      tool,
      undersize: null,
      surface,
      zero: { fromEnd: region.from, diameter: surface },
      wanted: inset(form),
      atLeast: stairForm({ ...form, sides: 2 * sides, floor: form.floor - sides / 2 }, opener, places),
      region,
      dimensions: [],
      cuts,
      drawn: [say`steps under "${feature.name}", for tool "${draft.tool.name}" to finish`],
      layout: draft.layout,
      placing: { point: opener.point, against: { line: region.from } },
      touch: { diameter: surface, at: null },
      notes: [],
      roughs: { sides, finisher: draft.tool.name, form: draft.wanted },
    },
  }
}

/** What of a tool opens up a form: how wide its nose is and how round its corners, and how far its flanks run aside to an inch of depth. */
type Opener = {
  readonly called: Prose
  readonly point: EdgePoint
  readonly width: Length
  readonly corner: Length
  readonly run: number
}

/** Along a flank, so that no more is left between two places than steps with square sides leave; the noses overlap. */
function spacingOf({ width, run }: Opener, flank: Curve): Length {
  const across = flank.kind === 'line' ? (flank.z1 - flank.z0) / (flank.d1 - flank.d0) : Number.POSITIVE_INFINITY
  const share = 1 - run / across
  return share * overlapping(width) <= roughStep(width) ? overlapping(width) : roughStep(width) / share
}

const overlapping = (width: Length): Length => width * 0.9

/**
 * A straight slot is widened before it binds the tool. A V binds nowhere, but both of its flanks cut as high as the layer is deep: one bite for it, as a
 * long edge is what the steps are to spare. Common practice, no source. pm, null: all at once.
 */
function layerOf({ width, run }: Opener, deepest: Length): Length | null {
  if (run === 0) return deepest > deepestSlot(width) ? deepestSlot(width) : null
  const layers = bounded(Math.ceil(deepest / oneBite(width) - 1e-9))
  return layers > 1 ? deepest / layers : null
}

/** Flanks of no more angle than those of a V stay off them when the corners of the nose do. */
function openerOf(units: Units, tool: Tool, feature: Feature): Opener | Drafted {
  if (tool.shape === 'square')
    return {
      called: say`tool "${tool.name}"`,
      point: 'tailstock-corner',
      width: tool.width.aim,
      corner: tool.cornerRadius,
      run: 0,
    }
  if (tool.shape !== 'vee' || feature.kind !== 'v-groove')
    return refuse(
      'wrong-shape',
      say`tool "${tool.name}" is to rough it in steps, and is no square tool`,
      feature.kind === 'v-groove'
        ? 'name a square tool or a V tool with no more angle (rough-tool:), or leave rough-tool out'
        : 'name a square tool (rough-tool:), or leave rough-tool out',
    )
  if (tool.angle > feature.angle.aim)
    return refuse(
      'rough-tool',
      say`tool "${tool.name}" is to rough it in steps, and has ${degrees('tool', tool.angle)} for a V of ${degrees('drawing', feature.angle.aim)}`,
      'name a square tool or a V tool with no more angle (rough-tool:), or leave rough-tool out',
    )
  if (tool.nose < roughNose(units))
    return refuse(
      'rough-tool',
      say`the nose of tool "${tool.name}", ${exact('tool', tool.nose, units)}, is too narrow to rough in steps with`,
      say`stone a flat of ${exact('drawing', roughNose(units), units)} or more on it, or leave rough-tool out`,
    )
  const run = Math.tan(((tool.angle / 2) * Math.PI) / 180)
  return {
    called: say`the nose of tool "${tool.name}"`,
    point: 'nose-tailstock-corner',
    width: tool.nose,
    corner: 0,
    run,
  }
}

/**
 * The feature as its own tool finishes it after the steps: between the lines there is no surface left to touch, so the tool is touched off beside them.
 * pm.
 */
export function draftAfterRough(bench: Bench, draft: Draft, edge: Form, steps: Draft): Drafted {
  const { surface, cuts } = draft
  const over = freeBeside(bench, draft, edge, [])
  if (over === null) return noRoomBeside(draft)
  const opened =
    cuts.style === 'plunge'
      ? { cuts: { ...cuts, opened: openedTo(draft, edge, steps.atLeast ?? [], cuts.roughPlaces) } }
      : {}
  return {
    ok: true,
    draft: { ...draft, ...opened, touch: { diameter: surface, at: { point: 'tip', against: { over } } } },
  }
}

/** What the feature's own tool leaves for its finish: half of what the steps leave on the floor, so that it cleans that up before. */
export const leaveAfterRough = (bench: Bench, feature: Feature, depth: Length): Length =>
  feature.cutting.leave ?? defaultLeave(bench.units, depth) / 2

/** How deep an edge goes at the nearest of its places before it meets what the steps have surely left. */
function openedTo({ zero, surface, region }: Draft, edge: Form, steps: Form, places: readonly Length[]): Length {
  const level = (piece: Piece): Length => onCurve(piece.curve, (piece.from + piece.to) / 2) + surface / 2
  const ground = [
    { from: Number.NEGATIVE_INFINITY, to: steps[0]?.from ?? region.to, depth: 0 },
    ...steps.map((piece) => ({ from: piece.from, to: piece.to, depth: level(piece) })),
    { from: steps.at(-1)?.to ?? region.from, to: Number.POSITIVE_INFINITY, depth: 0 },
  ]
  const deepestWithin = (from: Length, to: Length): Length =>
    Math.max(
      ...edge.flatMap((piece) => {
        const [left, right] = [Math.max(piece.from, from), Math.min(piece.to, to)]
        if (left > right) return []
        const tip = piece.curve.kind === 'arc' ? Math.min(right, Math.max(left, piece.curve.zc)) : left
        return [left, right, tip].map((u) => onCurve(piece.curve, u))
      }),
      Number.NEGATIVE_INFINITY,
    )
  const meets = places.map((place) => {
    const z = zero.fromEnd + place
    return Math.min(...ground.map(({ from, to, depth }) => depth - deepestWithin(from - z, to - z)))
  })
  return Math.max(0, Math.min(...meets))
}

/** Nobody opens a form up at more places than this: common practice, no source. */
const MOST_PLACES = 30

/** Up to what can be measured on a tool. */
const upTo = (length: Length, units: Units): Length => Math.ceil(length / depthUnit(units)) * depthUnit(units)

/** The steps are told in depths that can be read. */
const depthUnit = (units: Units): Length => (units === 'inch' ? INCH / 1000 : MM / 50)

/** A form to stay inside: `sides` off its flanks along the work, and no deeper than `floor` below the surface. */
type Inside = {
  readonly wanted: Form
  readonly surface: Length
  readonly region: Draft['region']
  readonly sides: Length
  readonly floor: Length
}

/** Depth below the surface that may be cut at z. A form that grows narrower downward: the nearer flank is what counts. */
const depthOf = ({ wanted, surface, sides, floor }: Inside, z: Length): Length => {
  const drawn = (at: Length): Length => {
    const piece = wanted.find(({ from, to }) => from <= at && at <= to)
    return piece === undefined ? 0 : onCurve(piece.curve, at) + surface / 2
  }
  return Math.max(0, Math.min(drawn(z - sides), drawn(z + sides), floor))
}

/** How wide the room is at a depth. */
const depthWide = (form: Inside, depth: Length): Length => {
  const middle = (form.region.from + form.region.to) / 2
  if (depthOf(form, middle) < depth) return 0
  return 2 * (middle - border(form.region.from, middle, (z) => depthOf(form, z) >= depth))
}

/** Where a condition begins to hold, between a place where it does not and one where it does. */
const border = (outside: Length, inside: Length, holds: (at: Length) => boolean): Length => {
  let [out, into] = [outside, inside]
  for (let i = 0; i < 60; i++) {
    const half = (out + into) / 2
    if (holds(half)) into = half
    else out = half
  }
  return into
}

/** Deepest place first, then from near to far; null if the tool does not come halfway down. */
function stairsOf(
  form: Inside,
  width: Length,
  spacing: Length,
): Pick<StairCuts, 'places' | 'first' | 'last' | 'depthAt'> | null {
  const near = form.region.from
  const depthAt = (place: Length): Length => Math.min(depthOf(form, near + place), depthOf(form, near + place + width))
  const middle = (form.region.to - form.region.from - width) / 2
  const deepest = depthAt(middle)
  if (deepest < form.floor / 2) return null
  const from = border(-width, middle, (place) => depthAt(place) >= deepest - 1)
  const outermost = border(-width, middle, (place) => depthAt(place) >= Math.min(form.sides, deepest))
  const left = evenly(outermost, from, spacing).slice(0, -1)
  const mirrored = (places: readonly Length[]) => places.map((place) => 2 * middle - place).toReversed()
  const floor = evenly(from, 2 * middle - from, overlapping(width))
  const all = [...left, ...floor, ...mirrored(left)]
  const first = floor[Math.floor((floor.length - 1) / 2)]!
  return { places: [first, ...all.filter((place) => place !== first)], first: all[0]!, last: all.at(-1)!, depthAt }
}

/** Places within a nanometer are one place. */
const ALIKE: Length = 1000

/** From one place to another, both included, no further apart than `most`. */
const evenly = (from: Length, to: Length, most: Length): Length[] => {
  if (to - from < ALIKE) return [(from + to) / 2]
  const gaps = bounded(Math.max(1, Math.ceil((to - from) / most - 1e-9)))
  return Array.from({ length: gaps + 1 }, (_, i) => from + ((to - from) * i) / gaps)
}

/** The form that the steps may not leave: its flanks moved inward, its floor raised. */
function inset({ wanted, surface, region, sides, floor }: Inside): Form {
  const [first, last] = [wanted[0]!, wanted.at(-1)!]
  const middle = (region.from + region.to) / 2
  const room: Inside = { wanted, surface, region, sides, floor }
  const deepest = depthOf(room, middle)
  const start = border(region.from, middle, (z) => depthOf(room, z) >= deepest - 1)
  const end = 2 * middle - start
  const level = deepest - surface / 2
  const floorPiece = end - start > 1 ? [linePiece(start, level, end, level)] : []
  return [
    linePiece(region.from, -surface / 2, region.from + sides, -surface / 2),
    aside(first, sides, region.from + sides, start),
    ...floorPiece,
    aside(last, -sides, end, region.to - sides),
    linePiece(region.to - sides, -surface / 2, region.to, -surface / 2),
  ].filter(({ from, to }) => to > from)
}

const aside = ({ curve }: Piece, by: Length, from: Length, to: Length): Piece => ({
  from,
  to,
  curve: curve.kind === 'arc' ? { ...curve, zc: curve.zc + by } : { ...curve, z0: curve.z0 + by, z1: curve.z1 + by },
  step: -1,
})

/** What a nose without its corners cuts at these places, at the least. */
function stairForm(form: Inside, opener: Opener, places: readonly Length[]): Form {
  const near = form.region.from
  const { width } = opener
  const corner = Math.min(opener.corner, width / 4)
  const slots = places.map((place) => ({
    from: near + place + corner,
    to: near + place + width - corner,
    depth: Math.min(depthOf(form, near + place), depthOf(form, near + place + width)),
  }))
  const ends = [...new Set(slots.flatMap(({ from, to }) => [from, to]))].toSorted((a, b) => a - b)
  return ends.slice(1).flatMap((to, i) => {
    const from = ends[i]!
    const depth = Math.max(0, ...slots.filter((slot) => slot.from <= from && slot.to >= to).map((slot) => slot.depth))
    return depth <= 0 ? [] : [linePiece(from, depth - form.surface / 2, to, depth - form.surface / 2)]
  })
}

/** What the steps leave for the tool that finishes the form, according to the replay, in words. */
export function roughedNotes({ roughs, region }: Draft, cut: Form, units: Units): Prose[] {
  if (roughs === undefined) return []
  const { form, finisher } = roughs
  const { least, most, floor } = leftBy(cut, form, region)
  const show = (length: Length) => about('planned', length, units)
  return [
    say`Replayed from these readings, the steps leave ${show(least)} to ${show(most)} on the flanks, along the work, and ${show(floor)} on the floor, for tool "${finisher}".`,
  ]
}

/** A ledge that two readings leave on one floor is no step: .005 in. */
const LEDGE: Length = INCH / 200

/**
 * What is left between a cut form of steps and the drawn one: along the work at the top and at the bottom of everything that leads down to the floor, and
 * below the deepest step. At least 0, pm.
 */
export function leftBy(cut: Form, drawn: Form, { from, to }: Draft['region']) {
  const middle = (from + to) / 2
  const drawnAt = (z: Length): Length => {
    const piece = drawn.find((one) => one.from <= z && z <= one.to)
    return piece === undefined ? Number.NEGATIVE_INFINITY : onCurve(piece.curve, z)
  }
  const steps = cut.filter((piece) => piece.to > from && piece.from < to)
  const ends = steps.map((piece) => endsOf(piece))
  const deepest = Math.max(...ends.flat().map(({ d }) => d))
  const isFloor = (corners: readonly Corner[]): boolean => corners.every(({ d }) => deepest - d < LEDGE)
  const down = ends
    .slice(0, ends.findIndex(isFloor) + 1)
    .flat()
    .slice(1, -1)
  const up = ends.slice(ends.findLastIndex(isFloor)).flat().slice(1, -1)
  const fromFlank = (outer: Length, { z, d }: Corner): Length =>
    Math.abs(z - border(outer, middle, (at) => drawnAt(at) >= d))
  const walls = [...down.map((corner) => fromFlank(from, corner)), ...up.map((corner) => fromFlank(to, corner))]
  return {
    least: Math.min(...walls),
    most: Math.max(...walls),
    floor: drawnAt(middle) - deepest,
  }
}

/** Where a piece of a form begins or ends. */
type Corner = { readonly z: Length; readonly d: Length }

const endsOf = ({ from, to, curve }: Piece): readonly [Corner, Corner] => [
  { z: from, d: onCurve(curve, from) },
  { z: to, d: onCurve(curve, to) },
]
