import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const read = (path: string): string => readFileSync(join(import.meta.dirname, '..', '..', 'examples', path), 'utf8')
const inFolder = (folder: string): string[] =>
  readdirSync(join(import.meta.dirname, '..', '..', 'examples', folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`)
const SHOP = Object.fromEntries(
  ['lathes', 'toolboxes'].flatMap(inFolder).map((path): [string, string] => [path, read(path)]),
)

/** Both arcs end on surfaces that they leave flatly: half a mark of depth is .12 mm of a leg. */
const CORNERS = `title: Spare spindle of the press
units: mm
part:
  material: brass
  held: chuck
  overhang: 90.650
  steps:
    - { name: spigot, diameter: 16.5, length: 44.7, measured-diameter: 16.460 }
    - { name: barrel, diameter: 29.45, length: 55.95, measured-diameter: 29.410 }
lathe:
  name: Long lathe
  units: inch
  cross-feed: { graduation: 0.002, per-turn: 0.200, backlash: 0, reads: diameter }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.008, travel: 0.3 }
  spindle-speeds: [45, 70, 110, 180, 290, 470]
tools: { large: { shape: corner, radius: 5.35, reach: 14.2975 } }
features:
  - { kind: radius, name: Nose, shape: corner, corner-of: end, radius: 5.35, tool: large }
`
const table = async (files: Record<string, string>, job: string) =>
  (await runIn({ files }, 'sheet', '--format', 'csv', job)).out
const replay = (files: Record<string, string>, job: string, list: string) =>
  runIn({ files: { ...files, 'own.csv': list } }, 'replay', job, 'own.csv')

describe('the table of a sheet, given back', () => {
  it.each(inFolder('jobs'))('is proven: %s', async (job) => {
    const files = { ...SHOP, [job]: read(job) }
    const { status, out } = await replay(files, job, await table(files, job))
    expect(out).not.toContain('NOT PROVEN')
    expect(status).toBe(0)
  })

  it('is proven for a corner whose legs end short because of half a mark', async () => {
    const files = { 'job.yaml': CORNERS }
    const { status, out } = await replay(files, 'job.yaml', await table(files, 'job.yaml'))
    // 5.35 - sqrt(2 x 5.35 x .00137) = 5.229
    expect(out).toMatch(/leg along the work {3}wanted 5\.35; cut 5\.229; holds/)
    expect(status).toBe(0)
  })

  it('is not proven where the last bite of the corner is left out: its legs are too short by more than that', async () => {
    const files = { 'job.yaml': CORNERS }
    const lines = (await table(files, 'job.yaml')).split('\n')
    const last = lines.findLastIndex((line) => /,feed-in,/.test(line))
    const without = lines.filter((_, i) => i !== last)
    const { status, out } = await replay(files, 'job.yaml', without.join('\n'))
    expect(status).toBe(1)
    expect(out).toMatch(/leg (along the work|down the face) .*does not hold/)
  })
})
