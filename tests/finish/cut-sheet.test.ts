import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { dataOf } from '../../src/cli/kept.ts'
import { movesIn } from '../../src/cli/kept-moves.ts'
import { readingIn } from '../../src/cli/reading.ts'
import { compile, sheetFor } from '../../src/compile.ts'
import type { Load } from '../../src/job/read-job.ts'
import { hashed } from '../../src/plan/identity.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { runIn } from '../cli/world.ts'

/** A worn lathe whose dials move .002 a mark, and the same judged to half marks: what changed between two sheets of one job. */
const lathe = (readTo: string): string => `name: Worn lathe of the village
units: inch
cross-feed: { graduation: 0.002, per-turn: 0.250, reads: depth, backlash: 0.045${readTo} }
compound: { graduation: 0.002, per-turn: 0.200, backlash: 0.038, travel: 3 }
spindle-speeds: [35, 60, 100, 180, 320, 540]
`
const job = (more = ''): string => `title: Cider press shaft
units: inch
part: { material: mild steel, held: chuck, overhang: 4, diameter: 1.500, measured-diameter: 1.496, length: 6 }
lathe: lathe.yaml
tools:
  sq: { shape: square, width: 0.090, reach: 0.2 }
features:
${more}  - { kind: groove, name: Seal, near: 2.25, width: 0.140 ±0.002, bottom-diameter: 1.250 +0 -0.002, walls: swept, tool: sq }
`
const WHOLE = { 'shaft.yaml': job(), 'lathe.yaml': lathe('') }
const HALF = { 'shaft.yaml': job(), 'lathe.yaml': lathe(', read-to: 1/2') }
const kept = async (files: Record<string, string> = WHOLE): Promise<string> =>
  (await runIn({ files }, 'sheet', 'shaft.yaml', '--format', 'json')).out
const identityIn = (json: string): string => JSON.parse(json).identity

const finish = async (files: Record<string, string>, ...more: string[]) => {
  const args = ['finish', 'shaft.yaml', '--feature', 'Seal', '--bottom-diameter', '1.291', ...more]
  const text = await runIn({ files }, ...args)
  const { out } = await runIn({ files }, ...args, '--format', 'json')
  const data = out === '' ? null : JSON.parse(out)
  const reading = data?.steps.find((step: { purpose?: string }) => step.purpose === 'finish')?.reading
  return { ...text, words: text.out.replace(/\s+/g, ' '), data, reading }
}

