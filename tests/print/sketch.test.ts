import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { sketchLines } from '../../src/print/text/sketch.ts'
import { runIn } from '../cli/world.ts'
import { drawnExample, drawnSheets } from './drawn.ts'

const sheet = drawnExample('01-press-screw')
const drawingOf = (of: typeof sheet, index = 0) => {
  const feature = of.features[index]!
  if (feature.status === 'refused' || feature.drawing === undefined) throw new Error('no drawing')
  return feature.drawing
}
const rowsOf = (lines: readonly string[]) =>
  lines.filter((line) => line.startsWith('  |')).map((line) => line.slice(3, -1))

describe('a form in plain characters', () => {
  const lines = sketchLines(drawingOf(sheet), 'inch', 80)
  const rows = rowsOf(lines)

  // A sixth of the width on either side: the groove is three quarters of 60 columns. It is .072 deep, roughed to .054: three quarters of six rows and a half.
  it('has its width, and its depth in the passes that cut it', () => {
    expect(rows.map((row) => row.length)).toEqual(rows.map(() => 60))
    expect(rows.map((row) => row.replaceAll('#', '').length)).toEqual([45, 45, 45, 45, 45, 45, 0, 0])
    expect(rows.slice(0, 4).join('')).toMatch(/^[#ab]+$/)
    expect(rows.slice(4, 6).join('')).toMatch(/^[#cd]+$/)
    // The second plunge widens by .017 of .165: 4.6 of 45 columns.
    expect(Math.abs(rows[0]!.replace(/[^b]/g, '').length - 4.6)).toBeLessThan(1)
  })

  it('names the steps that cut, and the edges under where they are', () => {
    expect(lines.at(-1)).toBe('   headstock left; cut in step 13 a, 16 b, 25 c, 26 d')
    const edges = lines.at(-2)!
    expect(edges).toContain('1.290')
    expect(Math.abs(edges.indexOf('1.290') - (3 + rows[0]!.search(/[a-d]/)))).toBeLessThan(3)
    expect(edges).toContain('1.125')
  })

  it('has twelve lines at the most, none over the width, for every example', () => {
    let drawn = 0
    for (const [, each] of drawnSheets())
      for (const [index, { status }] of each.features.entries()) {
        if (status === 'refused') continue
        for (const width of [80, 60, 40]) {
          const sketch = sketchLines(drawingOf(each, index), each.units, width)
          expect(sketch.length).toBeGreaterThan(9)
          expect(sketch.length).toBeLessThanOrEqual(12)
          drawn++
        }
      }
    expect(drawn).toBeGreaterThan(60)
  })
})

describe('the drawing of a sheet', () => {
  const files = Object.fromEntries(
    ['jobs', 'lathes', 'toolboxes'].flatMap((folder) =>
      readdirSync(`examples/${folder}`).map((name) => [
        `examples/${folder}/${name}`,
        readFileSync(`examples/${folder}/${name}`, 'utf8'),
      ]),
    ),
  )
  const out = async (...args: string[]) =>
    (await runIn({ files }, 'sheet', 'examples/jobs/01-press-screw.yaml', ...args)).out

  it('is there where it is asked for, and changes nothing else', async () => {
    const [bare, drawn] = [await out(), await out('--drawing')]
    expect(bare).not.toContain('headstock left')
    expect(drawn.split('\n').filter((line) => !/^ {2}\||from the free end$|headstock left/.test(line))).toEqual(
      bare.split('\n').filter((line) => !/from the free end$/.test(line)),
    )
    expect(await out('--no-drawing')).toBe(bare)
  })

  it('is there on a terminal, unless it is not wanted or goes into a file', async () => {
    const on = async (...args: string[]) =>
      (await runIn({ files, terminal: true }, 'sheet', 'examples/jobs/01-press-screw.yaml', ...args)).out
    expect(await on()).toContain('headstock left')
    expect(await on('--no-drawing')).not.toContain('headstock left')
    expect(await on('--card')).not.toContain('headstock left')
  })
})
