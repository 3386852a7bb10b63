import { beforeAll, describe, expect, it } from 'vitest'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { good, LATHE, runIn, SHOP } from '../cli/world.ts'
import { problems } from '../print/conforms.ts'

const before = runIn({ files: SHOP }, 'sheet', '--format', 'json', 'shop/good.yaml')
// The first sheet of a run waits for everything to be loaded.
beforeAll(async () => void (await before), 60_000)
const kept = async (): Promise<string> => (await before).out

/** The sheet of the shop with one thing edited, since the sheet as it was before. */
const since = async (edit: Record<string, string>, ...rest: string[]) => {
  const files = { ...SHOP, ...edit, 'kept.json': await kept() }
  return runIn({ files }, 'sheet', 'shop/good.yaml', '--since', 'kept.json', ...rest)
}

const SINCE = ['sheet', 'shop/good.yaml', '--since', 'kept.json'] as const

/** The list alone, as it stands on the sheet. */
const list = (out: string): string => /CHANGED SINCE[^\n]*\n=+\n([\s\S]*?)\n\n== GROOVE/.exec(out)![1]!
const edited = (from: string, to: string): Record<string, string> => ({ 'shop/good.yaml': good().replace(from, to) })

describe('one edit, and what changed', () => {
  it('is nothing where nothing was edited', async () => {
    const { status, out } = await since({})
    expect(status).toBe(0)
    expect(list(out)).toBe('Nothing: every step, reading and size is as it was.')
  })

  it('tells a lathe whose lost motion has grown by the two marks that it moves', async () => {
    // .006 and five marks more are 11, .020 and five are 25; past 0 the plan goes by the lost motion and some marks: 90 is 10 before 0.
    const lines = list((await since({ 'shop/bench.yaml': LATHE.replace('backlash: 0.006', 'backlash: 0.020') })).out)
    expect(lines.split('\n')).toEqual([
      'compound backlash: .006 -> .020',
      'RELIEF:',
      '  step 5 COMPOUND turn toward the headstock, 11 marks or more -> turn toward',
      '      the headstock, 25 marks or more',
      '  step 23 COMPOUND back past 90 (.010 before 0) -> 70 (.030 before 0)',
    ])
  })

  it('tells stock that measures other than the drawing by its sizes, not by its readings', async () => {
    const { out } = await since(edited('diameter: 1.5,', 'diameter: 1.5, measured-diameter: 1.498,'))
    expect(list(out)).toContain('measured diameter: 1.500 -> 1.498')
    expect(list(out)).toContain('cut on: 1.500 -> 1.498')
    expect(list(out)).toMatch(/bottom diameter: 1\.356 .* -> 1\.354 /)
    expect(list(out)).not.toMatch(/CROSS-FEED|COMPOUND/)
  })

  it('tells a length as a length, whatever the step is called', async () => {
    const steps = (measured: string) =>
      good().replace(
        /^part:.*$/m,
        `part: { material: mild steel, held: chuck, overhang: 3, steps: [{ name: brake angle, diameter: 1.5, length: 4, measured-diameter: ${measured} }] }`,
      )
    const first = { ...SHOP, 'shop/good.yaml': steps('1.499') }
    const { out: data } = await runIn({ files: first }, 'sheet', '--format', 'json', 'shop/good.yaml')
    const files = { ...SHOP, 'shop/good.yaml': steps('1.497'), 'kept.json': data }
    const { out } = await runIn({ files }, 'sheet', 'shop/good.yaml', '--since', 'kept.json')
    expect(list(out)).toContain('brake angle measured diameter: 1.499 -> 1.497')
  })

  it('tells a tool that was measured again by how far it feeds across', async () => {
    // .156 wide with .148: 8 marks; with .1465: 9 1/2, and the tie leaves metal.
    const lines = list((await since(edited('width: 0.148', 'width: 0.1465'))).out)
    expect(lines).toContain('tool width: .148 -> .1465')
    expect(lines).toContain('COMPOUND feed across 8 -> 9')
    expect(lines).toContain('  width: .156 (.155 to .1575 at worst), holds -> .1555 (.1545 to .157 at')
  })

  it('tells steps that came by their place, and does not call those behind them changed', async () => {
    // Roughed to .054 in two infeeds instead of one, at both places: .030, the most that is allowed, comes before each .054, which stays what it was.
    const lines = list((await since(edited('tool: neck', 'tool: neck, infeed: 0.030'))).out)
    expect(lines.split('\n')).toEqual([
      'RELIEF:',
      '  step 13 is new: CROSS-FEED in past 0, to 30',
      '  step 17 is new: CROSS-FEED in past 0, to 30',
    ])
  })

  it('says once that a feature can no longer be cut, or came, or went', async () => {
    const refused = await since(edited('width: 0.156', 'width: 0.100'))
    expect(refused.status).toBe(1)
    expect(list(refused.out)).toContain('is: planned, with steps -> REFUSED: tool "neck" measures .148')
    expect(list(refused.out)).not.toContain('step 1')
    const renamed = await since(edited('name: Relief', 'name: Undercut'))
    expect(list(renamed.out).split('\n')).toEqual(['UNDERCUT: is new', 'RELIEF: is no longer on the sheet'])
  })

  it('tells the same as data', async () => {
    const worn = { 'shop/bench.yaml': LATHE.replace('backlash: 0.006', 'backlash: 0.020') }
    const sheet = JSON.parse((await since(worn, '--format', 'json')).out)
    expect(problems(sheetSchema(), sheet)).toEqual([])
    const { changed } = sheet
    expect(changed.facts).toEqual([{ what: 'compound backlash', before: '.006', now: '.020' }])
    expect(changed.features).toHaveLength(1)
    expect(changed.features[0].steps[1]).toEqual({
      fate: 'changed',
      numbers: [23],
      were: [23],
      thing: 'COMPOUND',
      what: 'back past',
      before: '90 (.010 before 0)',
      now: '70 (.030 before 0)',
    })
  })

  it('goes by the data of a step, not by its sentence', async () => {
    const worn = { 'shop/bench.yaml': LATHE.replace('backlash: 0.006', 'backlash: 0.020') }
    const other = (change: Record<string, unknown>) => {
      const sheet = JSON.parse(before.out)
      const steps = sheet.steps.map((step: Record<string, unknown>) => ({ ...step, ...change }))
      return JSON.stringify({ ...sheet, steps })
    }
    const before = await runIn({ files: SHOP }, 'sheet', '--format', 'json', 'shop/good.yaml')
    const against = async (data: string) =>
      list((await runIn({ files: { ...SHOP, ...worn, 'kept.json': data } }, ...SINCE)).out)
    expect(await against(other({ say: 'OTHER; STILL TO CUT; words' }))).toBe(await against(before.out))
    // Kept when a sheet had its sentences only: the readings are compared, the rest is not known.
    expect(await against(other({ thing: undefined, does: undefined, lines: undefined }))).toBe(
      'compound backlash: .006 -> .020\nRELIEF:\n  step 23 COMPOUND back past 90 (.010 before 0) -> 70 (.030 before 0)',
    )
  })

  it('takes a sheet that itself was printed with its changes, slips and grinding', async () => {
    const files = { ...SHOP, 'kept.json': await kept() }
    const args = ['--slips', '--grind', '--format', 'json', '--since', 'kept.json']
    const again = (await runIn({ files }, 'sheet', 'shop/good.yaml', ...args)).out
    const { out } = await runIn(
      { files: { ...SHOP, 'kept.json': again } },
      ...['sheet', 'shop/good.yaml', '--since', 'kept.json'],
    )
    expect(list(out)).toContain('Nothing')
  })
})

