import { execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { askedFor, exported, partsOf } from './parts.mjs'

/**
 * Builds dist/: the program with its dependencies and their licenses, and the library as ESM with its types; the library's dependencies are
 * left to the package that uses it. Says nothing unless it fails.
 *
 * The program is CJS, which starts faster than ESM, in files that are loaded when they are needed (parts.mjs). `await import('…')` becomes a
 * `require` of the file that has it.
 */
const root = fileURLToPath(new URL('../..', import.meta.url))
const dist = join(root, 'dist')
const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
}

const parts = await partsOf(root)
const shared = new Set([...parts.values()].flatMap(({ fromPlan }) => [...fromPlan]))
mkdirSync(dist, { recursive: true })
for (const name of readdirSync(dist))
  if (name === 'types' || isFormerPart(name)) rmSync(join(dist, name), { recursive: true })
const built = await Promise.all([
  ...[...parts].map(([name, part]) => buildPart(name, part)),
  build({ ...common, entryPoints: ['src/index.ts'], format: 'esm', packages: 'external', outfile: 'dist/index.js' }),
])
writeFileSync(join(dist, 'THIRD-PARTY-LICENSES.txt'), licenses(built.map(({ metafile }) => metafile)))
writeTypes()

/**
 * Half of what starting takes is reading the text of the program, so the text is made for that: without blanks; with short names; without what
 * lies beyond ASCII; and with functions in place of arrows, because the engine skips a function that is not called and reads an arrow all the same.
 * A map beside each file leads a stack trace back to the source.
 */
async function buildPart(name, { entries, fromPlan }) {
  const result = await build({
    ...common,
    stdin: {
      contents: [...entries.map(exported), ...(name === 'plan' ? [...shared].map(named) : [])].join('\n'),
      resolveDir: root,
    },
    format: 'cjs',
    outfile: `dist/${name}.cjs`,
    write: false,
    minifySyntax: true,
    minifyWhitespace: true,
    minifyIdentifiers: true,
    sourcemap: 'linked',
    sourcesContent: false,
    supported: { 'dynamic-import': false, arrow: false },
    // The same parser as modules: what is not used of it is left out.
    alias: { yaml: join(root, 'node_modules', 'yaml', 'browser', 'index.js') },
    plugins: [{ name: 'parts', setup: (plugin) => otherParts(plugin, name, fromPlan) }],
  })
  for (const { path, text } of result.outputFiles) writeFileSync(path, inAscii(text))
  return result
}

/** What esbuild leaves beyond ASCII stands in patterns, where an escape is the same. */
function inAscii(text) {
  if (/\\[^\0-\x7f]/.test(text))
    throw new Error('a backslash before what lies beyond ASCII would be taken for its escape')
  return text.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
}

/** A module that others take from there, under its path. */
function named(path) {
  return `export * as ${JSON.stringify(path)} from './${path}'`
}

function otherParts(plugin, name, fromPlan) {
  plugin.onResolve({ filter: /./ }, ({ kind, path, resolveDir, namespace }) => {
    if (namespace === 'plan' || namespace === 'late') return { path, external: true }
    // For commands that are programs of their own, which there are none of; loading it takes a tenth of a node start.
    if (path === 'node:child_process') return { path, namespace: 'late' }
    const asked = askedFor(root, path, resolveDir)
    if (kind !== 'dynamic-import') return fromPlan.has(asked) ? { path: asked, namespace: 'plan' } : undefined
    const [other] = [...parts].find(([, { entries }]) => entries.includes(asked))
    return other === name ? undefined : { path: `./${other}.cjs`, external: true }
  })
  plugin.onLoad({ filter: /./, namespace: 'late' }, ({ path }) => ({
    contents: `exports.spawn = (...args) => require(${JSON.stringify(path)}).spawn(...args)`,
  }))
  plugin.onLoad({ filter: /./, namespace: 'plan' }, ({ path }) => ({
    contents: `module.exports = require('./plan.cjs')[${JSON.stringify(path)}]`,
  }))
}

/** What another version of the program has left there would be packed along. */
function isFormerPart(name) {
  return /\.cjs(\.map)?$/.test(name) && !parts.has(name.replace(/\.cjs.*/, ''))
}

function licenses(metafiles) {
  const inputs = metafiles.flatMap((metafile) => Object.keys(metafile.inputs))
  const folders = new Set(inputs.map(packageFolder).filter(Boolean))
  return [...folders]
    .sort()
    .map(license)
    .join(`\n${'-'.repeat(78)}\n\n`)
}

/** The folder of the package that a bundled file belongs to, or null for our own files. */
function packageFolder(input) {
  const at = input.lastIndexOf('node_modules/')
  if (at < 0) return null
  const rest = input.slice(at + 'node_modules/'.length).split('/')
  return input.slice(0, at) + ['node_modules', ...rest.slice(0, rest[0].startsWith('@') ? 2 : 1)].join('/')
}

function license(folder) {
  const { name, version, license: kind } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'))
  const file = readdirSync(join(root, folder)).find((each) => /^licen[cs]e/i.test(each))
  if (file === undefined) throw new Error(`no license text in ${folder}`)
  return `${name} ${version} (${kind})\n\n${readFileSync(join(root, folder, file), 'utf8').trim()}\n`
}

/** Declarations only: the code is bundled. Of all that the compiler writes, what the library leads to. */
function writeTypes() {
  const tsc = join(root, 'node_modules', '.bin', process.platform === 'win32' ? 'tsc.cmd' : 'tsc')
  const options = ['--project', join(root, 'tests', 'build', 'tsconfig.json')]
  try {
    execFileSync(tsc, options, {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
      encoding: 'utf8',
      shell: process.platform === 'win32',
    })
  } catch (error) {
    process.stderr.write(error.stdout ?? '')
    throw new Error('dist/types could not be written, see above')
  }
  const types = join(dist, 'types')
  const wanted = declaredFrom(join(types, 'index.d.ts'))
  for (const entry of readdirSync(types, { recursive: true, withFileTypes: true }))
    if (entry.isFile() && !wanted.has(join(entry.parentPath, entry.name))) rmSync(join(entry.parentPath, entry.name))
}

/** The declarations that this one names, and those that they name. */
function declaredFrom(path, found = new Set()) {
  if (found.has(path)) return found
  found.add(path)
  for (const [, name] of readFileSync(path, 'utf8').matchAll(/(?:from |import\()'(\.[^']+)\.ts'/g))
    declaredFrom(join(dirname(path), `${name}.d.ts`), found)
  return found
}
