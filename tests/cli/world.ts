import { normalize, resolve } from 'node:path'
import type { Entry, Io } from '../../src/cli/io.ts'
import { run } from '../../src/cli/run.ts'
import { keptAnswers } from './kept-answers.ts'

export type World = {
  readonly files?: Record<string, string>
  readonly stdin?: string
  readonly env?: Record<string, string>
  /** Standard input, output and error are terminals. */
  readonly terminal?: boolean
  /** An error code that writing a file ends in. */
  readonly writing?: string
}

export type Outcome = {
  readonly status: number
  readonly out: string
  readonly err: string
  readonly files: Record<string, string>
}

const told = keptAnswers<Outcome>()

const failure = (code: string): Error => Object.assign(new Error(code), { code })

/** Runs the whole program in a world of its own: no process, no disk. What it answered a short while ago to the same question in the same world is told again. */
export const runIn = async (world: World, ...args: string[]): Promise<Outcome> => {
  const outcome = await told(JSON.stringify([world, args]), () => runAnew(world, ...args))
  return { ...outcome, files: { ...outcome.files } }
}

/** Where the same question is asked twice on purpose. */
export const runAnew = async (world: World, ...args: string[]): Promise<Outcome> => {
  const files: Record<string, string> = { ...world.files }
  let out = ''
  let err = ''
  const terminal = world.terminal === true
  const io: Io = {
    stdin: { isTTY: terminal && world.stdin === undefined, read: async () => Buffer.from(world.stdin ?? '') },
    stdout: {
      isTTY: terminal,
      write: (text) => {
        out += text
      },
    },
    stderr: {
      isTTY: terminal,
      write: (text) => {
        err += text
      },
    },
    env: world.env ?? {},
    realPath: (path) => resolve('/village/workshop', path),
    samePath: (one, other) => normalize(one) === normalize(other),
    readFile: (path) => {
      const text = files[path]
      if (text !== undefined) return Buffer.from(text)
      throw failure(isFolder(files, path) ? 'EISDIR' : 'ENOENT')
    },
    readDir: (path) => {
      if (path in files) return null
      if (!isFolder(files, path)) throw failure('ENOENT')
      return entries(files, path)
    },
    makeFolder: () => {},
    writeFile: (path, text, force) => {
      if (world.writing !== undefined) throw failure(world.writing)
      if (path in files && !force) throw failure('EEXIST')
      files[path] = text
    },
  }
  const status = await run(args, io)
  return { status, out, err, files }
}

const isFolder = (files: Record<string, string>, path: string): boolean =>
  Object.keys(files).some((name) => name.startsWith(`${path}/`))

const entries = (files: Record<string, string>, path: string): Entry[] => {
  const rest = Object.keys(files)
    .filter((name) => name.startsWith(`${path}/`))
    .map((name) => name.slice(path.length + 1))
  const names = new Map(rest.map((name) => [name.split('/')[0] ?? '', name.includes('/')]))
  return [...names].map(([name, folder]) => ({ name, folder }))
}

export const LATHE = `name: Bench lathe
units: inch
cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
spindle-speeds: [60, 95, 150, 240, 380, 600, 950]
`

const job = (lathe: string, groove: string): string => `title: Cider press screw
units: inch
part: { material: mild steel, held: chuck, overhang: 4, diameter: 1.5, length: 5 }
lathe: ${lathe}
tools:
  neck: { shape: square, width: 0.148, reach: 0.125 }
features:
  - { kind: groove, name: Relief, near: 1.125, ${groove}, tool: neck }
`

/** It can be cut and holds; it holds only if the layout line is better than it is; the tool is too wide; a key is misspelt. */
export const good = (lathe = 'bench.yaml'): string => job(lathe, 'width: 0.156 ±0.005, depth: 0.070 +0.004 -0')
export const mayNotHold = (): string => job('bench.yaml', 'width: 0.156, depth: 0.070 ±0.0005')
export const refused = (): string => job('bench.yaml', 'width: 0.100 ±0.002, depth: 0.070')
export const misspelt = (): string => job('bench.yaml', 'widht: 0.156, depth: 0.070')

export const SHOP = { 'shop/good.yaml': good(), 'shop/bench.yaml': LATHE }
