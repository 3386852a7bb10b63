import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

/** The steps of example 23 in a list that somebody has changed: only what stays within the form, and opens it up, is proven. */
const JOB = 'examples/jobs/23-opened-in-steps.yaml'
const files: Record<string, string> = {}
for (const path of [JOB, 'examples/lathes/engine-lathe.yaml', 'examples/toolboxes/toolbox.yaml'])
  files[path] = readFileSync(join(import.meta.dirname, '../..', path), 'utf8')

let rows: readonly string[] = []
beforeAll(async () => {
  rows = (await runIn({ files }, 'sheet', JOB, '--format', 'csv')).out.split('\n')
})

const replayed = async (moves: readonly string[]): Promise<number> => {
  expect(moves).not.toEqual([])
  const world = { files: { ...files, 'moves.csv': moves.join('\n') } }
  return (await runIn(world, 'replay', JOB, 'moves.csv')).status
}
const inSteps = (row: string): boolean => row.startsWith('"Belt groove, in steps"')
const turned = (row: string, by: number): string =>
  row.replace(/,(shift|return|feed-in),(compound|cross-feed),(-?[\d.]+)/, (_, action, slide, reading) => {
    return `,${action},${slide},${(Number(reading) + by).toFixed(4)}`
  })
const at = (pattern: RegExp, which: number): number => {
  const found = rows.flatMap((row, i) => (inSteps(row) && pattern.test(row) ? [i] : []))
  return found.at(which)!
}

describe('steps under a form', () => {
  it('are proven as they are printed', async () => {
    expect(rows.filter(inSteps).length).toBeGreaterThan(20)
    expect(await replayed(rows)).toBe(0)
  })

  it('may be a mark to a side', async () => {
    const place = at(/,return,compound/, 0)
    expect(await replayed(rows.with(place, turned(rows[place]!, 0.001)))).toBe(0)
  })

  // The flank is .015 away, along the work; a tenth of an inch of depth on the diameter dial is .05, and .017 along the work at 19 degrees.
  it.each([
    ['the first place nearer to its flank by .020', /,return,compound/, 0, -0.02],
    ['the last place nearer to its flank by .020', /,shift,compound/, -1, 0.02],
    ['the deepest step deeper by .060', /,feed-in,cross-feed/, 3, 0.12],
    ['the last step deeper by .060', /,feed-in,cross-feed/, -1, 0.12],
    ['the deepest step less deep by .060', /,feed-in,cross-feed/, 3, -0.12],
  ] as const)('are not with %s', async (_, pattern, which, by) => {
    const row = at(pattern, which)
    const other = turned(rows[row]!, by)
    expect(other).not.toBe(rows[row])
    expect(await replayed(rows.with(row, other))).toBe(1)
  })

  it('are not with a place left out', async () => {
    const [second, third] = [at(/,shift,compound/, 2), at(/,shift,compound/, 3)]
    expect(third - second).toBeGreaterThan(2)
    expect(await replayed(rows.toSpliced(second, third - second))).toBe(1)
  })

  it('are not left out as a whole', async () => {
    expect(await replayed(rows.filter((row) => !inSteps(row)))).toBe(1)
  })
})
