// The tests and what they use of src/ as plain modules, made anew with one file of src/ changed.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, sep } from 'node:path'
import { context } from 'esbuild'

/** Every test file under these names of tests/: folders or files. */
export const testsUnder = (root, names) =>
  names.flatMap((name) =>
    name.endsWith('.ts')
      ? [name]
      : readdirSync(join(root, 'tests', name), { recursive: true, encoding: 'utf8' })
          .filter((file) => file.endsWith('.test.ts'))
          .map((file) => join(name, file))
          .sort(),
  )

/** A path of the bundle by the path of its test below tests/. */
export const bundled = (test) => test.replace(/\.ts$/, '.js')

/** A context of the bundler. `changed` is asked at each build: `{ path, text }` of the file that is read in another form, or null. */
export const bundler = async (root, tests, out, changed) => {
  const here = {
    name: 'here',
    setup(build) {
      build.onResolve({ filter: /^vitest$/ }, () => ({ path: join(root, 'tests/mutate/stand-in.mjs') }))
      build.onLoad({ filter: /[\\/](src|tests)[\\/].*\.ts$/ }, ({ path }) => {
        const one = changed()
        const text = one?.path === path ? one.text : readFileSync(path, 'utf8')
        return {
          loader: 'ts',
          contents: text
            .replaceAll('import.meta.dirname', JSON.stringify(dirname(path)))
            .replaceAll('import.meta.url', JSON.stringify(`file://${path}`)),
        }
      })
    },
  }
  return context({
    absWorkingDir: root,
    entryPoints: [
      ...tests.map((test) => ({ in: join('tests', test), out: bundled(test).slice(0, -3) })),
      { in: 'tests/mutate/stand-in.mjs', out: 'stand-in' },
    ],
    outdir: out,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    metafile: true,
    logLevel: 'silent',
    plugins: [here],
  })
}

/** For each test the files of src/ that it loads, at once or later. */
export const reachOf = ({ inputs }, tests) =>
  new Map(
    tests.map((test) => {
      const seen = new Set()
      const add = (path) => {
        if (seen.has(path)) return
        seen.add(path)
        for (const each of inputs[path]?.imports ?? []) add(each.path)
      }
      add(`tests/${test.split(sep).join('/')}`)
      return [test, seen]
    }),
  )
