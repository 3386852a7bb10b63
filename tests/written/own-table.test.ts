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

it.each([-0.001, 0.001, 0.002])('a stair around a corner that is finished %s along is not', async (by) => {
  const files = { 'job.yaml': FACE }
  const { out } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
  const rows = out.split('\n')
  const finish = rows.findLastIndex((row) => row.includes(',go-past,compound,'))
  const moved = rows.map((row, i) =>
    i <= finish
      ? row
      : row.replace(
          /,(shift|return),compound,(-?[\d.]+)/,
          (_, action, at) => `,${action},compound,${(Number(at) + by).toFixed(3)}`,
        ),
  )
  expect(moved).not.toEqual(rows)
  const world = { files: { ...files, 'moves.csv': moved.join('\n') } }
  expect((await runIn(world, 'replay', 'job.yaml', 'moves.csv')).status).toBe(1)
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

/** A place each .008 or so, none of them in the middle: there a ridge of .001 stays at the deepest point. */
const HOLLOW = `title: Hand press, spare spindle
units: inch
work: repeat
part: { material: mild steel, held: chuck, overhang: 1.680, diameter: 1.0900, length: 2.2800 }
lathe:
  name: Long shed lathe
  units: mm
  cross-feed: { graduation: 0.01, per-turn: 0.5, backlash: 0.30, reads: depth }
  compound: { graduation: 0.01, per-turn: 0.5, backlash: 0.51, angle: 0, travel: 7.6, scale-zero: parallel }
  spindle-speeds: [45, 70, 110, 180, 290, 470]
  jaw-clearance: 2.54
tools:
  bit-1: { shape: round, radius: 0.1212, reach: 0.1592, bit: carbide }
features:
  - { kind: radius, name: Runout groove, shape: concave, radius: 5.4 mm, width: 3/8, center: 15 mm, tool: bit-1, cutting: { cusp: 0.002 } }
`

/** Fillets of .008 by marks of .002: more stays in them than in a form that is cut at once. */
const FILLETS = `title: Hand press, spare spindle
units: inch
part: { material: cast iron, held: chuck, overhang: 2.5, diameter: 0.5700, length: 3 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.0001, per-turn: 0.050, backlash: 0.008, read-to: 1/2, reads: diameter }
  compound: { graduation: 0.002, per-turn: 0.200, backlash: 0.008, angle: 0, travel: 2.0, scale-zero: square }
  spindle-speeds: [45, 70, 110, 180, 290, 470]
tools:
  bit-1: { shape: square, width: 0.0647, corner-radius: 0, reach: 0.0576 }
features:
  - { kind: groove, name: Runout groove, near: 1.3964, width: 0.1220, bottom-diameter: .522, corner-radius: .008, tool: bit-1 }
`

it('fillets that are stepped along may be larger by their ridges', async () => {
  expect(await ownTable(FILLETS)).toBe('')
})

it.each([0, 1])('fillets are not, of which an outermost place is left out (%i)', async (which) => {
  const files = { 'job.yaml': FILLETS }
  const { out } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
  const rows = out.split('\n')
  // Nearest to the walls the finish is least deep.
  const finish = rows.flatMap((row, i) => (/,feed-in,.*finish/.test(row) ? [i] : []))
  const least = finish.map((i) => ({ i, at: Number(/feed-in,cross-feed,(-?[\d.]+)/.exec(rows[i]!)![1]) }))
  const shallowest = Math.min(...least.map(({ at }) => at))
  const outermost = least.filter(({ at }) => at === shallowest).map(({ i }) => i)
  expect(outermost).toHaveLength(2)
  const without = rows.toSpliced(outermost[which]!, 1).join('\n')
  const { status } = await runIn({ files: { ...files, 'moves.csv': without } }, 'replay', 'job.yaml', 'moves.csv')
  expect(status).toBe(1)
})

it('a hollow that is stepped along may be narrower by the ridges at its edges', async () => {
  const narrow = HOLLOW.replace(
    /radius: 5\.4 mm, width: 3\/8, center: 15 mm, tool: bit-1, cutting: { cusp: 0\.002 }/,
    'radius: 0.1300, depth: .108, center: 0.8, tool: bit-1',
  )
  const fine = narrow
    .replace(/lathe:[\s\S]*?spindle-speeds/, (found) =>
      found
        .replace('units: mm', 'units: inch')
        .replace(/cross-feed: .*/, 'cross-feed: { graduation: 0.0005, per-turn: 0.050, backlash: 0.002, reads: depth }')
        .replace(/compound: .*/, 'compound: { graduation: 0.0005, per-turn: 0.050, backlash: 0.045, travel: 2 }'),
    )
    .replace('jaw-clearance: 2.54', 'jaw-clearance: 0.1')
    .replace('radius: 0.1212', 'radius: 0.0975')
  expect(await ownTable(fine)).toBe('')
})

it('a hollow that is stepped along may be less deep by what its ridges may be, and no deeper; nor one mark less deep everywhere', async () => {
  expect(await ownTable(HOLLOW)).toBe('')
  const files = { 'job.yaml': HOLLOW }
  const { out } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
  // Every reading of the cross-feed past its zero .1 mm further in.
  const deeper = out.replace(
    /,feed-in,cross-feed,([\d.]+)/g,
    (_, reading) => `,feed-in,cross-feed,${(Number(reading) + 0.1).toFixed(2)}`,
  )
  const shallower = out.replace(
    /,feed-in,cross-feed,([\d.]+),(.*finish)/g,
    (_, reading, why) => `,feed-in,cross-feed,${(Number(reading) - 0.01).toFixed(2)},${why}`,
  )
  for (const other of [deeper, shallower]) {
    expect(other).not.toBe(out)
    const { status } = await runIn({ files: { ...files, 'moves.csv': other } }, 'replay', 'job.yaml', 'moves.csv')
    expect(status).toBe(1)
  }
})

it('the table of every random job that can be cut is proven', { timeout: 600_000 }, async () => {
  let proven = 0
  await fc.assert(
    fc.asyncProperty(jobs, async ({ text }) => {
      const said = await ownTable(text)
      if (said !== null) proven++
      expect(said ?? '').toBe('')
    }),
    { numRuns: runs(24), seed: 31_415_926 },
  )
  expect(proven).toBeGreaterThan(8)
})

/** Three places whose depths differ by half a mark, by a tool whose face slopes: its flanks are curved, and so are the steps in the floor. */
const SLOPING = `title: Hand press, spare spindle
units: inch
part: { material: mild steel, held: chuck, overhang: 1.090, diameter: 19/32, length: 1.6938 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.000, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.000, angle: 5.73, travel: 2.5, scale-zero: parallel }
  spindle-speeds: [45, 70, 110, 180, 290, 470]
tools:
  bit-1: { shape: vee, angle: 28.2346, nose: 0.0063, holder-angle: 14.5, reach: 0.076 }
features:
  - { kind: v-groove, name: Runout groove, angle: 29, depth: 0.0400 ±0.002, root: 1/64, near: 9/32, tool: bit-1 }
cutting: { leave: 0.004, leave-sides: 0.002 }
`

it('a V whose floor has steps of half a mark is as wide at its root as all of them, and its angle is that of its flanks', async () => {
  expect(await ownTable(SLOPING)).toBe('')
  const { out } = await runIn({ files: { 'job.yaml': SLOPING } }, 'sheet', 'job.yaml', '--format', 'json')
  const { root, angle } = JSON.parse(out).features[0].finished
  expect(Math.abs(root.planned - 1 / 64)).toBeLessThan(0.001)
  expect(Math.abs(angle.planned - 29)).toBeLessThan(0.1)
})
