import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printCards } from '../../src/print/text/card/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { runs } from '../runs.ts'
import { jobs } from './jobs.ts'

/** What reads two ways, or is torn at the end of a line. By the eye of who reads it, common practice, no source. */
const BAD: readonly (readonly [string, RegExp])[] = [
  ['marks before 0 beside a 0 of the dial that is passed', /\(\d+(?: \d+\/\d+)? before 0\)/],
  ['a whole turn with a comma, where a comma parts readings', /turns?, on (?:mark )?0/],
  ['turns torn from their number', /\d\n +(?:whole turns?|turns? and)\b/],
  ['a mark torn from its turns', /turns? and\n/],
  ['a mark torn from its word', /(?:to|at|onto) mark\n +\d/],
  ['a fraction of a mark torn from the mark', / \d+\n +\d\/\d/],
  ['an unfilled place', /undefined|NaN|\[object/],
]

const faultsOf = (printed: string): string[] =>
  BAD.flatMap(([what, pattern]) => {
    const found = pattern.exec(printed)
    return found === null
      ? []
      : [`${what}: ${JSON.stringify(printed.slice(Math.max(0, found.index - 40), found.index + 60))}`]
  })

const GOLDEN = join(import.meta.dirname, '..', 'cases', 'golden')

describe('no reading reads two ways or is torn', () => {
  it.each(readdirSync(GOLDEN).filter((name) => name.endsWith('.txt')))('in %s', (name) => {
    expect(faultsOf(readFileSync(join(GOLDEN, name), 'utf8'))).toEqual([])
  })

  it('on the sheet and the card of any job', { timeout: 3_600_000 }, () => {
    let printed = 0
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
        if (plan === null) return
        const sheet = sheetFor(plan)
        // On 40 columns a reading may be longer than the line: there it breaks.
        for (const width of [80, 60]) {
          expect(faultsOf(printText(sheet, { width }))).toEqual([])
          expect(faultsOf(printCards(sheet, { width }))).toEqual([])
          printed += 1
        }
      }),
      { numRuns: runs(25), seed: 20_265, endOnFailure: true },
    )
    expect(printed).toBeGreaterThan(20)
  })

  it('sees each of them', () => {
    const torn = [
      'past 0, stop at 10 (890 before 0)',
      'to 160, to 1 turn, on 0, to 1 turn and 40',
      'to 3\n     turns and mark 30',
      'to 1 turn and\n     30',
      'to mark\n     30',
      'to 98\n     1/2',
      'to undefined',
    ]
    expect(torn.map((text) => faultsOf(text).length)).toEqual(BAD.map(() => 1))
  })
})
