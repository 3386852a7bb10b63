import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { plain, wrap } from '../../src/print/text/columns.ts'
import { INCH } from '../../src/units/length.ts'
import { groove, plan, refused } from '../sheet/fixture.ts'
import { exampleSheets } from './examples.ts'

const text = (over: Parameters<typeof plan>[0] = {}): string => PRINTERS.text(sheetFor(plan(over)))

describe('every sheet as text', () => {
  it.each(exampleSheets())('%s stays within 80 columns of plain signs, with nothing undefined', (_, sheet) => {
    const printed = PRINTERS.text(sheet)
    expect(printed.endsWith('\n')).toBe(true)
    for (const line of printed.slice(0, -1).split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(80)
      expect(line).toMatch(/^[\x20-\x7e°±]*$/)
      expect(line).toBe(line.trimEnd())
    }
    expect(printed).not.toMatch(/undefined|NaN|null|Infinity|\[object/)
    expect(PRINTERS.text(sheet)).toBe(printed)
  })

  it.each(exampleSheets())('%s has every step once, in order', (_, sheet) => {
    const printed = PRINTERS.text(sheet)
      .split('\n')
      .flatMap((line) => {
        // A place of a form that is stepped along is one line for all its steps.
        const [, from, to] = /^ {0,8}(\d+)(?:-(\d+))? {2}[A-Z]/.exec(line) ?? []
        if (from === undefined) return []
        return Array.from({ length: Number(to ?? from) - Number(from) + 1 }, (_, i) => Number(from) + i)
      })
    expect(printed).toEqual(sheet.steps.map((step) => step.number))
  })
})

describe('two steps of the hand that always follow each other', () => {
  const [, sheet] = exampleSheets().find(([name]) => name.startsWith('01-'))!
  const stops = sheet.steps.filter(({ action }) => action === 'stop').map(({ number }) => number)

  it('are told one by one the first time, and on one line after that', () => {
    const printed = PRINTERS.text(sheet)
    expect(stops).toEqual([18, 28])
    expect(printed).toMatch(
      /^ 18 {2}SPINDLE {4}STOP, wait until it has come to rest\n 19 {2}CROSS-FEED OUT 5 whole turns more/m,
    )
    expect(printed).toMatch(/^28-29 {2}SPINDLE {4}STOP, at rest: CROSS-FEED OUT 5 whole turns more, count them$/m)
  })

  it('stay two where something is signed between them', () => {
    const check = { feature: 0, before: 29, kind: 'before-finish', says: ['before it is measured'] } as const
    const printed = PRINTERS.text({ ...sheet, supervised: [check] })
    const lines = printed.split('\n')
    const at = lines.findIndex((line) => line.startsWith(' 28  SPINDLE'))
    expect(lines[at + 1]).toContain('before it is measured')
    expect(lines[at + 2]).toMatch(/^ 29 {2}CROSS-FEED OUT 5 whole turns more/)
  })
})

describe('the text sheet', () => {
  it('leads each line with the slide or the thing', () => {
    expect(text()).toContain(' 12  CROSS-FEED in past 0, to 52                    .052 deep, 1.396 dia\n')
    expect(text()).toContain(' 13  CROSS-FEED OUT past 0, stop at 50 (.050 out, half a turn)  clears by .042\n')
    expect(text()).toContain(' 19  SPINDLE    STOP, wait until it has come to rest\n')
  })

  it('prints a refused feature in its place, with reason and remedy and no steps', () => {
    const printed = text({ features: [refused, groove] })
    expect(printed).toContain('== RADIUS: Oil groove = 1 of 2 =')
    expect(printed).toMatch(
      /REFUSED {5}the tool "oil" has a radius of .125, more than the .094 of the\n {12}groove\.\nRemedy {6}grind the tool/,
    )
    expect(printed.indexOf('REFUSED')).toBeLessThan(printed.indexOf('  1  LAYOUT'))
  })

  it('prints the proof with verdicts, what is to spare, and causes', () => {
    expect(text()).toContain('CHECKED BY REPLAY, any backlash 0 to .008 (cross-feed) and 0 to .006 (compound)\n')
    expect(text()).toContain('RELIEF GROOVE: MAY MISS TOLERANCE: bottom diameter\n')
    expect(text()).toContain('  .0032 a\n')
    expect(text()).toContain('  -.001 b\n    MAY MISS TOLERANCE, .001 beyond a limit\n')
    expect(text().replaceAll('\n', ' ')).toContain(
      '; * largest cause: a measuring the tool, b touching off, c layout line ',
    )
  })

  describe('shows worst sizes no better than they are', () => {
    const proofWith = (over: Partial<(typeof groove.budget)[number]>): string[] => {
      const printed = text({ features: [{ ...groove, budget: [{ ...groove.budget[0]!, ...over }] }] }).split('\n')
      const at = printed.findIndex((line) => line.startsWith(' width '))
      return printed.slice(at, at + 2)
    }
    const at = (thousandths: number) => Math.round(thousandths * (INCH / 1000))

    it('a limit passed by .00003 is passed in print too', () => {
      const over = { high: at(161.28), spare: at(-0.03), verdict: 'may not hold' } as const
      const [row, told] = proofWith(over)
      expect(row).toMatch(/ \.15450-\.16128 .* \.15125-\.16125 +-\.00003 [a-z]$/)
      expect(told).toContain('MAY MISS TOLERANCE, .00003 beyond a limit')
    })

    it('and what is to spare is no more than there is: .00325 and .00329 are .0032', () => {
      expect(proofWith({})[0]).toMatch(/ \.0032 a$/)
      expect(proofWith({ spare: at(3.29) })[0]).toMatch(/ \.0032 a$/)
      expect(proofWith({ spare: at(3.2) })[0]).toMatch(/ \.0032 a$/)
    })

    it('outward at both ends, exact sizes as they are', () => {
      expect(proofWith({ low: at(154.58), high: at(157.41) })[0]).toContain(' .1560  .1545-.1575 ')
      expect(proofWith({ low: at(154.5), high: at(157.5) })[0]).toContain(' .1560  .1545-.1575 ')
    })
  })

  it('tells no size that comes out as drawn whatever goes wrong, unless it has limits', () => {
    const flat = { id: 'flatness', planned: 0, low: 0, high: 0, rss: 0, limits: null, spare: null } as const
    const settled = { ...flat, verdict: 'no limits given', worstCause: 'none' } as const
    const dimensions = [...groove.operation.dimensions, { id: 'flatness', aim: 0, limits: null }] as const
    const printed = (one: (typeof groove.budget)[number]): string => {
      const feature = { ...groove, operation: { ...groove.operation, dimensions }, budget: [...groove.budget, one] }
      return text({ features: [feature] })
    }
    expect(printed(settled)).not.toContain('floor flat')
    expect(printed({ ...settled, high: INCH / 10_000 })).toContain(' floor flat within')
    expect(printed({ ...settled, limits: [0, INCH / 1000], verdict: 'holds', spare: 0 })).toContain(
      ' floor flat within',
    )
  })

  it('prints warnings of the job at its head and of a feature at the feature', () => {
    const warnings: Plan['warnings'] = [
      { feature: null, code: 'slender', say: 'The work is slender' },
      { feature: 0, code: 'wide-contact', say: 'The edge is wide' },
    ]
    const lines = text({
      warnings,
      orderReasons: ['Neck, then Slot.', 'From the free end on.', 'Same tool together.'],
    }).split('\n')
    const at = (line: string) => lines.indexOf(line)
    expect(at('WARNING     The work is slender.')).toBeGreaterThan(0)
    expect(at('WARNING     The edge is wide.')).toBeGreaterThan(at('WARNING     The work is slender.'))
    expect(at('Order       Neck, then Slot.')).toBeGreaterThan(0)
    // Why in that order stands with the details.
    expect(at('Order       From the free end on. Same tool together.')).toBeGreaterThan(
      at('Order       Neck, then Slot.'),
    )
  })

  it('keeps millimeters as shops write them', () => {
    const printed = text({ units: 'mm' })
    expect(printed).toContain('millimeters; distances')
    expect(printed).toContain('1.321 deep')
    expect(printed).toContain('marks of .001", 100 a turn')
  })

  it('types titles from anywhere in signs any printer has', () => {
    const printed = text({ title: `Préß – “cidre” ½ ☃ ${'x'.repeat(100)}` })
    for (const line of printed.split('\n')) expect(line).toMatch(/^[\x20-\x7e°±]{0,80}$/)
    expect(plain('Pré – “cidre” ½ ☃ 𝒳')).toBe('Pre - "cidre" 1/2 ? X')
  })
})

describe('wrapping', () => {
  it('never exceeds the width and loses no word', () => {
    const words = 'one twotwotwo three four fivefivefivefive six'
    for (let width = 1; width < 30; width++) {
      const lines = wrap(words, width)
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width)
      expect(lines.join('').replaceAll(' ', '')).toBe(words.replaceAll(' ', ''))
    }
  })
})
