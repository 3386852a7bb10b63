import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { jsonSchema, type SchemaName } from '../../src/job/json-schema.ts'
import { readJob } from '../../src/job/read-job.ts'
import { type Node, recognizable, type Site, sitesOf } from '../schema/sites.ts'
import { LATHE, runIn } from './world.ts'

const NAMES: readonly SchemaName[] = ['job', 'lathe', 'toolbox']

type Block = { readonly paths: string[]; readonly says: string; readonly rows: Record<string, string> }

/** What stands on the terminal, taken apart again. */
const blocksOf = (out: string): Block[] =>
  out
    .trimEnd()
    .split('\n\n')
    .map((block) => {
      const paths = [...block.matchAll(/^\S.*/gm)].join(' ').split(', ')
      const rows = [...block.matchAll(/^ {4}(only in|one of|default|example) +(.*(?:\n {13}.*)*)/gm)]
      const says = [...block.matchAll(/^ {4}(?! )(?!(?:only in|one of|default|example) )(.*)/gm)]
      return {
        paths,
        says: says.map(([, text]) => text).join(' '),
        rows: Object.fromEntries(rows.map(([, label, text]) => [label!, text!.replace(/\s+/g, ' ')])),
      }
    })

const printed = async (name: SchemaName): Promise<Block[]> => blocksOf((await runIn({}, 'keys', name)).out)

/** The path of a mapping of the JSON Schema in the words of the command: features.cutting, tools.<name>. */
const pathOf = (site: Site): string[] =>
  site.where
    .slice(0, -kindOf(site).length - 1)
    .split('/')
    .map((part) => part.replace(/^.*\./, '').replace('[]', '').replace(/^one$/, '<name>'))
    .filter((part) => part !== '')

const kindOf = ({ constants }: Site): string => Object.values(constants).join(' ')

const inSchema = (name: SchemaName): string[] => [
  ...new Set(
    sitesOf(jsonSchema(name) as Node).flatMap((site) => [
      ...Object.keys(site.properties).map((key) => [...pathOf(site), key].join('.')),
      ...(site.open ? [[...pathOf(site), '<name>'].join('.')] : []),
    ]),
  ),
]

describe.each(NAMES)('keys %s', (name) => {
  it('prints every key of the JSON Schema, and no other, in 80 columns', async () => {
    const { status, out, err } = await runIn({}, 'keys', name)
    expect({ status, err }).toEqual({ status: 0, err: '' })
    expect([...new Set(blocksOf(out).flatMap(({ paths }) => paths))].sort()).toEqual(inSchema(name).sort())
    expect(out.split('\n').filter((line) => [...line].length > 80)).toEqual([])
  })

  it('tells of every key what it means, what holds without it, and an example', async () => {
    for (const { paths, says, rows } of await printed(name))
      expect({ paths, says, rows }).toEqual({
        paths,
        says: expect.stringMatching(/^[A-Z1].*\.$/),
        rows: expect.objectContaining({ default: expect.stringMatching(/./), example: expect.stringMatching(/: ./) }),
      })
  })

  it('says what must be given exactly where the JSON Schema requires it', async () => {
    const must = (await printed(name)).filter(({ rows }) => rows.default === 'none: it must be given')
    const required = sitesOf(jsonSchema(name) as Node).flatMap((site) =>
      site.required.map((key) => [...pathOf(site), key].join('.')),
    )
    expect([...new Set(must.flatMap(({ paths }) => paths))].sort()).toEqual([...new Set(required)].sort())
  })

  it('gives examples that are read without a word against them', async () => {
    for (const { paths, rows } of await printed(name)) {
      const example = parse(rows.example!)
      const key = Object.keys(example)[0]!
      for (const site of sitesOf(jsonSchema(name) as Node).filter((one) => stands(one, key, paths, rows['only in'])))
        expect([site.where, rows.example, problemsWith(name, site, key, example[key])]).toEqual([
          site.where,
          rows.example,
          [],
        ])
    }
  })
})

