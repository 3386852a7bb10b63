import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import type { Figure, Phrase } from '../../src/phrase/phrase.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { grindSheet } from '../../src/sheet/grind/grind.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { examplePlans } from '../print/examples.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'

const isFigure = (part: unknown): part is Figure =>
  typeof part === 'object' && part !== null && 'role' in part && 'value' in part && 'digits' in part
const isPhrase = (part: readonly unknown[]): boolean =>
  part.length > 0 && part.every((one) => typeof one === 'string' || isFigure(one))

/** Every phrase of a sheet, wherever it stands, with where. */
const phrasesOf = (part: unknown, path = ''): (readonly [string, Phrase])[] => {
  if (Array.isArray(part)) {
    const list: readonly unknown[] = part
    return isPhrase(list) ? [[path, list as Phrase]] : list.flatMap((one, i) => phrasesOf(one, `${path}.${i}`))
  }
  if (typeof part !== 'object' || part === null || isFigure(part)) return []
  return Object.entries(part).flatMap(([key, one]) => phrasesOf(one, `${path}.${key}`))
}

/** What somebody wrote into the job or the lathe file, and what a source is called: told to the letter. */
const quoted = (plan: Plan): readonly string[] => {
  const facts = plan.features.flatMap((feature) => ('ground' in feature && feature.ground ? [feature.ground] : []))
  const sources =
    JSON.stringify([facts, plan.features, plan.part.care]).match(/"(?:\w*[sS]ource)":"(?:[^"\\]|\\.)*"/g) ?? []
  return [
    plan.lathe.name,
    plan.part.material,
    ...plan.part.steps.map(({ name }) => name),
    ...plan.features.flatMap((feature) => [
      feature.name,
      ...('tool' in feature && feature.tool !== undefined ? [feature.tool] : []),
      ...('named' in feature && feature.named !== undefined ? [feature.named.tool] : []),
      ...('why' in feature && feature.why !== null ? [feature.why] : []),
    ]),
    ...sources.map((one) => JSON.parse(one.slice(one.indexOf(':') + 1)) as string),
  ]
}

/** The 0 of a dial is a place, not a number; the others are the same on every sheet. */
const ALWAYS = [
  /\b0\b/g,
  /A 45° chamfer/g,
  /"to\s1\sturn\sand\s25" is the mark 25/g,
  /at most in 25 mm/g,
  /read-to: 1\/2/g,
]

const numbersInProse = (plan: Plan): string[] => {
  const sheet = { ...sheetFor(plan), grind: grindSheet(plan, []), slips: slipsFor(plan) }
  const names = quoted(plan).filter((one) => /\d/.test(one))
  return phrasesOf(sheet).flatMap(([path, phrase]) =>
    phrase.flatMap((part) => {
      if (typeof part !== 'string') return []
      const bare = ALWAYS.reduce(
        (text, always) => text.replace(always, ''),
        names.reduce((text, name) => text.replaceAll(name, ''), part),
      )
      return /\d/.test(bare) ? [`${path}: ${part}`] : []
    }),
  )
}

describe('no number stands in prose as letters', () => {
  it('on any sheet of the examples', () => {
    const plans = examplePlans()
    expect(plans.length).toBeGreaterThan(20)
    for (const [, plan] of plans) expect(numbersInProse(plan)).toEqual([])
  })

  it('nor on the sheet of any job', () => {
    let seen = 0
    fc.assert(
      fc.property(jobs, ({ text }) => {
        const { plan } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
        if (plan === null) return
        seen++
        expect(numbersInProse(plan)).toEqual([])
      }),
      { numRuns: runs(20), seed: 20_262 },
    )
    expect(seen).toBeGreaterThan(10)
  })

  it('and one that does is found', () => {
    const [, plan] = examplePlans().find(([, { features }]) => features[0]!.status === 'planned')!
    const [first, ...rest] = plan.features
    const planned = first!.status === 'planned' ? { ...first!, notes: ['The tool is .008 under the width'] } : first!
    expect(numbersInProse({ ...plan, features: [planned, ...rest] })).toHaveLength(1)
  })
})
