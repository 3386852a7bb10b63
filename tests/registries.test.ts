import { readdirSync, readFileSync } from 'node:fs'
import { join, sep } from 'node:path'
import { describe, expect, it } from 'vitest'
import { KINDS } from '../src/features/registry.ts'
import { wordsOf } from '../src/job/schema-walk.ts'
import { FORMATS, formatsOf, type Printed } from '../src/print/registry.ts'
import { SHAPE_WORDS } from '../src/sheet/grind/shapes.ts'
import { SHAPES } from '../src/tools/registry.ts'
import { runIn } from './cli/world.ts'

/** What a new kind, shape or format costs: its folder, its registry, and no file that goes by its name. */
const SRC = join(import.meta.dirname, '..', 'src')
const kinds = Object.keys(KINDS)
const shapes = Object.keys(SHAPES)
const words = [...new Set([...kinds, ...shapes])].join('|')

const isOwn = (file: string): boolean =>
  kinds.some((kind) => file.startsWith(`features/${kind}/`)) ||
  shapes.some((shape) => file.startsWith(`tools/${shape}/`) || file === `sheet/grind/${shape}.ts`) ||
  FORMATS.some((format) => file.startsWith(`print/${format}/`))

const others = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.split(sep).join('/'))
  .filter((file) => file.endsWith('.ts') && !isOwn(file))
  .map((file) => ({ file, text: readFileSync(join(SRC, file), 'utf8') }))

const filesWith = (pattern: RegExp): string[] =>
  others.flatMap(({ file, text }) => (pattern.test(text) ? [file] : [])).sort()

/** Compared with, or chosen by: `shape === 'vee'`, `case 'vee':`. Some of these words mean other things as well, so what is compared counts. */
const GOES_BY = new RegExp(`\\b(?:kind|shape)\\b\\)? [!=]== '(?:${words})'|\\bcase '(?:${words})':`)

describe('a kind and a shape', () => {
  it('stand in their registry under the word that a file gives', () => {
    for (const [kind, { schema }] of Object.entries(KINDS)) expect(wordsOf(schema, 'kind')).toEqual([kind])
    for (const [shape, { schema }] of Object.entries(SHAPES)) expect(wordsOf(schema, 'shape')).toEqual([shape])
    expect(Object.keys(SHAPE_WORDS)).toEqual(shapes)
  })

  it('are gone by outside their folders in these files only, where every other one is served too', () => {
    expect(filesWith(GOES_BY)).toEqual([
      'features/on-face.ts',
      'features/rough.ts',
      'finish/what-remains.ts',
      'finish/words.ts',
      'job/checks/contact.ts',
      'sheet/effect.ts',
      'sheet/fit-tool.ts',
      'sheet/hand.ts',
      'sheet/placing.ts',
    ])
  })

  it('are taken from their folders by these files only', () => {
    const folders = `/(?:features|tools)/(?:${words})/|'\\./(?:${words})/`
    expect(filesWith(new RegExp(folders))).toEqual([
      'features/feature.ts',
      'features/registry.ts',
      'planning/plan.ts',
      'tools/registry.ts',
      'tools/standing.ts',
      'tools/tool.ts',
    ])
  })

  it('have no list of their own anywhere else', () => {
    expect(filesWith(/Record<(?:Shape|Tool\['shape'\]|Feature\['kind'\]|keyof typeof (?:SHAPES|KINDS))\b/)).toEqual([
      'sheet/grind/shapes.ts',
      'tools/registry.ts',
    ])
  })

  it('are seen where they are gone by', () => {
    for (const text of ["if (edge.shape === 'vee')", "feature.kind !== 'v-groove'", "    case 'corner':"])
      expect(text).toMatch(GOES_BY)
    for (const text of ["cuts.style === 'corner'", "id === 'radius'", "scaleZero === 'square'"])
      expect(text).not.toMatch(GOES_BY)
  })
})

describe('a format', () => {
  it('is gone by in no file outside its folder', () => {
    const formats = FORMATS.join('|')
    expect(filesWith(new RegExp(`format\\w*\\)? [!=]== '(?:${formats})'|\\bcase '(?:${formats})':`))).toEqual([])
  })

  const commands: Printed[] = ['sheet', 'finish', 'grind', 'check', 'replay']
  it.each(commands)('is offered by %s where it prints that', async (command) => {
    const { out } = await runIn({}, command, '--help')
    const choices = /--format <format>.*?choices:\s*(.*?),\s*default/s.exec(out)![1]!
    expect(choices.split(/,\s*/)).toEqual(formatsOf(command).map((format) => `"${format}"`))
    expect(formatsOf(command)).toContain('text')
  })
})
