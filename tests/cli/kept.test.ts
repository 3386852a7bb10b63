import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../runs.ts'
import { good, LATHE, runIn, SHOP } from './world.ts'

const sheet = async (): Promise<string> =>
  (await runIn({ files: { 'bench.yaml': LATHE, 'good.yaml': good() } }, 'sheet', 'good.yaml', '--format', 'json')).out

const deep = (levels: number): string => `{"steps":[],"features":${'['.repeat(levels)}${']'.repeat(levels)}}`

describe('a kept file that is nested twenty thousand levels deep', () => {
  it.each([
    [['sheet', 'shop/good.yaml', '--since', 'kept/good.json']],
    [['finish', 'shop/good.yaml', '--bottom-diameter', '1.36', '--sheet', 'kept/good.json']],
    [['grade', 'kept/good.json', 'kept/good.json']],
  ])('%j: is told in one line', async (args) => {
    const { status, out, err } = await runIn({ files: { ...SHOP, 'kept/good.json': deep(20_000) } }, ...args)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toMatch(/^groovewright: .*nested deeper.*\n$/)
  })

  it('does not lose the results of other jobs', async () => {
    const files = {
      ...SHOP,
      'shop/other.yaml': good(),
      'kept/good.json': deep(20_000),
      'kept/other.json': await sheet(),
    }
    const { status, out } = await runIn({ files }, 'check', 'shop', '--against', 'kept')
    expect(status).toBe(2)
    expect(out).toContain('shop/good.yaml: good, 1 feature;\n    kept/good.json is nested deeper')
    expect(out).toContain('shop/other.yaml: good, 1 feature\n')
  })

  it('brackets in words are no depth', async () => {
    const kept = (await sheet()).replace('"Cider press screw"', `"${'['.repeat(100)}\\"${'{'.repeat(100)}"`)
    const { status, out } = await runIn(
      { files: { ...SHOP, 'kept.json': kept } },
      'sheet',
      'shop/good.yaml',
      '--since',
      'kept.json',
    )
    expect(status).toBe(0)
    expect(out).toContain('title')
  })
})

describe('a kept sheet in which anything may stand', () => {
  const anything = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom(null, [], {}, [null], -0, 1e308, '', '__proto__'),
  )

  it('is compared or refused, never a fault of the program', async () => {
    const text = await sheet()
    const count = placesIn(JSON.parse(text)).length
    const spoilt = fc.array(fc.tuple(fc.nat(count - 1), anything), { minLength: 1, maxLength: 4 })
    await fc.assert(
      fc.asyncProperty(spoilt, async (changes) => {
        const data: unknown = JSON.parse(text)
        for (const [at, value] of changes) placesIn(data)[at]?.(value)
        const files = { ...SHOP, 'kept/good.json': JSON.stringify(data) }
        for (const args of [
          ['sheet', 'shop/good.yaml', '--since', 'kept/good.json', '--format', 'json'],
          ['finish', 'shop/good.yaml', '--bottom-diameter', '1.38', '--sheet', 'kept/good.json'],
        ])
          expect((await runIn({ files }, ...args)).err).not.toContain('this is a bug')
      }),
      { seed: 12, numRuns: runs(20) },
    )
  })
})

/** One function for each value in the data, which puts another in its place. */
const placesIn = (data: unknown): ((value: unknown) => void)[] =>
  typeof data !== 'object' || data === null
    ? []
    : Object.entries(data).flatMap(([key, value]) => [
        (other: unknown) => {
          ;(data as Record<string, unknown>)[key] = other
        },
        ...placesIn(value),
      ])
