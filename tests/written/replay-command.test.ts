import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { LATHE, runIn } from '../cli/world.ts'

const JOB = `title: Press beam pin
units: inch
part: { material: mild steel, diameter: 1.5, length: 5, overhang: 4 }
lathe: bench.yaml
tools: { neck: { shape: square, width: 0.148, reach: 0.125 } }
features:
  - { kind: groove, name: Cotter groove, near: 1.125, width: 0.156 ±0.005, depth: 0.070 +0.004 -0, tool: neck }
`
const FILES = { 'pin.yaml': JOB, 'bench.yaml': LATHE }
const replay = (files: Record<string, string>, ...args: string[]) =>
  runIn({ files: { ...FILES, ...files } }, 'replay', ...args)
const table = async (): Promise<string> => (await runIn({ files: FILES }, 'sheet', 'pin.yaml', '--format', 'csv')).out

describe('the faults of a list', () => {
  // The spindle never starts, so every cut is a fault of its own.
  const spoiled = async (): Promise<string> =>
    (await table())
      .split('\n')
      .filter((row) => !/,start,/.test(row))
      .join('\n')

  it('are all told with their lines, the first marked as the first', async () => {
    const list = await spoiled()
    const { status, out } = await replay({ 'mine.csv': list }, 'pin.yaml', 'mine.csv')
    const told = out.split('\n').filter((line) => /^ {2}(first )?fault /.test(line))
    const data = JSON.parse((await replay({ 'mine.csv': list }, 'pin.yaml', 'mine.csv', '--format', 'json')).out)
    const faults = data.features[0].faults as { line: number; say: string }[]
    expect(status).toBe(1)
    expect(faults.length).toBeGreaterThan(3)
    expect(told).toHaveLength(faults.length)
    expect(told[0]).toMatch(/^ {2}first fault {2}mine\.csv:/)
    faults.forEach(({ line, say }, index) => {
      expect(told[index]).toContain(`mine.csv:${line}: `)
      expect(told[index]).toContain(say)
      if (index > 0) expect(told[index]).toMatch(/^ {2}fault {8}mine\.csv:/)
    })
    expect(out).not.toMatch(/ more {2}/)
  })

  it('are told of the shipped list that has one', async () => {
    const files = Object.fromEntries(
      [
        'jobs/01-press-screw.yaml',
        'lathes/bench-lathe.yaml',
        'toolboxes/toolbox.yaml',
        'moves/press-screw-from-habit.yaml',
      ].map((name) => [`examples/${name}`, readFileSync(`examples/${name}`, 'utf8')]),
    )
    const { out } = await replay(
      files,
      'examples/jobs/01-press-screw.yaml',
      'examples/moves/press-screw-from-habit.yaml',
    )
    expect(out.match(/^ {2}first fault /gm)).toHaveLength(1)
  })
})

describe('files in the wrong place', () => {
  it('that are swapped get a message of their own, which mends it', async () => {
    for (const [name, list] of [
      ['mine.csv', await table()],
      ['mine.yaml', 'moves:\n  - { feature: 1, action: start }\n'],
    ] as const) {
      const { status, out, err } = await replay({ [name]: list }, name, 'pin.yaml')
      expect({ status, out }).toEqual({ status: 2, out: '' })
      expect(err).toBe(
        `groovewright: job and moves are the wrong way around, the job comes first: groovewright replay pin.yaml ${name}\n`,
      )
      const remedy = /groovewright replay (\S+) (\S+)\n/.exec(err)!
      expect((await replay({ [name]: list }, remedy[1]!, remedy[2]!)).err).toBe('')
    }
  })

  it('that are swapped are told apart through a pipe too', async () => {
    const world = { files: FILES, stdin: await table() }
    expect((await runIn(world, 'replay', '-', 'pin.yaml')).err).toContain('groovewright replay pin.yaml -\n')
  })

  it('a list twice, or a job twice, is named', async () => {
    const files = { 'a.csv': await table(), 'b.csv': await table() }
    expect(await replay(files, 'a.csv', 'b.csv')).toMatchObject({
      status: 2,
      err: 'groovewright: "a.csv" is a list of moves, and a job belongs there: groovewright replay JOB b.csv\n',
    })
    expect(await replay({}, 'pin.yaml', 'pin.yaml')).toMatchObject({
      status: 2,
      err: 'groovewright: "pin.yaml" is a job, and a list of moves belongs there: groovewright sheet pin.yaml --format csv prints one to start from\n',
    })
  })

  it('a list given to sheet or check is named as what it is', async () => {
    const files = { ...FILES, 'mine.yaml': 'moves:\n  - { feature: 1, action: start }\n', 'mine.csv': await table() }
    for (const name of ['mine.yaml', 'mine.csv'])
      expect(await runIn({ files }, 'sheet', name)).toMatchObject({
        status: 2,
        err: expect.stringMatching(
          /: error: this is a list of moves, not a job\n[\s\S]*remedy: replay it on a job: groovewright replay JOB \S+\n$/,
        ),
      })
  })
})

describe('an empty list', () => {
  it.each([
    ['nothing at all', 'mine.csv', ''],
    ['a comment', 'mine.csv', '# tomorrow\n'],
    ['a heading', 'mine.csv', 'feature,action,slide,reading\n'],
    ['a heading and empty rows', 'mine.csv', 'feature,action,slide,reading\n,,,\n\n'],
    ['nothing in YAML', 'mine.yaml', ''],
    ['moves without a value', 'mine.yaml', 'moves:\n'],
    ['no entry', 'mine.yaml', 'moves: []\n'],
    ['nothing under a plain name', 'mine', ''],
  ])('says that nothing would be cut, and how to begin: %s', async (_, name, list) => {
    const { status, err } = await replay({ [name]: list }, 'pin.yaml', name)
    expect(status).toBe(2)
    expect(err.match(/: error: /g)).toHaveLength(1)
    expect(err).toContain(`${name}:1:1: error: the list has no moves: nothing would be cut\n`)
    expect(err).toMatch(/remedy: .*groovewright sheet JOB --format csv prints a list to start from\n$/)
    expect(err.includes('begin with a line of columns')).toBe(name.endsWith('.csv'))
  })
})
