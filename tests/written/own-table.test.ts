import fc from 'fast-check'
import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import { jobs } from '../properties/jobs.ts'
import { runs } from '../runs.ts'

/** What `replay` says of the moves that `sheet` printed for a job; null where the job cannot be cut as asked. */
const ownTable = async (job: string): Promise<string | null> => {
  const files = { 'job.yaml': job }
  const table = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
  if (table.status !== 0) return null
  const { status, out } = await runIn(
    { files: { ...files, 'moves.csv': table.out } },
    'replay',
    'job.yaml',
    'moves.csv',
  )
  return status === 0 ? '' : out
}

/** Beside the face the first place of the stair leaves .002 along the work: no more than a ridge may be, but deep. */
const FACE = `title: Hand press, spare spindle
units: inch
work: one-off
part:
  material: cast iron
  held: collet
  overhang: 2.280
  steps: [{ name: spigot, diameter: 1.950, length: 1.120 }, { name: barrel, diameter: 2.500, length: 1.7614 }]
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.125, backlash: 0.005, reads: diameter }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.045, angle: 0, travel: 0.3, scale-zero: parallel }
  spindle-speeds: [45, 70, 110, 180, 290, 470]
tools:
  bit-1: { shape: square, width: 0.129, reach: 0.3564 }
features:
  - { kind: radius, name: Runout groove, shape: corner, corner-of: end, radius: .129, tool: bit-1 }
cutting: { leave: 0.007, clear: 0.049 }
`

it('a stair around a corner is proven by its own table, though it leaves a mark beside the face', async () => {
  expect(await ownTable(FACE)).toBe('')
})

it('a stair around a corner of which a place is left out is not', async () => {
  const files = { 'job.yaml': FACE }
  const { out } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
  // The first place of the finish: up to the compound, in and out again.
  const rows = out.split('\n')
  const first = rows.findIndex((row) => row.endsWith(',finish'))
  const without = rows.toSpliced(first, 1).join('\n')
  const { status } = await runIn({ files: { ...files, 'moves.csv': without } }, 'replay', 'job.yaml', 'moves.csv')
  expect(status).toBe(1)
})

it('the table of every random job that can be cut is proven', { timeout: 600_000 }, async () => {
  let proven = 0
  await fc.assert(
    fc.asyncProperty(jobs, async ({ text }) => {
      const said = await ownTable(text)
      if (said !== null) proven++
      expect(said ?? '').toBe('')
    }),
    { numRuns: runs(60), seed: 31_415_926 },
  )
  expect(proven).toBeGreaterThan(15)
})
