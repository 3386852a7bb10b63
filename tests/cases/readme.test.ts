import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import { programFor } from '../../src/cli/program.ts'
import { golden, program, projectText, ROOT } from './program.ts'

vi.setConfig({ testTimeout: 60_000 })

const JOB = 'examples/jobs/01-press-screw.yaml'
const block = (begin: string, language: string, end: string): RegExp =>
  new RegExp(`(<!-- ${begin} -->\\n\`\`\`${language}\\n)([\\s\\S]*?)(\`\`\`\\n<!-- ${end} -->)`)
const SHEET = block(`sheet of ${JOB}, from the set-up to the first stop`, 'text', 'end of sheet')
const FEATURES = block(`features of ${JOB}`, 'yaml', 'end of features')

/** The README with what stands between two marks as it must be. */
const filled = (mark: RegExp, text: string): string => {
  const readme = projectText('README.md')
  expect(readme).toMatch(mark)
  return golden(
    'README.md',
    readme.replace(mark, (_, before, __, after) => before + text + after),
  )
}

test('the sheet in the README is what the program prints, from the set-up to the first stop', async () => {
  const { stdout, status } = await program('sheet', JOB)
  expect(status).toBe(0)
  const from = stdout.indexOf('     -- set up --\n')
  const measured = /^ *\d+ {2}MEASURE\b/m.exec(stdout.slice(from))!.index
  const after = /^ *\d+ {2}(?!MEASURE)[A-Z]/m.exec(stdout.slice(from + measured))!.index
  const excerpt = stdout.slice(from, from + measured + after)
  expect(excerpt).toMatch(
    /^ {5}-- set up --\n {2}1 {2}LAYOUT[\s\S]*\n 18 {2}SPINDLE {4}STOP[\s\S]*\n 20 {2}MEASURE .*\n/,
  )
  expect(SHEET.exec(filled(SHEET, excerpt))?.[2]).toBe(excerpt)
})

test('the features in the README are those of the job that the sheet is printed for', () => {
  const features = /^features:\n[\s\S]*$/m.exec(projectText(JOB))![0]
  expect(features).toContain('kind: groove')
  expect(FEATURES.exec(filled(FEATURES, features))?.[2]).toBe(features)
})

test('the README is short, and has the two commands that install and run', () => {
  const readme = projectText('README.md')
  expect(readme).toContain(`\n    npm ci && node bin/groovewright.js sheet ${JOB}\n`)
  expect(readme).toContain('\n    npm ci && npm test\n')
  expect(readme.trimEnd().split('\n').length).toBeLessThanOrEqual(170)
  const long = readme.split('\n').filter((line) => [...line].length > 150)
  expect(long).toEqual([])
})

const io = { stdout: { write: () => {} }, stderr: { write: () => {} } }
const commands = programFor(io as never, () => {}).commands

describe('the README', () => {
  test('has a line for every command and for no other', () => {
    const named = [...projectText('README.md').matchAll(/^\| `([a-z]+)\b[^|]* \|/gm)].map(([, name]) => name!)
    expect(named).toEqual(commands.map((command) => command.name()))
  })

  test('has the exit statuses', () => {
    const named = [...projectText('README.md').matchAll(/^\| (\d+) \|/gm)].map(([, status]) => Number(status))
    expect(named).toEqual([0, 1, 2, 70])
  })
})

test.each(commands.map((command) => [command.name(), command] as const))(
  'the README or the page on the examples tells of every option of %s',
  (_, command) => {
    const pages = projectText('README.md') + projectText('examples/README.md')
    const options = command.options.map((option) => option.long!)
    expect(options.filter((option) => !new RegExp(`${option}(?![-a-z])`).test(pages))).toEqual([])
  },
)

const PAGES = ['README.md', 'DEVELOPERS.md', 'examples/README.md']

test.each(PAGES)('the links of %s lead to files of the project, and to headings that they have', (page) => {
  const links = [...projectText(page).matchAll(/\]\(([^)]+)\)/g)].map(([, to]) => to!)
  const lost = links.filter((to) => {
    const [path = '', anchor] = to.split('#')
    const file = path === '' ? page : join(dirname(page), path)
    return !existsSync(join(ROOT, file)) || (anchor !== undefined && !anchorsOf(file).includes(anchor))
  })
  expect(lost).toEqual([])
  expect(page === 'DEVELOPERS.md' || links.length > 5).toBe(true)
})

/** Headings as the pages of a repository name them: lower case, blanks as hyphens, other signs gone. */
const anchorsOf = (file: string): string[] =>
  [...projectText(file).matchAll(/^#+ (.*)$/gm)].map(([, heading]) =>
    heading!
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  )
