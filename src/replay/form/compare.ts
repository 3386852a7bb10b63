import type { Curve, Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { depthAt, equalSlopes, isLevel } from './curve.ts'
import { firstBeyond, SLIVER, splits } from './insert.ts'

/** Differences up to this (pm, one nanometer) are rounding errors. */
export const TOLERANCE: Length = 1000
/** Edge and metal meet "over a stretch" if it is longer than this, pm: within the tolerance a round end meets a flat over 2 µm. */
const STRETCH: Length = 5_000_000

/** The most by which a is deeper than b, where both exist (negative: a is above everywhere), and the first place where it is; null if they have no place in common. */
export const excess = (a: Form, b: Form): { readonly by: Length; readonly z: Length } | null => {
  let by = Number.NEGATIVE_INFINITY
  let z = Number.NaN
  let j = a.length > 0 ? firstBeyond(b, a[0]!.from) : 0
  for (const p of a) {
    while (j < b.length && b[j]!.to <= p.from) j++
    for (let k = j; k < b.length && b[k]!.from < p.to; k++) {
      const q = b[k]!
      const from = Math.max(p.from, q.from)
      const to = Math.min(p.to, q.to)
      if (to - from <= SLIVER) continue
      // Most of a part is unchanged: the same piece in both.
      if (p === q) {
        if (by < 0) {
          by = 0
          z = from
        }
        continue
      }
      const level = isLevel(p.curve) && isLevel(q.curve)
      const at = level ? from : furthest(p.curve, q.curve, from, to)
      const over = depthAt(p.curve, at) - depthAt(q.curve, at)
      if (over > by) {
        by = over
        z = at
      }
    }
  }
  return Number.isNaN(z) ? null : { by, z }
}

/** Where one curve is deeper than the other by the most: the first such place among the ends and the places where both have the same slope. */
const furthest = (p: Curve, q: Curve, from: Length, to: Length): Length => {
  const first = depthAt(p, from) - depthAt(q, from)
  const last = depthAt(p, to) - depthAt(q, to)
  let at = last > first ? to : from
  if (p.kind === 'line' && q.kind === 'line') return at
  let most = Math.max(last, first)
  for (const z of equalSlopes(p, q)) {
    if (z <= from || z >= to) continue
    const by = depthAt(p, z) - depthAt(q, z)
    if (by > most) {
      most = by
      at = z
    }
  }
  return at
}

/** Is a on b, or deeper, over a stretch? A wall at a single z is no stretch. */
export const touches = (a: Form, b: Form): boolean => {
  let together = 0
  let longest = 0
  let reached = Number.NEGATIVE_INFINITY
  eachOverlap(a, b, (p, q, from, to) => {
    let left = from
    for (const right of splits(p.curve, q.curve, from, to)) {
      const middle = (left + right) / 2
      const on = depthAt(p.curve, middle) - depthAt(q.curve, middle) >= -TOLERANCE
      together = on ? (left > reached + SLIVER ? 0 : together) + right - left : 0
      longest = Math.max(longest, together)
      left = right
      reached = right
    }
  })
  return longest > STRETCH
}

/** Length along the work over which a is deeper than b, pm. */
export const overlap = (a: Form, b: Form): Length => {
  let along = 0
  eachOverlap(a, b, (p, q, from, to) => {
    let left = from
    for (const right of splits(p.curve, q.curve, from, to)) {
      const middle = (left + right) / 2
      if (depthAt(p.curve, middle) - depthAt(q.curve, middle) > TOLERANCE) along += right - left
      left = right
    }
  })
  return along
}

/** Do two forms differ anywhere by more than the tolerance? */
export const differ = (a: Form, b: Form): { readonly by: Length; readonly z: Length } | null => {
  if (a === b) return null
  const found = [excess(a, b), excess(b, a)].filter((one) => one !== null && one.by > TOLERANCE)
  return found.reduce((most, one) => (most === null || one!.by > most.by ? one : most), null)
}

const eachOverlap = (a: Form, b: Form, see: (p: Piece, q: Piece, from: Length, to: Length) => void): void => {
  let j = a.length > 0 ? firstBeyond(b, a[0]!.from) : 0
  for (const p of a) {
    while (j < b.length && b[j]!.to <= p.from) j++
    for (let k = j; k < b.length && b[k]!.from < p.to; k++) {
      const from = Math.max(p.from, b[k]!.from)
      const to = Math.min(p.to, b[k]!.to)
      if (to - from > SLIVER) see(p, b[k]!, from, to)
    }
  }
}