describe('what cannot be compared', () => {
  it('is said, with what would be right', async () => {
    const files = { ...SHOP, 'kept.json': '{}', 'kept.txt': 'CIDER PRESS SCREW' }
    for (const [file, why] of [
      ['kept.json', 'is no sheet: it should be what sheet --format json prints'],
      ['kept.txt', 'is no JSON, as the program writes it'],
      ['none.json', 'there is no such file'],
    ] as const) {
      const { status, err, out } = await runIn({ files }, 'sheet', 'shop/good.yaml', '--since', file)
      expect([status, out]).toEqual([2, ''])
      expect(err).toContain(why)
    }
    const table = await since({}, '--format', 'csv')
    expect([table.status, table.out]).toEqual([2, ''])
    expect(table.err).toContain('--since')
  })

  it('is never a reason to fail: a sheet that anyone has touched is compared as far as it goes', async () => {
    const strange = JSON.stringify({
      steps: [null, 3, { feature: 0, action: 'feed-in', say: 7 }],
      features: 'none',
      lathe: [],
    })
    const files = { ...SHOP, 'kept.json': strange }
    const { status, out } = await runIn({ files }, 'sheet', 'shop/good.yaml', '--since', 'kept.json')
    expect(status).toBe(0)
    expect(out).toContain('RELIEF: is new')
  })
})
