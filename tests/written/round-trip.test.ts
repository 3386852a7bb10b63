import { expect, test } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import type { Move } from '../../src/moves/operation.ts'
import { printCsv } from '../../src/print/csv/print.ts'
import { readMoves } from '../../src/written/written.ts'
import { examplePlans } from '../print/examples.ts'
import { shopOf } from './shop.ts'

/** A move without where it was asked for. */
const bare = ({ origin: _, ...move }: Move) => move

test.each(examplePlans().filter(([, plan]) => plan.features.some(({ status }) => status === 'planned')))(
  'the table of %s is read back to exactly the same moves',
  (_, plan) => {
    const csv = printCsv(sheetFor(plan))
    const { operations, diagnostics, source } = readMoves(csv, 'sheet.csv', shopOf(plan))
    expect(diagnostics).toEqual([])
    const planned = plan.features.flatMap((feature, index) =>
      feature.status === 'planned' ? [{ feature: index, moves: feature.operation.moves.map(bare) }] : [],
    )
    expect(operations?.map(({ feature, moves }) => ({ feature, moves: moves.map(bare) }))).toEqual(planned)
    const lines = operations!.flatMap(({ moves }) =>
      moves.map(({ origin }) => source.locate(origin.path, 'value').line),
    )
    expect(lines).toEqual(lines.map((_line, index) => index + 2))
  },
)
