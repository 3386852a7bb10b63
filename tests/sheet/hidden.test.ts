import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import type { Figure, Role } from '../../src/phrase/phrase.ts'
import { number } from '../../src/phrase/words.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { hidden } from '../../src/sheet/hidden.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { examplePlans } from '../print/examples.ts'

const ANSWERS: readonly Role[] = [
  'mark',
  'turns',
  'reading',
  'take-up',
  'depth',
  'diameter',
  'along',
  'clearance',
  'expected',
  'planned',
  'low',
  'high',
  'rss',
  'spare',
  'undersize',
  'speed',
  'angle',
  'place',
  'instrument',
]

const figuresOf = (part: unknown): Figure[] => {
  if (Array.isArray(part)) return part.flatMap(figuresOf)
  if (typeof part !== 'object' || part === null) return []
  if ('role' in part && 'value' in part && 'digits' in part) return [part as Figure]
  return Object.values(part).flatMap(figuresOf)
}
const sheets = examplePlans()
  .filter(([, plan]) => plan.features.some(({ status }) => status === 'planned'))
  .map(([name, plan]) => [name, sheetFor(plan)] as const)
const printed = (sheet: Sheet) => [
  PRINTERS.text(sheet, { inspection: true }),
  PRINTERS.json(sheet),
  PRINTERS.csv(sheet),
]
/** A number that is not met by chance: with a point, and of three digits and more. Marks are whole numbers, as steps are: they are asked by their steps. */
const telling = (text: string): boolean => text.includes('.') && text.replace(/\D/g, '').replace(/^0+/, '').length >= 3
const numbersIn = (text: string): readonly string[] => text.match(/-?[\d.]*\d/g) ?? []

describe('a sheet with its answers left open', () => {
  it.each(sheets)('has none of them in any format: %s', (_, sheet) => {
    const roles = new Set(ANSWERS)
    const open = hidden(sheet, roles)
    const shown = new Set(
      figuresOf(open)
        .filter(({ value }) => !Number.isNaN(value))
        .flatMap((one) => numbersIn(number(one, sheet.units))),
    )
    // What the job itself says stands there in other words too, and its tools as they are measured.
    const { features: plain }: { features: { edge?: object }[] } = JSON.parse(PRINTERS.json(sheet))
    const tools = plain.map(({ edge }) => edge)
    const given = JSON.stringify([sheet.lathe, sheet.part, sheet.features.map(({ name }) => name), tools])
    const answers = figuresOf(sheet)
      .filter(({ role }) => roles.has(role))
      .map((one) => number({ ...one, text: undefined } as unknown as Figure, sheet.units))
      .filter((text) => telling(text) && !shown.has(text))
    expect(answers.length).toBeGreaterThan(20)
    for (const page of printed(open)) {
      const words = new Set(numbersIn(page))
      const leaks = [...new Set(answers)].filter((text) => words.has(text) && !given.includes(text.replace(/^\./, '')))
      expect(leaks).toEqual([])
    }
  })

  it('is the same sheet, step by step, with blanks of one width', () => {
    const [, sheet] = sheets[0]!
    const open = hidden(sheet, new Set<Role>(['mark', 'turns', 'reading']))
    expect(open.steps.map(({ action, slide, thing }) => [action, slide, thing])).toEqual(
      sheet.steps.map(({ action, slide, thing }) => [action, slide, thing]),
    )
    expect(open.steps.every(({ reading, mark, turns }) => reading === null && mark === null && turns === null)).toBe(
      true,
    )
    expect(open.identity).toBe(null)
    const text = PRINTERS.text(open)
    expect(text).toContain('CROSS-FEED in past 0, to _____ ')
    // What the drawing and the tool say is there all the same.
    expect(text).toContain('.148 wide as measured')
  })

  it('is the sheet itself where nothing is left open', () => {
    for (const [, sheet] of sheets) expect(printed(hidden(sheet, new Set()))).toEqual(printed(sheet))
  })

  it('keeps a figure that is asked to stay', () => {
    const [, sheet] = sheets[0]!
    const first = figuresOf(sheet.steps).find(({ role }) => role === 'mark')!
    const open = hidden(sheet, new Set<Role>(['mark']), ({ id }) => id === first.id)
    const marks = figuresOf(open.steps).filter(({ role }) => role === 'mark')
    expect(marks.filter(({ value }) => !Number.isNaN(value))).toEqual([first])
  })
})
