import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, sep } from 'node:path'
import { expect, it } from 'vitest'

/** What each folder of src may import from, besides itself; `types` may be imported by `import type` only. */
const SHAPES = 'units diagnostics handbook lathe phrase moves tools features'
const ARROWS: Record<string, { from: string; types?: string }> = {
  units: { from: '' },
  diagnostics: { from: '' },
  source: { from: 'diagnostics' },
  handbook: { from: 'units' },
  lathe: { from: 'units diagnostics' },
  dials: { from: 'units lathe' },
  moves: { from: 'units diagnostics lathe', types: 'phrase' },
  tools: { from: 'units diagnostics handbook moves', types: 'job lathe' },
  features: { from: 'units diagnostics handbook lathe phrase moves tools source', types: 'job' },
  job: { from: `${SHAPES} source` },
  sequence: { from: 'units diagnostics lathe dials phrase moves' },
  written: { from: 'units diagnostics source lathe moves' },
  replay: { from: 'units', types: 'lathe moves' },
  budget: { from: 'units moves replay', types: 'lathe' },
  slips: { from: 'units dials moves replay', types: 'lathe' },
  judge: { from: 'units moves replay', types: 'lathe' },
  finish: { from: 'units lathe dials moves sequence replay budget judge phrase plan' },
  phrase: { from: 'units lathe', types: 'moves' },
  plan: { from: 'units phrase', types: 'lathe moves budget replay diagnostics' },
  sheet: { from: 'units lathe dials moves replay budget finish slips phrase plan', types: 'diagnostics' },
  print: { from: 'units diagnostics phrase sheet', types: 'lathe moves exercise grading' },
  planning: { from: `${SHAPES} dials job sequence replay budget finish phrase plan` },
  exercise: {
    from: 'units diagnostics source lathe dials phrase plan job written sheet slips replay judge',
    types: 'moves',
  },
  grading: {
    from: 'units diagnostics source lathe phrase plan moves replay judge written exercise',
  },
  gains: { from: 'units lathe dials phrase plan', types: 'diagnostics job moves budget' },
}
/** As DEVELOPERS.md has it: what a room may import from, in parentheses what only as types. */
const inWords = ({ from, types }: { from: string; types?: string }): string =>
  [from === '' ? 'nothing' : from, ...(types === undefined ? [] : [`(${types})`])].join(' ')

const SRC = join(import.meta.dirname, '..', 'src')
const IMPORT = /^(?:import|export)\s+(type\s)?(?:[^'"]*?\bfrom\s*)?'(\.[^']+)'|(await\s+)?import\('(\.[^']+)'\)/gm

/** Every import of a file (path from src) that its folder may not make. `import('…')` without await stands for a type. */
const broken = (file: string, text: string): string[] => {
  const folder = file.split(sep)[0]!
  const rule = ARROWS[folder]
  if (!rule) return [`${folder}: no arrows for this folder`]
  return [...text.matchAll(IMPORT)].flatMap(([, type, path, awaited, inline]) => {
    const target = join(dirname(file), (path ?? inline)!).split(sep)[0]!
    const typesOnly = type !== undefined || (inline !== undefined && awaited === undefined)
    const allowed = [folder, ...rule.from.split(' '), ...(typesOnly ? (rule.types ?? '').split(' ') : [])]
    return allowed.includes(target) ? [] : [`${file} imports ${typesOnly ? 'types of ' : ''}${target}`]
  })
}

it('keeps every folder to its arrows', () => {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.ts') && file.includes(sep) && !file.startsWith(`cli${sep}`),
  )
  expect(files.length).toBeGreaterThan(10)
  expect(files.flatMap((file) => broken(file, readFileSync(join(SRC, file), 'utf8')))).toEqual([])
})

it('sees what a folder may not do', () => {
  const faults = (text: string): number => broken(join('replay', 'form', 'x.ts'), text).length
  expect(
    faults("import type { Lathe } from '../../lathe/lathe.ts'\nimport { INCH } from '../../units/length.ts'"),
  ).toBe(0)
  expect(faults("import { readable } from '../../lathe/lathe.ts'")).toBe(1)
  expect(faults("import {\n  type Lathe,\n} from '../../lathe/lathe.ts'\nexport * from '../../sequence/dial.ts'")).toBe(
    2,
  )
  expect(faults("import '../../features/registry.ts'\nconst { x } = await import('../../moves/form.ts')")).toBe(2)
  expect(faults("type Job = import('../../job/job.ts').Job\nimport './y.ts'\nimport '../compile.ts'")).toBe(1)
  expect(broken(join('helpers', 'x.ts'), '')).toHaveLength(1)
})

it('turns a reading into travel in two places: once in the replay, once for everybody else', () => {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'))
  const halving = files.filter((file) => /reads === 'diameter'[^\n]*\/ 2/.test(readFileSync(join(SRC, file), 'utf8')))
  expect(halving.sort()).toEqual([join('dials', 'travel.ts'), join('replay', 'slide.ts')])
})

it('is told to contributors as it is', () => {
  const table = readFileSync(join(SRC, '..', 'DEVELOPERS.md'), 'utf8')
  const rows = [...table.matchAll(/^\| `(\w+)\/` \| .* \| (.*) \|$/gm)].map(([, room, from]) => [room, from])
  const rooms = readdirSync(SRC, { withFileTypes: true }).filter((one) => one.isDirectory())
  expect(rows.map(([room]) => room).sort()).toEqual(rooms.map(({ name }) => name).sort())
  for (const [room, from] of rows) if (room !== 'cli') expect([room, from]).toEqual([room, inWords(ARROWS[room!]!)])
})
