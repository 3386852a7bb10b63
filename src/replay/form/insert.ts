import type { Curve, Form, Piece } from '../../moves/form.ts'
import type { Length } from '../../units/length.ts'
import { crossings, depthAt, isLevel, lineCrossing, sameCurve } from './curve.ts'

/** Pieces narrower than this (pm) are rounding errors. */
export const SLIVER: Length = 10

/** The envelope of pieces in any order: the deepest counts. */
export const envelope = (pieces: readonly Piece[]): Form => {
  const form: Piece[] = []
  gather(form, pieces)
  return form
}

/** Adds every piece to an envelope, in place. */
export const gather = (form: Piece[], cut: Form): void => {
  for (const piece of cut) insert(form, piece, true)
}

/** The envelope of many forms. Two and two are joined, so that no form is walked through again for each of the others. */
export const envelopeOf = (forms: readonly Form[]): Form => {
  if (forms.length < 2) return forms[0] ?? []
  const half = forms.length >> 1
  return joined(envelopeOf(forms.slice(0, half)), envelopeOf(forms.slice(half)))
}

/** The envelope of two forms, each walked through once. */
const joined = (a: Form, b: Form): Form => {
  count = 0
  let [i, j, at] = [0, 0, Number.NEGATIVE_INFINITY]
  while (i < a.length || j < b.length) {
    const one = a[i]
    const other = b[j]
    const fromOne = one === undefined ? Number.POSITIVE_INFINITY : Math.max(one.from, at)
    const fromOther = other === undefined ? Number.POSITIVE_INFINITY : Math.max(other.from, at)
    const from = Math.min(fromOne, fromOther)
    if (fromOne === fromOther) {
      at = Math.min(one!.to, other!.to)
      deeper(one!, other!, from, at)
    } else if (fromOne < fromOther) {
      at = Math.min(one!.to, fromOther)
      append(one!, from, at)
    } else {
      at = Math.min(other!.to, fromOne)
      append(other!, from, at)
    }
    if (one !== undefined && one.to <= at) i++
    if (other !== undefined && other.to <= at) j++
  }
  return made.slice(0, count)
}

/** Cuts every piece out of the part, in place. Beyond the work nothing is cut. */
export const cutInto = (part: Piece[], cut: Form): void => {
  for (const piece of cut) insert(part, piece, false)
}

/** Index of the first piece that ends beyond z. */
export const firstBeyond = (form: Form, z: Length): number => {
  let low = 0
  let high = form.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (form[middle]!.to > z) high = middle
    else low = middle + 1
  }
  return low
}

/** Puts one piece into a form in place. `fill`: also where the form has a gap. */
const insert = (form: Piece[], add: Piece, fill: boolean): void => {
  if (add.to - add.from <= SLIVER) return
  const first = firstBeyond(form, add.from)
  if (!fill && staysAbove(form, first, add)) return
  count = 0
  let last = first
  let reached = add.from
  for (; last < form.length && form[last]!.from < add.to; last++) {
    const old = form[last]!
    if (old.from < add.from) append(old, old.from, add.from)
    if (fill && old.from > reached) append(add, reached, old.from)
    deeper(old, add, Math.max(old.from, add.from), Math.min(old.to, add.to))
    if (old.to > add.to) append(old, add.to, old.to)
    if (old.to > reached) reached = old.to
  }
  if (fill && reached < add.to) append(add, reached, add.to)
  replace(form, first, last)
}

/** The pieces made by one insertion; the first `count` are valid. Inserting is the most frequent step of all, so the array is used again. */
const made: Piece[] = []
let count = 0

/** Most cuts leave as many pieces as before: then the pieces behind them need not be moved. */
const replace = (form: Piece[], first: number, last: number): void => {
  const more = count - (last - first)
  if (more < 0) form.splice(first, -more)
  for (let i = 0; i < more; i++) form.push(made[0]!)
  if (more > 0) for (let i = form.length - 1; i >= last + more; i--) form[i] = form[i - more]!
  for (let i = 0; i < count; i++) form[first + i] = made[i]!
}

