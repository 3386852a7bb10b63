import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'

/** A wide groove in brass: five plunges, then across the floor by the compound. */
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
features:
  - { kind: groove, name: Wide, near: 0.750 ±0.010, width: 0.500 ±0.006, depth: 0.120 ±0.004, tool: blade, leave-sides: 0.008, leave: 0.010, infeed: 0.060 }
`
const table = async () =>
  (await runIn({ files: { 'job.yaml': JOB } }, 'sheet', '--format', 'csv', 'job.yaml')).out.trimEnd().split('\n')
const replay = (lines: readonly string[], ...args: string[]) =>
  runIn({ files: { 'job.yaml': JOB, 'mine.csv': `${lines.join('\n')}\n` } }, 'replay', 'job.yaml', 'mine.csv', ...args)
const after = (lines: readonly string[], row: RegExp, more: string): string[] => {
  const at = lines.findIndex((line) => row.test(line))
  expect(at).toBeGreaterThan(0)
  return lines.toSpliced(at + 1, 0, more)
}
const takenUp = (slide: string, marks: number) => `Wide,take-up,${slide},,${marks},`

test('the list as it is printed is proven', async () => {
  expect(await replay(await table())).toMatchObject({ status: 0, err: '' })
})

test('a take-up after aligning and locking stands the tool off the line by as much', async () => {
  const lines = (await table()).filter((line) => !line.startsWith('Wide,take-up'))
  const { status, out } = await replay(after(lines, /,lock,/, takenUp('compound', 60)))
  expect(status).toBe(1)
  expect(out).toMatch(/first fault {2}mine.csv:8: take-up compound: The compound is moved on after/)
  // The 60 marks, of which the screw may have lost 6.
  expect(out).toMatch(/near edge .* cut \.804 to \.810; does not hold/)
})

test('a take-up of no more than the backlash and some marks after aligning is told as well', async () => {
  const lines = (await table()).filter((line) => !line.startsWith('Wide,take-up'))
  const { status, out } = await replay(after(lines, /,align,/, takenUp('compound', 11)))
  expect(status).toBe(1)
  expect(out).toContain('take-up compound: The compound is moved on after the tool was brought to its place')
  expect(out).toMatch(/near edge .* cut \.755 to \.761; does not hold/)
})

test('a take-up of the cross-feed after it touched digs in, and every depth is as much deeper', async () => {
  const { status, out } = await replay(after(await table(), /,touch-off,/, takenUp('cross-feed', 40)))
  expect(status).toBe(1)
  expect(out).toContain('take-up cross-feed: The cross-feed is fed in after it touched: the tool digs into the work.')
  expect(out).toMatch(/depth .* cut \.160; does not hold/)
})

const BETWEEN = /,shift,compound,0\.098,/

test.each([
  ['align', 'Wide,align,,,,', 'The tool is brought to its place again after its zero was set'],
  ['swing', 'Wide,swing,,,,', 'every zero is lost'],
  ['fit-tool', 'Wide,fit-tool,,,,', 'every zero is lost'],
  ['take-up', takenUp('compound', 50), 'is taken up after its zero was set: go to a reading instead'],
  ['take-up', takenUp('compound', 1), 'is taken up after its zero was set: go to a reading instead'],
  ['touch-off', 'Wide,touch-off,cross-feed,,,', 'is touched off again after its zero'],
])('%s between two plunges is a fault on its line', async (action, row, says) => {
  const { status, out } = await replay(after(await table(), BETWEEN, row))
  expect(status).toBe(1)
  expect(out).toContain(`mine.csv:19: ${action}`)
  expect(out).toContain(says)
})
