import { execFileSync, spawnSync } from 'node:child_process'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { good, LATHE } from './world.ts'

/** The real program, as it is installed, on the real disk. */
const BIN = resolve('bin/groovewright.js')
let folder = ''

beforeAll(() => {
  expect(execFileSync('node', ['tests/build/bundle.mjs'], { encoding: 'utf8' })).toBe('')
  folder = mkdtempSync(join(tmpdir(), 'groovewright-'))
  writeFileSync(join(folder, 'bench.yaml'), LATHE)
  writeFileSync(join(folder, 'good.yaml'), good())
  writeFileSync(join(folder, 'long.yaml'), long(40))
})
afterAll(() => rmSync(folder, { recursive: true }))

const start = (args: readonly string[], input = '') =>
  spawnSync('node', [BIN, ...args], { cwd: folder, input, encoding: 'utf8', maxBuffer: 1e9, timeout: 20_000 })
const shell = (command: string) =>
  spawnSync('bash', ['-c', `set -o pipefail; ${command}`], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e9,
    timeout: 20_000,
  })

/** More sheet than a pipe holds. */
const long = (n: number): string => {
  const [head = '', row = ''] = good()
    .replace('length: 5', 'length: 50')
    .replace('overhang: 4', 'overhang: 49')
    .split('features:\n')
  const rows = Array.from({ length: n }, (_, i) =>
    row.replace('near: 1.125', `near: ${1 + i}`).replace('name: Relief', `name: Relief ${i}`),
  )
  return `${head}features:\n${rows.join('')}`
}

describe('the real program', () => {
  it('keeps a sheet, and says after one edit what changed on it', () => {
    expect(start(['sheet', 'good.yaml', '--format', 'json', '-o', 'kept.json']).status).toBe(0)
    expect(start(['sheet', 'good.yaml', '--since', 'kept.json']).stdout).toContain('Nothing: every step')
    writeFileSync(join(folder, 'worn.yaml'), LATHE.replace('backlash: 0.006', 'backlash: 0.020'))
    writeFileSync(join(folder, 'on-worn.yaml'), good('worn.yaml'))
    const { status, stdout, stderr } = start(['sheet', 'on-worn.yaml', '--since', 'kept.json'])
    expect([status, stderr]).toEqual([0, ''])
    expect(stdout).toContain('\ncompound backlash: .006 -> .020\n')
    expect(stdout).toMatch(/\n {2}step \d+ COMPOUND back past 90 \(\.010 before 0\) -> 70 \(\.030 before 0\)\n/)
  })

  it('runs', () => {
    expect(start(['--version'])).toMatchObject({ status: 0, stdout: `groovewright ${manifest.version}\n`, stderr: '' })
    expect(start(['sheet', 'good.yaml'])).toMatchObject({ status: 0, stderr: '' })
    expect(start(['sheet'], good()).stdout).toBe(start(['sheet', 'good.yaml']).stdout)
    expect(start(['bicycle']).status).toBe(2)
    expect(start(['check', 'good.yaml', '--color']).stdout).toContain('good.yaml: \u001b[32mgood\u001b[39m, 1 feature')
  })

  it('gets a long sheet through a pipe whole', () => {
    const { stdout, status } = shell(`node ${BIN} sheet long.yaml --format json | cat`)
    expect(status).toBe(0)
    expect(stdout.length).toBeGreaterThan(300_000)
    expect(JSON.parse(stdout).features).toHaveLength(40)
  })

  it('is quiet when its reader goes away', () => {
    const { stdout, stderr } = shell(`node ${BIN} sheet long.yaml | head -n 1`)
    expect(stderr).toBe('')
    expect(stdout).toMatch(/^== CIDER PRESS SCREW = sheet \w{6} =+\n$/)
  })

  it.runIf(existsSync('/dev/full'))('says in one line that the output cannot be written', () => {
    const { status, stderr } = shell(`node ${BIN} sheet good.yaml > /dev/full`)
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'groovewright: cannot write the output: no space is left on the disk\n',
    })
  })

  it('writes whole files, leaves others alone, and nothing else behind', () => {
    const sheet = start(['sheet', 'good.yaml']).stdout
    expect(start(['sheet', 'good.yaml', '-o', 'out.txt'])).toMatchObject({ status: 0, stdout: '', stderr: '' })
    expect(readFileSync(join(folder, 'out.txt'), 'utf8')).toBe(sheet)
    writeFileSync(join(folder, 'out.txt'), 'mine')
    expect(start(['sheet', 'good.yaml', '-o', 'out.txt'])).toMatchObject({ status: 2 })
    expect(readFileSync(join(folder, 'out.txt'), 'utf8')).toBe('mine')
    expect(start(['sheet', 'good.yaml', '-o', 'out.txt', '--force']).status).toBe(0)
    expect(readFileSync(join(folder, 'out.txt'), 'utf8')).toBe(sheet)
    expect(start(['sheet', 'good.yaml', '-o', 'nowhere/out.txt']).stderr).toContain('there is no such file or folder')
    expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([])
  })

  it('checks a folder that links back up', () => {
    mkdirSync(join(folder, 'shop'))
    writeFileSync(join(folder, 'shop', 'bench.yaml'), LATHE)
    writeFileSync(join(folder, 'shop', 'good.yaml'), good())
    symlinkSync('..', join(folder, 'shop', 'up'))
    expect(start(['check', 'shop'])).toMatchObject({
      status: 0,
      stdout: 'shop/good.yaml: good, 1 feature\n1 job: 1 good, 1 skipped\n',
    })
  })
})

