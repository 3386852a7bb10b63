import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { breaches } from '../cases/json-schema.ts'
import { type Outcome, runIn } from '../cli/world.ts'
import { jobs } from '../properties/jobs.ts'
import { changes } from './mutations.ts'
import { disagreements, followed } from './oracles.ts'

/** A list that is not proven, a form that is not right: that is the product, and nothing is wrong with the run. */
const SAYS_ON_PAPER: ReadonlySet<string> = new Set(['replay', 'grind', 'grade'])

type Case = { readonly text: string; readonly spoil: (text: string) => string; readonly seed: number }

/** Now and then another tool, narrow enough for most of these forms, opens them up. */
const opened = (text: string, thousandths: number): string => {
  if (thousandths > 40 || !/\n {4}(?:shape: concave|angle: )/.test(text) || !/\ntools:\n/.test(text)) return text
  const unit = text.includes('\nunits: mm') ? 0.0254 : 0.001
  const tool = `  opener: { shape: square, width: ${((thousandths + 5) * unit).toFixed(4)}, reach: ${(900 * unit).toFixed(2)} }`
  return text
    .replace('\ntools:\n', `\ntools:\n${tool}\n`)
    .replace(/\n( {4})(shape: concave|angle: .*)/, '\n$1$2\n$1rough-tool: opener')
}

const cases: fc.Arbitrary<Case> = fc.record({
  text: fc.tuple(jobs, fc.nat(200)).map(([job, thousandths]) => opened(job.text, thousandths)),
  spoil: changes,
  seed: fc.nat(),
})

type Tally = {
  cases: number
  runs: number
  slowest: number
  readonly statuses: Map<string, number>
  readonly finds: Map<string, string>
}

/** Draws cases until the seconds are over; the number of different finds. Heap and time are those of this process. */
export const campaign = async (seconds: number, seed: number): Promise<number> => {
  const tally: Tally = { cases: 0, runs: 0, slowest: 0, statuses: new Map(), finds: new Map() }
  const end = performance.now() + seconds * 1000
  for (let round = 0; performance.now() < end; round++)
    for (const one of fc.sample(cases, { seed: seed + round, numRuns: 20 })) {
      if (performance.now() >= end) break
      tally.cases++
      watched(one)
      await examine(one, tally)
    }
  console.log(summaryOf(tally, seconds, seed))
  return tally.finds.size
}

/** Where a case never ends, this file holds its job. */
const NOW = join(tmpdir(), 'groovewright-fuzz-now.yaml')
const watched = ({ text, spoil }: Case): void => writeFileSync(NOW, spoil(text))

