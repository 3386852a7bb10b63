// npm run mutate -- --sample 300 --seed 1 [--room replay,judge] [--minutes 60] [--quick]
// Makes src/ wrong in one small way at a time, in a copy of the tree, and sees whether a test fails. Prints the score by room, and what survived.
// --quick: by the tests of the room and the cheap ones alone; then what survives is only to be looked at, and the score is the least it can be.
// A mistake whose tests do not end in time is counted apart: it may never end, or the machine is busy.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { transformSync } from 'esbuild'
import { placesIn } from './places.mjs'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
/** Cheapest first, after the tests of the room itself: the other rooms, then what plans and replays many whole jobs. */
const THEN = [
  ['judge', 'sequence', 'features', 'budget', 'brute', 'sheet', 'planning'],
  ['replay', 'finish', 'job', 'written', 'cases/examples.test.ts', 'published', 'print', 'slips', 'gains'],
  ['properties'],
]
const LIMIT = 300_000
const VITEST = join('node_modules', 'vitest', 'vitest.mjs')
const inTests = (name) => `tests/${name}`

const { values } = parseArgs({
  options: {
    sample: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    room: { type: 'string', default: '' },
    minutes: { type: 'string', default: '600' },
    quick: { type: 'boolean', default: false },
  },
})

/** The same numbers on every machine: mulberry32. */
const random = (seed) => () => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
}

const draw = (rooms, count, next) => {
  const equivalent = JSON.parse(readFileSync(join(ROOT, 'tests/mutate/equivalent.json'), 'utf8'))
  const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && file.includes(sep))
    .filter((file) => rooms.length === 0 || rooms.includes(file.split(sep)[0]))
    .sort()
  const all = files.flatMap((file) => {
    const text = readFileSync(join(ROOT, 'src', file), 'utf8')
    return placesIn(text).map((place) => ({ ...place, file, text }))
  })
  const drawn = []
  while (drawn.length < count && all.length > 0) {
    const [one] = all.splice(Math.floor(next() * all.length), 1)
    const mutant = { ...one, wrong: one.text.slice(0, one.from) + one.put + one.text.slice(one.to) }
    if (builds(mutant.wrong) && !equivalent.some((each) => same(each, mutant))) drawn.push(mutant)
  }
  return drawn
}

const builds = (text) => {
  try {
    transformSync(text, { loader: 'ts' })
    return true
  } catch {
    return false
  }
}

const lineOf = ({ text, from }) => text.slice(0, from).split('\n').length + (text[from] === '\n' ? 1 : 0)
const lineText = ({ text, from }) =>
  text
    .slice(text.lastIndexOf('\n', from) + 1)
    .split('\n')[0]
    .trim()
const same = ({ file, line, sort }, mutant) => file === mutant.file && sort === mutant.sort && line === lineText(mutant)

const copyOfTree = () => {
  const folder = mkdtempSync(join(tmpdir(), 'groovewright-mutate-'))
  for (const each of [
    'src',
    'tests',
    'examples',
    'bin',
    'dist',
    'README.md',
    'DEVELOPERS.md',
    'package.json',
    'tsconfig.json',
  ])
    cpSync(join(ROOT, each), join(folder, each), { recursive: true })
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'))
  return folder
}

const TIMED_OUT = 'TIMED OUT'

/** The first set of tests that fails, `TIMED_OUT` if one does not end, or null: it survived. */
const killedBy = (folder, { file, wrong, text }) => {
  const path = join(folder, 'src', file)
  writeFileSync(path, wrong)
  const room = file.split(sep)[0]
  const own = readdirSync(join(folder, 'tests')).includes(room) ? [room] : []
  try {
    const groups = values.quick ? THEN.slice(0, 1) : THEN
    for (const tests of [own, ...groups.map((group) => group.filter((each) => each !== room))]) {
      if (tests.length === 0) continue
      // In threads, so that a mutant that never ends dies with its process.
      const { status, error } = spawnSync(
        process.execPath,
        [
          VITEST,
          'run',
          '--config',
          'tests/vitest.config.ts',
          '--pool',
          'threads',
          '--bail',
          '1',
          ...tests.map(inTests),
        ],
        { cwd: folder, timeout: LIMIT, killSignal: 'SIGKILL', stdio: 'ignore' },
      )
      if (error?.code === 'ETIMEDOUT') return TIMED_OUT
      if (error !== undefined) throw error
      if (status !== 0) return tests[0]
    }
    return null
  } finally {
    writeFileSync(path, text)
  }
}

const main = () => {
  const rooms = values.room.split(',').filter(Boolean)
  const drawn = draw(rooms, Number(values.sample), random(Number(values.seed)))
  const folder = copyOfTree()
  const until = Date.now() + Number(values.minutes) * 60_000
  const scores = new Map()
  try {
    for (const mutant of drawn) {
      if (Date.now() > until) break
      const room = dirname(mutant.file).split(sep)[0]
      const score = scores.get(room) ?? { killed: 0, late: 0, all: 0 }
      scores.set(room, score)
      score.all++
      const by = killedBy(folder, mutant)
      process.stderr.write(`${mutant.sort} src/${mutant.file}:${lineOf(mutant)} ${by ?? 'SURVIVED'}\n`)
      if (by === TIMED_OUT) score.late++
      else if (by !== null) score.killed++
      if (by === null || by === TIMED_OUT)
        console.log(
          `${by ?? 'survived'} ${mutant.sort} src/${mutant.file}:${lineOf(mutant)}: ${lineText(mutant)}  [${mutant.text.slice(mutant.from, mutant.to).trim()} -> ${mutant.put.trim()}]`,
        )
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  for (const [room, { killed, late, all }] of [...scores].sort())
    console.log(
      `${room.padEnd(12)} ${killed} of ${all}  ${Math.round((100 * killed) / all)} %${late === 0 ? '' : `, ${late} timed out`}`,
    )
}

main()
