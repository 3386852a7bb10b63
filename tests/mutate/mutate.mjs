// npm run mutate -- --sample 300 --seed 1 [--room replay,judge] [--minutes 60] [--quick]
// npm run mutate -- --at judge/beside.ts:40,replay/walls.ts:42 [--quick | --own]: every mistake on these lines.
// Makes src/ wrong in one small way at a time and sees whether a test fails. Prints the score by room, and what survived.
// The tests are bundled anew for each mistake and run in one process until the first that fails: those of the room, cheapest first, then all others that
// load the file. First they are all run without a mistake: a test that fails then is left out, and told.
// --quick: by the tests of the room and of the rooms nearest to it; --own: by those of the room alone, or --own --with
// cases/examples.test.ts,features and of these. Then the score is the least that it can be.
// A mistake whose tests do not end is counted apart.
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { dirname, join, sep } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { transformSync } from 'esbuild'
import { bundled, bundler, reachOf, testsUnder } from './bundle.mjs'
import { placesIn } from './places.mjs'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const RUN = fileURLToPath(new URL('run.mjs', import.meta.url))
/** The rooms whose tests plan and replay, after the room itself. */
const NEAR = ['judge', 'sequence', 'features', 'budget', 'brute', 'replay', 'finish', 'written', 'planning', 'sheet']
const FAR = [
  'job',
  'cases/examples.test.ts',
  'published',
  'print',
  'slips',
  'gains',
  'tools',
  'phrase',
  'words',
  'properties',
]
/** A test file that takes this much longer than without a mistake does not end. */
const LIMIT = { times: 8, ms: 30_000 }

const { values } = parseArgs({
  options: {
    sample: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    room: { type: 'string', default: '' },
    minutes: { type: 'string', default: '600' },
    quick: { type: 'boolean', default: false },
    own: { type: 'boolean', default: false },
    with: { type: 'string', default: '' },
    at: { type: 'string', default: '' },
  },
})

/** The same numbers on every machine: mulberry32. */
const random = (seed) => () => {
  seed = (seed + 0x6d2b79f5) | 0
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed)
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
  return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
}

const equivalent = JSON.parse(readFileSync(join(ROOT, 'tests/mutate/equivalent.json'), 'utf8'))

const mutantsIn = (files) =>
  files.flatMap((file) => {
    const text = readFileSync(join(ROOT, 'src', file), 'utf8')
    return placesIn(text).map((place) => ({ ...place, file, text, wrong: wrongOf(text, place) }))
  })
const wrongOf = (text, { from, to, put }) => text.slice(0, from) + put + text.slice(to)
const counts = (mutant) => builds(mutant.wrong) && !equivalent.some((each) => same(each, mutant))

const draw = (rooms, count, next) => {
  const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && file.includes(sep))
    .filter((file) => rooms.length === 0 || rooms.includes(file.split(sep)[0]))
    .sort()
  const all = mutantsIn(files)
  const drawn = []
  while (drawn.length < count && all.length > 0) {
    const [mutant] = all.splice(Math.floor(next() * all.length), 1)
    if (counts(mutant)) drawn.push(mutant)
  }
  return drawn
}

const onLines = (places) =>
  places.flatMap((place) => {
    const [file, line] = place.split(':')
    return mutantsIn([file.split('/').join(sep)]).filter((one) => lineOf(one) === Number(line) && counts(one))
  })

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

const TIMED_OUT = 'did not end'
const roomOf = ({ file }) => dirname(file).split(sep)[0]

