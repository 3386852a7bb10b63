import type { Slide } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, radians, see, standing } from './bench.ts'
import { broughtTo, checkPlacing } from './brought.ts'
import { fedIn, fedTo, type Met } from './contact.ts'
import { TOLERANCE } from './form/compare.ts'
import { broughtHere, type SlideState, touching } from './slide.ts'

/**
 * The zeros are found here and nowhere else. Along the work: from the point of the edge that is brought to a line or a face. In depth: from where
 * the edge really meets the metal. Every slide counts from where it is at that moment.
 */

/** The hand brings the tool to its place along the work by eye, so lost motion does not matter. */
export const align = (bench: Bench, index: number): void => {
  checkPlacing(bench, bench.operation.placing, index)
  foundAt(bench, broughtTo(bench, bench.operation.placing))
}

/** A slide is fed forward until the edge touches. That takes up its lost motion. */
export const touchOff = (bench: Bench, slide: Slide, index: number): void => {
  if (slide === 'cross-feed') touchSurface(bench, index)
  else touchFace(bench, slide, index)
}

/** If the tool was never brought to its place, the fault is already reported, and the replay goes on as if it had been. */
export const foundOrSupposed = (bench: Bench, slide: Slide): void => {
  if (slide !== 'cross-feed' && bench.fromEnd === null) foundAt(bench, broughtTo(bench, bench.operation.placing))
  if (slide === 'cross-feed' && bench.depth === null) {
    bench.slides[slide] = broughtHere(bench.slides[slide])
    setDepth(bench, met(bench)?.reference ?? -bench.operation.touch.diameter / 2)
  }
}

/** The reference point is at z now. From here on it moves as the slides move. */
const foundAt = (bench: Bench, z: Length): void => {
  const { slides } = bench
  bench.found = true
  keepDepth(bench, () => {
    slides.compound = broughtHere(slides.compound)
    slides.carriage = broughtHere(slides.carriage)
  })
  bench.fromEnd = z + (bench.operation.off?.along ?? 0) - alongOf(bench)
}

/** The compound counts from where the tool is brought to its place. A depth that was found before is corrected for that. */
const keepDepth = (bench: Bench, bring: () => void): void => {
  const before = standing(bench.slides.compound)[0]
  bring()
  if (bench.depth !== null)
    bench.depth += (before - standing(bench.slides.compound)[0]) * Math.sin(radians(bench.operation))
}

const touchSurface = (bench: Bench, index: number): void => {
  bench.slides['cross-feed'] = touching(bench.slides['cross-feed'])
  bench.backOut = null
  const { touch } = bench.operation
  const hit = met(bench)
  if (hit === null) see(bench, 'set-up', index, null, 'The tool touches nothing where it is to be touched off.')
  else if (Math.abs(hit.metal + touch.diameter / 2) > SAME)
    see(bench, 'set-up', index, hit.metal + touch.diameter / 2, 'The tool touches another diameter than the one named.')
  else if (bench.options.rules && !touchesAlike(bench, hit))
    see(
      bench,
      'set-up',
      index,
      null,
      'Not everywhere where the tool may be touched off does it touch the diameter named.',
    )
  setDepth(bench, (hit?.reference ?? -touch.diameter / 2) + (bench.operation.off?.deep ?? 0))
}

/** Radii within one micrometer are the same. */
const SAME: Length = 1_000_000

const setDepth = (bench: Bench, reference: Length): void => {
  const into = standing(bench.slides.compound)[0] * Math.sin(radians(bench.operation))
  bench.depth = reference - standing(bench.slides['cross-feed'])[0] - into
}

/**
 * What the edge meets when it is fed in: where the tool is, or, while the carriage is free, where the hand takes it for the touch. In a replay with a
 * tool a little off its face, the touch is still made where the hand believes the tool to be, so it does not land on top of that face.
 */
