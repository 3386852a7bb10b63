import { describe, expect, it } from 'vitest'
import { readingIn } from '../../src/cli/reading.ts'
import { compile } from '../../src/compile.ts'
import { isAttempt } from '../../src/job/included.ts'
import { readSize } from '../../src/job/read-measure.ts'
import { MOST_MOVES_OF_A_JOB } from '../../src/moves/bounds.ts'
import { readSource } from '../../src/source/read-source.ts'
import { MOST_BYTES, MOST_TABLE_BYTES } from '../../src/source/text.ts'
import { parseAngle, parseAngleDimension } from '../../src/units/parse-angle.ts'
import { parseDimension } from '../../src/units/parse-dimension.ts'
import { parseLength } from '../../src/units/parse-length.ts'
import { readCsv } from '../../src/written/csv.ts'
import { readMoves } from '../../src/written/written.ts'
import { good, LATHE } from '../cli/world.ts'

const COUNT = 250_000

/** Stretches of one sort, which a pattern may try to divide in every way that there is. */
const SORTS: readonly string[] = [
  ...[' ', '\t', '1', 'a', '.', '-', '+', '/', '±', '"', "'", '°', ',', '|', '{', '[', '#', '&a ', '!t ', '- ', '? '],
  ...[
    '1 ',
    '1/',
    '1-',
    '-1',
    '+-',
    '1/1-',
    ' to',
    ' in',
    '1 1/2 ',
    "1° 1' ",
    'a: ',
    '"" ',
    '[],',
    'a: ]\n',
    '\n',
    'ü',
    '\u202ea',
  ],
]

const long = (sort: string, head = '', tail = ''): string =>
  `${head}${sort.repeat(Math.ceil(COUNT / sort.length)).slice(0, COUNT)}${tail}`

/** What the process itself has worked, however busy the machine is. */
const secondsOf = (work: () => void): number => {
  const before = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1e6
}

const DIAL = {
  kind: 'dial',
  units: 'inch',
  graduation: 25_400_000,
  perTurn: 2_540_000_000,
  reads: 'depth',
  backlash: 0,
  readTo: 1,
} as const

describe('a quarter of a million characters of one sort', () => {
  it.each([
    ['a length', (text: string) => parseLength(text, 'inch')],
    ['a dimension', (text: string) => parseDimension(text, 'mm')],
    ['an angle', (text: string) => parseAngle(text)],
    ['an angle with a tolerance', (text: string) => parseAngleDimension(text)],
    ['a size of the command line', (text: string) => readSize('--width', text, 'inch')],
    ['a reading', (text: string) => readingIn(text, DIAL, 5)],
  ])('%s: refused in no time', (_, parse) => {
    for (const sort of SORTS)
      for (const text of [long(sort), long(sort, '0.1 ', ' max')]) {
        let ok = true
        expect(secondsOf(() => (ok = parse(text).ok))).toBeLessThan(0.5)
        // Blanks alone count as one.
        if (sort.trim() !== '') expect(ok).toBe(false)
      }
  })

  it.each(['lathe', 'toolbox', 'job'] as const)('an include: whether it is a %s is seen in no time', (as) => {
    const signs = [...SORTS, '{ ', ', ', 'shape ', 'compound  ', '\n ', `units:${' '.repeat(999)}`]
    for (const text of signs.flatMap((sort) => [long(sort), long(sort, '{', 'x')])) {
      const source = readSource('', 'it.yaml')
      expect(secondsOf(() => isAttempt({ ...source, text }, as))).toBeLessThan(0.5)
    }
  })

  it('a value of a job', () => {
    for (const sort of [' ', '1 1/2 ']) {
      const bytes = good().replace('width: 0.156', `corner-radius: "${long(sort, 'x', ' max')}", width: 0.156`)
      const seconds = secondsOf(() => {
        const read = (path: string) => ({ ok: true, file: path, bytes: path === 'job.yaml' ? bytes : LATHE }) as const
        expect(compile('job.yaml', read).plan).toBeNull()
      })
      expect(seconds).toBeLessThan(2)
    }
  })

  it('a file: refused or read within two seconds and three hundred megabytes', () => {
    for (const text of [',', '[],', '!t ', '"" ', 'a: ]\n', '? ', '\u202ea'].map((sort) => long(sort, 'a: ['))) {
      const before = process.memoryUsage().rss
      expect([text.slice(0, 9), secondsOf(() => readSource(text, 'job.yaml')) < 2]).toEqual([text.slice(0, 9), true])
      expect(process.memoryUsage().rss - before).toBeLessThan(300_000_000)
    }
  })

  it('a table of moves', () => {
    for (const sort of ['"', ',', '\n', 'a\n', '"a"\n', 'feed-in,x\n']) {
      const text = long(sort, 'feature,action\n')
      expect([sort, secondsOf(() => readCsv(text, 'moves.csv')) < 2]).toEqual([sort, true])
    }
  })
})

describe('limits of files', () => {
  it('more words and signs than any job has are refused with one sentence', () => {
    const { diagnostics, data } = readSource(`a: [${','.repeat(MOST_BYTES - 10)}]`, 'job.yaml')
    expect(data).toBeUndefined()
    expect(diagnostics).toMatchObject([{ code: 'source-too-large' }])
  })

  it('the longest sheet that is printed can be replayed as a table: as many moves as a job may have, with long names', () => {
    const row = `${'Seal groove of the lower bearing'},feed-in,cross-feed,,0,54,,,.054\n`
    expect(row.length * MOST_MOVES_OF_A_JOB).toBeLessThan(MOST_TABLE_BYTES)
    const text = `feature,action,slide,reading,turns,mark,at-least,place,why\n${row.repeat(MOST_MOVES_OF_A_JOB)}`
    expect(readCsv(text, 'moves.csv').diagnostics).toEqual([])
    expect(readCsv(`${text}${row}`, 'moves.csv').diagnostics).toMatchObject([{ code: 'csv-many' }])
  })

  it('of thousands of mistakes in a list the first are told', () => {
    const shop = {
      lathe: compile('job.yaml', (path) => ({ ok: true, file: path, bytes: path === 'job.yaml' ? good() : LATHE }))
        .plan!.lathe,
      features: ['Relief'],
    }
    const { operations, diagnostics } = readMoves(
      `feature,action\n${'Reliff,feedin\n'.repeat(20_000)}`,
      'moves.csv',
      shop,
    )
    expect(operations).toBeNull()
    expect(diagnostics.length).toBeGreaterThan(20)
    expect(diagnostics.length).toBeLessThan(300)
  })
})
