import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../cases/program.ts'
import { runIn } from '../cli/world.ts'
import { EXERCISE, FILES, filledIn, graded, handedOut, JOB, manifestOf } from '../exercise/class.ts'

const BIN = join(ROOT, 'bin/groovewright.js')

/** What a teacher found who handed out a set of thirty and graded it. */
const set = await handedOut()
const finish = (text: string) => graded(filledIn(set, (_, { key }) => (key === '72' ? text : undefined)))

describe('a roughing reading', () => {
  it.each(['0', '-54', '4', '27'])(
    'that leaves nearly all to the finish is wrong, though it proves: %s',
    async (text) => {
      const { learners } = await graded(filledIn(set, (_, { key }) => (key === '54' ? text : undefined)))
      const roughed = learners[0]!.blanks.filter(({ right }) => right === '54')
      expect(roughed.map(({ verdict }) => verdict)).not.toContain('right')
      expect(learners[0]!.score).toBeLessThan(6)
    },
  )
})

describe('a cause', () => {
  it('is named where a reading is halved on a dial that reads depth', async () => {
    const { learners } = await finish('36')
    expect(learners[0]!.blanks.find(({ verdict }) => verdict === 'wrong')!.causes).toContain('diameter-as-depth')
  })

  it('is not a mixture of units where nothing is answered but 0', async () => {
    const { learners } = await graded(filledIn(set, (_, { id }) => (id.endsWith('.shift') ? '0' : undefined)))
    const { causes } = learners[0]!.blanks.find(({ id }) => id.endsWith('.shift'))!
    expect(causes).toContain('undersize-forgotten')
    expect(causes).not.toContain('inch-for-mm')
  })
})

describe('an answer form', () => {
  it('may have a reading as the sheet prints it, with the same once more in brackets', async () => {
    expect((await finish('72 (.072)')).learners[0]!.score).toBe(6)
  })

  it('that another learner has signed is not graded', async () => {
    const named = EXERCISE.replace('sheets: 3', 'learners: [Ann, Ben]')
    const handed = await handedOut({ 'exercise.yaml': named })
    const files = filledIn(handed, () => undefined)
    const [ann, ben] = manifestOf(handed).learners.map(({ form }) => `set/${form}`)
    const swapped = { ...files, [ann!]: files[ann!]!.replace('learner: "Ann"', 'learner: "Ben"') }
    const { learners } = await graded(swapped)
    expect(ben).toContain('Ben')
    expect(learners.map(({ score, note }) => [score, note])).toEqual([
      [null, "the form is signed by another learner: it is not graded as this sheet's"],
      [6, null],
    ])
  })

  it('of the same exercise with another seed is not graded', async () => {
    const other = await handedOut({ 'exercise.yaml': EXERCISE.replace('seed: 1', 'seed: 2') })
    const files = filledIn(set, () => undefined)
    const stray = filledIn(other, () => undefined)['set/answers/02.yaml']!
    const named = (form: string, from: typeof set) =>
      form.replace('learner:', `${/^set: .*$/m.exec(from.files['set/answers/02.yaml']!)![0]}\nlearner:`)
    const graded2 = async (form: string) => (await graded({ ...files, 'set/answers/02.yaml': form })).learners[1]!
    expect((await graded2(named(stray, other))).note).toContain('the form is of another set')
    expect((await graded2(named(files['set/answers/02.yaml']!, set))).score).toBe(6)
  })

  it('of a table that has dropped the first zero of a sheet is of that sheet', async () => {
    const forms = filledIn(set, () => undefined)
    const rows = [...forms['set/answers/01.yaml']!.matchAll(/id: "(.*?)", value: "(.*?)"/g)]
    const kept = Object.fromEntries(Object.entries(set.files).filter(([name]) => !name.startsWith('set/answers/')))
    const table = `sheet,id,value\n${rows.map(([, id, value]) => `1,${id},${value}`).join('\n')}\n`
    const { learners, err } = await graded({ ...kept, 'set/answers/all.csv': table })
    expect([learners[0]!.score, err]).toEqual([6, ''])
  })

  it('is not taken for a copy because some wrong answers are right elsewhere by chance', async () => {
    const other = manifestOf(set).learners[1]!
    const { learners } = await graded(
      filledIn(set, ({ sheet }, { id }) => {
        const right = other.blanks.find((one) => one.id === id)!.key
        return sheet === '01' && /\.shift$|compound/.test(id) ? right : undefined
      }),
    )
    expect(learners[0]!.note).toBeNull()
  })

  it('that is a device is the user’s mistake, and no fault of the program', () => {
    const folder = mkdtempSync(join(tmpdir(), 'groovewright-'))
    const manifest = join(folder, 'manifest.json')
    writeFileSync(manifest, set.files['set/manifest.json']!)
    const { status, stderr } = spawnSync(process.execPath, [BIN, 'grade', manifest, '/dev/null'], { encoding: 'utf8' })
    rmSync(folder, { recursive: true })
    expect([status, stderr]).toEqual([2, 'groovewright: cannot read /dev/null: it is a device, not a file\n'])
  })
})

describe('walls that get a plunge of their own', () => {
  const job = JOB.replace('width: 0.165 ±0.005', 'width: 0.165 ±0.003').replace(
    'tool: neck }',
    'tool: neck, walls: plunged }',
  )

  it('are asked for the whole shift, where the sheet makes it, and not for what roughing leaves on them', async () => {
    const handed = await handedOut({ 'job.yaml': job })
    for (const { blanks, values } of manifestOf(handed).learners) {
      const width = Number.parseFloat(values['features.0.width']!)
      const tool = Number.parseFloat(values['tools.neck.width']!)
      const along = blanks.filter(({ asks }) => asks.includes('compound'))
      expect(along.map(({ key }) => Number(key))).toEqual([Math.round(1000 * (width - tool))])
      const shift = blanks.find(({ id }) => id.endsWith('.shift'))!
      expect(along[0]!.id.split('.')[0]).toBe(shift.id.split('.')[0])
    }
  })
})

it('a question about a correction follows from the learner’s own reading', async () => {
  const both = EXERCISE.replace('hide: [shift, readings]', 'hide: [readings, corrections]')
  const handed = await runIn({ files: { ...FILES, 'exercise.yaml': both } }, 'handout', 'exercise.yaml', '--out', 'set')
  const { learners } = await graded(
    filledIn(handed, (_, { id, key }) => {
      // Ten marks too deep, and corrected rightly from there.
      if (key === '72') return '82'
      return id.includes('.correction-') ? String(Number(key) + 10) : undefined
    }),
  )
  for (const { blanks } of learners) {
    const corrected = blanks.filter(({ id }) => id.includes('.correction-'))
    expect(corrected.map(({ verdict }) => verdict)).toEqual(['follow-on', 'follow-on'])
    expect(blanks.filter(({ verdict }) => verdict === 'wrong')).toHaveLength(1)
  }
})
