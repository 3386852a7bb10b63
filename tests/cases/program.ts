import { readdirSync, readFileSync, realpathSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Io } from '../../src/cli/io.ts'
import { run } from '../../src/cli/run.ts'
import { keptAnswers } from '../cli/kept-answers.ts'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))

export type Ran = { readonly status: number; readonly stdout: string; readonly stderr: string }

const told = keptAnswers<Ran>()

/**
 * The whole program without a child process: real files of the project, streams that are no terminal. Paths are relative to the project. What it
 * answered a short while ago to the same question is told again.
 */
export const program = (...args: string[]): Promise<Ran> => told(JSON.stringify(args), () => programAnew(...args))

/** Where the same question is asked twice on purpose. */
async function programAnew(...args: string[]): Promise<Ran> {
  let [stdout, stderr] = ['', '']
  const io: Io = {
    stdin: { isTTY: true, read: async () => new Uint8Array() },
    stdout: {
      isTTY: false,
      write: (text) => {
        stdout += text
      },
    },
    stderr: {
      isTTY: false,
      write: (text) => {
        stderr += text
      },
    },
    env: {},
    readFile: (path) => readFileSync(join(ROOT, path)),
    realPath: (path) => realpathSync(join(ROOT, path)),
    samePath: (one, other) => join(ROOT, one) === join(ROOT, other),
    readDir: (path) => folder(join(ROOT, path)),
    makeFolder: (path) => {
      throw new Error(`nothing may be written here: ${path}`)
    },
    writeFile: (path) => {
      throw new Error(`nothing may be written here: ${path}`)
    },
  }
  return {
    status: await run(args, io),
    get stdout() {
      return stdout
    },
    get stderr() {
      return stderr
    },
  }
}

const folder = (path: string) =>
  statSync(path).isDirectory()
    ? readdirSync(path, { withFileTypes: true }).map((entry) => ({ name: entry.name, folder: entry.isDirectory() }))
    : null

/** The YAML files of a folder of the project, without their ending, in order. */
export const yamlNames = (path: string): string[] =>
  readdirSync(join(ROOT, path))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -5))
    .sort()

export const projectText = (path: string): string => readFileSync(join(ROOT, path), 'utf8')

/** What is kept of an output: compared to the letter, or written anew where the goldens are being accepted. */
export function golden(path: string, text: string): string {
  if (process.env.GROOVEWRIGHT_ACCEPT === '1') writeFileSync(join(ROOT, path), text)
  return projectText(path)
}
