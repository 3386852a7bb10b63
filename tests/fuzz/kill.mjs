// npm run kill -- [--times 500] [--seed S]: ends the program by kill -9 at random moments while it writes, and lets it write to a disk that is full;
// no file may ever be half written.
import { spawn, spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const bin = join(root, 'bin', 'groovewright.js')

const main = async () => {
  const times = Number(option('--times', '500'))
  const random = randomFrom(Number(option('--seed', '1')))
  const folder = mkdtempSync(join(tmpdir(), 'groovewright-kill-'))
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true })
  const commands = commandsIn(folder)
  const tally = { before: 0, after: 0, finds: [] }
  for (let i = 0; i < times; i++) await once(commands[Math.floor(random() * commands.length)], random, folder, tally)
  const full = fullDisks(commands, folder, tally)
  rmSync(folder, { recursive: true })
  console.log(
    `${times} kills: ${tally.before} before anything was there, ${tally.after} when files were there; ${tally.finds.length} finds`,
  )
  console.log(full)
  for (const find of tally.finds) console.log(`FIND: ${find}`)
  process.exitCode = tally.finds.length === 0 ? 0 : 1
}

const commandsIn = (folder) => {
  const job = join(folder, 'examples', 'jobs', '01-press-screw.yaml')
  const one = (name, ...args) => ({ args: [...args, '-o', `out/${name}`] })
  const exercises = join(folder, 'examples', 'exercises')
  const exercise = existsSync(exercises) ? readdirSync(exercises).find((name) => name.endsWith('.yaml')) : undefined
  return [
    one('job.yaml', 'new', 'job'),
    one('sheet.txt', 'sheet', job),
    one('sheet.html', 'sheet', job),
    one('grind.txt', 'grind', job),
    ...(exercise === undefined ? [] : [{ args: ['handout', join(exercises, exercise), '--out', 'out'] }]),
  ].map((command) => ({ ...command, whole: wholeOf(command, folder) }))
}

/** What the command writes where nobody ends it, and how long it takes. */
const wholeOf = ({ args }, folder) => {
  const start = performance.now()
  fresh(folder)
  const { status, stderr } = spawnSync('node', [bin, ...args], { cwd: folder, encoding: 'utf8' })
  if (status !== 0) throw new Error(`${args.join(' ')}: ${stderr}`)
  return { files: filesIn(join(folder, 'out')), took: performance.now() - start }
}

const once = async ({ args, whole }, random, folder, tally) => {
  fresh(folder)
  const child = spawn('node', [bin, ...args], { cwd: folder, stdio: 'ignore' })
  const ended = new Promise((done) => child.on('exit', done))
  // Most of a run is before the writing: the second half of it is where it matters.
  const timer = setTimeout(() => child.kill('SIGKILL'), whole.took * (0.4 + 0.7 * random()))
  await ended
  clearTimeout(timer)
  const left = filesIn(join(folder, 'out'))
  const named = [...left].filter(([name]) => !name.includes('.groovewright-'))
  tally[named.length === 0 ? 'before' : 'after']++
  for (const [name, text] of named)
    if (whole.files.get(name) !== text)
      tally.finds.push(`${args.join(' ')}: ${name} is not what is written without a kill`)
  const again = spawnSync('node', [bin, ...args, '--force'], { cwd: folder, encoding: 'utf8' })
  if (again.status !== 0) tally.finds.push(`${args.join(' ')}: afterwards ${again.status}: ${again.stderr}`)
  for (const name of filesIn(join(folder, 'out')).keys())
    if (name.includes('.groovewright-')) tally.finds.push(`${args.join(' ')}: ${name} is left behind`)
}

/** A file system of a few KB in memory, mounted where the command writes. Only the superuser may mount: others are told that it was not tried. */
const fullDisks = (commands, folder, tally) => {
  const out = join(folder, 'out')
  let runs = 0
  let full = 0
  for (const { args, whole } of commands) {
    const bytes = [...whole.files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0)
    for (const share of [0, 0.2, 0.5, 0.8, 0.95]) {
      fresh(folder)
      const size = Math.max(4, Math.floor((bytes * share) / 4096) * 4)
      const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size}k`, 'tmpfs', out], { encoding: 'utf8' })
      if (mounted.status !== 0) return `no full disk was tried: ${(mounted.stderr ?? 'mount cannot be run').trim()}`
      try {
        const { status, stderr } = spawnSync('node', [bin, ...args], { cwd: folder, encoding: 'utf8' })
        runs++
        const left = filesIn(out)
        const wrong = (what) => tally.finds.push(`${args.join(' ')} on a disk of ${size} KB: ${what}`)
        for (const [name, text] of left) if (whole.files.get(name) !== text) wrong(`${name} is not whole`)
        if (status !== 0) full++
        if (status === 0 && left.size !== whole.files.size) wrong(`status 0, ${left.size} of ${whole.files.size} files`)
        if (status !== 0 && !/^groovewright: cannot write .*: no space is left on the disk\n$/.test(stderr))
          wrong(`status ${status}: ${stderr}`)
      } finally {
        spawnSync('umount', [out])
      }
    }
  }
  return `${runs} runs on a small disk, ${full} of them until it was full`
}

const fresh = (folder) => {
  rmSync(join(folder, 'out'), { recursive: true, force: true })
  mkdirSync(join(folder, 'out'))
}

const filesIn = (folder) =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]),
  )

/** The same seed, the same kills, as far as the machine keeps time. */
const randomFrom = (seed) => {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

const option = (name, other) => {
  const at = process.argv.indexOf(name)
  return at < 0 ? other : process.argv[at + 1]
}

await main()
