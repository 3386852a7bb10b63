import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import type { Phrase } from '../../src/phrase/phrase.ts'
import { words } from '../../src/phrase/words.ts'
import { printCards } from '../../src/print/text/card/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { cardsOf } from '../../src/sheet/card/card.ts'
import type { Block } from '../../src/sheet/card/types.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'
import { exampleSheets } from './examples.ts'

const numbersIn = (text: string): string[] => text.match(/\d+ \d+\/\d+|\d+\/\d+|\d*\.?\d+/g) ?? []

/**
 * Numbers of the card that the sheet does not have. What counts its pages is its own. Steps that are done alike are told
 * once on the sheet, and each has its number all the same.
 */
const added = (sheet: Sheet, width: number): string[] => {
  const known = new Set([...numbersIn(printText(sheet)), ...sheet.steps.map((step) => String(step.number))])
  const card = printCards(sheet, { width }).replace(/page \d+ of \d+/g, '')
  return numbersIn(card).filter((number) => !known.has(number))
}

/** Each reading of a cell is told by its own step too. */
const strayReadings = (sheet: Sheet): string[] =>
  cardsOf(sheet).flatMap(({ blocks }) =>
    blocks.flatMap((block) =>
      block.kind !== 'cuts'
        ? []
        : block.rows.flatMap(({ from, to, cells }) =>
            cells.flat().flatMap(({ step, at, passing }) => {
              const say = (phrase: Phrase): string => words(phrase, sheet.units)
              if (step < from || step > to) return [`${step} is in the row of ${from} to ${to}`]
              const own = sheet.steps.find(({ number }) => number === step)!
              // A slide that stays is told where it was turned to.
              const stays = at.some((part) => typeof part !== 'string' && part.id.includes('.stays.'))
              const told = stays ? sheet.steps.filter(({ number }) => number <= step) : [own]
              const known = told.flatMap(({ does }) => numbersIn(say(does)))
              // Where it was zeroed a readout shows as many zeros as it has places.
              return numbersIn(`${say(passing)} ${say(at)}`).filter(
                (number) => !known.includes(number) && Number(number) !== 0,
              )
            }),
          ),
    ),
  )

/** The steps of the card in the order in which it has them. */
const stepsOn = (blocks: readonly Block[]): number[] => {
  const all = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i)
  return blocks.flatMap((block) => {
    if (block.kind === 'boxes') return block.boxes.flatMap(({ step, steps }) => all(...(steps ?? [step, step])))
    if (block.kind === 'stop' || block.kind === 'supervised') return []
    return block.rows.flatMap(({ from, to }) => all(from, to))
  })
}

const check = (sheet: Sheet): void => {
  for (const width of [80, 60, 40]) {
    expect(added(sheet, width)).toEqual([])
    const lines = printCards(sheet, { width }).slice(0, -1).split('\n')
    expect(lines.filter((line) => line.length > width)).toEqual([])
    expect(lines.filter((line) => line !== line.trimEnd() || !/^[\x20-\x7e°±]*$/.test(line))).toEqual([])
  }
  expect(strayReadings(sheet)).toEqual([])
  for (const { feature, blocks } of cardsOf(sheet))
    expect(stepsOn(blocks)).toEqual(
      sheet.steps.filter((step) => step.feature === feature.index).map(({ number }) => number),
    )
  for (const page of printCards(sheet).trimEnd().split('\n\n=='))
    expect(page.split('\n').length).toBeLessThanOrEqual(40)
}

describe('the card', () => {
  it.each(exampleSheets())(
    'of %s has every step once, no number that the sheet has not, 40 lines a page',
    (_, sheet) => {
      check(sheet)
    },
  )

  it('so has that of any job', () => {
    let cards = 0
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
        if (plan === null) return
        const sheet = sheetFor(plan)
        cards += cardsOf(sheet).length
        check(sheet)
      }),
      { numRuns: runs(8), seed: 20_264, endOnFailure: true },
    )
    expect(cards).toBeGreaterThan(6)
  })

  it('is one page a feature where a feature is one groove', () => {
    const pages = exampleSheets()
      .filter(([name]) => /^(01|05|08|13|14)-/.test(name))
      .map(([, sheet]) => printCards(sheet).split('page 2').length)
    expect(pages).toEqual([1, 1, 1, 1, 1])
  })

  it('leaves room for a reading that follows from what is measured', () => {
    const card = printCards(exampleSheets().find(([name]) => name.startsWith('01'))![1])
    expect(card).toContain('25-27 [ ]  72 or ____')
    expect(card).toContain('    step 25: outside ______ less bottom ______ = ______ (.108)  .104: 74\n')
    expect(card).toContain('width ______ .160 to .170  depth ______ .068 to .076')
  })
})
