import type { Arc, Curve, Form, Piece } from '../../moves/form.ts'
import type { OperationTrace } from '../../moves/trace.ts'
import type { Figure, Prose } from '../../phrase/phrase.ts'
import { about, say } from '../../phrase/say.ts'
import type { Length, Units } from '../../units/length.ts'
import type { Draft } from '../draft.ts'

/** What the rounded readings leave and overcut of a stepped form according to the replay, square to it, in words. */
export function steppedNotes(draft: Draft, trace: OperationTrace, units: Units): Prose[] {
  const arcs = steppedResults(draft.wanted, trace.surely)
  const { left, over } = mostOf(arcs)
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  const { cusp } = draft.feature.cutting
  const notKept =
    cusp !== null && !alike(show(left), show(cusp)) && left > cusp
      ? [
          say`A cusp of ${show(cusp)} was asked for; the marks give ${show(left)}: the depth at each place is a whole mark too.`,
        ]
      : []
  const file =
    draft.tool.shape === 'square' && draft.tool.cornerRadius <= 0
      ? [`Step and file, the file only with the spindle stopped: file until the last marks of the steps are gone.`]
      : []
  return [
    say`Replayed from these readings, ${ridgeWords(arcs.map((arc) => show(arc.left)))}, and it is cut at most ${show(over)} too deep.`,
    ...notKept,
    ...file,
  ]
}

/** The marks may fit one fillet better than the other: then each gets its own figure. */
function ridgeWords([first, other]: readonly Figure[]): Prose {
  return other !== undefined && !alike(first!, other)
    ? say`the ridges are at most ${first!} out of the fillet nearer the free end and at most ${other} out of the other`
    : say`the ridges are at most ${first!} out of the form`
}

/** Their figures print alike. */
const alike = (a: Figure, b: Figure): boolean => a.value.toFixed(a.digits) === b.value.toFixed(b.digits)

type Stepped = { readonly left: Length; readonly over: Length }

/**
 * The most metal left and the most cut beyond the arcs of a wanted form, both square to them and at least 0, pm. Forms
 * have d = −radius.
 */
export const steppedResult = (wanted: Form, cut: Form): Stepped => mostOf(steppedResults(wanted, cut))

function steppedResults(wanted: Form, cut: Form): readonly Stepped[] {
  const results = wanted.flatMap((piece) => (piece.curve.kind === 'arc' ? [alongArc(piece, piece.curve, cut)] : []))
  if (results.length === 0) throw new Error('a stepped form has an arc')
  return results
}

const mostOf = (arcs: readonly Stepped[]): Stepped => ({
  left: Math.max(...arcs.map(({ left }) => left)),
  over: Math.max(...arcs.map(({ over }) => over)),
})

function alongArc(piece: Piece, arc: Arc, cut: Form): Stepped {
  let [left, over] = [0, 0]
  for (const one of cut) {
    const from = Math.max(one.from, piece.from)
    const to = Math.min(one.to, piece.to)
    if (to - from <= SLIVER) continue
    for (const z of [from, to, ...nearest(one.curve, arc).filter((z) => z > from && z < to)]) {
      const out = outOf(arc, z, depthOf(one.curve, z))
      left = Math.max(left, out)
      over = Math.max(over, -out)
    }
  }
  return { left, over }
}

/** Above the center of a hollow arc the form goes on as a wall, at the arc's radius. */
function outOf(arc: Arc, z: Length, d: Length): Length {
  if (arc.side === 1 && d < arc.dc) return arc.r - Math.abs(z - arc.zc)
  return (arc.r - Math.hypot(z - arc.zc, d - arc.dc)) * arc.side
}

/** Narrower stretches of a replayed form are rounding error, pm. */
const SLIVER: Length = 10

const depthOf = (curve: Curve, z: Length): Length =>
  curve.kind === 'line'
    ? curve.d0 + ((curve.d1 - curve.d0) * (z - curve.z0)) / (curve.z1 - curve.z0)
    : curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))

/**
 * Where a stretch is nearest to the center of the arc, or furthest from it: on the line through both centers, or square
 * to the line.
 */
function nearest(curve: Curve, arc: Extract<Curve, { kind: 'arc' }>): Length[] {
  if (curve.kind === 'line') {
    const [dz, dd] = [curve.z1 - curve.z0, curve.d1 - curve.d0]
    const t = ((arc.zc - curve.z0) * dz + (arc.dc - curve.d0) * dd) / (dz * dz + dd * dd)
    return [curve.z0 + t * dz]
  }
  const [dz, dd] = [curve.zc - arc.zc, curve.dc - arc.dc]
  const distance = Math.hypot(dz, dd)
  return distance === 0 ? [] : [curve.zc + (curve.r * dz) / distance, curve.zc - (curve.r * dz) / distance]
}
