import type { StepCuts, StepPoint } from '../../moves/cuts.ts'
import type { Length } from '../../units/length.ts'
import type { Bench } from '../draft.ts'
import type { GrooveFeature } from '../feature.ts'
import { roundRidge } from '../radius/round-ridge.ts'
import { defaultCusp, defaultFiledCusp, defaultLeave, defaultStepInfeed, peckFor } from '../shop.ts'

/**
 * A groove with fillets of radius R, cut by a square edge `edge` wide whose corners have the smaller radius r. `first`
 * and `last`: places of the tool's tailstock-side corner against the two walls. pm.
 */
export type FilletedGroove = {
  readonly R: Length
  readonly r: Length
  readonly edge: Length
  readonly depth: Length
  readonly first: Length
  readonly last: Length
}

/**
 * The center of the tool's corner follows a circle of R − r about the center of the fillet: at φ from the floor it is
 * (R − r)(1 − sin φ) from the wall and (R − r)(1 − cos φ) short of the depth. Near the other wall the other corner does
 * the same, mirrored.
 */
export function filletSteps(bench: Bench, feature: GrooveFeature, groove: FilletedGroove): StepCuts {
  const { cutting } = feature
  const { R, r, edge, depth, first, last } = groove
  const floor = { from: first + R - r, to: last - (R - r), depth }
  const flat = edge - 2 * r
  const spacing = flat - Math.min(cutting.overlap ?? edge / 10, flat / 2)
  const sides = Math.min(cutting.leaveSides ?? 0, (last - first) / 2)
  return {
    style: 'steps',
    first,
    last,
    touches: [first, last],
    depth,
    depthAt: (place) => depthOf(groove, place),
    between: (near, far, deep = [depthOf(groove, near), depthOf(groove, far)]) =>
      filletRidge(groove, [near, far], deep),
    ends: null,
    outside: (point) => outside(groove, point),
    formAt: (along) => formAt(groove, along),
    cusp: cutting.cusp ?? (r > 0 ? defaultCusp : defaultFiledCusp)(bench.units),
    cuspGiven: cutting.cusp !== null,
    leave: Math.min(cutting.leave ?? defaultLeave(bench.units, depth), depth),
    peck: peckFor(cutting.peck, edge, Number.POSITIVE_INFINITY)!,
    infeed: cutting.infeed ?? defaultStepInfeed(bench.units),
    roughSpacing: Math.max(spacing, r),
    middle: (first + last) / 2,
    edgeAt: (offset) => edgeAt(groove, offset),
    workFrom: Number.NEGATIVE_INFINITY,
    besideFace: null,
    floor,
    leaveSides: sides,
  }
}

/** Distance of a place from the place against its nearer wall. */
const fromWall = ({ first, last }: FilletedGroove, place: Length): Length =>
  Math.max(0, Math.min(place - first, last - place))

function depthOf(groove: FilletedGroove, place: Length): Length {
  const path = groove.R - groove.r
  const short = Math.max(0, path - fromWall(groove, place))
  return groove.depth - path + Math.sqrt(Math.max(0, path * path - short * short))
}

/** Depth of the edge over the offset from the tool's tailstock-side corner. */
function edgeAt({ r, edge }: FilletedGroove, offset: Length): Length {
  const into = Math.max(0, r - Math.min(offset, edge - offset))
  return Math.sqrt(Math.max(0, r * r - into * into)) - r
}

type Two = readonly [near: Length, far: Length]

/** The top of the ridge between two neighboring places; on the headstock side everything is mirrored. */
function filletRidge(groove: FilletedGroove, [near, far]: Two, deep: Two): StepPoint {
  const { first, last, edge } = groove
  if ((near + far) / 2 <= (first + last) / 2) return ridge(groove, [near, far], deep)
  const top = ridge(groove, [first + last - far, first + last - near], [deep[1], deep[0]])
  return { ...top, along: first + last + edge - top.along }
}

/**
 * Where the edge at the deeper of two places on the tailstock side leaves the edge at the shallower: at its wall if
 * that meets the other's edge (always so for sharp corners), otherwise on its round corner, against the flat or the
 * round corner of the other.
 */
function ridge(groove: FilletedGroove, [shallow, deep]: Two, [above, below]: Two): StepPoint {
  const { r } = groove
  const atWall = above + edgeAt(groove, deep - shallow)
  if (atWall <= below - r) return { along: deep, deep: atWall }
  const onFlat = deep + r - Math.sqrt(Math.max(0, r * r - (above - (below - r)) ** 2))
  if (onFlat >= shallow + r) return { along: onFlat, deep: above }
  const top = roundRidge(r, [shallow + r, deep + r], [above, below])
  return top === null || shallow === deep ? { along: shallow, deep: above } : top
}

/** How far a point is outside the wall, the fillet or the floor, square to it. */
function outside(groove: FilletedGroove, { along, deep }: StepPoint): Length {
  const { R, depth } = groove
  const [x, y] = [offWall(groove, along), depth - deep]
  if (x >= R) return y
  return y >= R ? x : R - Math.hypot(R - x, R - y)
}

function formAt(groove: FilletedGroove, along: Length): Length {
  const { R, depth } = groove
  const x = offWall(groove, along)
  if (x < 0) return 0
  const into = Math.max(0, R - x)
  return depth - R + Math.sqrt(Math.max(0, R * R - into * into))
}

/** From the nearer wall into the groove; negative: in the wall. */
const offWall = ({ first, last, edge }: FilletedGroove, along: Length): Length =>
  Math.min(along - first, last + edge - along)
