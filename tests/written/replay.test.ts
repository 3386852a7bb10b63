import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'

const FILES: Record<string, string> = Object.fromEntries(
  ['jobs', 'lathes', 'toolboxes'].flatMap((folder) =>
    readdirSync(`examples/${folder}`).map((name) => [
      `examples/${folder}/${name}`,
      readFileSync(`examples/${folder}/${name}`, 'utf8'),
    ]),
  ),
)
const JOB = 'examples/jobs/01-press-screw.yaml'
const run = (...args: string[]) => runIn({ files: FILES }, ...args)
const table = async (job = JOB) => (await run('sheet', '--format', 'csv', job)).out
const replay = (list: string, ...args: string[]) =>
  runIn({ files: { ...FILES, 'mine.csv': list } }, 'replay', JOB, 'mine.csv', ...args)
/** The table with one change, and the line that it was made on. */
const edited = async (from: string, to: string) => {
  const before = await table()
  expect(before).toContain(from)
  return { list: before.replace(from, to), line: before.slice(0, before.indexOf(from)).split('\n').length }
}

test('the table of a sheet is proven as it is', async () => {
  const { status, out, err } = await replay(await table())
  expect({ status, err }).toEqual({ status: 0, err: '' })
  expect(out).toContain('Thread-relief groove: proven')
  expect(out).toMatch(/width +limits \.160 to \.170; cut \.165; holds/)
})

test('another way within the limits is proven too, though no sheet would aim there', async () => {
  const { list } = await edited('finish', 'finish')
  const { status, out } = await replay(
    list.replace('cross-feed,0.072', 'cross-feed,0.070').replaceAll(',0.017,', ',0.013,'),
  )
  expect(out).toMatch(/width .* cut \.161; holds/)
  expect(out).toMatch(/depth .* cut \.070; holds/)
  expect(status).toBe(0)
})

test('too wide is told by line and side, and cannot be saved', async () => {
  const { list, line } = await edited('feed-across,compound,0.017', 'feed-across,compound,0.034')
  const { status, out } = await replay(list)
  expect(status).toBe(1)
  expect(out).toContain('NOT PROVEN')
  expect(out).toContain(`first fault  mine.csv:${line}: feed-across compound: `)
  expect(out).toContain('the part     .012 too wide on the headstock side, cannot be saved')
})

test('too deep cannot be saved; metal left can', async () => {
  const deep = await replay((await edited('feed-in,cross-feed,0.072', 'feed-in,cross-feed,0.172')).list)
  expect(deep).toMatchObject({ status: 1, out: expect.stringContaining('.096 too deep, cannot be saved') })
  const left = await replay((await edited('feed-in,cross-feed,0.072', 'feed-in,cross-feed,0.058')).list)
  expect(left).toMatchObject({ status: 1, out: expect.stringContaining('.010 left in the depth, can be saved') })
  expect(left.out).not.toContain('cannot be saved')
})

test('backlash that was not taken up is possibly cut and not surely, and the cut that left it is named', async () => {
  const before = await table()
  const list = before
    .split('\n')
    .filter((row) => !row.includes('go-past'))
    .join('\n')
  const { status, out } = await replay(list)
  const cut = list.split('\n').findIndex((row) => row.includes('feed-in') && row.includes('finish')) + 1
  expect(status).toBe(1)
  expect(out).toContain(`first fault  mine.csv:${cut}: feed-in cross-feed: What is cut depends on the backlash.`)
  expect(out).toMatch(/depth +limits \.068 to \.076; cut \.054 to \.072; does not hold for every backlash/)
  expect(out).toContain('with some backlash .014 left in the depth, can be saved')
})

test('a standing spindle and a reading between marks are faults, however well the form comes out', async () => {
  const standing = await replay((await table()).replace(/.*,start,.*\n/, ''))
  expect(standing).toMatchObject({
    status: 1,
    out: expect.stringContaining('The tool cuts with the spindle stopped.'),
  })
  const between = await edited('feed-in,cross-feed,0.072', 'feed-in,cross-feed,0.0725')
  expect((await replay(between.list)).out).toContain(
    `mine.csv:${between.line}: feed-in cross-feed: The reading of the cross-feed lies between two marks.`,
  )
})

