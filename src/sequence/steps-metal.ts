import type { StepCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
import type { Request } from './request.ts'

/**
 * How deep the work is cut so far, on evenly spaced points along it: used only to divide infeeds; nothing is proved
 * with it. pm.
 */
export type Profile = {
  readonly from: Length
  readonly step: Length
  readonly deep: Float64Array
  readonly edge: Request['edge']
  readonly edgeAt: StepCuts['edgeAt']
}

const POINTS = 2048

export function profileOf({ edge }: Request, cuts: StepCuts): Profile {
  const from = cuts.first + edge.from
  const step = (cuts.last + edge.to - from) / (POINTS - 1)
  const deep = new Float64Array(POINTS)
  for (let i = 0; i < POINTS; i++) if (from + i * step < cuts.workFrom) deep[i] = Number.POSITIVE_INFINITY
  return { from, step, deep, edge, edgeAt: cuts.edgeAt }
}

/** How far the edge, fed in to `depth` at a place, travels from its first touch. At most 0: it touches nothing. */
export function metalUnder(profile: Profile, place: Length, depth: Length): Length {
  let most = Number.NEGATIVE_INFINITY
  eachUnder(profile, place, (i, edge) => {
    most = Math.max(most, depth + edge - profile.deep[i]!)
  })
  return most
}

export function cutAt(profile: Profile, place: Length, depth: Length): void {
  eachUnder(profile, place, (i, edge) => {
    profile.deep[i] = Math.max(profile.deep[i]!, depth + edge)
  })
}

function eachUnder({ from, step, edge, edgeAt }: Profile, place: Length, see: (i: number, edge: Length) => void): void {
  const first = Math.max(0, Math.ceil((place + edge.from - from) / step))
  const last = Math.min(POINTS - 1, Math.floor((place + edge.to - from) / step))
  for (let i = first; i <= last; i++) see(i, edgeAt(from + i * step - place))
}
