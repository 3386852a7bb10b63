import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { benchOf, setupOf } from '../../src/job/lower.ts'
import { type Load, readJob } from '../../src/job/read-job.ts'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Operation, Setup } from '../../src/moves/operation.ts'
import type { FaultKind } from '../../src/moves/trace.ts'
import { operationsOf, planFeatures } from '../../src/planning/features.ts'
import { marksBox } from '../../src/replay/bench.ts'
import { differ, excess, TOLERANCE } from '../../src/replay/form/compare.ts'
import { grown, shrunk } from '../../src/replay/form/dilate.ts'
import { leastForms } from '../../src/replay/least.ts'
import { replay } from '../../src/replay/replay.ts'
import { jobs } from '../properties/jobs.ts'
import { CAMPAIGN } from '../runs.ts'
import { edgeJobs } from './edge-jobs.ts'
import { mutants } from './mutate.ts'

/** A program that was proved, on its part: the operations before it are done as planned. */
type Proven = { lathe: Lathe; setup: Setup; before: readonly Operation[]; operation: Operation }
type Counts = {
  mutants: number
  harmless: number
  anotherForm: number
  caught: Map<string, number>
  sole: Map<string, number>
}

const SEVEN: readonly FaultKind[] = [
  'outside-form',
  'moved-in-contact',
  'shank-or-obstacle',
  'beyond-travel',
  'not-clear',
  'between-marks',
  'open-zero',
]
const load: Load = (path, from) => {
  const file = from === null ? path : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}

/** Every operation of a job that was planned and so proved. The error budget is left out: it proves nothing. */
const programs = (entry: string, read: Load): Proven[] => {
  const { job } = readJob(entry, read)
  if (job === null) return []
  const bench = benchOf(job)
  const setup = setupOf(bench)
  const operations = operationsOf(planFeatures(job, bench, setup))
  return operations.map((operation, at) => ({ lathe: job.lathe, setup, before: operations.slice(0, at), operation }))
}
const programsOf = (text: string): Proven[] => programs('-', () => ({ ok: true, file: '-', bytes: text }))

const examples = readdirSync('examples/jobs').filter((name) => name.endsWith('.yaml'))
const proven: Proven[] = [
  ...examples.flatMap((name) => programs(join('examples/jobs', name), load)),
  ...edgeJobs.flatMap(programsOf),
]
/** Random jobs are drawn until every sort of mistake has been made this often. */
const EACH = CAMPAIGN ? 200 : 25
const MOST_JOBS = 4000
const byKind = new Map<string, Counts>()
const bySort = new Map<string, Counts>()
const missed: string[] = []
let drawn = 0

const fresh = (): Counts => ({ mutants: 0, harmless: 0, anotherForm: 0, caught: new Map(), sole: new Map() })
const countsOf = (table: Map<string, Counts>, key: string): Counts => {
  const counts = table.get(key) ?? fresh()
  table.set(key, counts)
  return counts
}
const add = (map: Map<string, number>, key: string): void => void map.set(key, (map.get(key) ?? 0) + 1)

/** The sort of a mistake, without the place at which it was made. */
const sortOf = (label: string): string =>
  label.replace(/ (at )?\d+( and \d+)?/g, '').replace(/\b(compound|cross-feed|carriage) /, '')

function judge({ lathe, setup, before, operation }: Proven, wanted: (sort: string) => boolean): void {
  const sound = replay(lathe, setup, [...before, operation])
  expect(sound.faults).toEqual([])
  const own = sound.operations[before.length]!
  const box = marksBox(lathe, operation)
  const twice = { along: 2 * box.along, deep: 2 * box.deep }
  for (const mutant of mutants(operation, lathe)) {
    if (!wanted(sortOf(mutant.label))) continue
    const trace = replay(lathe, setup, [...before, mutant.operation])
    const kinds = [...new Set(trace.faults.map((fault) => fault.kind))]
    const form = trace.operations[before.length]!
    const same = differ(form.surely, own.surely) === null && differ(form.possibly, own.possibly) === null
    for (const counts of [countsOf(byKind, operation.kind), countsOf(bySort, sortOf(mutant.label))]) {
      counts.mutants++
      for (const kind of kinds) add(counts.caught, kind)
      if (kinds.length === 1) add(counts.sole, kinds[0]!)
      if (kinds.length === 0 && same) counts.harmless++
      if (kinds.length === 0 && !same) counts.anotherForm++
    }
    if (kinds.length > 0 || same) continue
    // Neither a fault nor the same form: it must be as near to the drawing as the plan itself, within half a mark along each axis.
    const over = excess(form.possibly, grown(own.surely, twice))?.by ?? 0
    // A form that is stepped along may besides keep a ridge as tall as its plan allows.
    const ridged = { ...twice, deep: twice.deep + Math.max(0, ...(form.ridges ?? [])) }
    const least = leastForms(
      operation,
      sound.operations[before.length - 1]?.surely ?? setup.stock,
      twice,
      form.ridges ?? [],
    )
    const under = Math.max(
      // Where the drawing leaves the corners open, what it asks for at the least; else what the plan itself cut.
      excess(operation.atLeast === undefined ? shrunk(own.surely, ridged) : least[0]!, form.surely)?.by ?? 0,
      // The floor between two fillets has no ridges.
      ...least.slice(1).map((floor) => excess(floor, form.surely)?.by ?? 0),
    )
    if (over > TOLERANCE || under > TOLERANCE) missed.push(`${operation.kind} ${operation.name}: ${mutant.label}`)
  }
}

describe('mutants of proven programs', () => {
  it('are made of every kind of feature, and none gets past the replay with another part', { timeout: 240_000 }, () => {
    for (const one of proven) judge(one, () => true)
    const short = (sort: string) => (bySort.get(sort)?.mutants ?? 0) < EACH
    for (const { text } of fc.sample(jobs, { numRuns: MOST_JOBS, seed: 77 })) {
      if (![...bySort.keys()].some(short)) break
      for (const one of programsOf(text)) {
        judge(one, short)
        drawn++
      }
    }
    expect(missed).toEqual([])
    expect([...byKind.keys()].sort()).toEqual(['concave radius', 'corner radius', 'groove', 'roughing', 'v-groove'])
    for (const [kind, counts] of byKind) expect(counts.mutants, kind).toBeGreaterThanOrEqual(200)
  })

  it('show that each of the seven faults, and the lock of the carriage, is needed: it alone catches some mutant', () => {
    const sole = new Map<string, number>()
    for (const counts of byKind.values()) for (const [kind, n] of counts.sole) sole.set(kind, (sole.get(kind) ?? 0) + n)
    for (const kind of [...SEVEN, 'carriage-lock' as const]) expect(sole.get(kind) ?? 0, kind).toBeGreaterThan(0)
  })

  it(`are made of every sort of mistake, ${EACH} of each at the least`, () => {
    expect(bySort.size).toBeGreaterThan(12)
    for (const [sort, counts] of bySort) expect(counts.mutants, sort).toBeGreaterThanOrEqual(EACH)
  })

  afterAll(() => {
    console.log(`${proven.length + drawn} proven programs`)
    for (const table of [byKind, bySort]) for (const [key, counts] of table) console.log(line(key, counts))
  })
})

const line = (key: string, { mutants, harmless, anotherForm, caught, sole }: Counts): string =>
  `${key}: ${mutants} mutants, ${harmless} harmless, ${anotherForm} within half a mark; caught by ` +
  [...caught]
    .sort((a, b) => b[1] - a[1])
    .map(([kind, n]) => `${kind} ${n} (alone ${sole.get(kind) ?? 0})`)
    .join(', ')
