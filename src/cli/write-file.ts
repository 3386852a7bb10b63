import {
  chmodSync,
  chownSync,
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  type Stats,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { hostname } from 'node:os'
import { dirname, join } from 'node:path'
import { codeOf, Unfit, type Writing } from './io.ts'

/** Folders in which left-overs were looked for. */
const swept = new Set<string>()

type Host = Pick<NodeJS.Process, 'pid' | 'on' | 'off' | 'kill'>

/** The system's calls that give the finished file its name, so that a test can stand for a disk that lacks one. */
export type Naming = { readonly link: typeof linkSync }

/**
 * Writes a whole file or nothing: to a temporary file beside it, to the disk, and only then to its name. Without
 * `force` a file that exists is left alone (EEXIST). With it the file is replaced and keeps its owner and its
 * permissions; where the name is a link, the file that it leads to is replaced and the link stays.
 */
export const writeWhole = (
  host: Host,
  path: string,
  text: string,
  force: boolean,
  { link }: Naming = { link: linkSync },
  { ofMany }: Writing = { ofMany: false },
): void => {
  const { file, before } = targetOf(path)
  if (before !== null && !force) throw Object.assign(new Error('EEXIST'), { code: 'EEXIST' })
  const folder = dirname(file)
  if (!ofMany || !swept.has(folder)) removeLeftOvers(host, folder)
  swept.add(folder)
  const temporary = join(folder, `${PREFIX}${MACHINE}-${host.pid}-${unlikely()}${SUFFIX}`)
  holdSignals(host)
  try {
    writeAll(temporary, text, before, !ofMany)
    if (before !== null) renameSync(temporary, file)
    else name(temporary, file, link)
  } finally {
    remove(temporary)
  }
}

/** Follows links. What is there and is no file is never replaced: a device or a pipe would be lost. */
const targetOf = (path: string): { readonly file: string; readonly before: Stats | null } => {
  if (statusOf(path, lstatSync) === null) return { file: path, before: null }
  const before = statusOf(path, statSync)
  if (before === null)
    throw new Unfit('it is a link that leads to nothing; take it away, or name the file that it should lead to')
  if (before.isDirectory()) throw Object.assign(new Error('EISDIR'), { code: 'EISDIR' })
  if (!before.isFile())
    throw new Unfit('it is a device or a pipe, not a file; leave -o out, and send standard output there with >')
  return { file: realpathSync(path), before }
}

const statusOf = (path: string, ask: (path: string) => Stats): Stats | null => {
  try {
    return ask(path)
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null
    throw error
  }
}

/** `sync`: to the disk before the file gets its name, so that it is whole also where the power fails. */
const writeAll = (path: string, text: string, before: Stats | null, sync: boolean): void => {
  // Nobody else may look into what is to replace a file that others may not read.
  const file = openSync(path, 'wx', before === null ? 0o666 : 0o600)
  try {
    const bytes = Buffer.from(text)
    for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done)
    if (sync) fsyncSync(file)
  } finally {
    closeSync(file)
  }
  if (before !== null) keepRights(path, before)
}

/** Who may not give a file away keeps it: then only the permissions stay, without those that go with the owner. */
const keepRights = (path: string, { uid, gid, mode }: Stats): void => {
  const made = lstatSync(path)
  let own = true
  if (made.uid !== uid || made.gid !== gid)
    try {
      chownSync(path, uid, gid)
    } catch {
      own = false
    }
  chmodSync(path, mode & (own ? 0o7777 : 0o777))
}

/** `link` never replaces a file. A disk that has no links: the name is taken first, so that nobody else's is replaced. */
const name = (temporary: string, file: string, link: typeof linkSync): void => {
  try {
    link(temporary, file)
  } catch (error) {
    if (!NO_LINKS.has(codeOf(error) ?? '')) throw error
    closeSync(openSync(file, 'wx'))
    renameSync(temporary, file)
  }
}

const NO_LINKS: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EINVAL'])

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const

/** Whether signals are held back now: of several files written in one turn, the first holds them back for all. */
let holding = false

/**
 * A signal that comes while a file is written waits until it is whole: then the program ends by it. Node hands signals
 * on where its loop waits for the world, which may be only in the turn after the next, so they are let go after that.
 */
const holdSignals = (host: Host): void => {
  if (holding) return
  holding = true
  const letGo = (): void => {
    holding = false
    for (const each of SIGNALS) host.off(each, end)
  }
  const end = (signal: NodeJS.Signals): void => {
    letGo()
    host.kill(host.pid, signal)
  }
  for (const each of SIGNALS) host.on(each, end)
  setImmediate(() => setImmediate(letGo))
}

const PREFIX = '.groovewright-'
const SUFFIX = '.tmp'

const unlikely = (): string => Math.random().toString(36).slice(2, 10).padEnd(8, '0')

/** A folder may be shared between machines, and a number of a process says something on its own machine only. */
const MACHINE = [...hostname()].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 0x7fffffff, 7).toString(36)

const LEFT_OVER = new RegExp(`^\\${PREFIX}${MACHINE}-(\\d+)-[a-z0-9]{8}\\${SUFFIX}$`)

/** Whoever was killed while writing has left a temporary file: it is taken away when the next one is written there. */
const removeLeftOvers = (host: Host, folder: string): void => {
  for (const each of readdirSync(folder)) {
    const pid = Number(LEFT_OVER.exec(each)?.[1] ?? host.pid)
    if (pid === host.pid || isAlive(host, pid)) continue
    try {
      remove(join(folder, each))
    } catch {
      // It is somebody else's: theirs to take away.
    }
  }
}

const isAlive = (host: Host, pid: number): boolean => {
  try {
    host.kill(pid, 0)
    return true
  } catch (error) {
    return codeOf(error) !== 'ESRCH'
  }
}

const remove = (path: string): void => {
  try {
    unlinkSync(path)
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error
  }
}