describe('a groove that was roughed by another sheet than the job plans now', () => {
  // Roughed at 52 marks of .002: 1.496 − 2 · .104 = 1.288. 1.291 measured: the zero stands .0015 out, so .1245 makes 1.250 and .125 makes 1.249.
  it('is finished right by the reading it was roughed to, in marks or as the dial reads', async () => {
    for (const reading of ['52', 'mark 52', '.104', '0.104'])
      expect((await finish(HALF, '--roughed-at', reading)).reading, reading).toBe(0.125)
    const { words, data } = await finish(HALF, '--roughed-at', '52')
    expect(words).toContain('roughed to mark 52 (.104) at step 15, as given')
    // Its own steps backed out to another mark than those of the job as it is now.
    expect(words).toContain('begin with the cross-feed .625 before 0: bring it there first')
    expect([data.identity, data.continues]).toEqual([null, { from: 'reading', roughedAt: 0.104 }])
  })

  it('is drawn on the part as it is then, with the groove that was cut before it', async () => {
    const first = '  - { kind: groove, name: Vent, near: 1.5, width: 0.090, depth: 0.050, tool: sq }\n'
    const files = { ...WHOLE, 'shaft.yaml': job(first) }
    const args = ['finish', 'shaft.yaml', '--feature', 'Seal', '--bottom-diameter', '1.291', '--format', 'svg']
    const { out } = await runIn(
      { files: { ...files, 'kept.json': await kept(files) } },
      ...args,
      '--sheet',
      'kept.json',
    )
    expect(out).toContain('<svg')
    expect(out).toBe((await runIn({ files }, ...args)).out)
  })
  it('is finished right by the kept sheet, from the moves that stand there', async () => {
    const sheet = await kept()
    const { reading, words, data, status } = await finish({ ...HALF, 'kept.json': sheet }, '--sheet', 'kept.json')
    expect([status, reading]).toEqual([0, 0.125])
    expect(words).toContain(`Goes on from the kept sheet ${identityIn(sheet)}, roughed to mark 52 (.104) at step 15`)
    expect(words).toContain(
      `The job plans another sheet now, ${identityIn(await kept(HALF))}: none of its steps is used`,
    )
    expect(data.identity).toBe(identityIn(sheet))
    expect(data.continues).toEqual({ from: 'kept sheet', roughedAt: 0.104 })
    // Backed out as that sheet did: .080 and two turns.
    expect(words).toContain('IN 2 whole turns to the same mark, 85 (.080 out)')
  })

  it('without either says which sheet and which reading it takes for granted', async () => {
    const { reading, words, data } = await finish(HALF)
    const name = identityIn(await kept(HALF))
    // 51 1/2 marks: 1.290 would be expected, and .124 makes 1.249.
    expect(reading).toBe(0.124)
    expect(words).toContain(`ASSUMED: sheet ${name} was cut, roughed to mark 51 1/2 (.103) at step 15.`)
    expect(words).toContain('give it (--sheet, the sheet kept as data) or that reading (--roughed-at)')
    expect([data.identity, data.continues]).toEqual([name, { from: 'job', roughedAt: 0.103 }])
  })

  it('goes by what was fed in, not by a longer way along the work', async () => {
    // .150 over is 75 marks; roughed to .103 all the same.
    const wide = { ...HALF, 'shaft.yaml': job().replace('0.140', '0.240') }
    const { words } = await finish(wide)
    expect(words).toMatch(/was cut, roughed to mark 51 1\/2 \(\.103\) at step/)
  })

  it('says so too where it refuses', async () => {
    const args = ['finish', 'shaft.yaml', '--feature', 'Seal', '--bottom-diameter', '1.310']
    const { status, err } = await runIn({ files: HALF }, ...args)
    expect(status).toBe(1)
    expect(err).toContain(`assumed is sheet ${identityIn(await kept(HALF))}, roughed to .103 on the dial`)
  })

  it('and not where it is told which sheet was cut, or to what reading', async () => {
    const args = ['finish', 'shaft.yaml', '--feature', 'Seal', '--bottom-diameter', '1.310']
    const files = { ...HALF, 'kept.json': await kept(HALF) }
    for (const more of [
      ['--sheet', 'kept.json'],
      ['--roughed-at', '51 1/2'],
    ]) {
      const { status, err } = await runIn({ files }, ...args, ...more)
      expect(status).toBe(1)
      expect(err, more[0]).not.toContain('assumed is')
    }
  })

  it('roughed to the reading that the job plans, it is that sheet', async () => {
    const { data } = await finish(HALF, '--roughed-at', '51 1/2')
    expect([data.identity, data.continues.roughedAt]).toEqual([identityIn(await kept(HALF)), 0.103])
  })
})