const met = (bench: Bench): Met | null => {
  const { operation, locked, fromEnd, surely } = bench
  const { at } = operation.touch
  const z =
    at !== null && !locked
      ? broughtTo(bench, at)
      : fromEnd === null
        ? broughtTo(bench, operation.placing)
        : fromEnd + alongOf(bench) - (operation.off?.along ?? 0)
  return fedIn(operation.edge.pieces, surely, z)
}

/** Where the hand may choose the place of a touch, each place must give the same zero: both ends of the stretch, every edge of the metal in it, and between them. */
const touchesAlike = ({ operation, surely, locked }: Bench, { reference }: Met): boolean => {
  const { at } = operation.touch
  if (at === null || locked || !('over' in at.against)) return true
  const [from, to] = at.against.over
  const edges = surely.flatMap((piece) => [piece.from, piece.to]).filter((z) => z > from && z < to)
  const places = [from, ...edges, to]
  return [...places, ...places.slice(1).map((z, i) => (z + places[i]!) / 2)].every((z) => {
    const there = broughtTo({ operation }, { ...at, against: { over: [z, z] } })
    return (
      Math.abs((fedIn(operation.edge.pieces, surely, there)?.reference ?? Number.POSITIVE_INFINITY) - reference) <= SAME
    )
  })
}

/** Moves along the work at the same depth until the edge meets a face. */
const touchFace = (bench: Bench, slide: Slide, index: number): void => {
  const { operation } = bench
  const angle = slide === 'compound' ? radians(operation) : 0
  const way = { z: Math.cos(angle), d: Math.sin(angle) }
  if (bench.fromEnd === null) foundAt(bench, broughtTo(bench, operation.placing))
  const z = bench.fromEnd! + alongOf(bench)
  const deep = depthOf(bench)
  const travel = deep === null ? null : fedTo(operation.edge.pieces, bench.surely, { z, d: deep }, way)
  if (travel === null && deep !== null)
    see(bench, 'set-up', index, null, 'The tool touches nothing where it is to be touched off.')
  if (travel === 0 && deep !== null)
    see(bench, 'set-up', index, null, 'The tool is in the work where it is to be fed to a touch.')
  if (bench.depth !== null && Math.abs(way.d) * SHIFTS > TOLERANCE) see(bench, 'shifted-zero', index, null, SHIFTED)
  bench.slides[slide] = fedOn(bench.slides[slide], travel ?? 0)
  foundAt(bench, z + (travel ?? 0) * way.z)
}

/** How far from a face a tool may be that was brought beside it by eye: a little over a hundredth of an inch. */
const SHIFTS: Length = 250_000_000
const SHIFTED =
  'The compound is swung, and is fed to a face after the cross-feed has touched: that shifts the depth by an amount nobody knows.'

/** The screw pushes the slide, so no lost motion is left open. */
const fedOn = (slide: SlideState, travel: Length): SlideState => {
  const dial = slide.dial + travel
  return { ...slide, dial, at: [dial, dial] }
}

/** How far the slides have moved the reference point along the work since it was found. */
const alongOf = (bench: Bench): Length =>
  standing(bench.slides.carriage)[0] + standing(bench.slides.compound)[0] * Math.cos(radians(bench.operation))

const depthOf = (bench: Bench): Length | null =>
  bench.depth === null
    ? null
    : bench.depth +
      standing(bench.slides['cross-feed'])[0] +
      standing(bench.slides.compound)[0] * Math.sin(radians(bench.operation))

/** Where the reference point is with all dials at zero. If it was never found: where the hand was told to bring it. */
export const zeroOf = (bench: Bench): { readonly fromEnd: Length; readonly diameter: Length } => {
  const { slides, operation } = bench
  const angle = radians(operation)
  const offset = (slide: Slide): Length => (slides[slide].zeroed ? slides[slide].offset[0] : 0)
  const fromEnd = bench.fromEnd ?? broughtTo(bench, operation.placing)
  const depth = bench.depth ?? -operation.touch.diameter / 2
  return {
    fromEnd: fromEnd + offset('carriage') + offset('compound') * Math.cos(angle),
    diameter: -2 * (depth + offset('cross-feed') + offset('compound') * Math.sin(angle)),
  }
}
