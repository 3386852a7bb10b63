import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { causesOf } from '../../src/budget/causes.ts'
import { benchOf, setupOf } from '../../src/job/lower.ts'
import { type Load, readJob } from '../../src/job/read-job.ts'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Form } from '../../src/moves/form.ts'
import type { Operation, Setup } from '../../src/moves/operation.ts'
import type { Size } from '../../src/moves/trace.ts'
import { operationsOf, planFeatures } from '../../src/planning/features.ts'
import { differ } from '../../src/replay/form/compare.ts'
import { goOn, halfway, madeOn } from '../../src/replay/halfway.ts'
import { finished, type Progress, replayNext, startOf } from '../../src/replay/replay.ts'
import { runOperation } from '../../src/replay/run.ts'
import { madeRight } from '../../src/replay/shifted.ts'
import type { Length } from '../../src/units/length.ts'
import { jobs } from '../properties/jobs.ts'
import { formed, pulley, stepped, swung } from './operations.ts'
import { bar, bench, inch, neck } from './shop.ts'

type Case = { lathe: Lathe; setup: Setup; progress: Progress; operation: Operation }
const load: Load = (path, from) => {
  const file = from === null ? path : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}
const casesOf = (entry: string, read: Load): Case[] => {
  const { job } = readJob(entry, read)
  if (job === null) return []
  const setup = setupOf(benchOf(job))
  let progress = startOf(setup)
  return operationsOf(planFeatures(job, benchOf(job), setup)).map((operation) => {
    const one = { lathe: job.lathe, setup, progress, operation }
    progress = replayNext(job.lathe, setup, progress, operation, 0).after
    return one
  })
}

/** Two forms of the same steps of arithmetic in another order: a nanometer. */
const alike = (a: Form, b: Form) => expect(differ(a, b)).toBeNull()

/** Made at once and made in two halves, from a zero that is off by so much. */
const compared = (one: Case, at: number, off: { along: Length; deep: Length }) =>
  [{ zeroMeasured: true }, {}].reduce((made, zero) => made + comparedFrom(one, at, off, zero), 0)

const comparedFrom = (
  { lathe, setup, progress, operation }: Case,
  at: number,
  off: { along: Length; deep: Length },
  zero: Pick<Operation, 'zeroMeasured'>,
) => {
  const before = { ...progress, allowed: finished(progress.allowed, operation) }
  const own = operation.off ?? { along: 0, deep: 0 }
  const wrong: Operation = {
    ...operation,
    ...zero,
    off: { along: own.along + off.along, deep: own.deep + off.deep },
  }
  let made = 0
  for (const rules of [true, false]) {
    const options = { rules, shift: null }
    const whole = runOperation(lathe, setup, wrong, before, options)
    const half = halfway(lathe, setup, { ...operation, ...zero }, before, at, options)
    if (half === null) continue
    made++
    const rest = goOn(half, wrong, before, off)
    alike(rest.trace.surely, whole.trace.surely)
    alike(rest.trace.possibly, whole.trace.possibly)
    sameSizes(rest.trace.sizes, whole.trace.sizes)
    // What is measured on the way is not lost, though it is taken only now that it is asked for.
    const measured = Object.keys(whole.trace.at).filter((index) => Number(index) >= at)
    expect(Object.keys(rest.trace.at)).toEqual(measured)
    for (const index of measured.map(Number)) sameSizes(rest.trace.at[index]!, whole.trace.at[index]!)
    const late = whole.faults.filter(({ move }) => move < 0 || move >= at)
    expect(rest.faults.map(({ kind, move }) => [kind, move])).toEqual(late.map(({ kind, move }) => [kind, move]))
    expect(Math.abs(rest.trace.zero.diameter - whole.trace.zero.diameter)).toBeLessThan(1)
  }
  return made
}

/** On stock that is thicker or thinner: made at once, and only the zeros found anew. */
const comparedOn = ({ lathe, setup, progress, operation }: Case) => {
  const before = { ...progress, allowed: [] }
  const quiet = { rules: false, shift: null }
  const { whole, trace } = madeRight(lathe, setup, operation, before)
  const thick = { ...lathe, accuracy: { ...lathe.accuracy, stock: inch(0.004) } }
  const { ways } = causesOf(thick, operation, before, trace).find(({ name }) => name === 'stock')!
  if (whole === null) return 0
  for (const way of ways) {
    const { trace: once } = runOperation(lathe, setup, way.operation, way.before, quiet)
    const { trace: anew } = madeOn(whole, way.operation, way.before)
    alike(anew.surely, once.surely)
    alike(anew.possibly, once.possibly)
    sameSizes(anew.sizes, once.sizes)
  }
  return ways.length
}

const sameSizes = (sizes: readonly Size[], others: readonly Size[]) =>
  sizes.forEach((size, i) => {
    const { surely, possibly } = others[i]!
    for (const [a, b] of [
      [size.surely, surely],
      [size.possibly, possibly],
    ])
      if (a === null || b === null) expect(a).toBe(b)
      else expect(Math.abs(a! - b!)).toBeLessThan(size.id === 'angle' ? 1e-6 : 2000)
  })

const OFFS = [
  { along: 0, deep: 0 },
  { along: 0, deep: inch(0.004) },
  { along: 0, deep: inch(-0.0035) },
  { along: inch(0.005), deep: 0 },
  { along: inch(-0.002), deep: inch(0.001) },
]

describe('an operation made in two halves', () => {
  const setup = bar([1.5, 4])
  it.each(Object.entries({ neck, formed, stepped, pulley, swung }))('is the one made at once: %s', (_, operation) => {
    const one = { lathe: bench, setup, progress: startOf(setup), operation }
    const stop = operation.moves.findIndex(({ action }) => action === 'measure')
    for (const off of OFFS)
      for (const at of [Math.max(stop, 0), Math.floor(operation.moves.length / 2), operation.moves.length])
        expect(compared(one, at, off)).toBe(4)
  })

  it('is the one made at once, in every job of the examples', () => {
    const cases = readdirSync('examples/jobs')
      .filter((name) => name.endsWith('.yaml'))
      .flatMap((name) => casesOf(join('examples/jobs', name), load))
    let made = 0
    for (const one of cases) {
      const stop = one.operation.moves.findIndex(({ action }) => action === 'measure')
      for (const off of OFFS.slice(1)) made += compared(one, Math.max(0, stop), off)
    }
    // Not where the eye brings the tool to a line, nor where it is fed to a face: there it says so.
    expect(made).toBeGreaterThan(16 * cases.length * 0.7)
  })

  it('is the one made at once on other stock', () => {
    const cases = readdirSync('examples/jobs')
      .filter((name) => name.endsWith('.yaml'))
      .flatMap((name) => casesOf(join('examples/jobs', name), load))
    const made = cases.map(comparedOn).filter((ways) => ways > 0)
    expect(made.length).toBeGreaterThan(cases.length * 0.7)
  })

  it('is the one made at once, whatever the job', () => {
    let made = 0
    fc.assert(
      fc.property(
        jobs,
        fc.integer({ min: -40, max: 40 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        ({ text }, by, where) => {
          for (const one of casesOf('-', () => ({ ok: true, file: '-', bytes: text }))) {
            comparedOn(one)
            made += compared(one, Math.floor(where * one.operation.moves.length), { along: 0, deep: inch(by / 10_000) })
          }
        },
      ),
      { numRuns: 40, seed: 20_261 },
    )
    expect(made).toBeGreaterThan(80)
  })
})
