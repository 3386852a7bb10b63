import fc from 'fast-check'
import { expect, it } from 'vitest'
import { runs } from '../runs.ts'
import { change, JOB, LATHE, read, SHOP, type Shop, said, TOOLBOX } from './reading.ts'

it('reports the mistakes of every file in one run', () => {
  const shop = [
    ['job.yaml', 'title:', 'titel:'],
    ['job.yaml', 'mild steel', 'mild steal'],
    ['job.yaml', 'near: 1.125', 'near: 1,125'],
    ['job.yaml', 'tool: neck', 'tool: nekc'],
    ['job.yaml', 'kind: v-groove', 'kind: v-grove'],
    ['job.yaml', 'depth: 0.400', 'deepness: 0.400'],
    ['lathe.yaml', 'units: inch', 'units: imperial'],
    ['lathe.yaml', ', backlash: 0.006', ''],
    ['toolbox.yaml', 'shape: vee', 'shape: ve'],
    ['toolbox.yaml', 'radius: 1/8', 'radius: -1/8'],
  ].reduce<Shop>((changed, [file, from, to]) => change(file as 'job.yaml', from as string, to as string, changed), SHOP)
  const result = read(shop)
  expect(result.job).toBeNull()
  expect(said(result).map((line) => line.split(' | ')[0])).toEqual([
    'job.yaml:1:1 job has no key "titel"',
    'job.yaml:4:13 "mild steal" is not in the table of cutting speeds',
    'job.yaml:14:11 near: "1,125" has a comma in it',
    'job.yaml:18:11 no tool is called "nekc"',
    'job.yaml:28:11 kind cannot be "v-grove"',
    'job.yaml:33:5 V-groove has no key "deepness"',
    'lathe.yaml:2:8 units cannot be "imperial"',
    'lathe.yaml:4:1 the dial has no backlash',
    'toolbox.yaml:3:18 shape cannot be "ve"',
    'toolbox.yaml:4:35 radius is -1/8',
  ])
})

it('goes on behind what the source refuses, without reporting it twice', () => {
  const shop = change('job.yaml', 'near: 1.125', 'near: *one', change('job.yaml', 'tool: neck', 'tool: nekc'))
  expect(said(read(shop)).map((line) => line.split(' | ')[0])).toEqual([
    expect.stringMatching(/^job\.yaml:14:11 .*alias/),
    'job.yaml:18:11 no tool is called "nekc"',
  ])
})

it('does not look for names in what could not be read', () => {
  const tools = read({ ...SHOP, 'job.yaml': JOB.replace('tools: toolbox.yaml', 'tools: [neck]') })
  expect(said(tools)).toEqual([
    'job.yaml:10:8 tools is not of the right kind | give a path beside this file, or the same keys inline',
  ])
  const steps = read(change('job.yaml', '{ name: body, diameter: 1.500', '{ diameter: 1.500'))
  expect(said(steps)).toEqual(['job.yaml:8:7 step (entry 2 of steps) has no "name" | give text'])
})

it('says what is wrong with the file itself', () => {
  expect(said(read({}))).toEqual(['job.yaml:0:0 job.yaml cannot be read | look at the name'])
  expect(said(read({ 'job.yaml': '' }))[0]).toMatch(/^job\.yaml:1:1 the file is empty/)
  expect(said(read({ 'job.yaml': '- a\n- b\n' }))).toEqual([
    'job.yaml:1:1 the file is not of the right kind | give keys with their values, indented',
  ])
  expect(said(read({ 'job.yaml': 'a: [1\n' })).length).toBeGreaterThan(0)
})

it('takes names that JavaScript knows as names of tools', () => {
  const shop = {
    ...SHOP,
    'toolbox.yaml': TOOLBOX.replace('neck:', 'constructor:'),
    'job.yaml': JOB.replace('tool: neck', 'tool: constructor'),
  }
  expect(said(read(shop))).toEqual([])
  expect(said(read({ ...SHOP, 'job.yaml': JOB.replace('tool: neck', 'tool: toString') }))[0]).toContain(
    'no tool is called "toString"',
  )
})

const ODD = [
  '',
  '~',
  'true',
  '-1',
  '0',
  '1e9',
  '[]',
  '{}',
  '[1, 2]',
  '{ kind: groove }',
  '"',
  'x',
  '0,5',
  '1/0',
  '!!binary aa',
  '*a',
  '"\\u0000"',
  '.nan',
  '2024-01-01',
]
/** From the colon of any key to the end of its value, as far as a comma, brace or line end. */
const VALUES = /(?<=: )[^,{}[\]\n]+/g

it('never throws, and every problem stands in its file, whatever stands in place of a value', () => {
  for (const file of ['job.yaml', 'lathe.yaml', 'toolbox.yaml'] as const) {
    const text = SHOP[file] ?? ''
    for (const match of text.matchAll(VALUES))
      for (const odd of ODD)
        hold({ ...SHOP, [file]: text.slice(0, match.index) + odd + text.slice(match.index + match[0].length) })
  }
}, 60_000)

it('never throws for files with lines dropped, doubled, shifted or cut', () => {
  const files = [
    ['job.yaml', JOB],
    ['lathe.yaml', LATHE],
    ['toolbox.yaml', TOOLBOX],
  ] as const
  fc.assert(
    fc.property(
      fc.constantFrom(...files),
      fc.nat(),
      fc.constantFrom('drop', 'double', 'indent', 'cut'),
      fc.nat(),
      ([file, text], at, how, more) => {
        const lines = text.split('\n')
        const line = at % lines.length
        const old = lines[line] ?? ''
        const changed = {
          drop: [],
          double: [old, old],
          indent: [`  ${old}`],
          cut: [old.slice(0, more % (old.length + 1))],
        }[how] as string[]
        hold({ ...SHOP, [file]: lines.toSpliced(line, 1, ...changed).join('\n') })
      },
    ),
    { numRuns: runs(60), seed: 14 },
  )
}, 60_000)

const hold = (shop: Shop): void => {
  const result = read(shop)
  const lines = said(result)
  expect(result.job === null, lines.join('\n')).toBe(lines.length > 0)
  expect(new Set(lines).size, lines.join('\n')).toBe(lines.length)
  for (const { origin, span, at } of result.diagnostics) {
    const source = result.sources.get(origin.file)
    const { line, column } = span ?? source?.locate(origin.path, at ?? 'value') ?? { line: 1, column: 1 }
    if (source) expect(source.text.split('\n')[line - 1]?.length).toBeGreaterThanOrEqual(column - 1)
  }
}
