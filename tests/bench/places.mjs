import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))
export const BIN = join(ROOT, 'bin', 'groovewright.js')
export const EXAMPLES = join(ROOT, 'examples', 'jobs')

/** The library as it is built, and what the command `check` is in the program as it is built. */
export const library = () => import(join(ROOT, 'dist', 'index.js'))
export const commands = async () => (await import(join(ROOT, 'dist', 'cli-commands-check.cjs'))).default

/** A job and every file that it names, read once: the path as it was asked for, and what is in it. */
export const filesOf = async (job) => {
  const { compile } = await library()
  const files = new Map()
  const plan = compile(job, (path, from) => {
    const file = from === null ? path : join(dirname(from), path)
    files.set(file, readFileSync(file, 'utf8'))
    return { ok: true, file, bytes: files.get(file) }
  }).plan
  if (plan === null) throw new Error(`${job} does not compile`)
  return files
}

/** The loader of `compile`, from memory. */
export const loaderOf = (files) => (path, from) => {
  const file = from === null ? path : join(dirname(from), path)
  return { ok: true, file, bytes: files.get(file) }
}
