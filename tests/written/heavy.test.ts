import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const JOB = `title: Wide groove
units: inch
part: { material: brass, held: chuck, diameter: 1 1/4, length: 4, overhang: 2.5, measured-diameter: 1.248 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.006 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 3 }
  spindle-speeds: [100, 200, 400]
tools:
  blade: { shape: square, width: 0.1230, reach: 0.200 }
  vee: { shape: vee, angle: 60, nose: 0.020, reach: 0.3 }
features:
  - { kind: groove, name: Wide, near: 0.750 ±0.010, width: 0.500 ±0.006, depth: 0.120 ±0.004, tool: blade, leave-sides: 0.008, leave: 0.010, infeed: 0.060, walls: swept }
  - { kind: v-groove, name: Belt, near: 1.5, angle: 60, depth: 0.150 ±0.004, root: 0.050, tool: vee }
`
const replay = (list: string, ...more: string[]) =>
  runIn({ files: { 'job.yaml': JOB, 'mine.csv': list } }, 'replay', 'job.yaml', 'mine.csv', ...more)
const table = async () => (await runIn({ files: { 'job.yaml': JOB } }, 'sheet', '--format', 'csv', 'job.yaml')).out

/** Plunged to depth in the solid and fed across, in one pass. */
const solid = async (): Promise<string> => {
  const lines = (await table()).split('\n')
  const start = lines.findIndex((line) => line.startsWith('Wide,start'))
  const measure = lines.findIndex((line) => line.startsWith('Wide,feed-in,cross-feed,0.12,'))
  return [...lines.slice(0, start + 1), ...lines.slice(measure)].join('\n')
}

describe('a cut heavier than the job allows', () => {
  it('is warned of by its line, and the list stays proven', async () => {
    const { status, out } = await replay(await solid())
    expect(status).toBe(0)
    expect(out).toMatch(/warning {6}mine\.csv:14: feed-in cross-feed: heavier than infeed \.060: takes \.120 at once\n/)
    // What roughing leaves, .010, and one infeed.
    expect(out).toMatch(
      /warning {6}mine\.csv:15: feed-across compound: feeds across through metal \.120 high, where \.070 is the most/,
    )
  })
  it('is in the data with its line', async () => {
    const { out } = await replay(await solid(), '--format', 'json')
    const [wide, belt] = JSON.parse(out).features
    expect(wide.proven).toBe(true)
    expect(wide.warnings).toMatchObject([
      { kind: 'heavy-cut', line: 14, takes: 0.12, most: 0.06 },
      { kind: 'heavy-cut', line: 15, takes: 0.12, most: 0.07 },
    ])
    expect(belt.warnings).toEqual([])
  })
  it('is no cut of the sheet itself, along the flanks of a V either', async () => {
    const { status, out } = await replay(await table())
    expect(status).toBe(0)
    expect(out).not.toContain('warning')
  })
  it('is a plunge between which the middle was left standing', async () => {
    const lines = (await table()).split('\n')
    const from = lines.findIndex((line) => line.startsWith('Wide,shift,compound,0.098'))
    const to = lines.findIndex((line) => line.startsWith('Wide,shift,compound,0.369'))
    const { out } = await replay([...lines.slice(0, from), ...lines.slice(to)].join('\n'))
    expect(out).toMatch(/warning .* feed-across compound: feeds across through metal \.120 high/)
  })
})