/** A straight piece over a straight piece that is not deeper at either end: nothing is cut. */
const staysAbove = (form: readonly Piece[], first: number, { from, to, curve }: Piece): boolean => {
  if (curve.kind !== 'line') return false
  for (let i = first; i < form.length; i++) {
    const old = form[i]!
    if (old.from >= to) return true
    if (old.curve.kind !== 'line') return false
    if (isLevel(curve) && isLevel(old.curve)) {
      if (curve.d0 > old.curve.d0) return false
      continue
    }
    const left = old.from > from ? old.from : from
    const right = old.to < to ? old.to : to
    if (depthAt(curve, left) > depthAt(old.curve, left) || depthAt(curve, right) > depthAt(old.curve, right))
      return false
  }
  return true
}

const deeper = (old: Piece, add: Piece, from: Length, to: Length): void => {
  if (isLevel(old.curve) && isLevel(add.curve)) {
    append(add.curve.d0 > old.curve.d0 ? add : old, from, to)
    return
  }
  if (old.curve.kind !== 'line' || add.curve.kind !== 'line') {
    const deepened = throughout(old.curve, add.curve, from, to)
    if (deepened !== null) {
      append(deepened ? add : old, from, to)
      return
    }
    let left = from
    for (const right of splits(old.curve, add.curve, from, to)) {
      deepest(old, add, left, right)
      left = right
    }
    return
  }
  const z = lineCrossing(old.curve, add.curve)
  if (z > from + SLIVER && z < to - SLIVER) {
    deepest(old, add, from, z)
    deepest(old, add, z, to)
  } else deepest(old, add, from, to)
}

/**
 * Of two arcs by the same tool the distance only grows or only falls along the work: where both ends say the same, so does all between. Null: they may cross.
 */
const throughout = (old: Curve, add: Curve, from: Length, to: Length): boolean | null => {
  if (old.kind !== 'arc' || add.kind !== 'arc' || old.r !== add.r || old.side !== add.side) return null
  const near = depthAt(add, from) - depthAt(old, from)
  const far = depthAt(add, to) - depthAt(old, to)
  if (near <= 0 && far <= 0) return false
  return near >= 0 && far >= 0 ? true : null
}

const deepest = (old: Piece, add: Piece, from: Length, to: Length): void => {
  const middle = (from + to) / 2
  const wins = depthAt(add.curve, middle) > depthAt(old.curve, middle)
  append(wins ? add : old, from, to)
}

/** The crossings inside, in order, with `to` at the end. */
export const splits = (a: Curve, b: Curve, from: Length, to: Length): readonly Length[] => {
  // Two straight lines, the usual case: one crossing at most.
  if (a.kind === 'line' && b.kind === 'line') {
    const z = lineCrossing(a, b)
    return z > from + SLIVER && z < to - SLIVER ? [z, to] : [to]
  }
  const all = crossings(a, b)
  const p = all[0]
  const q = all[1]
  const first = p !== undefined && p > from + SLIVER && p < to - SLIVER
  const second = q !== undefined && q > from + SLIVER && q < to - SLIVER
  if (first && second) return p < q ? [p, q, to] : [q, p, to]
  return first ? [p, to] : second ? [q, to] : [to]
}

/** Adds a part of a piece. A sliver goes to its deeper neighbor, so that no gap and no fin is left. */
const append = (piece: Piece, from: Length, to: Length): void => {
  if (count > 0) {
    const before = made[count - 1]!
    if (before.to >= from) {
      if (to - from <= SLIVER || (before.step === piece.step && sameCurve(before.curve, piece.curve))) {
        made[count - 1] = stretch(before, before.from, to)
        return
      }
      if (before.to - before.from <= SLIVER) {
        made[count - 1] = stretch(piece, before.from, to)
        return
      }
    }
  }
  if (to > from) made[count++] = stretch(piece, from, to)
}

const stretch = (piece: Piece, from: Length, to: Length): Piece =>
  piece.from === from && piece.to === to ? piece : { from, to, curve: piece.curve, step: piece.step }
