import { describe, expect, it } from 'vitest'
import { INCH, MM } from '../../src/units/length.ts'
import { readGood } from '../job/reading.ts'
import { good, runIn } from './world.ts'

/** What somebody found out at the lathe, by the name of the blank. */
const FOUND = {
  inch: {
    A0: 'Lathe by the cider press',
    ...{ A1x: '0.001', A2x: '0.200', C1x: '0.014', B1: 'diameter' },
    ...{ A1c: '0.002', A2c: '0.100', C1c: '0.010', D1: 'square', D2: '2 3/4' },
    ...{ A1k: '0.010', A2k: '0.800', C1k: '0.030' },
    E1: '45, 75, 125, 210, 350, 600',
    ...{ F1: '0.0005', F2: '0.00025', F3x: '1', F3c: '1/2' },
  },
  mm: {
    A0: 'Lathe by the cider press',
    ...{ A1x: '0.02', A2x: '4', C1x: '0.16', B1: 'depth' },
    ...{ A1c: '0.05', A2c: '3', C1c: '0.15', D1: 'parallel', D2: '60' },
    ...{ A1k: '0.1', A2k: '18', C1k: '0.5' },
    E1: '60, 95, 150',
    ...{ F1: '0.01', F2: '0.005', F3x: '1/2', F3c: '1' },
  },
} as const
const BLANK = /\b([A-F]\d[xck]?)_+/g

/** The page and the file at its end. */
const survey = async (units: 'inch' | 'mm') => {
  const { status, out, err } = await runIn({}, 'survey', '--units', units)
  expect({ status, err }).toEqual({ status: 0, err: '' })
  const at = out.indexOf('\nname: ') + 1
  return { out, page: out.slice(0, at), file: out.slice(at) }
}
const blanksIn = (text: string): string[] => [...text.matchAll(BLANK)].map(([, name]) => name!).sort()

describe.each(['inch', 'mm'] as const)('the survey in %s', (units) => {
  it('is one page of 80 plain columns', async () => {
    const lines = (await survey(units)).out.slice(0, -1).split('\n')
    expect(lines.length).toBeLessThanOrEqual(66)
    for (const line of lines) {
      expect(line.length, line).toBeLessThanOrEqual(80)
      expect(line).toMatch(/^[\x20-\x7e]*$/)
      expect(line).toBe(line.trimEnd())
    }
  })

  it('asks for each blank of the file once, and for no other', async () => {
    const { page, file } = await survey(units)
    expect(blanksIn(page)).toEqual(blanksIn(file))
    expect(new Set(blanksIn(page)).size).toBe(blanksIn(page).length)
    expect(blanksIn(file)).toEqual(Object.keys(FOUND[units]).sort())
  })

  it('becomes, filled in, a lathe that a job is planned on', async () => {
    const found: Readonly<Record<string, string>> = FOUND[units]
    const lathe = (await survey(units)).file.replace(BLANK, (_, name: string) => found[name] ?? 'not asked')
    const { status, out, err } = await runIn(
      { files: { 'job.yaml': good('lathe.yaml'), 'lathe.yaml': lathe } },
      ...['sheet', '--format', 'json', 'job.yaml'],
    )
    expect({ status, err }).toEqual({ status: 0, err: '' })
    const read = JSON.parse(out).lathe
    const dial = (slide: string) => ({
      units,
      graduation: Number(found[`A1${slide}`]),
      perTurn: Number(found[`A2${slide}`]),
      backlash: Number(found[`C1${slide}`]),
    })
    expect(read).toMatchObject({
      name: found.A0,
      crossFeed: { ...dial('x'), reads: found.B1 },
      compound: { ...dial('c'), scaleZero: found.D1 },
      carriage: dial('k'),
      spindleSpeeds: found.E1!.split(', ').map(Number),
    })
    expect([read.crossFeed.readTo, read.compound.readTo]).toEqual(units === 'inch' ? [1, 0.5] : [0.5, 1])
    const { accuracy } = readGood({ 'job.yaml': good('lathe.yaml'), 'lathe.yaml': lathe }).lathe
    expect([accuracy.touchOff, accuracy.runout]).toEqual(
      [found.F1, found.F2].map((value) => Math.round(Number(value) * (units === 'inch' ? INCH : MM))),
    )
    expect(read.compound.travel).toBeCloseTo(units === 'inch' ? 2.75 : 60 / 25.4, 9)
  })

  it('shows how an indicator on the carriage is written, as a lathe that feeds along by it', async () => {
    const found: Readonly<Record<string, string>> = FOUND[units]
    const { page, file } = await survey(units)
    const [shown] = /carriage: \{ indicator: .*\}/.exec(page) ?? ['']
    const lathe = file.replace(BLANK, (_, name: string) => found[name] ?? 'not asked').replace(/^carriage: .*$/m, shown)
    const job = good('lathe.yaml').replace('features:', 'cutting: { side-feed: carriage }\nfeatures:')
    const { status, out, err } = await runIn(
      { files: { 'job.yaml': job, 'lathe.yaml': lathe } },
      ...['sheet', '--format', 'json', 'job.yaml'],
    )
    expect({ status, err }).toEqual({ status: 0, err: '' })
    const { carriage } = JSON.parse(out).lathe
    expect([carriage.units, carriage.graduation, carriage.range, carriage.indicator]).toEqual(
      units === 'inch' ? ['inch', 0.001, 1, true] : ['mm', 0.01, 25, true],
    )
  })
})

describe('the command', () => {
  it('is in inches where nothing else is said, goes to a file, and knows two units', async () => {
    const { out } = await survey('inch')
    expect(await runIn({}, 'survey')).toMatchObject({ status: 0, out, err: '' })
    expect((await runIn({}, 'survey', '-o', 'page.txt')).files).toEqual({ 'page.txt': out })
    const wrong = await runIn({}, 'survey', '--units', 'cubit')
    expect({ status: wrong.status, out: wrong.out }).toEqual({ status: 2, out: '' })
    expect(wrong.err).toContain('inch, mm')
  })
})