const examine = async ({ text, spoil, seed }: Case, tally: Tally): Promise<void> => {
  const job = spoil(text)
  const world = { files: { 'job.yaml': job } }
  const run = async (...args: string[]): Promise<Outcome> => {
    const before = process.cpuUsage()
    const outcome = await runIn({ files: { 'job.yaml': job, ...extra } }, ...args)
    const { user, system } = process.cpuUsage(before)
    const took = (user + system) / 1e6
    tally.runs++
    tally.slowest = Math.max(tally.slowest, took)
    const key = `${args[0]} ${outcome.status}`
    tally.statuses.set(key, (tally.statuses.get(key) ?? 0) + 1)
    const find = (what: string): void =>
      void (tally.finds.has(what) || tally.finds.set(what, `${args.join(' ')}\n${job}`))
    if (outcome.status === 70) find(`a fault of the program: ${/this is a bug: (.*)/.exec(outcome.err)?.[1]}`)
    if (/\n {4}at /.test(outcome.err)) find('a stack trace')
    if (/[^\P{C}\n\t]/u.test(outcome.out + outcome.err)) find('a character that a terminal obeys')
    // How long a set takes goes by how many sheets are asked for.
    if (took > LONGEST && args[0] !== 'handout') find(`more than ${LONGEST} seconds: ${args[0]}`)
    if (outcome.status === 2 && outcome.out !== '' && args[0] === 'sheet') find('unreadable, and something is printed')
    if (outcome.status > 0 && outcome.err === '' && !SAYS_ON_PAPER.has(args[0]!)) find('a failure without a word')
    if (outcome.status === 1 && args[0] === 'sheet' && !outcome.err.includes('remedy: '))
      find('refused without a remedy')
    if (/NaN|Infinity|undefined|\[object/.test(outcome.out))
      find(`printed: ${/NaN|Infinity|undefined|\[object/.exec(outcome.out)![0]}`)
    return outcome
  }
  const extra: Record<string, string> = {}
  const asText = await run('sheet', 'job.yaml')
  const again = await runIn(
    { ...world, env: { LANG: 'de_DE', TZ: 'Asia/Kathmandu', COLUMNS: '40' } },
    'sheet',
    'job.yaml',
  )
  const differ = (what: string, other: Outcome): void => {
    if (other.out !== asText.out || other.status !== asText.status) tally.finds.has(what) || tally.finds.set(what, job)
  }
  differ('another sheet in another place', again)
  if (!job.includes('\r'))
    differ(
      'another sheet with CR LF',
      await runIn({ files: { 'job.yaml': job.replaceAll('\n', '\r\n') } }, 'sheet', 'job.yaml'),
    )
  if (seed % 16 === 0) {
    const piped = await runIn({ stdin: job }, 'sheet')
    const real = asProcess(job)
    if (real.status !== piped.status || real.stdout !== piped.out)
      tally.finds.has(real.find) || tally.finds.set(real.find, job)
  }
  const mended = asText.status === 1 ? followed(job, asText.err) : null
  if (mended !== null) {
    const { status, err } = await runIn({ files: { 'job.yaml': mended } }, 'sheet', 'job.yaml')
    const key = `followed ${status}`
    tally.statuses.set(key, (tally.statuses.get(key) ?? 0) + 1)
    // Another thing may be wrong, and is told then: what was followed is not asked for again.
    const same = status !== 0 && remedy(err) === remedy(asText.err)
    const find = `followed, and refused again: ${shape(remedy(asText.err))}`
    if (same) tally.finds.has(find) || tally.finds.set(find, `${asText.err}\n${err}\n${job}`)
  }
  if (asText.status === 2) return
  differ('another sheet by a pipe', await runIn({ stdin: job }, 'sheet'))
  const data = await run('sheet', 'job.yaml', '--format', 'json')
  const wrong = breaches(sheetSchema() as never, JSON.parse(data.out))
  if (wrong.length > 0) tally.finds.set(`not as its schema says: ${wrong[0]!.slice(0, 80)}`, job)
  const table = await run('sheet', 'job.yaml', '--format', 'csv')
  if (asText.status === 0) {
    extra['moves.csv'] = table.out
    const { status, out } = await run('replay', 'job.yaml', 'moves.csv')
    if (status !== 0 && !out.includes('may')) tally.finds.set('a sheet that its own table does not prove', job)
    extra['spoilt.csv'] = spoil(table.out)
    await run('replay', 'job.yaml', 'spoilt.csv')
    extra['kept.json'] = data.out.replace(/\d\.\d+/, String(seed))
    await run('sheet', 'job.yaml', '--since', 'kept.json')
    const stop = JSON.parse(data.out).features?.find((one: { finished?: unknown }) => one.finished)?.name
    if (stop !== undefined)
      await run('finish', 'job.yaml', '--feature', stop, '--bottom-diameter', String((seed % 3000) / 1000))
  }
  if (seed % 4 === 0) {
    for (const what of [
      ['grind', 'job.yaml'],
      ['sheet', 'job.yaml', '--format', 'html', '--slips', '--inspection'],
      ['sheet', 'job.yaml', '--width', '40', '--drawing', '--supervised'],
      ['sheet', 'job.yaml', '--format', 'markdown'],
      ['sheet', 'job.yaml', '--format', 'svg'],
      ['check', 'job.yaml', '--format', 'sarif'],
    ])
      await run(...what)
    const card = await run('sheet', 'job.yaml', '--card')
    const page = await run('sheet', 'job.yaml', '--format', 'html')
    const prints = { text: asText.out, card: card.out, csv: table.out, html: page.out, data: JSON.parse(data.out) }
    for (const what of disagreements(prints))
      tally.finds.has(shape(what)) || tally.finds.set(shape(what), `${what}\n${job}`)
  }
  if (asText.status === 0 && seed % 8 === 0) await asClass(run, extra, spoil, seed)
}

/** The real program, with no more memory than it may need. */
const asProcess = (job: string) => {
  const { status, stdout, signal } = spawnSync(
    process.execPath,
    [`--max-old-space-size=${MOST_MB}`, join(process.cwd(), 'bin', 'groovewright.js'), 'sheet'],
    { input: job, encoding: 'utf8', timeout: 30_000, maxBuffer: 100_000_000 },
  )
  return { status, stdout, find: `the real program, with ${MOST_MB} MB: ${signal ?? status}` }
}
const MOST_MB = 200

/** The job as an exercise: handed out, filled in by who knows nothing and by who spoils the form, and graded. */
const asClass = async (
  run: (...args: string[]) => Promise<Outcome>,
  files: Record<string, string>,
  spoil: Case['spoil'],
  seed: number,
): Promise<void> => {
  const exercise = [
    'title: Fuzz',
    'teaches: care',
    'base: job.yaml',
    `seed: ${seed % 1000}`,
    'sheets: 1',
    'hide: [readings, marks]',
    '',
  ].join('\n')
  files['exercise.yaml'] = exercise
  const made = await run('handout', 'exercise.yaml', '--out', 'set')
  for (const [name, text] of Object.entries(made.files)) if (name.startsWith('set/')) files[name] = text
  if (made.status !== 0) return
  await run('grade', 'set/manifest.json', 'set/answers')
  const form = Object.keys(files).find((name) => /^set\/answers\/.*\.yaml$/.test(name))
  if (form !== undefined) files[form] = spoil(files[form]!.replace(/value: ""/g, () => 'value: "12"'))
  await run('grade', 'set/manifest.json', 'set/answers')
  files['set/manifest.json'] = spoil(files['set/manifest.json'] ?? '')
  await run('grade', 'set/manifest.json', 'set/answers')
  files['exercise.yaml'] = spoil(exercise)
  await run('handout', 'exercise.yaml', '--out', 'other')
}

const remedy = (err: string): string => /remedy: (.*)/.exec(err)?.[1] ?? ''

/** One find for all that differ only in their numbers. */
const shape = (what: string): string => what.replace(/[\d.]+/g, 'N')

/** Of the processor, for a job of a few features. */
const LONGEST = 2

const summaryOf = ({ cases: drawn, runs, slowest, statuses, finds }: Tally, seconds: number, seed: number): string =>
  [
    `${drawn} cases, ${runs} runs in ${Math.round(seconds)} s from seed ${seed}; the slowest took ${slowest.toFixed(2)} s; ${Math.round(process.resourceUsage().maxRSS / 1e3)} MB at most`,
    [...statuses]
      .sort()
      .map(([key, count]) => `${key}: ${count}`)
      .join(', '),
    ...[...finds].map(([what, job]) => `FIND: ${what}\n${job}\n`),
    `${finds.size} finds`,
  ].join('\n')
