import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CODES, type Code } from '../../src/diagnostics/codes.ts'
import { good, LATHE, mayNotHold, misspelt, refused, runIn } from '../cli/world.ts'
import { againstJunit, againstSarif } from '../open-schemas/valid.ts'
import { HOSTILE } from './drawn.ts'
import { everyIn, parse } from './xml.ts'

/** Everything below a folder of the disk, for the world of a test. */
const filesIn = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [path.replaceAll('\\', '/'), readFileSync(path, 'utf8')]),
  )

const examples = filesIn('examples')
const only = (...texts: string[]): Record<string, string> =>
  Object.fromEntries([['shop/bench.yaml', LATHE], ...texts.map((text, i) => [`shop/${i}.yaml`, text])])

/** Signs that mean something to a disk, a URI, an element, a terminal or an encoder. */
const NAMES = [
  ...HOSTILE,
  'a b#c?d%2e&e',
  'c:\\drawer\\job',
  'http:village.example',
  '..%2f..%2fetc',
  ' ',
  '\u0000\u0007\u001b[31m\u009b2J\u0085',
  'line\nfeed\r\ttab',
  '\u2028\u2029\ufeff\ufffe\uffff',
  'half \ud800 of a pair',
  'other half \udc00',
  'Préß ½ 😀 ☃',
  '[x](y)',
]
const hostile = Object.fromEntries([
  ['shop/bench.yaml', LATHE],
  ...NAMES.flatMap((name, i) => [
    [`shop/${name}.yaml`, [good(), mayNotHold(), refused(), misspelt(), 'a: ['][i % 5]!],
    [`shop/of a name/${name}/${name}.yml`, refused()],
    [`shop/no job/${name}.yaml`, 'a: 1\n'],
  ]),
])

/** By a name: the files, what is checked, and the status. */
const FOLDERS: readonly (readonly [string, Record<string, string>, readonly string[], number])[] = [
  ['a folder of good jobs', only(good(), good()), ['shop'], 0],
  ['the examples, all of whose jobs are planned', examples, ['examples/jobs'], 0],
  ['the examples that are broken', examples, ['examples/broken'], 2],
  ['jobs, and files beside them that are none', only(good(), mayNotHold(), 'a: 1\n'), ['shop'], 1],
  ['a folder with no job in it', only(), ['shop'], 2],
  ['files of hostile names', hostile, ['shop'], 2],
  [
    'a path that is absolute, and one with two slashes',
    { '/a.yaml': good(), '/bench.yaml': LATHE, '//b/c.yaml': refused(), '/b/bench.yaml': LATHE },
    ['/a.yaml', '//b/c.yaml'],
    1,
  ],
]

type Result = { locations: [{ physicalLocation: { artifactLocation: { uri: string } } }] }

describe.each(FOLDERS)('%s', (_, files, paths, status) => {
  const checked = async (format: string): Promise<string> => {
    const outcome = await runIn({ files }, 'check', ...paths, '--format', format)
    expect(outcome.err).not.toContain('this is a bug')
    expect(outcome.status).toBe(status)
    return outcome.out
  }

  it('as SARIF is as its schema says', async () => {
    expect(againstSarif(await checked('sarif'))).toEqual([])
  })

  it('as JUnit is as its schema says, and read the same by both readers of XML', async () => {
    const text = await checked('junit')
    expect(againstJunit(text)).toEqual([])
    expect(parse(text).name).toBe('testsuites')
  })
})

