import type { Form } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, radians } from './bench.ts'
import { fedIn, type Met } from './contact.ts'
import { cutInto, envelopeOf } from './form/insert.ts'
import { swept } from './form/sweep.ts'
import { zeroOf } from './found.ts'
import { ridgesOf } from './ridge.ts'
import { stepOf } from './slide.ts'

/** A ridge may be taller than allowed by this much: rounding errors and a hair. */
const HAIR = 1.01

/**
 * How tall a ridge may be on each arc of a form that is cut step by step: what the job allows, or the shop's default. If the marks of the two dials are
 * too far apart for that: what is left when the edge goes to every mark along the work, each time in to the mark nearest to the form. This is worked out
 * from the edge, the form and the dials alone, without the plan.
 */
export const ridgesAllowed = (bench: Bench, ridges: readonly Length[]): readonly Length[] => {
  const { cusp } = bench.operation
  if (cusp === undefined) return ridges.map(() => 0)
  const kept = (ridge: Length) => ridge <= cusp.most * HAIR
  const marks = ridges.every(kept) ? [] : byMarks(bench)
  return ridges.map((ridge, i) => (kept(ridge) ? cusp.most : Math.max(cusp.most, marks[i] ?? cusp.most)) * HAIR)
}

/** Zeros that differ by whole marks leave the same ridges. So results are kept by form, edge and the part of a mark that is left over. */
const known = new WeakMap<Form, WeakMap<Form, Map<string, readonly Length[]>>>()

const byMarks = (bench: Bench): readonly Length[] => {
  const { lathe, operation } = bench
  const [mark, inward] = [stepOf(lathe.compound.scale), stepOf(lathe.crossFeed)]
  if (Math.abs(Math.sin(radians(operation))) > 1e-9 || mark === 0 || inward === 0) return []
  const along = mark * Math.ceil(reachOf(operation) / mark / MOST_PLACES)
  const zero = zeroOf(bench)
  const over = [modulo(zero.fromEnd, along), modulo(zero.diameter / 2, inward), along, inward].map(Math.round)
  const ofForm = known.get(operation.wanted) ?? new WeakMap<Form, Map<string, readonly Length[]>>()
  known.set(operation.wanted, ofForm)
  const ofEdge = ofForm.get(operation.edge.pieces) ?? new Map<string, readonly Length[]>()
  ofForm.set(operation.edge.pieces, ofEdge)
  const key = over.join(' ')
  const found = ofEdge.get(key) ?? leftByMarks(bench, zero, along, inward)
  ofEdge.set(key, found)
  return found
}

const modulo = (a: number, b: number): number => a - Math.floor(a / b + 1e-9) * b

/** Nobody steps to more places than this: they could not be told apart. Of finer marks every second, third … is gone to. */
const MOST_PLACES = 5000

/** From where the edge first meets the region of the form to where it leaves it. */
const reachOf = ({ edge: { pieces }, region }: Operation): Length =>
  region.to - region.from + pieces.at(-1)!.to - pieces[0]!.from

const leftByMarks = (
  { operation, before }: Bench,
  zero: ReturnType<typeof zeroOf>,
  along: Length,
  inward: Length,
): readonly Length[] => {
  const edge = operation.edge.pieces
  const stock = before.surely.filter(
    ({ from, to }) => to > operation.region.from - along && from < operation.region.to + along,
  )
  const wanted = [...stock]
  cutInto(wanted, operation.wanted)
  const first = Math.ceil((operation.region.from - edge.at(-1)!.to - zero.fromEnd) / along)
  const last = Math.floor((operation.region.to - edge[0]!.from - zero.fromEnd) / along)
  const cuts: Form[] = []
  const sink = (z: Length, met: Met | null): void => {
    if (met === null) return
    // Of two marks equally near the one that leaves metal.
    const d = Math.ceil((met.reference + zero.diameter / 2) / inward - 0.5 - 1e-6) * inward - zero.diameter / 2
    cuts.push(edgeAt(edge, z, d))
  }
  const blocked: Length[] = []
  for (let mark = first; mark <= last; mark++) {
    const z = zero.fromEnd + mark * along
    const met = fedIn(edge, wanted, z)
    sink(z, met)
    if (met !== null && met.reference <= -operation.surface / 2) blocked.push(z)
  }
  // A place may be half a mark beyond the last one where the edge touches the form, at the same depth.
  for (const beside of [-along / 2, along / 2]) for (const z of blocked) sink(z, fedIn(edge, wanted, z + beside))
  const form = [...stock]
  cutInto(form, envelopeOf(cuts))
  return ridgesOf(operation.wanted, form)
}

const edgeAt = (edge: Form, z: Length, d: Length): Form => {
  const at = { z, d }
  return swept(edge, [[at, at]], -1)
}
