import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { jsonSchema, type SchemaName } from '../../src/job/json-schema.ts'
import { readJob } from '../../src/job/read-job.ts'

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

/** As much of JSON Schema as ours have. */
type Node = {
  readonly type?: string
  readonly description?: string
  readonly const?: unknown
  readonly properties?: Readonly<Record<string, Node>>
  readonly additionalProperties?: Node | false
  readonly items?: Node
  readonly oneOf?: readonly Node[]
  readonly anyOf?: readonly Node[]
}

/** A mapping somewhere in a file: the keys it may have, and a file with a given mapping at that place. */
type Site = {
  readonly where: string
  readonly properties: Readonly<Record<string, Node>>
  /** The words that choose this option: kind, shape. */
  readonly constants: Readonly<Record<string, unknown>>
  readonly open: boolean
  readonly wrap: (mapping: object) => unknown
}

const sitesOf = (node: Node, where = '', wrap: Site['wrap'] = (mapping) => mapping): Site[] => {
  const { properties = {}, additionalProperties: others, items, oneOf = [], anyOf = [] } = node
  const constants = Object.fromEntries(
    Object.entries(properties).flatMap(([key, { const: value }]) => (value === undefined ? [] : [[key, value]])),
  )
  const kind = Object.values(constants).join(' ')
  const under = (key: string, child: Node): Site[] =>
    sitesOf(child, `${where}/${kind}${kind ? '.' : ''}${key}`, (mapping) => wrap({ ...constants, [key]: mapping }))
  return [
    ...(node.properties ? [{ where: `${where} ${kind}`, properties, constants, open: !!others, wrap }] : []),
    ...Object.entries(properties).flatMap(([key, child]) => under(key, child)),
    ...(others ? under('one', others) : []),
    ...(items ? sitesOf(items, `${where}[]`, (mapping) => wrap([mapping])) : []),
    ...[...oneOf, ...anyOf].flatMap((option) => sitesOf(option, where, wrap)),
  ]
}

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
      const refused = refusedKeys(name, site.wrap({ ...others, [wrong]: value }))
      expect(refused).toContainEqual({ key: wrong, hint: `did you mean "${key}"?` })
    }
  })
})
