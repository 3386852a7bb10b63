import { execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

/**
 * Builds dist/: the program as one CJS file (starts faster than ESM) with its dependencies and their licenses, and the library as ESM
 * with its types; the library's dependencies are left to the package that uses it. Says nothing unless it fails.
 */
const root = fileURLToPath(new URL('../..', import.meta.url))
const dist = join(root, 'dist')
const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  charset: 'utf8',
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
}

rmSync(join(dist, 'types'), { recursive: true, force: true })
mkdirSync(dist, { recursive: true })
const [program, library] = await Promise.all([
  build({ ...common, entryPoints: ['src/cli/main.ts'], format: 'cjs', outfile: 'dist/groovewright.cjs' }),
  build({ ...common, entryPoints: ['src/index.ts'], format: 'esm', packages: 'external', outfile: 'dist/index.js' }),
])
writeFileSync(join(dist, 'THIRD-PARTY-LICENSES.txt'), licenses([program.metafile, library.metafile]))
writeTypes()

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

/** Declarations only: the code is bundled. */
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
}
