import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CODES } from '../../src/diagnostics/codes.ts'
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts'
import type { FeaturePlan, Warning } from '../../src/plan/plan.ts'
import { runIn } from '../cli/world.ts'

/** That every code that is made is listed the compiler holds: whatever carries one has the type `Code`. */
const codes = Object.keys(CODES)
const sources = new Map(
  readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => name.replaceAll('\\', '/'))
    .map((name) => [name, readFileSync(join('src', name), 'utf8')]),
)

/** Where codes are listed, grouped and compared, but not made. */
const NOT_MADE = ['diagnostics/codes.ts', 'exercise/reasons.ts', 'moves/trace.ts']

/** Codes that stand somewhere as a value: not as a key, not to compare with, not in a set. */
const madeIn = (text: string): string[] => {
  const bare = text.replace(/[!=]==\s*'[^']*'/g, '').replace(/new Set<Code>\(\[[^\]]*\]\)/g, '')
  const plain = [...bare.matchAll(/'([a-z0-9-]+)'(?!:)/g)].map(([, code]) => code!)
  // A list of moves: a code is named after the key that it is about.
  const ofKeys = [...bare.matchAll(/\b(?:numberIn|oneOf)\(row, '([a-z-]+)'/g)].map(([, key]) => `moves-${key}`)
  return [...plain, ...ofKeys]
}

describe('the codes of problems, refusals and warnings', () => {
  it('are all made somewhere', () => {
    const made = new Set([...sources].flatMap(([name, text]) => (NOT_MADE.includes(name) ? [] : madeIn(text))))
    expect(codes.length).toBeGreaterThan(130)
    expect(codes.filter((code) => !made.has(code))).toEqual([])
  })

  it('are seen where they are made, and only there', () => {
    expect(madeIn("{ code: 'a-b' }\nrefuse(fine ? 'c-d' : 'e-f', numberIn(row, 'mark', 1))")).toEqual([
      ...['a-b', 'c-d', 'e-f', 'mark', 'moves-mark'],
    ])
    expect(madeIn("{ 'a-b': 1 }; code === 'c-d'; new Set<Code>(['e-f', 'g-h'])")).toEqual([])
  })

  it('are no others: what is not listed is not compiled', () => {
    // @ts-expect-error: no such code
    const problem: Pick<Diagnostic, 'code'> = { code: 'no-such' }
    // @ts-expect-error: no such code
    const refusal: Pick<Extract<FeaturePlan, { status: 'refused' }>, 'code'> = { code: 'no-such' }
    // @ts-expect-error: no such code
    const warning: Pick<Warning, 'code'> = { code: 'no-such' }
    for (const { code } of [problem, refusal, warning]) expect(codes).not.toContain(code)
    const around = [...sources].filter(([, text]) => /\bas (?:Code|any|never)\b/.test(text)).map(([name]) => name)
    expect(around).toEqual(['cli/commands/keys.ts'])
    const loose = [...sources].filter(([, text]) => /\bcode\??: string\b/.test(text)).map(([name]) => name)
    // The causes of a wrong answer are no diagnostics: they are told to a class and have a list of their own.
    expect(loose.sort()).toEqual(['grading/causes/cause.ts', 'grading/grades.ts'])
  })

  it('are words with hyphens, and each has a meaning of its own', () => {
    for (const code of codes) expect(code).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/)
    expect(new Set(Object.values(CODES)).size).toBe(codes.length)
  })

  it('are printed by keys codes, and one alone by its name', async () => {
    const { status, out } = await runIn({}, 'keys', 'codes')
    expect(status).toBe(0)
    expect(out).toBe(
      Object.entries(CODES)
        .map(([code, says]) => `${code.padEnd(26)}${says}\n`)
        .join(''),
    )
    expect((await runIn({}, 'keys', 'codes', 'source-tag')).out).toBe('source-tag                a tag of YAML\n')
    expect((await runIn({}, 'keys', 'codes', 'no-such')).status).toBe(2)
  })
})
