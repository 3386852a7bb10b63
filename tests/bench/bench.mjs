// npm run bench [-- --quick] [JOB…]: ratios within one run only; absolute times drift with the machine.
import { readdirSync } from 'node:fs'
import { basename, join, resolve } from 'node:path'
import { classes } from './class.mjs'
import { growth } from './growth.mjs'
import { EXAMPLES } from './places.mjs'
import { startUp } from './start-up.mjs'
import { throughput } from './throughput.mjs'

/** Pairs of processes, passes over all jobs, and rounds of each thing that grows: so many at the least, and more while the seconds last. */
const FULL = { pairs: 21, passes: 9, rounds: { least: 3, seconds: 8 } }
const QUICK = { pairs: 7, passes: 3, rounds: { least: 1, seconds: 2 } }

const main = async () => {
  const args = process.argv.slice(2)
  const runs = args.includes('--quick') ? QUICK : FULL
  const named = args.filter((arg) => arg !== '--quick').map((job) => resolve(job))
  const all = readdirSync(EXAMPLES).filter((name) => name.endsWith('.yaml'))
  const examples = all.sort().map((name) => join(EXAMPLES, name))
  const one = (number) => examples.find((path) => basename(path).startsWith(`${number}-`))
  const printed = named.length > 0 ? named : [one('01'), one('14')]

  table(`Whole processes against node -e 0, medians of ${runs.pairs} pairs`, startUp(printed, runs.pairs))
  const jobs = named.length > 0 ? named : examples
  table(
    `Compiled and printed against parseDocument of the same texts, one warm process, medians of ${runs.passes} passes`,
    await throughput(jobs, runs.passes),
  )
  if (named.length > 0) return
  table('A class: what one learner more costs, against node -e 0', classes(runs.pairs))
  table(
    'How the time grows: its exponent over the size (1 = in proportion); then each size and its time to that of the first',
    await growth(one('01'), runs.rounds),
  )
}

const table = (head, rows) => {
  console.log(`${head}\n`)
  for (const { name, value, more = '' } of rows)
    console.log(`  ${name.padEnd(40)}${value.toFixed(2).padStart(9)}   ${more}`.trimEnd())
  console.log()
}

await main()
