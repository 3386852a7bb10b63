import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { stopOf } from '../../src/finish/stop.ts'
import type { FeaturePlan, Plan } from '../../src/plan/plan.ts'
import { printJson } from '../../src/print/json/print.ts'
import type { Sheet, SheetStep } from '../../src/sheet/sheet.ts'
import { sheetAfter } from '../../src/sheet-after.ts'
import { MM, perUnit } from '../../src/units/length.ts'
import { golden, projectText } from '../cases/program.ts'
import { jobs } from '../properties/jobs.ts'
import { CAMPAIGN } from '../runs.ts'

/**
 * What the program answers to many random jobs, kept: each change of a plan shows as a line that differs. That the plans are right is proved elsewhere;
 * this test only tells that nothing changes by accident. `npm run accept` keeps new ones.
 */
const JOBS = 120
/** The first of them each time the tests run; all where they are kept anew, and in a campaign. */
const ASKED = CAMPAIGN || process.env.GROOVEWRIGHT_ACCEPT === '1' ? JOBS : 48
const SEED = 27_182_818

const WORDS: Partial<Record<SheetStep['action'], string>> = {
  'feed-in': 'in',
  'back-out': 'out',
  'take-up': 'up',
  'go-past': 'past',
  'feed-across': 'across',
  'move-carriage': 'along',
}
const SLIDES = { 'cross-feed': '', compound: 'c', carriage: 'k' } as const

/** The moves in short: c and k before a reading are compound and carriage, no letter is the cross-feed. */
const movesOf = (steps: readonly SheetStep[], perUnit: number): string =>
  steps
    .flatMap(({ action, slide, reading, place }) => {
      const at = place === undefined ? reading : Number((place / perUnit).toFixed(6))
      if (at === null || slide === null) return action === 'measure' ? [action] : []
      return [`${WORDS[action] ?? action} ${SLIDES[slide]}${at}`]
    })
    .join(', ')

/** Of the numbers of a sheet, so that another wording changes nothing. */
const digestOf = (sheet: Sheet): string => {
  const numbers = printJson({ ...sheet, identity: '' }).match(/\d+(?:\.\d+)?/g) ?? []
  return createHash('sha256').update(numbers.join(' ')).digest('hex').slice(0, 12)
}

/** Off the expected bottom and width, in micrometers: as expected, a little, and so much that some are refused. */
const OFF = [
  [0, null],
  [-45, 20],
  [300, -100],
] as const

const afterStop = (plan: Plan, feature: FeaturePlan, index: number, steps: readonly SheetStep[]): string => {
  if (feature.status !== 'planned') return ''
  const stop = stopOf(feature.operation, feature.trace)
  if (stop === null) return ' no stop'
  const wide = steps.find((step) => step.widthCorrections)?.widthCorrections?.expected.value ?? null
  return OFF.map(([bottom, width]) => {
    const taken = {
      bottom: stop.expected + (bottom * MM) / 1000,
      width: width === null || wide === null ? null : wide * perUnit(plan.units) + (width * MM) / 1000,
      outside: null,
    }
    return ` ${digestOf(sheetAfter(plan, index, taken))}`
  }).join('')
}

const linesOf = (plan: Plan): string[] => {
  const sheet = sheetFor(plan)
  return [
    `  sheet ${digestOf(sheet)}`,
    ...plan.features.map((feature, index) => {
      const shown = sheet.features[index]!
      const steps = sheet.steps.filter((step) => step.feature === index)
      const what = shown.status === 'refused' ? `refused, ${shown.code}` : movesOf(steps, perUnit(plan.units))
      return `  ${shown.kind}: ${what};${afterStop(plan, feature, index, steps)}`
    }),
  ]
}

const answerTo = (text: string): string[] => {
  const bytes = new TextEncoder().encode(text)
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
  return plan === null ? diagnostics.map(({ message }) => `  ${message}`) : linesOf(plan)
}

const KEPT = 'tests/kept/random-plans.txt'
const told = (answers: readonly string[][]): string =>
  answers.map((lines, at) => `job ${at}\n${lines.join('\n')}\n`).join('')

describe('random jobs', () => {
  const drawn = fc.sample(jobs, { numRuns: JOBS, seed: SEED })

  it('are answered as they were', { timeout: 240_000 }, () => {
    if (process.env.GROOVEWRIGHT_ACCEPT === '1') golden(KEPT, told(drawn.map(({ text }) => answerTo(text))))
    const kept = projectText(KEPT)
      .split(/^job \d+\n/m)
      .slice(1)
    expect(kept).toHaveLength(JOBS)
    drawn.slice(0, ASKED).forEach(({ text }, at) => {
      expect(`${answerTo(text).join('\n')}\n`, `job ${at}:\n${text}`).toBe(kept[at])
    })
  })
})
