// What tests load, made plain modules once: the engine runs them as it runs the program. Through the test runner each call into another module goes by way
// of an object, which costs a quarter of all the time the tests take. Test files themselves stay with the runner.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'esbuild'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const OUT = join(ROOT, 'node_modules/.tested')

const madeOf = (path) => join(OUT, path.slice(ROOT.length)).replace(/\.ts$/, '.mjs')
const isMade = (path) =>
  path.endsWith('.ts') && !path.endsWith('.test.ts') && ['src', 'tests'].some((top) => path.startsWith(join(ROOT, top)))

/** Writes them, with maps that lead a stack trace back, and gives the plugin that finds them for a test. */
export async function nativeModules() {
  const files = ['src', 'tests']
    .flatMap((top) =>
      readdirSync(join(ROOT, top), { recursive: true, encoding: 'utf8' }).map((name) => join(ROOT, top, name)),
    )
    .filter(isMade)
  await build({
    entryPoints: files,
    outdir: OUT,
    outbase: ROOT,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    sourcemap: 'inline',
    logLevel: 'warning',
    plugins: [{ name: 'apart', setup: apart }],
  })
  return {
    name: 'native-modules',
    enforce: 'pre',
    resolveId(asked, from) {
      if (!from || !asked.startsWith('.')) return null
      const path = resolve(dirname(from), asked)
      return isMade(path) ? madeOf(path) : null
    },
  }
}

/** Each file by itself: another one is made too, or, where it is no TypeScript, is loaded from where it is; data are put in. */
function apart(plugin) {
  plugin.onResolve({ filter: /^\./ }, ({ path, importer }) => {
    if (importer === '' || path.endsWith('.json')) return null
    const whole = resolve(dirname(importer), path)
    return { path: pathToFileURL(isMade(whole) ? madeOf(whole) : whole).href, external: true }
  })
  plugin.onLoad({ filter: /[\\/](src|tests)[\\/].*\.ts$/ }, ({ path }) => ({
    loader: 'ts',
    contents: readFileSync(path, 'utf8')
      .replaceAll('import.meta.dirname', JSON.stringify(dirname(path)))
      .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)),
  }))
}
