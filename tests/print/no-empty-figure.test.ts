import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { GRINDER_CAUTIONS } from '../../src/handbook/grinding.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { FORMATS } from '../../src/print/registry.ts'
import { grindSheet } from '../../src/sheet/grind/grind.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'
import { problems } from './conforms.ts'
import { examplePlans } from './examples.ts'

const withGrinding = (plan: Plan): Sheet => ({ ...sheetFor(plan), grind: grindSheet(plan, GRINDER_CAUTIONS) })
const withAll = (plan: Plan): Sheet => ({ ...withGrinding(plan), slips: slipsFor(plan) })

/** Every number in a sheet that is none. JSON itself would write null for it. */
const notFinite = (value: unknown, path = '$'): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]) => notFinite(each, `${path}.${key}`))
}

const EMPTY = /\b(?:NaN|Infinity|undefined|null)\b|\[object/

/** What no person and no program may get to read; in the data null is a value where the schema says so. */
const emptyFigures = (sheet: Sheet): string[] => {
  const printed = FORMATS.map((format) => [format, PRINTERS[format](sheet, { inspection: true })] as const)
  const words = printed.flatMap(([format, text]) => {
    const told = format === 'json' ? text.replace(/(: |^\s*)null(?=,?$)/gm, '$1') : text
    return told.split('\n').flatMap((line) => (EMPTY.test(line) ? [`${format}: ${line.trim()}`] : []))
  })
  const data = JSON.parse(printed.find(([format]) => format === 'json')![1])
  return [...notFinite(sheet), ...words, ...problems(sheetSchema(), data)]
}

describe('no sheet has an empty figure', () => {
  it.each(examplePlans())('%s, with all that can be asked for', { timeout: 120_000 }, (_, plan) => {
    expect(emptyFigures(withAll(plan))).toEqual([])
  })

  const counts = { planned: 0, refused: 0 }

  it('of random jobs', { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
        expect(plan).not.toBeNull()
        for (const { status } of plan!.features) counts[status]++
        expect(emptyFigures(withGrinding(plan!))).toEqual([])
      }),
      { numRuns: runs(50), seed: 19_510_402 },
    )
  })

  it('of which most are planned and some refused', () => {
    expect(counts.planned).toBeGreaterThan(35)
    expect(counts.refused).toBeGreaterThan(2)
  })
})

describe('an empty figure is found', () => {
  const [, plan] = examplePlans().find(([name]) => name === '01-press-screw.yaml')!
  const sheet = sheetFor(plan)
  /** The sheet with one value put in place of another, by its path. */
  const spoiled = (value: unknown, ...path: (string | number)[]): Sheet => {
    const copy = structuredClone(sheet)
    const parent = path.slice(0, -1).reduce<Record<string, unknown>>((at, key) => at[key] as never, copy as never)
    parent[String(path.at(-1))] = value
    return copy
  }
  const figureAt = sheet.steps.findIndex(({ effect }) => effect.some((part) => typeof part !== 'string'))

  it('not in a sheet as it is', () => expect(emptyFigures(sheet)).toEqual([]))

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('where a size of the proof is %d', (value) => {
    expect(emptyFigures(spoiled(value, 'features', 0, 'proof', 'lines', 0, 'low', 'value')).join('\n')).toContain(
      String(value),
    )
  })

  it('where a figure in the words of a step is none, in every format that prints it', () => {
    const at = sheet.steps[figureAt]!.effect.findIndex((part) => typeof part !== 'string')
    const found = emptyFigures(spoiled(Number.NaN, 'steps', figureAt, 'effect', at, 'value'))
    expect(found).toEqual(
      expect.arrayContaining([expect.stringMatching(/^\$\./), expect.stringMatching(/^text: .*NaN/)]),
    )
  })

  it('where words were made of nothing', () => {
    expect(emptyFigures(spoiled(['cut undefined deep'], 'features', 0, 'notes', 0)).join('\n')).toContain(
      'cut undefined deep',
    )
    expect(emptyFigures(spoiled(['the null of the dial'], 'features', 0, 'notes', 0)).join('\n')).toContain(
      'the null of the dial',
    )
  })

  it('where the schema does not allow null', () => {
    expect(emptyFigures(spoiled(null, 'steps', 0, 'number')).join('\n')).toMatch(/\$.*number/)
  })
})