describe('a sheet that is not as it was kept', () => {
  const compared = async (format: string): Promise<string> => {
    const kept = (await runIn({ files: only(good()) }, 'sheet', 'shop/0.yaml', '--format', 'json')).out
    const sheets = { 'kept/0.json': kept, 'kept/1.json': kept.replaceAll('0.156', '0.157'), 'kept/2.json': '{' }
    const files = { ...only(good(), good(), good(), good()), ...sheets }
    return (await runIn({ files }, 'check', 'shop', '--against', 'kept', '--format', format)).out
  }

  it('is a result in SARIF, with a code of its own for each way', async () => {
    const text = await compared('sarif')
    expect(againstSarif(text)).toEqual([])
    const [{ tool, results }] = JSON.parse(text).runs
    expect(
      (results as (Result & { ruleId: string; level: string })[]).map(({ ruleId, level, locations: [place] }) => [
        ruleId,
        level,
        place.physicalLocation.artifactLocation.uri,
      ]),
    ).toEqual([
      ['kept-different', 'warning', 'shop/1.yaml'],
      ['kept-unreadable', 'error', 'shop/2.yaml'],
      ['kept-missing', 'warning', 'shop/3.yaml'],
    ])
    for (const { id, shortDescription } of tool.driver.rules) expect(shortDescription.text).toBe(CODES[id as Code])
  })

  it('is a failure in JUnit, of the same code', async () => {
    const text = await compared('junit')
    expect(againstJunit(text)).toEqual([])
    const failures = everyIn(parse(text)).filter(({ name }) => name === 'failure')
    expect(failures.map(({ attributes }) => attributes.type)).toEqual([
      ...['kept-different', 'kept-unreadable', 'kept-missing'],
    ])
  })
})

describe('a place in SARIF', () => {
  it('leads back to the file, and to no other machine', async () => {
    const { out } = await runIn({ files: hostile }, 'check', 'shop', '--format', 'sarif')
    const uris = new Set(
      (JSON.parse(out).runs[0].results as Result[]).map(
        ({ locations: [{ physicalLocation }] }) => physicalLocation.artifactLocation.uri,
      ),
    )
    // Of each name one job that has a fault and one below a folder of that name; a name that begins with a point is not read.
    expect(uris.size).toBeGreaterThan(1.5 * NAMES.length)
    const wellFormed = new Set(
      Object.keys(hostile).map((name) => name.replace(/\p{Cs}/gu, '\ufffd').replaceAll('\\', '/')),
    )
    for (const uri of uris) {
      expect(uri).toMatch(/^shop\//)
      expect(wellFormed).toContain(decodeURIComponent(uri))
    }
  })

  it.each([
    ['//b/c.yaml', '/b/c.yaml'],
    ['/b/c.yaml', '/b/c.yaml'],
    ['b//c.yaml', 'b//c.yaml'],
  ])('%j: never two slashes first, which would name a machine', async (path, uri) => {
    const { out } = await runIn({ files: { [path]: misspelt() } }, 'check', path, '--format', 'sarif')
    const [{ locations }] = JSON.parse(out).runs[0].results
    expect(locations[0].physicalLocation.artifactLocation.uri).toBe(uri)
  })
})

describe('the validators of others', () => {
  const log = (result: object): string =>
    JSON.stringify({ version: '2.1.0', runs: [{ tool: { driver: { name: 'x' } }, results: [result] }] })
  const message = { text: 'x' }

  it.each([
    ['an unknown level', { message, level: 'grave' }],
    ['an unknown key', { message, remedy: 'y' }],
    ['no message', {}],
    [
      'a line 0',
      { message, locations: [{ physicalLocation: { artifactLocation: { uri: 'a' }, region: { startLine: 0 } } }] },
    ],
    ['a URI that is none', { message, locations: [{ physicalLocation: { artifactLocation: { uri: 'a b' } } }] }],
  ])('see in SARIF %s', (_, result) => {
    expect(againstSarif(log({ message }))).toEqual([])
    expect(againstSarif(log(result)).length).toBeGreaterThan(0)
  })

  it.each([
    ['an unknown element', '<testsuite name="a" tests="1"><case/></testsuite>'],
    ['an unknown attribute', '<testsuite name="a" tests="1" good="1"/>'],
    ['a suite without a name', '<testsuite tests="1"/>'],
    ['a case without a name', '<testsuite name="a" tests="1"><testcase/></testsuite>'],
    ['what is not well-formed', '<testsuite name="a" tests="1">'],
  ])('see in JUnit %s', (_, inside) => {
    expect(againstJunit('<testsuites><testsuite name="a" tests="1"/></testsuites>')).toEqual([])
    expect(againstJunit(`<testsuites>${inside}</testsuites>`).length).toBeGreaterThan(0)
  })
})