describe('a sheet that does not fit the job', () => {
  const other = async (files: Record<string, string>, sheet: string) => {
    const { status, data, words } = await finish({ ...files, 'kept.json': sheet }, '--sheet', 'kept.json')
    return { status, code: data?.features[0].refusal?.code, words }
  }

  it.each([
    ['marks of the cross-feed', (text: string) => text.replaceAll('graduation: 0.002', 'graduation: 0.001')],
    ['sense of the cross-feed', (text: string) => text.replace('reads: depth', 'reads: diameter')],
    ['width of the tool', (text: string) => text.replace('width: 0.090', 'width: 0.091')],
    ['diameter it is cut on', (text: string) => text.replace('1.496', '1.498')],
    ['place the tool is brought to', (text: string) => text.replace('near: 2.25', 'near: 2.26')],
  ])('is refused with what differs: %s', async (what, change) => {
    const sheet = await kept()
    const files = Object.fromEntries(Object.entries(WHOLE).map(([name, text]) => [name, change(text)]))
    const { status, code, words } = await other(files, sheet)
    expect([status, code]).toEqual([1, 'other-sheet'])
    expect(words).toContain(`the ${what} was`)
  })

  it('is refused where the job does another feature first', async () => {
    const first = '  - { kind: groove, name: Oil, near: 1.25, width: 0.140, depth: 0.030, tool: sq }\n'
    const { code, words } = await other({ ...WHOLE, 'shaft.yaml': job(first) }, await kept())
    expect(code).toBe('other-sheet')
    expect(words).toContain('does "Oil", "Seal" first')
  })

  it('is refused where its steps are not those of its name', async () => {
    const data = JSON.parse(await kept())
    const rough = data.steps.filter((step: { purpose?: string }) => step.purpose === 'rough')
    for (const step of rough) step.reading = 0.1
    expect((await other(WHOLE, JSON.stringify(data))).words).toContain('the file was changed')
  })

  it('is refused where a step before the stop is not proved', async () => {
    const data = JSON.parse(await kept())
    const out = data.steps.findIndex((step: { action: string }, i: number) => step.action === 'back-out' && i > 12)
    data.steps[out].reading = 0.1
    data.identity = null
    expect((await other(WHOLE, JSON.stringify(data))).words).toContain(
      'the replay does not prove the steps of that sheet',
    )
  })

  it('is refused where the spindle is not stopped before the measuring', async () => {
    const data = JSON.parse(await kept())
    const measured = data.steps.findIndex((step: { action: string }) => step.action === 'measure')
    const stopped = data.steps.findLastIndex(
      (step: { action: string }, i: number) => step.action === 'stop' && i < measured,
    )
    data.steps.splice(stopped, 1)
    data.identity = null
    expect((await other(WHOLE, JSON.stringify(data))).words).toContain('measured with the spindle running')
  })

  it('is no sheet to go on from where it is itself what remains, or where it cannot be read', async () => {
    const remains = (
      await runIn(
        { files: WHOLE },
        ...'finish shaft.yaml --feature Seal --bottom-diameter 1.288 --format json'.split(' '),
      )
    ).out
    const odd = (await kept()).replace('"reading": 0.104', '"reading": 0.1043')
    for (const [text, why] of [
      [remains, 'a sheet of what remains'],
      ['{}', 'is no sheet'],
      [odd, 'between the marks'],
      [(await kept()).replace('"action": "align"', '"action": "dance"'), 'step 6: "dance" is no action'],
    ] as const) {
      const { status, err, out } = await finish({ ...WHOLE, 'kept.json': text }, '--sheet', 'kept.json')
      expect([status, out]).toEqual([2, ''])
      expect(err).toContain(why)
    }
  })

  it('nor is a reading that is none, or that is given beside a sheet', async () => {
    for (const [args, why] of [
      [['--roughed-at', '52 1/3'], 'is no reading of this dial'],
      [['--roughed-at', '0'], 'roughing stops after 0 and before the finish'],
      [['--roughed-at', '70'], 'roughing stops after 0 and before the finish'],
      [['--roughed-at', '52', '--sheet', 'kept.json'], 'not both'],
    ] as const) {
      const { status, err } = await finish(HALF, ...args)
      expect(status).toBe(2)
      expect(err).toContain(why)
    }
  })
})

describe('a reading as a person says it', () => {
  const dial = {
    kind: 'dial',
    units: 'inch',
    graduation: INCH / 1000,
    perTurn: INCH / 10,
    reads: 'depth',
    backlash: 0,
    readTo: 1,
  } as const
  it.each([
    ['1 turn and 25', 125],
    ['1 turn 25', 125],
    ['2 turns and 0', 200],
    ['2 turns, on 0', 200],
    ['2 turns', 200],
    ['.125', 125],
    ['125', 125],
  ])('%s', (text, count) => {
    expect(readingIn(text, dial, 120)).toEqual({ ok: true, count })
  })

  it('is whichever of marks and reading is nearer to what is expected', () => {
    // Marks of .02 mm, judged to a quarter: "1.5" is a mark and a half, 6 quarters, or 1.5 mm, 300 of them.
    const metric = { ...dial, units: 'mm', graduation: MM / 50, perTurn: 4 * MM, readTo: 1 / 4 } as const
    expect([readingIn('1.5', metric, 290), readingIn('1.5', metric, 8)]).toEqual([
      { ok: true, count: 300 },
      { ok: true, count: 6 },
    ])
    expect(readingIn('.0005', dial, 100).ok).toBe(false)
    expect(readingIn('1/0', dial, 100).ok).toBe(false)
  })

  it('on a readout is what it shows', () => {
    const readout = { kind: 'readout', units: 'inch', resolution: INCH / 2000, reads: 'depth' } as const
    expect(readingIn('.0605', readout, 120)).toEqual({ ok: true, count: 121 })
    expect(readingIn('1 turn', readout, 120).ok).toBe(false)
  })
})

