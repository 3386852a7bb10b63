import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { judge } from '../../src/judge/judge.ts'
import { outcome } from '../../src/judge/say.ts'
import { printCsv } from '../../src/print/csv/print.ts'
import { replayNext, startOf } from '../../src/replay/replay.ts'
import { ACTION_NAMES, SLIDES } from '../../src/written/keys.ts'
import { readMoves } from '../../src/written/written.ts'
import { examplePlans } from '../print/examples.ts'
import { shopOf } from './shop.ts'

const plan = examplePlans().find(([name]) => name === '01-press-screw.yaml')![1]
const shop = shopOf(plan)

test('whatever stands in a list, it is read or refused with a place', () => {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc
      .array(
        fc.constantFrom(
          'feature',
          'action',
          'feed-in',
          '1',
          '.05',
          ',',
          '"',
          '\n',
          '\r\n',
          ': ',
          '- ',
          '#',
          '{',
          ' ',
          ';',
        ),
        { maxLength: 60 },
      )
      .map((parts) => parts.join('')),
  )
  fc.assert(
    fc.property(text, fc.constantFrom('a.csv', 'a.yaml', '<standard input>'), (list, file) => {
      const { operations, diagnostics } = readMoves(list, file, shop)
      expect(operations === null).toBe(diagnostics.length > 0)
      for (const { message, hint } of diagnostics)
        expect([message.length, hint?.length ?? 0].every((n) => n > 0)).toBe(true)
    }),
    { numRuns: 400, seed: 3 },
  )
})

test('whatever moves are listed, a judgment comes of them, and nothing proven misses a limit', () => {
  const row = fc.tuple(
    fc.constantFrom(...ACTION_NAMES),
    fc.constantFrom(...SLIDES),
    fc.integer({ min: -700, max: 700 }),
  )
  const table = printCsv(sheetFor(plan)).split('\n').slice(1, -1)
  const planned = readMoves(`feature,action,slide,reading,at-least,why\n${table.join('\n')}`, 'a.csv', shop)
    .operations![0]!.moves
  const { operation } = plan.features[0] as Extract<(typeof plan.features)[number], { status: 'planned' }>
  let proven = 0
  fc.assert(
    fc.property(fc.array(row, { maxLength: 3 }), fc.nat(planned.length), fc.nat(2), (rows, at, drop) => {
      const strange = rows.map(([action, slide, count]) => ({ action, slide, count, origin: operation.origin }))
      const moves = [...planned.slice(0, at), ...strange, ...planned.slice(at + drop)]
      const before = startOf(plan.setup)
      const list = { ...operation, moves }
      const { trace, faults } = replayNext(plan.lathe, plan.setup, before, list, 0)
      const judgment = judge(plan.lathe, list, before, trace, faults)
      const inside = operation.dimensions.every(({ limits }, i) =>
        [trace.sizes[i]!.surely, trace.sizes[i]!.possibly].every(
          (size) => limits === null || (size !== null && size >= limits[0] - 1000 && size <= limits[1] + 1000),
        ),
      )
      if (judgment.proven) proven++
      if (judgment.proven)
        expect({ inside, outcome: outcome(judgment, 'inch'), faults: judgment.faults }).toEqual({
          inside: true,
          outcome: [],
          faults: [],
        })
      else expect(judgment.faults.length + outcome(judgment, 'inch').length).toBeGreaterThan(0)
    }),
    { numRuns: 500, seed: 5 },
  )
  expect(proven).toBeGreaterThan(20)
  expect(proven).toBeLessThan(450)
})
