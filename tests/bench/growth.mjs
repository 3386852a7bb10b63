import { basename, dirname, join } from 'node:path'
import { groovesJob, steppedJob, wideJob } from './grown.mjs'
import { exponent, median } from './measure.mjs'
import { commands, filesOf, library } from './places.mjs'

const MOST_ROUNDS = 15

/** One row for each thing that a job may have many of. */
export const growth = async (job, rounds) => [
  await rowOf('features in a job', await planned([10, 22, 46, 100].map(groovesJob), features), rounds),
  await rowOf('stations of a stepped form', await planned(CUSPS.map(steppedJob), places('finish')), rounds),
  await rowOf('places of a wide groove', await planned(WIDTHS.map(wideJob), places('rough')), rounds),
  await rowOf('jobs given to check', await checked(job, [1, 2, 5, 10, 20]), rounds),
]

/** Ridges that take some 50 to 150 stations, and widths that take some 11 to 70 places; what they really take is counted in the plan. */
const CUSPS = [0.0012, 0.0008, 0.0004, 0.0002, 0.00013]
const WIDTHS = [0.3, 0.5, 0.8, 1.25, 2]

/** All sizes in turn, over and over until the time is up; the first round only warms up. */
const rowOf = async (name, works, { least, seconds }) => {
  const times = works.map(() => [])
  const end = performance.now() + seconds * 1000
  for (let round = -1; round < least || (round < MOST_ROUNDS && performance.now() < end); round++)
    for (const [i, { run }] of works.entries()) {
      const start = performance.now()
      await run()
      if (round >= 0) times[i].push(performance.now() - start)
    }
  const sizes = works.map(({ size }) => size)
  const medians = times.map(median)
  const told = sizes.map((size, i) => `${size}: ${(medians[i] / medians[0]).toFixed(2)}`)
  return { name, value: exponent(sizes, medians), more: `${told.join('  ')}   (${times[0].length} rounds)` }
}

/** Jobs compiled and printed, with their sizes as the plan has them. */
const planned = async (texts, sizeOf) => {
  const { compile, PRINTERS, sheetFor } = await library()
  return texts.map((text) => {
    const plan = () => compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text })).plan
    return { size: sizeOf(plan()), run: () => PRINTERS.text(sheetFor(plan())) }
  })
}

const features = (plan) => allPlanned(plan).length

/** Places along the work that the tool is fed in at, for the passes of this purpose. */
const places = (purpose) => (plan) => {
  const [{ operation }] = allPlanned(plan)
  const fed = operation.moves.flatMap(({ action, purpose: why }, i, moves) =>
    action === 'feed-in' && why === purpose ? [moves.slice(0, i).findLast(({ slide }) => slide === 'compound')] : [],
  )
  return new Set(fed.map((move) => move?.count)).size
}

/** Prose with its numbers left as data. */
const told = (reason) =>
  [reason]
    .flat()
    .map((part) => part.value ?? part)
    .join('')

/** A refusal takes no time: it would be measured as a miracle. */
const allPlanned = (plan) => {
  if (plan === null) throw new Error('a job of the bench cannot be read')
  for (const { status, name, reason } of plan.features)
    if (status !== 'planned') throw new Error(`the bench is refused ${name}: ${told(reason)}`)
  return plan.features
}

/** The command itself, as often as it is to be given the job, under another name each time. */
const checked = async (job, sizes) => {
  const files = await filesOf(job)
  const { checkCommand } = await commands()
  const name = (i) => join(dirname(job), `${i}-${basename(job)}`)
  const isCopy = (path) => path.endsWith(`-${basename(job)}`)
  const sink = { isTTY: false, write: () => {} }
  const io = {
    stdin: { isTTY: true },
    stdout: sink,
    stderr: sink,
    env: {},
    readFile: (path) => Buffer.from(files.get(isCopy(path) ? job : path)),
    readDir: () => null,
    realPath: (path) => path,
  }
  return sizes.map((size) => ({
    size,
    run: async () => {
      const status = await checkCommand(
        Array.from({ length: size }, (_, i) => name(i)),
        { format: 'text' },
        io,
      )
      if (status !== 0) throw new Error(`check ended with ${status}`)
    },
  }))
}
