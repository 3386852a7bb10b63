import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import { expect, it } from 'vitest'

/** What each folder of src may import from, besides itself; `types` may be imported by `import type` only. */
const SHAPES = 'units diagnostics handbook lathe moves tools features'
const ARROWS: Record<string, { from: string; types?: string }> = {
  units: { from: '' },
  diagnostics: { from: '' },
  source: { from: 'diagnostics' },
  handbook: { from: 'units' },
  lathe: { from: 'units diagnostics' },
  moves: { from: 'units diagnostics lathe' },
  tools: { from: 'units diagnostics handbook moves', types: 'job lathe' },
  features: { from: 'units diagnostics handbook lathe moves tools source', types: 'job sheet' },
  job: { from: `${SHAPES} source` },
  sequence: { from: 'units diagnostics lathe moves' },
  written: { from: 'units diagnostics source lathe moves' },
  replay: { from: 'units', types: 'lathe moves' },
  budget: { from: 'units moves replay', types: 'lathe' },
  sheet: { from: 'units lathe moves replay budget', types: 'diagnostics' },
  print: { from: 'units sheet', types: 'lathe moves' },
  exercise: { from: 'source job written replay sheet' },
}
const SRC = join(import.meta.dirname, '..', 'src')
const IMPORT = /^(?:import|export)\s+(type\s)?[^'"]*?\bfrom\s*'(\.[^']+)'|import\('(\.[^']+)'\)/gm

const broken = (file: string): string[] => {
  const folder = relative(SRC, file).split(sep)[0]!
  const rule = ARROWS[folder]
  if (!rule) return [`${folder}: no arrows for this folder`]
  return [...readFileSync(file, 'utf8').matchAll(IMPORT)].flatMap(([, type, path, inline]) => {
    const target = relative(SRC, join(dirname(file), (path ?? inline)!)).split(sep)[0]!
    const allowed = [folder, ...rule.from.split(' '), ...((type ?? inline) ? (rule.types ?? '').split(' ') : [])]
    return allowed.includes(target) ? [] : [`${relative(SRC, file)} imports ${type ? 'types of ' : ''}${target}`]
  })
}

it('keeps every folder to its arrows', () => {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.ts') && file.includes(sep) && !file.startsWith(`cli${sep}`),
  )
  expect(files.length).toBeGreaterThan(10)
  expect(files.flatMap((file) => broken(join(SRC, file)))).toEqual([])
})
