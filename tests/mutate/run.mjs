// node run.mjs FOLDER < names of bundled test files, one a line
// Runs them in order and stops at the first test that fails. Standard output tells `start NAME`, then `end NAME MILLISECONDS` or `fail NAME: TEST`.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

const folder = process.argv[2]
const load = (name) => import(pathToFileURL(join(folder, name)).href)
// What a program that is tested in this process prints is no report of ours.
const report = process.stdout.write.bind(process.stdout)
process.stdout.write = () => true
process.stderr.write = () => true
const { taken } = await load('stand-in.js')

const failed = (name, what) => {
  report(`fail ${name}: ${what}\n`)
  process.exit(1)
}

process.on('unhandledRejection', (error) => failed('?', String(error)))
for (const name of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  report(`start ${name}\n`)
  const begun = performance.now()
  try {
    await load(name)
  } catch (error) {
    failed(name, `cannot be loaded: ${error}`)
  }
  for (const each of taken()) {
    try {
      await each.run()
    } catch (error) {
      failed(name, `${each.name}: ${String(error?.message ?? error).slice(0, 300)}`)
    }
  }
  report(`end ${name} ${Math.round(performance.now() - begun)}\n`)
}
process.exit(0)