const stands = (site: Site, key: string, paths: readonly string[], only: string | undefined): boolean =>
  paths.includes([...pathOf(site), key].join('.')) && (only?.split(', ').includes(kindOf(site)) ?? true)

/** What the reader says of the key in a file that holds hardly anything else. */
const problemsWith = (name: SchemaName, site: Site, key: string, value: unknown): string[] => {
  const file = JSON.stringify(recognizable(name, site.wrap({ ...site.constants, [key]: value }), key))
  const job = name === 'job' ? file : JSON.stringify({ [name === 'lathe' ? 'lathe' : 'tools']: 'it.yaml' })
  const files: Record<string, string> = { 'job.yaml': job, 'it.yaml': file, 'bench-lathe.yaml': LATHE }
  const { diagnostics } = readJob('job.yaml', (path) => ({ ok: true, file: path, bytes: files[path] ?? '{}' }))
  return diagnostics
    .filter(({ origin, code }) => origin.path.includes(key) && !TOGETHER.includes(code))
    .map(({ message }) => message)
}

/** What is said of keys that belong together, whatever stands behind them. */
const TOGETHER = ['missing-key', 'useless-key', 'impossible', 'unknown-step', 'unknown-tool']

describe('keys of a name', () => {
  it.each([
    [['job', 'title'], ['title']],
    [
      ['lathe', 'backlash'],
      ['cross-feed.backlash', 'compound.backlash', 'carriage.backlash'],
    ],
    [['job', 'features.width'], Array(3).fill('features.width')],
    [
      ['job', 'part.material'],
      ['part.material', 'part.material.name', 'part.material.cutting-speed'],
    ],
    [['toolbox', 'edge-width'], ['<name>.edge-width']],
    [['toolbox', '<name>.edge-width'], ['<name>.edge-width']],
    [['job', 'tools.edge-width'], ['tools.<name>.edge-width']],
  ])('are printed alone: %j', async (args, paths) => {
    const { status, out } = await runIn({}, 'keys', ...args)
    expect([status, blocksOf(out).flatMap((block) => block.paths)]).toEqual([0, paths])
  })

  it('are followed by what stands below them', async () => {
    const paths = blocksOf((await runIn({}, 'keys', 'job', 'accuracy')).out).flatMap((block) => block.paths)
    expect(paths[0]).toBe('lathe.accuracy')
    expect(paths).toContain('lathe.accuracy.touch-off')
    expect(paths.filter((path) => !path.startsWith('lathe.accuracy'))).toEqual([])
  })

  it.each([
    [['job', 'widht'], 'a job has no key "widht": did you mean "width"?'],
    [['job', 'features.widht'], 'a job has no key "features.widht": did you mean "features.width"?'],
    [['job', 'tools.reech'], 'a job has no key "tools.reech": did you mean "tools.reach"?'],
    [['lathe', 'Backlash'], 'a lathe has no key "Backlash": did you mean "backlash"?'],
    [['lathe', 'features.width'], 'a lathe has no key "features.width": see groovewright keys job features.width'],
    [['toolbox', 'oil.edge-width'], 'a toolbox has no key "oil.edge-width": did you mean "edge-width"?'],
    [['toolbox', 'neck'], 'a toolbox has no key "neck": groovewright keys toolbox lists them all'],
    [['job', ''], 'a job has no key "": groovewright keys job lists them all'],
    [['job', 'tools.'], 'a job has no key "tools.": did you mean "tools"?'],
  ])('are a wrong command where there are none: %j', async (args, said) => {
    const { status, out, err } = await runIn({}, 'keys', ...args)
    expect({ status, out, err }).toEqual({ status: 2, out: '', err: `groovewright: ${said}\n` })
  })

  it('need a sort of file that there is', async () => {
    for (const args of [[], ['bicycle'], ['job', 'title', 'units']]) {
      const { status, out } = await runIn({}, 'keys', ...args)
      expect({ status, out }).toEqual({ status: 2, out: '' })
    }
  })
})
