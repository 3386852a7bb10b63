import { execFileSync, spawnSync } from 'node:child_process'
import {
  copyFileSync,
  cpSync,
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
import { dirname, join, relative, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { good, LATHE, misspelt, refused } from '../cli/world.ts'
import type { sample } from './sample.ts'

/** The package as it is put together from a tree that has nothing built, unpacked where nothing else is. */
const ROOT = resolve('.')
let folder = ''
let unpacked = ''

const npm = (cwd: string, ...args: string[]): string =>
  execFileSync('npm', args, { cwd, encoding: 'utf8', shell: process.platform === 'win32' })

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'groovewright-packed-'))
  const tree = join(folder, 'tree')
  for (const name of ['src', 'bin', 'tests/build', 'examples', 'package.json', 'tsconfig.json', 'README.md', 'LICENSE'])
    cpSync(join(ROOT, name), join(tree, name), { recursive: true })
  symlinkSync(join(ROOT, 'node_modules'), join(tree, 'node_modules'), 'junction')
  npm(tree, 'pack', '--silent', '--pack-destination', folder)
  const [archive = ''] = readdirSync(folder).filter((name) => name.endsWith('.tgz'))
  execFileSync('tar', ['-xzf', archive], { cwd: folder })
  unpacked = join(folder, 'package')
}, 600_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const filesBelow = (path: string): string[] =>
  readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(path, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort()
const inPackage = (path: string): string => readFileSync(join(unpacked, path), 'utf8')

/** What is reached from a file by what it names, itself first. */
const reached = (first: string, namedIn: (text: string) => readonly string[]): string[] => {
  const found = new Set<string>()
  const add = (path: string): void => {
    if (found.has(path)) return
    found.add(path)
    for (const name of namedIn(inPackage(path))) add(join(dirname(path), name).replaceAll('\\', '/'))
  }
  add(first)
  return [...found].sort()
}

describe('the package that is packed', () => {
  it('has at its top what people read and run, and no more', () => {
    expect(readdirSync(unpacked).sort()).toEqual(['LICENSE', 'README.md', 'bin', 'dist', 'examples', 'package.json'])
    expect(filesBelow(join(unpacked, 'bin'))).toEqual(['groovewright.js', 'package.json'])
  })

  it('has every example but those that are broken', () => {
    const ours = execFileSync('git', ['ls-files', 'examples'], { encoding: 'utf8' }).trim().split('\n')
    expect(filesBelow(join(unpacked, 'examples'))).toEqual(
      ours
        .filter((name) => !name.startsWith('examples/broken/'))
        .map((name) => name.replace('examples/', ''))
        .sort(),
    )
  })

  it('has in dist/ the files of the program with their maps, the library, and the licenses', () => {
    const parts = filesBelow(join(unpacked, 'dist')).filter((name) => !name.startsWith('types/'))
    const program = reached('dist/groovewright.cjs', (text) =>
      [...text.matchAll(/require\("(\.\/[\w-]+\.cjs)"\)/g)].map(([, name]) => name!),
    ).map((name) => name.replace('dist/', ''))
    expect(program.length).toBeGreaterThan(20)
    expect(parts).toEqual(
      [...program.flatMap((name) => [name, `${name}.map`]), 'index.js', 'THIRD-PARTY-LICENSES.txt'].sort(),
    )
  })

  it('has the types that the library leads to, and no others', () => {
    const types = filesBelow(join(unpacked, 'dist')).filter((name) => name.startsWith('types/'))
    const wanted = reached('dist/types/index.d.ts', (text) =>
      [...text.matchAll(/(?:from |import\()['"](\.[^'"]+)\.[jt]s['"]/g)].map(([, name]) => `${name}.d.ts`),
    ).map((name) => name.replace('dist/', ''))
    expect(wanted.length).toBeGreaterThan(50)
    expect(types).toEqual(wanted)
  })

  it('says of itself nothing that is not there', () => {
    const own: typeof manifest = JSON.parse(inPackage('package.json'))
    const { types, default: code } = own.exports['.']
    for (const path of [own.bin.groovewright, types, code]) expect(existsSync(join(unpacked, path))).toBe(true)
    expect(inPackage('bin/groovewright.js')).toMatch(/^#!\/usr\/bin\/env node\n/)
  })

  it('needs of other packages what the library imports: the program has its own in it', () => {
    const named = (text: string): string[] =>
      [...text.matchAll(/^(?:import\b[^'";]*?|\} ?)(?:from ?)?['"]([^.'"][^'"]*)['"];?$/gm)]
        .map(([, name]) => name!)
        .filter((name) => !name.startsWith('node:'))
        .map((name) =>
          name
            .split('/')
            .slice(0, name.startsWith('@') ? 2 : 1)
            .join('/'),
        )
    const texts = filesBelow(join(unpacked, 'dist'))
      .filter((name) => /\.(?:js|ts)$/.test(name))
      .map((name) => inPackage(`dist/${name}`))
    expect(Object.keys(manifest.dependencies)).toEqual([...new Set(texts.flatMap(named))].sort())
  })
})

describe('the licenses of what is bundled', () => {
  it('are whole, for every package that a map of the program leads to, and for no other', () => {
    const maps = filesBelow(join(unpacked, 'dist')).filter((name) => name.endsWith('.map'))
    const sources = maps.flatMap((name) => JSON.parse(inPackage(`dist/${name}`)).sources as string[])
    const bundled = new Set(sources.flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []))
    expect(bundled.size).toBeGreaterThan(2)
    const licenses = inPackage('dist/THIRD-PARTY-LICENSES.txt')
    const wanted = [...bundled].sort().map((name) => {
      const own = JSON.parse(readFileSync(join('node_modules', name, 'package.json'), 'utf8'))
      const file = readdirSync(join('node_modules', name)).find((each) => /^licen[cs]e/i.test(each))!
      const text = readFileSync(join('node_modules', name, file), 'utf8').trim()
      expect(text).toMatch(/permission/i)
      return `${name} ${own.version} (${own.license})\n\n${text}\n`
    })
    expect(licenses.split(`\n${'-'.repeat(78)}\n\n`)).toEqual(wanted)
  })
})

describe('a program that uses the library', () => {
  const files = {
    'good.yaml': good(),
    'wrong.yaml': misspelt(),
    'refused.yaml': refused(),
    'bench.yaml': LATHE,
  }
  let project = ''
  const compiled = (options: object) => {
    writeFileSync(join(project, 'tsconfig.json'), JSON.stringify({ compilerOptions: options, files: ['sample.ts'] }))
    return spawnSync(process.execPath, [join(ROOT, 'node_modules/typescript/bin/tsc')], {
      cwd: project,
      encoding: 'utf8',
    })
  }
  const STRICT = {
    strict: true,
    exactOptionalPropertyTypes: true,
    noUncheckedIndexedAccess: true,
    noUnusedLocals: true,
    verbatimModuleSyntax: true,
    // Our types are checked as well, and may need nothing but the language; the types of zod name what `dom` has.
    skipLibCheck: false,
    types: [],
    target: 'es2023',
    lib: ['es2023', 'dom'],
  }

  beforeAll(() => {
    project = join(folder, 'project')
    mkdirSync(join(project, 'node_modules'), { recursive: true })
    writeFileSync(join(project, 'package.json'), '{ "type": "module", "private": true }')
    copyFileSync(join(ROOT, 'tests/packed/sample.ts'), join(project, 'sample.ts'))
    cpSync(unpacked, join(project, 'node_modules', 'groovewright'), { recursive: true })
    for (const name of Object.keys(manifest.dependencies))
      cpSync(join(ROOT, 'node_modules', name), join(project, 'node_modules', name), { recursive: true })
  })

  it.each([
    ['by Node', { module: 'nodenext' }],
    ['by a bundler', { module: 'esnext', moduleResolution: 'bundler' }],
  ])('is compiled as its modules are found %s', (_, modules) => {
    const { status, stdout } = compiled({ ...STRICT, ...modules, noEmit: true })
    expect({ status, stdout }).toEqual({ status: 0, stdout: '' })
  })

  it('is not compiled where it is wrong', () => {
    const text = readFileSync(join(project, 'sample.ts'), 'utf8')
    writeFileSync(
      join(project, 'sample.ts'),
      text.replace("const format: Format = 'text'", "const format: Format = 'tex'"),
    )
    const { status, stdout } = compiled({ ...STRICT, module: 'nodenext', noEmit: true })
    writeFileSync(join(project, 'sample.ts'), text)
    expect(status).not.toBe(0)
    expect(stdout).toContain('tex')
  })

  it('runs', () => {
    expect(compiled({ ...STRICT, module: 'nodenext' })).toMatchObject({ status: 0, stdout: '' })
    writeFileSync(
      join(project, 'run.js'),
      `import { sample } from './sample.js'\nprocess.stdout.write(JSON.stringify(sample(${JSON.stringify(files)})))\n`,
    )
    const { status, stdout, stderr } = spawnSync(process.execPath, ['run.js'], { cwd: project, encoding: 'utf8' })
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    const made: ReturnType<typeof sample> = JSON.parse(stdout)
    for (const [name, text] of Object.entries(files)) writeFileSync(join(project, name), text)
    const bin = join(unpacked, manifest.bin.groovewright)
    const printed = (...args: string[]) =>
      spawnSync(process.execPath, [bin, ...args], { cwd: project, encoding: 'utf8' })
    expect(made.text).toBe(printed('sheet', 'good.yaml').stdout)
    expect(made.data).toBe(printed('sheet', 'good.yaml', '--format', 'json').stdout)
    expect(made.printed).toBe(printed('check', 'wrong.yaml').stderr)
    // The same sheet with its readings left open.
    expect(made.open).toMatch(/CROSS-FEED in (past 0, )?to _____/)
    expect(made.open).not.toMatch(/CROSS-FEED in (past 0, )?to \d/)
    expect(made.text).toMatch(/CROSS-FEED in (past 0, )?to \d/)
    expect(made.picture).toContain('</svg>')
    expect(made.formats).toEqual(['text', 'json', 'csv', 'svg', 'html', 'markdown'])
    expect(made.name).toBe('Relief')
    expect(made.actions).toHaveLength(made.replayed)
    expect(Math.min(made.turned, made.figures, made.widest)).toBeGreaterThan(0)
    expect([made.codes, made.means, made.refused]).toEqual([
      ['unknown-key'],
      ['a key that is not known there'],
      'tool-too-wide',
    ])
    expect(made.schemas).toEqual([
      JSON.parse(printed('schema', 'job').stdout),
      JSON.parse(printed('schema', 'sheet').stdout),
    ])
  })
})
