import {
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import type { Entry, Io, Sink } from './io.ts'
import { codeOf, reasonOf } from './io.ts'

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
      read: () => readAll(host.stdin),
    },
    stdout: sink(host, 'stdout', (text) => stderr.write(text)),
    stderr,
    env: host.env,
    readFile: (path) => readFileSync(path),
    samePath: (one, other) => realPath(one) === realPath(other),
    readDir: (path) => readDir(path),
    writeFile: (path, text, force) => writeWhole(host, path, text, force),
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
    write: (text) => void stream().write(text),
  }
}

/** As a stream: a synchronous read of a pipe that is not ready yet fails with EAGAIN. */
const readAll = async (stream: NodeJS.ReadableStream): Promise<Uint8Array> => {
  const chunks: Buffer[] = []
  for await (const chunk of stream) chunks.push(Buffer.from(chunk))
  return Buffer.concat(chunks)
}

/** A link to a folder is not followed: it may lead back up. */
const readDir = (path: string): Entry[] | null => {
  if (!statSync(path).isDirectory()) return null
  return readdirSync(path, { withFileTypes: true }).map((entry) => ({ name: entry.name, folder: entry.isDirectory() }))
}

/** To a temporary file beside it, to the disk, and only then to its name: `link` never replaces, `rename` does. */
const writeWhole = (host: NodeJS.Process, path: string, text: string, force: boolean): void => {
  const temporary = join(dirname(path), `.${basename(path)}.${host.pid}.tmp`)
  const leave = (signal: NodeJS.Signals) => {
    remove(temporary)
    host.off('SIGINT', leave)
    host.kill(host.pid, signal)
  }
  host.on('SIGINT', leave)
  try {
    writeAndSync(temporary, text)
    if (force) renameSync(temporary, path)
    else linkSync(temporary, path)
  } finally {
    host.off('SIGINT', leave)
    remove(temporary)
  }
}

const writeAndSync = (path: string, text: string): void => {
  const file = openSync(path, 'wx')
  try {
    const bytes = Buffer.from(text)
    for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

const remove = (path: string): void => {
  try {
    unlinkSync(path)
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error
  }
}

/** Follows links if the file exists. */
const realPath = (path: string): string => {
  try {
    return realpathSync(path)
  } catch {
    return resolve(path)
  }
}
