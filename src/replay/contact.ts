import type { Form, Piece } from '../moves/form.ts'
import { type Length, MM } from '../units/length.ts'
import { excess } from './form/compare.ts'
import { depthAt } from './form/curve.ts'
import { type Place, swept } from './form/sweep.ts'

/** Where an edge that is fed straight in meets the part: depth of its reference point, and of the metal it meets (d = −radius). pm. */
export type Met = { readonly reference: Length; readonly metal: Length }

/** Feeds in with the reference point at z; null if there is no work under the edge. */
export const fedIn = (edge: Form, part: Form, z: Length): Met | null => {
  const over = excess(standing(edge, { z, d: 0 }), part)
  return over === null ? null : { reference: -over.by, metal: edgeDepth(edge, over.z - z) - over.by }
}

/** The longest feed to find a face that the tool was brought close to, pm. */
const FURTHEST: Length = 50 * MM
/** Step of the search. No tool is so narrow that it could pass through a face within one step. */
const STRIDE: Length = MM / 4
/** The edge is in the metal from this on, pm. */
const EXACT = 1 / 4
/** Halved so often, a step of the search is less than that. */
const HALVINGS = 30

/** Travel in a direction until the edge meets the part; null if it meets nothing, 0 if it starts inside the part. `way` is per pm of travel. */
export const fedTo = (edge: Form, part: Form, from: Place, way: Place): Length | null => {
  const inside = (travel: Length): boolean => {
    const over = excess(standing(edge, { z: from.z + travel * way.z, d: from.d + travel * way.d }), part)
    return over !== null && over.by > EXACT
  }
  if (inside(0)) return 0
  let high = STRIDE
  for (; high <= FURTHEST; high += STRIDE) if (inside(high)) break
  if (high > FURTHEST) return null
  let low = high - STRIDE
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (inside(middle)) high = middle
    else low = middle
  }
  return low
}

const standing = (edge: Form, at: Place): Form => swept(edge, [[at, at]], -1)

/** Depth of the edge at an offset from its reference point; where two pieces meet, the deeper one. */
const edgeDepth = (edge: Form, u: Length): Length =>
  Math.max(...edge.filter((piece) => within(piece, u)).map(({ curve }) => depthAt(curve, u)))

const within = ({ from, to }: Piece, u: Length): boolean => u >= from - 1 && u <= to + 1
