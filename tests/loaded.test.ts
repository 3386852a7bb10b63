import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'
import { FORMATS } from '../src/print/registry.ts'

/** What is loaded at once with a file: whatever it imports, and what that imports; not what is imported when it is needed, and no types. */
const ROOT = join(import.meta.dirname, '..', 'src')
const IMPORT = /^(?:import|export)\s+(?!type\b)(?:([^'"]*?)\bfrom\s*)?'(\.[^']+)'/gm

const importsIn = (text: string): string[] =>
  [...text.matchAll(IMPORT)].flatMap(([, names, path]) => (onlyTypes(names ?? '') ? [] : [path!]))

/** `{ type Io, type Sink }`. */
const onlyTypes = (names: string): boolean => /^\{(?:\s*type\s+\w+,?)+\s*\}\s*$/.test(names)

const loadedWith = (file: string): string[] => {
  const found = new Set<string>()
  const add = (path: string): void => {
    const name = relative(ROOT, path).replaceAll('\\', '/')
    if (found.has(name) || !name.endsWith('.ts')) return
    found.add(name)
    for (const each of importsIn(readFileSync(path, 'utf8'))) add(join(dirname(path), each))
  }
  add(join(ROOT, file))
  return [...found]
}

const commands = readdirSync(join(ROOT, 'cli', 'commands')).map((name) => `cli/commands/${name}`)
const isOfFormat = (file: string): boolean => FORMATS.some((format) => file.startsWith(`print/${format}/`))

describe('what is loaded before it is needed', () => {
  it.each(['cli/command-line.ts', 'cli/commands/sheet.ts'])(
    'with %s: of the formats no more than their names',
    (file) => {
      const formats = loadedWith(file).filter(isOfFormat)
      expect(formats.sort()).toEqual(FORMATS.map((format) => `print/${format}/format.ts`).sort())
    },
  )

  it('with the command line: no command, and nothing that plans', () => {
    const others = loadedWith('cli/command-line.ts').filter((file) => !/^(?:print\/.*|cli\/[^/]*)$/.test(file))
    expect(others).toEqual(['diagnostics/escaped.ts'])
  })

  it('with a sheet: nothing that is added on request, and no other command', () => {
    const loaded = loadedWith('cli/commands/sheet.ts')
    expect(loaded).toContain('compile.ts')
    const others = /^(?:slips|sheet\/(?:grind|changed)|written|diagnostics\/frame|cli\/(?:kept|since|framed))\b/
    expect(
      loaded.filter((file) => others.test(file) || (commands.includes(file) && !file.endsWith('/sheet.ts'))),
    ).toEqual([])
  })

  it('is seen', () => {
    expect(
      importsIn("import { x, type Y } from './x.ts'\nexport * from './y.ts'\nimport {\n  z,\n} from './z.ts'"),
    ).toEqual(['./x.ts', './y.ts', './z.ts'])
    const types =
      "import type { X } from './x.ts'\nimport { type X, type Y } from './x.ts'\nexport type { X } from './x.ts'"
    expect(importsIn(`${types}\nconst x = await import('./x.ts')\nimport { z } from 'zod'`)).toEqual([])
  })
})
