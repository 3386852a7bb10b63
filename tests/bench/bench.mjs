// npm run bench: ratios within one run only; absolute times drift with the machine.
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseDocument } from 'yaml'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const BIN = join(ROOT, 'bin', 'groovewright.js')
const JOBS = join(ROOT, 'examples', 'jobs')
const RUNS = 15
const WARM_UP = 5

const main = async () => {
  const job = process.argv[2] ? resolve(process.argv[2]) : join(JOBS, firstJob())
  const rows = [...startUp(job), ...(await throughput(job))]
  console.log(`${relative(ROOT, job)}, medians of ${RUNS} interleaved runs`)
  console.log(line('', 'ratio', 'ms', 'a second'))
  for (const { name, ratio, ms } of rows) {
    console.log(line(name, ratio.toFixed(2), ms.toFixed(2), (1000 / ms).toFixed(0)))
  }
}

const line = (name, ...columns) => name.padEnd(42) + columns.map((column) => column.padStart(10)).join('')

const firstJob = () => {
  const jobs = readdirSync(JOBS)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort()
  if (jobs.length === 0) throw new Error(`no job in ${JOBS}`)
  return jobs[0]
}

/** Whole processes, in turn, so that drift hits all of them alike. */
const startUp = (job) => {
  const commands = {
    'node -e 0 (start-up = 1)': ['-e', '0'],
    'groovewright --version': [BIN, '--version'],
    'groovewright sheet <job>': [BIN, 'sheet', job],
  }
  const names = Object.keys(commands)
  const times = Object.fromEntries(names.map((name) => [name, []]))
  for (const name of names) launch(commands[name])
  for (let run = 0; run < RUNS; run++) {
    for (const name of names) times[name].push(elapsed(() => launch(commands[name])))
  }
  return against(names[0], names, (name) => median(times[name]))
}

const launch = (args) => {
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' })
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`)
}

/** One warm process: the job's own text through the parser alone, and the whole way to the printed sheet. */
const throughput = async (job) => {
  const { sheetFor, compile, PRINTERS } = await import(join(ROOT, 'dist', 'index.js'))
  const text = readFileSync(job, 'utf8')
  const plan = () => compile(job, load).plan
  if (plan() === null) throw new Error(`${job} does not compile`)
  const work = {
    'yaml.parseDocument of the job (= 1)': () => parseDocument(text),
    'the job compiled to a proven plan': plan,
    'the job compiled and its sheet printed': () => PRINTERS.text(sheetFor(plan())),
  }
  const names = Object.keys(work)
  const times = Object.fromEntries(names.map((name) => [name, []]))
  for (let run = 0; run < RUNS + WARM_UP; run++) {
    for (const name of names) {
      const each = perCall(work[name])
      if (run >= WARM_UP) times[name].push(each)
    }
  }
  return against(names[0], names, (name) => median(times[name]))
}

const load = (path, from) => {
  const file = from === null ? path : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}

/** Milliseconds a call, over at least 20 ms of calls. */
const perCall = (call) => {
  let calls = 0
  const start = performance.now()
  let spent = 0
  do {
    call()
    calls++
    spent = performance.now() - start
  } while (spent < 20)
  return spent / calls
}

const against = (base, names, ms) => names.map((name) => ({ name, ms: ms(name), ratio: ms(name) / ms(base) }))
const elapsed = (call) => {
  const start = performance.now()
  call()
  return performance.now() - start
}
const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1]

await main()