describe('what a start loads', () => {
  /** The files of ours that a command has loaded, in their order, as the loader of Node itself counts them. */
  const loaded = (...args: string[]): string[] => {
    const hook = join(folder, 'hook.cjs')
    writeFileSync(
      hook,
      "process.on('exit', () => require('node:fs').writeFileSync('loaded.json', JSON.stringify(Object.keys(require.cache))))",
    )
    spawnSync('node', ['--require', hook, BIN, ...args], { cwd: folder, timeout: 20_000 })
    const paths: string[] = JSON.parse(readFileSync(join(folder, 'loaded.json'), 'utf8'))
    return paths.filter((path) => path !== hook).map((path) => relative(resolve('.'), path).replaceAll('\\', '/'))
  }
  const start = ['bin/groovewright.js', 'dist/groovewright.cjs']

  it.each([
    [['--version'], start],
    [['-V'], start],
    [['--help'], [...start, 'dist/command-line.cjs']],
    [
      ['sheet', '--help'],
      [...start, 'dist/command-line.cjs'],
    ],
    [['bicycle'], [...start, 'dist/command-line.cjs']],
    [
      ['new', 'job'],
      [...start, 'dist/command-line.cjs', 'dist/blanks.cjs'],
    ],
    [
      ['schema', 'job'],
      [...start, 'dist/command-line.cjs', 'dist/schema.cjs'],
    ],
    [
      ['sheet', 'good.yaml'],
      [...start, 'dist/command-line.cjs', 'dist/plan.cjs', 'dist/print-text-printers.cjs'],
    ],
    [
      ['sheet', 'good.yaml', '--format', 'csv'],
      [...start, 'dist/command-line.cjs', 'dist/plan.cjs', 'dist/print-csv-printers.cjs'],
    ],
    [
      ['sheet', 'good.yaml', '--slips'],
      [...start, 'dist/command-line.cjs', 'dist/plan.cjs', 'dist/print-text-printers.cjs', 'dist/slips-for.cjs'],
    ],
  ])('%j: no more than it needs', (args, files) => {
    expect(loaded(...args)).toEqual(files)
  })

  it.each([
    ['the YAML reader', 'BLOCK_AS_IMPLICIT_KEY', ['plan.cjs']],
    ['zod', '_zod', ['cli-commands-handout.cjs', 'plan.cjs', 'schema.cjs']],
    ['the planner', 'the compound would have to move', ['plan.cjs']],
    ['commander', 'CommanderError', ['command-line.cjs']],
  ])('%s is in the files that need it', (_, mark, files) => {
    const parts = readdirSync('dist').filter((name) => name.endsWith('.cjs'))
    expect(parts.filter((name) => readFileSync(join('dist', name), 'utf8').includes(mark))).toEqual(files)
  })
})

describe('the package', () => {
  it('runs where it is unpacked, with nothing beside it', () => {
    const pack = ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder]
    const archive = execFileSync('npm', pack, { encoding: 'utf8' }).trim()
    execFileSync('tar', ['-xzf', archive], { cwd: folder })
    const bin = join(folder, 'package', 'bin', 'groovewright.js')
    const unpacked = (...args: string[]) => spawnSync('node', [bin, ...args], { cwd: folder, encoding: 'utf8' })
    expect(unpacked('--version')).toMatchObject({ status: 0, stdout: `groovewright ${manifest.version}\n`, stderr: '' })
    for (const args of [['sheet', 'good.yaml'], ['new', 'job'], ['schema', 'lathe'], ['--help']])
      expect(unpacked(...args)).toMatchObject({ status: 0, stdout: start(args).stdout, stderr: '' })
    rmSync(join(folder, 'package', 'dist'), { recursive: true })
    expect(unpacked('--version')).toMatchObject({ status: 2, stdout: '' })
    expect(unpacked('--version').stderr).toContain('not built yet')
  })
})
