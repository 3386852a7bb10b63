import { fstatSync, mkdirSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Entry, Io, Sink } from './io.ts'
import { codeOf, reasonOf } from './io.ts'
import { readLimited, readStream } from './read-file.ts'
import { writeWhole } from './write-file.ts'

/**
 * The real files and streams. If the reader of the output has gone that is no error of the program; a full disk is one
 * line. Opening a stream takes time: only one that is used is opened.
 */
export const realIo = (host: NodeJS.Process): Io => {
  const stderr = sink(host, 'stderr', () => {})
  return {
    stdin: {
      get isTTY() {
        return host.stdin.isTTY === true
      },
      read: (most) => readStream(host.stdin, most),
    },
    stdout: sink(host, 'stdout', (text) => stderr.write(text)),
    stderr,
    env: host.env,
    readFile: readLimited,
    realPath: (path) => realpathSync(path),
    samePath: (one, other) => realPath(one) === realPath(other),
    readDir: (path) => readDir(path),
    makeFolder: (path) => void mkdirSync(path, { recursive: true }),
    writeFile: (path, text, force, how) => writeWhole(host, path, text, force, undefined, how),
  }
}

const sink = (host: NodeJS.Process, name: 'stdout' | 'stderr', say: (text: string) => void): Sink => {
  let opened: NodeJS.WriteStream | undefined
  const stream = (): NodeJS.WriteStream => {
    opened ??= host[name].on('error', (error) => {
      if (codeOf(error) === 'EPIPE') return
      host.exitCode = 2
      say(`groovewright: cannot write the output: ${reasonOf(error)}\n`)
    })
    return opened
  }
  return {
    get isTTY() {
      return stream().isTTY === true
    },
    get closed() {
      return wasClosed(name === 'stdout' ? 1 : 2)
    },
    write: (text) => void stream().write(text),
  }
}

/**
 * Node opens the null device for reading and writing in place of a stream that is closed; a shell that is told to send
 * it there opens it for writing alone. Where the system does not tell (other than Linux) nothing is known.
 */
const wasClosed = (stream: number): boolean => {
  try {
    const flags = /^flags:\s*([0-7]+)/m.exec(readFileSync(`/proc/self/fdinfo/${stream}`, 'latin1'))?.[1] ?? '0'
    const both = Number.parseInt(flags, 8) % 4 === 2
    return both && fstatSync(stream).rdev === statSync('/dev/null').rdev
  } catch {
    return false
  }
}

/** A link to a folder is not followed: it may lead back up. */
const readDir = (path: string): Entry[] | null => {
  if (!statSync(path).isDirectory()) return null
  return readdirSync(path, { withFileTypes: true }).map((entry) => ({ name: entry.name, folder: entry.isDirectory() }))
}

/** Follows links if the file exists. */
const realPath = (path: string): string => {
  try {
    return realpathSync(path)
  } catch {
    return resolve(path)
  }
}