/** A folder of bundles with a context of its own, so that many can be made at a time. */
const bench = async (tests) => {
  const folder = mkdtempSync(join(tmpdir(), 'groovewright-mutate-'))
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'))
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}')
  mkdirSync(join(folder, 'out'))
  let changed = null
  const context = await bundler(ROOT, tests, join(folder, 'out'), () => changed)
  return {
    /** The files that each test loads. */
    make: async (mistake) => {
      changed = mistake
      return reachOf((await context.rebuild()).metafile, tests)
    },
    /** `{ failed, late, times }`: the line that tells the first failure, or the test that does not end. */
    run: (some, limitOf) => ran(join(folder, 'out'), some, limitOf),
    end: async () => {
      await context.dispose()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

const ran = (folder, tests, limitOf) =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, [RUN, folder], { cwd: ROOT, stdio: ['pipe', 'pipe', 'ignore'] })
    const byName = new Map(tests.map((test) => [bundled(test), test]))
    const times = new Map()
    let failed = null
    let late = null
    let now = null
    let timer
    createInterface({ input: child.stdout }).on('line', (line) => {
      const [word, name, ms] = line.split(' ')
      if (word === 'start') {
        now = byName.get(name)
        timer = setTimeout(() => {
          late = now
          child.kill('SIGKILL')
        }, limitOf(now))
      } else clearTimeout(timer)
      if (word === 'end') times.set(now, Number(ms))
      if (word === 'fail') failed = line
    })
    child.on('close', (status) => {
      clearTimeout(timer)
      // A process that died without a word ran out of memory or of stack: the test that was running found it.
      resolve({
        failed: failed ?? (status === 0 || late ? null : `fail ${now}: ended with ${status}`),
        late,
        at: now,
        times,
      })
    })
    child.stdin.on('error', () => {})
    child.stdin.end(tests.map(bundled).join('\n'))
  })

/** Milliseconds of each test file as it is; what fails is told and left out. */
const measured = async (each, tests) => {
  await each.make(null)
  const times = new Map()
  let left = tests
  while (left.length > 0) {
    const { failed, at, times: some } = await each.run(left, () => 600_000)
    for (const [test, ms] of some) times.set(test, ms)
    if (failed !== null) process.stderr.write(`left out, fails as it is: ${failed}\n`)
    left = failed === null ? [] : left.slice(left.indexOf(at) + 1)
  }
  return times
}

const main = async () => {
  const rooms = values.room.split(',').filter(Boolean)
  const drawn = values.at
    ? onLines(values.at.split(','))
    : draw(rooms, Number(values.sample), random(Number(values.seed)))
  const drawnRooms = new Set(drawn.map(roomOf))
  const there = readdirSync(join(ROOT, 'tests'))
  const names = new Set([
    ...[...drawnRooms].filter((room) => there.includes(room)),
    ...(values.own ? values.with.split(',').filter(Boolean) : NEAR),
    ...(values.quick || values.own ? [] : FAR),
  ])
  const tests = testsUnder(ROOT, [...names])
  const benches = await Promise.all(Array.from({ length: availableParallelism() }, () => bench(tests)))
  const parts = await Promise.all(
    benches.map((each, at) =>
      measured(
        each,
        tests.filter((_, i) => i % benches.length === at),
      ),
    ),
  )
  const times = new Map(parts.flatMap((part) => [...part]))
  process.stderr.write(`${times.size} test files\n`)
  const until = Date.now() + Number(values.minutes) * 60_000
  const scores = new Map()
  const work = async (each) => {
    while (drawn.length > 0 && Date.now() < until) {
      const mutant = drawn.shift()
      const room = roomOf(mutant)
      const reach = await each.make({ path: join(ROOT, 'src', mutant.file), text: mutant.wrong })
      const loading = [...times.keys()].filter((test) => reach.get(test).has(`src/${mutant.file.split(sep).join('/')}`))
      const rank = (test) => (test.startsWith(`${room}${sep}`) ? 0 : 1)
      loading.sort((a, b) => rank(a) - rank(b) || times.get(a) - times.get(b))
      const { failed, late } = await each.run(loading, (test) => LIMIT.ms + LIMIT.times * times.get(test))
      const score = scores.get(room) ?? { killed: 0, late: 0, all: 0 }
      scores.set(room, score)
      score.all++
      if (failed !== null) score.killed++
      if (late !== null) score.late++
      process.stderr.write(
        `${mutant.sort} src/${mutant.file}:${lineOf(mutant)} ${failed ?? (late ? `${TIMED_OUT} ${late}` : 'SURVIVED')}\n`,
      )
      if (failed === null)
        console.log(
          `${late ? TIMED_OUT : 'survived'} ${mutant.sort} src/${mutant.file}:${lineOf(mutant)}: ${lineText(mutant)}  [${mutant.text.slice(mutant.from, mutant.to).trim()} -> ${mutant.put.trim()}]`,
        )
    }
  }
  try {
    await Promise.all(benches.map(work))
  } finally {
    await Promise.all(benches.map((each) => each.end()))
  }
  for (const [room, { killed, late, all }] of [...scores].sort())
    console.log(
      `${room.padEnd(12)} ${killed} of ${all}  ${Math.round((100 * killed) / all)} %${late === 0 ? '' : `, ${late} did not end`}`,
    )
}

await main()
