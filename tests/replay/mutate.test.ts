import { describe, expect, it } from 'vitest'
import type { Operation } from '../../src/moves/operation.ts'
import { marksBox } from '../../src/replay/bench.ts'
import { excess } from '../../src/replay/form/compare.ts'
import { grown, shrunk } from '../../src/replay/form/dilate.ts'
import { replay } from '../../src/replay/replay.ts'
import { mutants } from './mutate.ts'
import { formed, pulley, rounded, stepped, swung } from './operations.ts'
import { bar, bench, neck } from './shop.ts'

const setup = bar([1.5, 4])
const cases: readonly (readonly [string, Operation])[] = [
  ['square groove', neck],
  ['form tool', formed],
  ['stepped radius', stepped],
  ['corner', rounded],
  ['V-groove', pulley],
  ['swung compound', swung],
]

describe.each(cases)('mistakes in a %s', (_, operation) => {
  const judged = mutants(operation, bench).map((mutant) => ({
    ...mutant,
    trace: replay(bench, setup, [mutant.operation]),
  }))
  const passed = judged.filter(({ trace }) => trace.faults.length === 0)

  it('are made in some number, and most are found', () => {
    expect(judged.length).toBeGreaterThan(10)
    expect(passed.length).toBeLessThan(judged.length * 0.7)
  })
  it('that pass still give the same part within half a mark either way, for every backlash', () => {
    const sound = replay(bench, setup, [operation]).operations[0]!.surely
    const box = marksBox(bench, operation)
    const twice = { along: 2 * box.along, deep: 2 * box.deep }
    for (const { trace } of passed) {
      const { surely, possibly } = trace.operations[0]!
      expect(excess(possibly, grown(sound, twice))!.by).toBeLessThan(1000)
      expect(excess(shrunk(sound, twice), surely)!.by).toBeLessThan(1000)
    }
  })
})
