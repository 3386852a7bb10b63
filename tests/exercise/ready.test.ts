import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import { filledIn, graded, manifestOf } from './class.ts'

/** Every ready exercise: its sheets are handed out, and its own key is right. */
const FOLDER = 'examples/exercises'
const names = readdirSync(FOLDER)

const project = (): Record<string, string> =>
  Object.fromEntries(
    ['exercises', 'jobs', 'broken', 'lathes', 'toolboxes'].flatMap((folder) =>
      readdirSync(join('examples', folder)).map((name): [string, string] => [
        join('examples', folder, name),
        readFileSync(join('examples', folder, name), 'utf8').replace('sheets: 12', 'sheets: 2'),
      ]),
    ),
  )

describe('a ready exercise', () => {
  it('is one of a course of ten or more', () => expect(names.length).toBeGreaterThanOrEqual(10))

  it.each(names)('is handed out, and its key is right: %s', async (name) => {
    const set = await runIn({ files: project() }, 'handout', join(FOLDER, name), '--out', 'set')
    expect([set.status, set.err]).toEqual([0, ''])
    const [first, second] = manifestOf(set).learners
    expect(first!.blanks.length).toBeGreaterThan(0)
    expect(set.files['set/01.txt']).not.toBe(set.files['set/02.txt']!.replace('sheet 02', 'sheet 01'))
    expect(second).toBeDefined()
    const { learners, status, err } = await graded(filledIn(set, () => undefined))
    expect([status, err]).toEqual([0, ''])
    for (const { score, outOf } of learners) expect(score).toBe(outOf)
  })

  it.each(names)('fits 80 columns, in signs that any printer has: %s', async (name) => {
    const { files } = await runIn({ files: project() }, 'handout', join(FOLDER, name), '--out', 'set')
    const lines = `${files['set/01.txt']}${files['set/key.txt']}`.split('\n')
    expect(lines.filter((line) => line.length > 80)).toEqual([])
    expect(lines.filter((line) => /[^\x20-\x7e°±]/.test(line))).toEqual([])
  })
})
