import type { Form, Piece } from '../moves/form.ts'
import { type Length, MM } from '../units/length.ts'
import { excess } from './form/compare.ts'
import { depthAt } from './form/curve.ts'
import { type Place, swept } from './form/sweep.ts'

/** Where an edge that is fed straight in meets the part: the depth of its reference point then, and of the metal it meets (d = −radius). pm. */
export type Met = { readonly reference: Length; readonly metal: Length }

/** Fed in with its reference point at z; null where there is nothing under the edge. */
export const fedIn = (edge: Form, part: Form, z: Length): Met | null => {
  const over = excess(standing(edge, { z, d: 0 }), part)
  return over === null ? null : { reference: -over.by, metal: edgeDepth(edge, over.z - z) - over.by }
}

/** Nobody feeds a tool further than this to find a face that it was brought close to. */
const FURTHEST: Length = 50 * MM
/** Steps in which the way is searched: no tool is so narrow that it would pass through a face within one. */
const STRIDE: Length = MM / 4
/** Travel is found to this, pm. */
const EXACT = 1 / 4

/** Travel along a way (per pm of travel) until the edge meets the part; null where it meets nothing. From inside the part it is 0. */
export const fedTo = (edge: Form, part: Form, from: Place, way: Place): Length | null => {
  const inside = (travel: Length): boolean => {
    const over = excess(standing(edge, { z: from.z + travel * way.z, d: from.d + travel * way.d }), part)
    return over !== null && over.by > EXACT
  }
  if (inside(0)) return 0
  let low = 0
  let high = STRIDE
  while (!inside(high)) {
    low = high
    high += STRIDE
    if (high > FURTHEST) return null
  }
  while (high - low > EXACT) {
    const middle = (low + high) / 2
    if (inside(middle)) high = middle
    else low = middle
  }
  return low
}

const standing = (edge: Form, at: Place): Form => swept(edge, [[at, at]], -1)

/** Depth of the edge at an offset from its reference point; where two stretches meet, of the deeper. */
const edgeDepth = (edge: Form, u: Length): Length =>
  Math.max(...edge.filter((piece) => within(piece, u)).map(({ curve }) => depthAt(curve, u)))

const within = ({ from, to }: Piece, u: Length): boolean => u >= from - 1 && u <= to + 1
