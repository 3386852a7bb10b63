import { describe, expect, it } from 'vitest'
import { printMarkdown } from '../../src/print/markdown/print.ts'
import { printText } from '../../src/print/text/print.ts'
import { HOSTILE, named } from './drawn.ts'
import { exampleSheets } from './examples.ts'

/** What CommonMark would show of a line: the escapes taken out. */
const shown = (text: string): string => text.replace(/\\([!-/:-@[-`{-~])/g, '$1')

describe('the sheet in CommonMark', () => {
  it.each(exampleSheets())(
    '%s: a box for every step or place, in order, under the headings of its group',
    (_, sheet) => {
      const boxes = [...printMarkdown(sheet).matchAll(/^- \[ \] \*\*(\d+)(?:-(\d+))? /gm)]
      const numbers = boxes.flatMap(([, from, to]) =>
        Array.from({ length: Number(to ?? from) - Number(from) + 1 }, (_, i) => Number(from) + i),
      )
      expect(numbers).toEqual(sheet.steps.map(({ number }) => number))
    },
  )

  it('has no number that is not in the data, and every reading of the text sheet', () => {
    const [, sheet] = exampleSheets().find(([name]) => name.startsWith('01'))!
    const numbersOf = (text: string) => new Set(text.match(/\d*\.?\d+/g))
    const markdown = numbersOf(shown(printMarkdown(sheet)))
    const front = printText(sheet).split('== PROOF')[0]!
    expect([...numbersOf(front)].filter((one) => !markdown.has(one))).toEqual([])
  })

  it('has a table for the proof, as wide in every row as its head', () => {
    const [, sheet] = exampleSheets().find(([name]) => name.startsWith('14'))!
    const rows = printMarkdown(sheet, { inspection: true }).match(/^\|.*\|$/gm)!
    expect(rows.length).toBeGreaterThan(30)
    for (const row of rows) expect(row.replace(/\\\|/g, '').split('|')).toHaveLength(7)
  })

  it.each([
    ...HOSTILE,
    '[x](javascript:alert)',
    '![x](//x)',
    'http://x.example',
    'www.x.example',
    'a@x.example',
    '| a | b |',
    '**b** _i_ `c`',
  ])('shows a name that is meant to do harm as text: %s', (name) => {
    const text = printMarkdown(named(name))
    expect(shown(text)).toContain(name)
    // Every mark that could begin a link, a tag, a picture or a table has its backslash.
    const bare = text
      .replace(/\\./g, '')
      .replace(/^(#+ |> |- \[ \] | *- |\|.*\|$)/gm, '')
      .replace(/\*\*?/g, '')
    expect(bare).not.toMatch(/[<`[\]|&@~]|:\/\/|www\./)
  })
})
