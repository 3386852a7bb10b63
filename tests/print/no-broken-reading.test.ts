import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { HELD } from '../../src/phrase/phrase.ts'
import { heldWords } from '../../src/phrase/words.ts'
import { printText } from '../../src/print/text/print.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'
import { examplePlans } from './examples.ts'

/** What is printed of a step and must not be broken at the end of a line: a reading, and what belongs to it. */
const readingsOf = (sheet: Sheet): Set<string> => {
  const folded = new Set((sheet.places ?? []).flatMap(({ from, to }) => range(from, to)))
  const phrases = [
    ...sheet.steps.flatMap(({ number, does, more }) => (folded.has(number) ? more : [does, ...more])),
    ...(sheet.places ?? []).map(({ does }) => does),
  ]
  return new Set(
    phrases.flatMap((phrase) =>
      heldWords(phrase, sheet.units)
        .split(' ')
        .filter((part) => part.includes(HELD))
        .map((part) => part.replaceAll(HELD, ' ')),
    ),
  )
}
const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i)

const brokenIn = (sheet: Sheet): string[] => {
  const lines = printText(sheet).split('\n')
  return [...readingsOf(sheet)].filter((reading) => !lines.some((line) => line.includes(reading)))
}

describe('a reading is never broken at the end of a line', () => {
  it.each(examplePlans())('on the sheet of %s', (_, plan) => {
    const sheet = sheetFor(plan)
    const planned = plan.features.some(({ status }) => status === 'planned')
    expect(readingsOf(sheet).size > 0).toBe(planned)
    expect(brokenIn(sheet)).toEqual([])
  })
  it('nor on that of any job', () => {
    let seen = 0
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
        if (plan === null) return
        const sheet = sheetFor(plan)
        seen += readingsOf(sheet).size
        expect(brokenIn(sheet)).toEqual([])
      }),
      { numRuns: runs(15), seed: 20_263 },
    )
    expect(seen).toBeGreaterThan(120)
  })
})
