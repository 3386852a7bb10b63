import { describe, expect, it } from 'vitest'
import { jsonSchema, type SchemaName } from '../../src/job/json-schema.ts'
import { readJob } from '../../src/job/read-job.ts'
import { runIn } from '../cli/world.ts'
import { type Node, recognizable, type Site, sitesOf } from './sites.ts'

const NAMES: readonly SchemaName[] = ['job', 'lathe', 'toolbox']

/** What is said of the file, each problem at the place where it stands. */
const problemsOf = (name: SchemaName, text: string) => {
  const job = name === 'job' ? text : JSON.stringify({ [name === 'lathe' ? 'lathe' : 'tools']: 'included.yaml' })
  const read = readJob('job.yaml', (path) => ({ ok: true, file: path, bytes: path === 'job.yaml' ? job : text }))
  expect(read.job).toBeNull()
  return read.diagnostics.map(({ code, message, hint, origin }) => ({ code, message, hint, key: origin.path.at(-1) }))
}

/** What is said of the key alone; rules on which keys go together may have more to say of it. */
const EMPTY = ['empty', 'unknown-word']

const left = (name: SchemaName, site: Site, key: string, value: unknown): string =>
  JSON.stringify(recognizable(name, site.wrap({ ...site.constants, [key]: value }), key))

describe.each(NAMES)('a key of a %s that is left empty', (name) => {
  const sites = sitesOf(jsonSchema(name) as Node).filter(({ open }) => !open)
  const keys = sites.flatMap((site) =>
    Object.keys(site.properties).map((key) => [`${site.where} ${key}`, site, key] as const),
  )

  it('is looked for at every key', () =>
    expect(keys.length).toBeGreaterThan({ job: 200, lathe: 30, toolbox: 25 }[name]))

  it.each(keys)('is an error with its place and remedy: %s', (_, site, key) => {
    const said = problemsOf(name, left(name, site, key, null)).filter(
      (problem) => problem.key === key && EMPTY.includes(problem.code),
    )
    expect(said).toEqual([
      expect.objectContaining({ message: `${key} has no value`, hint: expect.stringMatching(/^give ./) }),
    ])
  })

  it.each(keys)('is an error with nothing between its quotes: %s', (_, site, key) => {
    const said = problemsOf(name, left(name, site, key, ' ')).filter(
      (problem) => problem.key === key && EMPTY.includes(problem.code),
    )
    expect(said).toEqual([
      expect.objectContaining({ message: `${key} is empty`, hint: expect.stringMatching(/^give ./) }),
    ])
  })
})

/** Where a whole list or mapping stands, nothing below it can be read; an empty list is not a list of anything. */
describe('a list or a mapping left empty', () => {
  const sites = sitesOf(jsonSchema('job') as Node)
  const lists = sites.flatMap((site) =>
    Object.entries(site.properties).flatMap(([key, { items }]) =>
      items ? [[`${site.where} ${key}`, site, key] as const] : [],
    ),
  )

  it('is looked for at every list', () =>
    expect(lists.map(([, , key]) => key)).toEqual(expect.arrayContaining(['features', 'steps', 'spindle-speeds'])))

  it.each(lists)('is an error where the list has no entry: %s', (_, site, key) => {
    const said = problemsOf('job', left('job', site, key, [])).filter((problem) => problem.key === key)
    expect(said).toEqual([
      expect.objectContaining({ message: `${key} is an empty list`, hint: 'give at least one entry' }),
    ])
  })

  it.each(lists)('is an error where an entry of the list is empty: %s', (_, site, key) => {
    const said = problemsOf('job', left('job', site, key, [null])).filter(({ code }) => code === 'empty')
    expect(said).toEqual([expect.objectContaining({ message: `entry 1 of ${key} has no value` })])
  })

  it('is an error where a tool has nothing but its name', () => {
    expect(problemsOf('toolbox', 'units: inch\nparting:\n')).toContainEqual(
      expect.objectContaining({ message: 'parting has no value', key: 'parting' }),
    )
  })
})

describe('the program', () => {
  const LATHE = `{ name: Barn lathe, cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.005 }, compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.005 }, spindle-speeds: [60, 95, 150] }`
  const job = (kind: string, shape: string): string => `title: Press beam pin
units: inch
part: { material: mild steel, diameter: 1.25, length: 4 }
lathe: ${LATHE}
tools: { sheave: { shape: ${shape}, angle: 38, nose: 0.1, reach: 0.5 } }
features:
  - { kind: groove, name: Cotter groove, width: 0.125 ±0.01, depth: 0.05 ±0.01, near: 0.5 }
  - { kind: ${kind}, name: Cord groove, tool: sheave, angle: 38, root: 0.1, depth: 0.1, center: 1.5 }
`

  it('cuts both features where nothing is empty', async () => {
    const { status, out } = await runIn({ files: { 'pin.yaml': job('v-groove', 'vee') } }, 'check', 'pin.yaml')
    expect([status, out]).toEqual([0, 'pin.yaml: good, 2 features\n1 job: 1 good\n'])
  })

  it('does not lose a feature whose kind is empty', async () => {
    const { status, err } = await runIn({ files: { 'pin.yaml': job('', 'vee') } }, 'sheet', 'pin.yaml')
    expect(status).toBe(2)
    expect(err).toContain('pin.yaml:8:7: error: kind has no value')
    expect(err).toContain('remedy: give groove, radius or v-groove')
  })

  it('does not lose a tool whose shape is empty', async () => {
    const { status, err } = await runIn({ files: { 'pin.yaml': job('v-groove', 'null') } }, 'sheet', 'pin.yaml')
    expect(status).toBe(2)
    expect(err).toContain('shape has no value')
    expect(err).toContain('remedy: give square, vee, round or corner')
  })
})
