import type { Slide } from '../moves/operation.ts'
import type { Length } from '../units/length.ts'
import { type Bench, radians, see, standing } from './bench.ts'
import { broughtTo, checkPlacing } from './brought.ts'
import { fedIn, fedTo, type Met } from './contact.ts'
import { TOLERANCE } from './form/compare.ts'
import { broughtHere, type SlideState, touching } from './slide.ts'

/**
 * The zeros are found here and nowhere else: along the work from the point of the edge that is brought to a line or a face, in depth from where
 * the edge really meets the metal, with every slide where it is at that moment.
 */

/** The hand brings the tool to its place along the work, whatever the slides' screws have lost. */
export const align = (bench: Bench, index: number): void => {
  checkPlacing(bench, bench.operation.placing, index)
  foundAt(bench, broughtTo(bench, bench.operation.placing))
}

/** A slide is fed forward until the edge touches: the touch itself takes up its lost motion. */
export const touchOff = (bench: Bench, slide: Slide, index: number): void => {
  if (slide === 'cross-feed') touchSurface(bench, index)
  else touchFace(bench, slide, index)
}

/** Where the dials show 0 the tool has been brought somewhere, or the replay goes on as if it had been: the fault is told already. */
export const foundOrSupposed = (bench: Bench, slide: Slide): void => {
  if (slide !== 'cross-feed' && bench.fromEnd === null) foundAt(bench, broughtTo(bench, bench.operation.placing))
  if (slide === 'cross-feed' && bench.depth === null) {
    bench.slides[slide] = broughtHere(bench.slides[slide])
    setDepth(bench, met(bench)?.reference ?? -bench.operation.touch.diameter / 2)
  }
}

/** The reference point is at z now: counted from here on by what the slides move. */
const foundAt = (bench: Bench, z: Length): void => {
  const { slides } = bench
  bench.found = true
  keepDepth(bench, () => {
    slides.compound = broughtHere(slides.compound)
    slides.carriage = broughtHere(slides.carriage)
  })
  bench.fromEnd = z + (bench.operation.off?.along ?? 0) - alongOf(bench)
}

/** The place of a compound is counted anew from where the tool is brought: a depth that was found before is counted from there too. */
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
  setDepth(bench, (hit?.reference ?? -touch.diameter / 2) + (bench.operation.off?.deep ?? 0))
}

/** One micrometer: what is called the same diameter. */
const SAME: Length = 1_000_000

const setDepth = (bench: Bench, reference: Length): void => {
  const into = standing(bench.slides.compound)[0] * Math.sin(radians(bench.operation))
  bench.depth = reference - standing(bench.slides['cross-feed'])[0] - into
}

/**
 * What the edge meets if it is fed in where the tool is, or where the hand brings it for the touch while nothing holds the carriage. A tool that is
 * supposed to be a little off its face is where the hand believes it to be: it does not meet the metal of that face from above.
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

/** Along the work until the edge, as deep as it is, meets a face. */
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

/** How far a tool that was brought beside a face by eye may be from it: a hundredth of an inch and more. */
const SHIFTS: Length = 250_000_000
const SHIFTED =
  'The compound is swung, and is fed to a face after the cross-feed has touched: that shifts the depth by an amount nobody knows.'

/** The dial turns, the screw pushes: nothing is left open. */
const fedOn = (slide: SlideState, travel: Length): SlideState => {
  const dial = slide.dial + travel
  return { ...slide, dial, at: [dial, dial] }
}

/** How far the slides have the reference point along the work from where it was found. */
const alongOf = (bench: Bench): Length =>
  standing(bench.slides.carriage)[0] + standing(bench.slides.compound)[0] * Math.cos(radians(bench.operation))

const depthOf = (bench: Bench): Length | null =>
  bench.depth === null
    ? null
    : bench.depth +
      standing(bench.slides['cross-feed'])[0] +
      standing(bench.slides.compound)[0] * Math.sin(radians(bench.operation))

/** Where the reference point is with all dials at zero; what was never found is where the hand was told to bring it. */
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
