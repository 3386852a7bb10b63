import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { jsonSchema, type SchemaName } from '../../src/job/json-schema.ts'
import { readJob } from '../../src/job/read-job.ts'
import { program } from '../cases/program.ts'
import { type Node, recognizable, sitesOf } from './sites.ts'

const NAMES: readonly SchemaName[] = ['job', 'lathe', 'toolbox']
const FOLDER = join(import.meta.dirname, '..', '..', 'examples', 'schema')

describe.each(NAMES)('the schema of a %s', (name) => {
  it('stands in the examples as the code prints it', () => {
    const file = join(FOLDER, `${name}.schema.json`)
    const printed = `${JSON.stringify(jsonSchema(name), null, 2)}\n`
    if (process.env.GROOVEWRIGHT_ACCEPT === '1') writeFileSync(file, printed)
    expect(existsSync(file)).toBe(true)
    expect(readFileSync(file, 'utf8')).toBe(printed)
  })

  it('describes every key', () => {
    const sites = sitesOf(jsonSchema(name) as Node)
    const silent = sites.flatMap((site) =>
      Object.entries(site.properties).flatMap(([key, node]) =>
        node.description?.endsWith('.') ? [] : [`${site.where} ${key}`],
      ),
    )
    expect(silent).toEqual([])
    expect(sites.length).toBeGreaterThan(name === 'job' ? 20 : 4)
  })
})

it.each(['sheet', 'moves', 'exercise', 'answers', 'manifest', 'grades'])(
  'the schema of %s stands in the examples',
  async (name) => {
    const file = join(FOLDER, `${name}.schema.json`)
    const { stdout } = await program('schema', name)
    if (process.env.GROOVEWRIGHT_ACCEPT === '1') writeFileSync(file, stdout)
    expect(readFileSync(file, 'utf8')).toBe(stdout)
  },
)

const refusedKeys = (name: SchemaName, file: unknown): { key: string; hint: string | undefined }[] => {
  const text = JSON.stringify(file)
  const job = name === 'job' ? text : JSON.stringify({ [name === 'lathe' ? 'lathe' : 'tools']: 'included.yaml' })
  const { diagnostics } = readJob('job.yaml', (path) => ({
    ok: true,
    file: path,
    bytes: path === 'job.yaml' ? job : text,
  }))
  return diagnostics
    .filter((problem) => problem.code === 'unknown-key')
    .map((problem) => ({ key: String(problem.origin.path.at(-1)), hint: problem.hint }))
}

const swapped = (key: string): string => `${key.slice(0, -2)}${key.at(-1)}${key.at(-2)}`

describe.each(NAMES)('the reader of a %s and its schema', (name) => {
  const sites = sitesOf(jsonSchema(name) as Node)
  const vocabulary = [
    ...new Set([
      ...sitesOf(jsonSchema('job') as Node).flatMap((site) => Object.keys(site.properties)),
      'strange-thing',
    ]),
  ]

  it.each(sites.map((site) => [site.where, site] as const))('know the same keys: %s', (_, site) => {
    if (site.open) return expect(Object.keys(site.properties)).toEqual(['units'])
    const everything = Object.fromEntries(vocabulary.map((key) => [key, 1]))
    const refused = refusedKeys(name, site.wrap({ ...everything, ...site.constants })).map(({ key }) => key)
    expect(refused.sort()).toEqual(vocabulary.filter((key) => !(key in site.properties)).sort())
  })

  it.each(sites.map((site) => [site.where, site] as const))('see a misspelling of each key: %s', (_, site) => {
    for (const key of Object.keys(site.properties)) {
      const wrong = swapped(key)
      if (wrong === key || wrong in site.properties) continue
      const { [key]: value = 1, ...others } = site.constants
      const refused = refusedKeys(name, recognizable(name, site.wrap({ ...others, [wrong]: value }), key))
      expect(refused).toContainEqual({ key: wrong, hint: `did you mean "${key}"?` })
    }
  })
})