test('as data it says the same', async () => {
  const { list, line } = await edited('feed-across,compound,0.017', 'feed-across,compound,0.034')
  const { status, out } = await replay(list, '--format', 'json')
  const data = JSON.parse(out)
  expect(status).toBe(1)
  expect(data).toMatchObject({ format: 'groovewright.replay/1', units: 'inch', proven: false })
  expect(data.features[0]).toMatchObject({
    proven: false,
    saved: false,
    outcome: ['.012 too wide on the headstock side, cannot be saved'],
  })
  expect(data.features[0].faults[0]).toMatchObject({ kind: 'outside-form', file: 'mine.csv', line })
  expect(data.features[0].sizes[0]).toMatchObject({
    id: 'width',
    limits: [0.16, 0.17],
    surely: 0.182,
    possibly: 0.182,
    verdict: 'gone',
  })
})

test('YAML, standard input, and turns with a mark are read like the table', async () => {
  const yaml = (await table())
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => {
      const [feature, action, slide, reading, atLeast] = row.split(',')
      const said = reading === '0.072' ? ['turns: 0', 'mark: 72'] : reading ? [`reading: ${reading}`] : []
      return `  - { ${[`feature: ${feature}`, `action: ${action}`, ...(slide ? [`slide: ${slide}`] : []), ...said, ...(atLeast ? [`at-least: ${atLeast}`] : [])].join(', ')} }`
    })
  const { status, out } = await runIn({ files: FILES, stdin: `moves:\n${yaml.join('\n')}\n` }, 'replay', JOB, '-')
  expect({ status, end: out.split('\n').at(-2) }).toEqual({
    status: 0,
    end: expect.stringContaining('Proven by replay'),
  })
})

test('a feature that the list leaves out is not cut', async () => {
  const job = 'examples/jobs/14-whole-screw.yaml'
  const whole = await table(job)
  const first = whole.split('\n')[1]!.split(',')[0]!
  const list = whole
    .split('\n')
    .filter((row) => !row.startsWith(`${first},`))
    .join('\n')
  const { status, out } = await runIn({ files: { ...FILES, 'mine.csv': list } }, 'replay', job, 'mine.csv')
  expect(status).toBe(1)
  expect(out).toContain(`${first}: NOT PROVEN: the list has no moves for it: it is not cut`)
})

test('what cannot be read is status 2, with the place and a remedy', async () => {
  const { list, line } = await edited('back-out', 'bakc-out')
  const { status, out, err } = await replay(list)
  expect({ status, out }).toEqual({ status: 2, out: '' })
  expect(err).toContain(`mine.csv:${line}:`)
  expect(err).toContain('did you mean back-out')
  expect((await run('replay', JOB, 'none.csv')).status).toBe(2)
  expect((await run('replay', JOB, 'none.csv')).err).toContain('cannot read "none.csv"')
  expect((await run('replay', '-', '-')).status).toBe(2)
  expect((await run('replay', JOB)).status).toBe(2)
})

test('the list in examples/moves has the one mistake that it says, and is proven without it', async () => {
  const habit = readFileSync('examples/moves/press-screw-from-habit.yaml', 'utf8')
  const asked = (list: string) => runIn({ files: { ...FILES, 'habit.yaml': list } }, 'replay', JOB, 'habit.yaml')
  const { status, out } = await asked(habit)
  expect(status).toBe(1)
  expect(out).toContain('What is cut depends on the backlash.')
  const past = '  - { action: go-past, slide: compound, turns: -1, mark: 90 }\n'
  const mended = await asked(habit.replace(/(?=.*here is the mistake)/, past))
  expect(mended).toMatchObject({ status: 0, err: '' })
})

test('the schema of a list is the one that is shipped, and knows every key', async () => {
  const { out } = await run('schema', 'moves')
  expect(out).toBe(readFileSync('examples/schema/moves.schema.json', 'utf8'))
  const row = JSON.parse(out).properties.moves.items
  const list = readFileSync('examples/moves/press-screw-from-habit.yaml', 'utf8')
  const used = new Set([...list.matchAll(/([a-z-]+): /g)].map(([, key]) => key!))
  for (const key of ['feature', 'action', 'slide', 'turns', 'mark', 'at-least', 'note']) expect(used).toContain(key)
  expect(Object.keys(row.properties)).toEqual(
    expect.arrayContaining(['feature', 'action', 'slide', 'turns', 'mark', 'at-least', 'note']),
  )
  expect(row.properties.action.enum).toContain('feed-across')
})