describe('the name of a sheet', () => {
  const JOBS = join(import.meta.dirname, '..', '..', 'examples', 'jobs')
  const load: Load = (path, from) => {
    const file = from === null ? join(JOBS, path) : join(dirname(from), path)
    return { ok: true, file, bytes: readFileSync(file) }
  }
  const names = readdirSync(JOBS).filter((name) => name.endsWith('.yaml'))

  it('is short, and another one for every job', () => {
    const all = names.map((name) => sheetFor(compile(name, load).plan!).identity!)
    for (const one of all) expect(one).toMatch(/^[FHKLMRWXY2346789]{6}$/)
    expect(new Set(all).size).toBe(names.length)
  })

  it('stands at the head of the sheet, and does not change with what decides no move', async () => {
    const { out } = await runIn({ files: WHOLE }, 'sheet', 'shaft.yaml')
    const name = identityIn(await kept())
    expect(out).toMatch(new RegExp(`^== .* = sheet ${name} =+$`, 'm'))
    const renamed = { 'shaft.yaml': job().replace('Cider press shaft', 'Shaft'), 'lathe.yaml': lathe('') }
    expect(identityIn(await kept(renamed))).toBe(name)
  })

  it.each([
    ['near: 2.25', 'near: 2.26'],
    ['width: 0.140 ±0.002', 'width: 0.140 ±0.003'],
    ['width: 0.090', 'width: 0.0901'],
    ['backlash: 0.045', 'backlash: 0.046'],
    ['measured-diameter: 1.496', 'measured-diameter: 1.4962'],
    ['tool: sq }', 'tool: sq, leave: 0.018 }'],
  ])('changes with %s', async (before, after) => {
    const files = Object.fromEntries(Object.entries(WHOLE).map(([name, text]) => [name, text.replace(before, after)]))
    expect(identityIn(await kept(files))).not.toBe(identityIn(await kept()))
  })

  it('rests on the published hash: FNV-1a with 64 bits (test values of its authors, from memory)', () => {
    expect([hashed(''), hashed('a'), hashed('foobar')]).toEqual([
      0xcbf29ce484222325n,
      0xaf63dc4c8601ec8cn,
      0x85944171f73967e8n,
    ])
  })

  it.each(names)('and the moves of %s are read back from its data as they were planned', (name) => {
    const plan = compile(name, load).plan!
    const read = movesIn(dataOf(sheetFor(plan)), plan)
    const planned = plan.features.flatMap((one) =>
      one.status === 'planned' ? [[one.name, one.operation.moves] as const] : [],
    )
    const bare = (moves: (typeof planned)[number][1]) =>
      moves.map(({ origin: _, ...move }) => JSON.parse(JSON.stringify(move)))
    if (!read.ok) throw new Error(read.why)
    expect([...read.moves].map(([of, moves]) => [of, bare(moves)])).toEqual(
      planned.map(([of, moves]) => [of, bare(moves)]),
    )
  })

  it('of many features is gone on from the same way, kept or not', async () => {
    const files = Object.fromEntries(
      [
        'examples/jobs/14-whole-screw.yaml',
        'examples/lathes/bench-lathe.yaml',
        'examples/lathes/engine-lathe.yaml',
        'examples/toolboxes/toolbox.yaml',
      ].map((path) => [path, readFileSync(join(JOBS, '..', '..', path), 'utf8')]),
    )
    const JOB = 'examples/jobs/14-whole-screw.yaml'
    const sheet = (await runIn({ files }, 'sheet', JOB, '--format', 'json')).out
    const data = JSON.parse(sheet)
    const stop = data.steps.findLast((step: { corrections?: unknown }) => step.corrections !== undefined)
    const bottom = /bottom diameter, ([\d.]+) expected/.exec(stop.say)![1]!
    const args = [
      'finish',
      JOB,
      '--feature',
      data.features[stop.feature].name,
      '--bottom-diameter',
      bottom,
      '--format',
      'json',
    ]
    const [plain, by] = [
      JSON.parse((await runIn({ files }, ...args)).out),
      JSON.parse((await runIn({ files: { ...files, 'kept.json': sheet } }, ...args, '--sheet', 'kept.json')).out),
    ]
    expect(by.steps).toEqual(plain.steps)
    expect([by.identity, plain.identity]).toEqual([data.identity, data.identity])
  })
})
