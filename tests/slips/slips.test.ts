import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { mutantsOf } from '../../src/slips/mistakes.ts'
import { slipsOf } from '../../src/slips/slips.ts'
import { runIn } from '../cli/world.ts'
import { examplePlans } from '../print/examples.ts'

const FILES: Record<string, string> = Object.fromEntries(
  ['jobs', 'lathes', 'toolboxes'].flatMap((folder) =>
    readdirSync(`examples/${folder}`).map((name) => [
      `examples/${folder}/${name}`,
      readFileSync(`examples/${folder}/${name}`, 'utf8'),
    ]),
  ),
)
const sheet = async (job: string, ...args: string[]) =>
  (await runIn({ files: FILES }, 'sheet', ...args, `examples/jobs/${job}.yaml`)).out
/** What is measured, by the mistake that measures so. */
const card = async (job: string): Promise<Record<string, string>> => {
  const { slips } = JSON.parse(await sheet(job, '--slips', '--format', 'json'))
  return Object.fromEntries(
    slips[0].lines.map((line: { shows: string; mistake: string }) => [line.mistake, line.shows]),
  )
}

/** 01: dials of .001 by .100 that read depth; .148 tool in a .165 groove, .072 deep in two passes of which the last is .018; .006 backlash. */
test('each mistake on the press screw measures what plane sums say', async () => {
  expect(await card('01-press-screw')).toEqual({
    'one turn of the cross-feed too many': 'bottom .200 small',
    'ten marks too far: the next number on the dial': 'bottom .020 small',
    'the finish pass was forgotten': 'bottom .036 large',
    'the depth dial was taken for one that reads diameter': 'bottom .144 small',
    'the shift of the compound was forgotten': 'width .017 narrow',
    'one turn of the compound too many': 'width .100 wide',
    'shifted by the whole width: the width of the tool was forgotten': 'width .148 wide',
    'backlash not taken up: the compound was turned straight back (so much at the most)':
      'step of .018 left in the form, .006 wide, on the tailstock side',
    'the wrong corner of the tool was set to the line': 'near edge .148 toward the free end',
  })
})

test('a swung compound left uncorrected, and its backlash, are slips of their own', async () => {
  const { lathe, setup, features } = examplePlans().find(([name]) => name === '09-swung-compound.yaml')![1]
  const operation = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))[0]!
  const last = Math.max(...operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count ?? 0] : [])))
  const scale = lathe.compound.scale as Extract<typeof lathe.compound.scale, { kind: 'dial' }>
  const [slips] = slipsOf(lathe, setup, [operation])
  const found = (mistake: string) => slips!.find(({ mistakes }) => mistakes.some((one) => one === mistake))
  const deeper = last * scale.graduation * scale.readTo * Math.sin((operation.angle * Math.PI) / 180)
  const step = lathe.crossFeed.kind === 'dial' ? lathe.crossFeed.graduation : 0
  expect(Math.abs(found('swing-forgotten')!.changes[0]!.by + 2 * deeper)).toBeLessThanOrEqual(2 * step)
  const { id, by } = found('backlash-left')!.changes[0]!
  const lag = scale.backlash * Math.sin((operation.angle * Math.PI) / 180)
  expect(id).toBe('bottomDiameter')
  expect(Math.abs(by + 2 * lag)).toBeLessThan(1_000_000)
})

describe.each(examplePlans().filter(([, plan]) => plan.features.some(({ status }) => status === 'planned')))(
  '%s',
  (_, { lathe, setup, features }) => {
    const planned = features.flatMap((one) => (one.status === 'planned' ? [one] : []))
    const operations = planned.map(({ operation }) => operation)
    const cards = slipsOf(lathe, setup, operations)

    test('every slip shows in something, no two in the same', () => {
      expect(cards).toHaveLength(operations.length)
      for (const slips of cards) {
        expect(slips.length).toBeGreaterThan(0)
        const shown = slips.map(({ changes, ridge }) => {
          expect(changes.length + (ridge === null ? 0 : 1)).toBeGreaterThan(0)
          return JSON.stringify([changes.map(({ id, by }) => [id, Math.round(by / 1e6)]), ridge?.high, ridge?.wide])
        })
        expect(new Set(shown).size).toBe(shown.length)
      }
    })

    test('one turn too many is a turn of the cross-feed deeper, wherever a diameter or a depth is measured', () => {
      const scale = lathe.crossFeed
      for (const slips of cards) {
        const slip = slips.find(({ mistakes }) => mistakes.includes('turn-more'))
        expect(slip !== undefined).toBe(scale.kind === 'dial')
        if (slip === undefined || scale.kind !== 'dial') continue
        const travel = scale.reads === 'diameter' ? scale.perTurn / 2 : scale.perTurn
        const { id, by } = slip.changes[0]!
        expect(Math.abs(by - (id === 'bottomDiameter' ? -2 : 1) * travel)).toBeLessThan(1000)
      }
    })

    test('a mistake changes only the moves, or where the tool was set', () => {
      for (const operation of operations)
        for (const mutant of mutantsOf(operation, lathe)) {
          expect({ ...mutant.operation, moves: [], zero: null }).toEqual({ ...operation, moves: [], zero: null })
          expect([mutant.operation.moves, mutant.operation.zero]).not.toEqual([operation.moves, operation.zero])
        }
    })
  },
)

test('the card stands at the end of the sheet, and only where it is asked for', async () => {
  const bare = await sheet('14-whole-screw')
  const full = await sheet('14-whole-screw', '--slips')
  expect(bare).not.toContain('SLIPS')
  expect(full.startsWith(bare)).toBe(true)
  const added = full.slice(bare.length)
  expect(added).toContain('COLLAR GROOVE\n bottom .200 small\n      one turn of the cross-feed too many\n')
  expect(added).toMatch(/PILOT CORNER\n leg down the face \.100 deep/)
  expect(added).toMatch(/leg along the work \.100 long\n {6}one turn of the compound too many/)
  expect(added.split('\n').filter((line) => line.length > 80)).toEqual([])
})
