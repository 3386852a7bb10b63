// npm run bench: ratios within one run only; absolute times drift with the machine.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseDocument } from 'yaml'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const BIN = join(ROOT, 'bin', 'groovewright.js')
const JOBS = join(ROOT, 'examples', 'jobs')
const RUNS = 15

const main = async () => {
  const job = process.argv[2] ? resolve(process.argv[2]) : join(JOBS, firstJob())
  const rows = [...startUp(job), ...(await throughput(job))]
  console.log(`job ${job.slice(ROOT.length)}, medians of ${RUNS} interleaved runs`)
  for (const { name, ratio, ms } of rows) {
    console.log(`${name.padEnd(44)}${ratio.toFixed(2).padStart(8)}${`${ms.toFixed(2)} ms`.padStart(14)}`)
  }
}

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

/** One warm process: the job's own text through the parser alone, and through the whole pipeline. */
const throughput = async (job) => {
  const { compile } = await import(join(ROOT, 'dist', 'index.js'))
  const text = readFileSync(job, 'utf8')
  const load = (path) => readIncluded(path)
  const work = {
    'yaml.parseDocument of the job (= 1)': () => parseDocument(text),
    'compile the job to a proven plan': () => compile(job, load),
  }
  const plan = compile(job, load).plan
  if (!plan) throw new Error(`${job} does not compile`)
  const names = Object.keys(work)
  const times = Object.fromEntries(names.map((name) => [name, []]))
  for (let run = 0; run < RUNS + 5; run++) {
    for (const name of names) {
      const each = perCall(work[name])
      if (run >= 5) times[name].push(each)
    }
  }
  return against(names[0], names, (name) => median(times[name]))
}

const readIncluded = (path) => {
  const file = existsSync(path) ? path : join(dirname(JOBS), path)
  return readFileSync(file, 'utf8')
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
