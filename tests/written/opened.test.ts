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

/** A round groove: between the lines the steps have left no surface at all. */
const ROPE = `title: Drum of the press
units: inch
part: { material: mild steel, held: chuck and center, diameter: 2.75, length: 3, overhang: 2.5 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.008, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, angle: 0, travel: 2 }
  spindle-speeds: [20, 45, 70, 110]
tools:
  round: { shape: round, radius: 0.250, reach: 0.4 }
  opener: { shape: square, width: 0.122, reach: 0.5 }
features:
  - { kind: radius, shape: concave, name: Rope, radius: 0.250, depth: 0.200, center: 1.5, tool: round, rough-tool: opener }
`

it('a form tool that is touched off between the lines, where the steps have opened the form, is too deep, and is found out', async () => {
  const own = { 'job.yaml': ROPE }
  const table = (await runIn({ files: own }, 'sheet', 'job.yaml', '--format', 'csv')).out.split('\n')
  const touch = table.findLastIndex((row) => row.startsWith('Rope,touch-off,'))
  const apart = table.toSpliced(touch, 3)
  const zero = apart.findLastIndex((row) => row.startsWith('Rope,zero,compound'))
  const between = apart.toSpliced(zero + 1, 0, ...table.slice(touch, touch + 3))
  expect(zero).toBeGreaterThan(touch)
  const said = async (moves: readonly string[]) => {
    const { status, out } = await runIn(
      { files: { ...own, 'moves.csv': moves.join('\n') } },
      'replay',
      'job.yaml',
      'moves.csv',
    )
    return [status, / too deep, cannot be saved/.test(out)]
  }
  expect(await said(table)).toEqual([0, false])
  expect(await said(between)).toEqual([1, true])
})
