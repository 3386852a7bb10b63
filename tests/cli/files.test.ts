import { spawn, spawnSync } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { realIo } from '../../src/cli/real-io.ts'
import { run } from '../../src/cli/run.ts'
import { writeWhole } from '../../src/cli/write-file.ts'
import { good, LATHE } from './world.ts'

const BIN = resolve('bin/groovewright.js')
const unix = process.platform !== 'win32'
let folder = ''
const at = (name: string): string => join(folder, name)

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'groovewright-'))
  writeFileSync(at('bench.yaml'), LATHE)
  writeFileSync(at('good.yaml'), good(at('bench.yaml')))
  if (unix) spawnSync('mkfifo', [at('pipe')])
})
afterAll(() => rmSync(folder, { recursive: true }))

/** The program in this process, on the real disk. */
const ran = async (...args: string[]): Promise<{ status: number; out: string; err: string }> => {
  const [out, err]: [string[], string[]] = [[], []]
  const io = {
    ...realIo(process),
    stdout: { isTTY: false, write: (text: string) => void out.push(text) },
    stderr: { isTTY: false, write: (text: string) => void err.push(text) },
  }
  return { status: await run(args, io), out: out.join(''), err: err.join('') }
}

const shell = (command: string) =>
  spawnSync('bash', ['-c', command], { cwd: folder, encoding: 'utf8', timeout: 20_000 })

describe('a file that is none', () => {
  it.runIf(unix).each(['pipe', '/dev/zero', '/dev/tty'])('%s is not read as an include', async (name) => {
    const path = name === 'pipe' ? at('pipe') : name
    if (!existsSync(path)) return expect(name).toBe('/dev/tty')
    writeFileSync(at('asks.yaml'), good(path))
    const { status, err } = await ran('check', at('asks.yaml'), '--root', '/dev')
    expect(status).toBe(2)
    expect(err).toMatch(/cannot read .*: it is a (pipe|device), not a file/)
  })

  it.runIf(unix)('a device is not read as a job, a kept sheet or a list of moves', async () => {
    for (const args of [
      ['sheet', '/dev/zero'],
      ['check', '/dev/zero'],
      ['sheet', at('good.yaml'), '--since', '/dev/zero'],
      ['replay', at('good.yaml'), '/dev/zero'],
    ]) {
      const { status, err } = await ran(...args)
      expect({ args, status }).toEqual({ args, status: 2 })
      expect(err).toContain('it is a device, not a file')
    }
  })

  it.runIf(unix)('a pipe is read where the user names it, not where a folder has one', async () => {
    expect(shell(`node ${BIN} check <(cat good.yaml)`).status).toBe(0)
    mkdirSync(at('shop'))
    spawnSync('mkfifo', [at('shop/pipe.yaml')])
    const { status, err } = await ran('check', at('shop'))
    expect(status).toBe(2)
    expect(err).toContain('it is a pipe, not a file')
  })

  it('of a huge one no more is read than the limit', async () => {
    writeFileSync(at('huge.yaml'), '')
    truncateSync(at('huge.yaml'), 1_900_000_000)
    const before = process.memoryUsage().rss
    for (const args of [
      ['check', at('huge.yaml')],
      ['sheet', at('good.yaml'), '--since', at('huge.yaml')],
      ['replay', at('good.yaml'), at('huge.yaml')],
    ]) {
      const { status, err } = await ran(...args)
      expect({ args, status }).toEqual({ args, status: 2 })
      expect(err).toContain('larger than')
    }
    expect(process.memoryUsage().rss - before).toBeLessThan(200_000_000)
  })

  it.runIf(unix)('endless standard input ends at the limit', () => {
    const { status, stderr } = shell(`node ${BIN} check - < <(yes 'a: b')`)
    expect(status).toBe(2)
    expect(stderr).toContain('the file is larger than the 256 KB')
  })

  it.runIf(unix)('standard input that is open for writing alone is told in one line', () => {
    const { status, stderr } = shell(`node ${BIN} sheet - 0>aside`)
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'groovewright: cannot read standard input: it is not open for that\n',
    })
  })
})

describe('what is written over', () => {
  it.runIf(unix)('a device or a pipe stays one, with --force and without', async () => {
    for (const path of [at('pipe'), '/dev/null', '/dev/stdout'])
      for (const force of [[], ['--force']]) {
        const { status, err } = await ran('new', 'job', '-o', path, ...force)
        // Where standard output of the tests is a file, /dev/stdout leads to one.
        if (path === '/dev/stdout' && statSync(path).isFile()) continue
        expect({ path, status }).toEqual({ path, status: 2 })
        expect(err).toContain('not a file; leave -o out')
      }
    expect(lstatSync(at('pipe')).isFIFO()).toBe(true)
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true)
  })

  it.runIf(unix)('a file that others may not read stays so', async () => {
    writeFileSync(at('mine.txt'), 'mine', { mode: 0o600 })
    expect((await ran('new', 'job', '-o', at('mine.txt'), '--force')).status).toBe(0)
    expect(readFileSync(at('mine.txt'), 'utf8')).toContain('features:')
    expect(statSync(at('mine.txt')).mode & 0o7777).toBe(0o600)
  })

  it.runIf(unix)('a link stays, and the file that it leads to is replaced', async () => {
    mkdirSync(at('away'))
    writeFileSync(at('away/target.txt'), 'mine')
    chmodSync(at('away/target.txt'), 0o640)
    symlinkSync('away/target.txt', at('link.txt'))
    expect((await ran('new', 'job', '-o', at('link.txt'))).status).toBe(2)
    expect((await ran('new', 'job', '-o', at('link.txt'), '--force')).status).toBe(0)
    expect(lstatSync(at('link.txt')).isSymbolicLink()).toBe(true)
    expect(readFileSync(at('away/target.txt'), 'utf8')).toContain('features:')
    expect(statSync(at('away/target.txt')).mode & 0o7777).toBe(0o640)
    symlinkSync('nowhere', at('dangling'))
    expect((await ran('new', 'job', '-o', at('dangling'), '--force')).err).toContain('a link that leads to nothing')
  })

  it('nothing is written over what it was made from: job, include, kept sheet', async () => {
    await ran('sheet', at('good.yaml'), '--format', 'json', '-o', at('kept.json'))
    const kept = readFileSync(at('kept.json'), 'utf8')
    for (const input of ['good.yaml', 'bench.yaml', 'kept.json']) {
      const { status, err } = await ran(
        ...['sheet', at('good.yaml'), '--since', at('kept.json'), '-o', at(input), '--force'],
      )
      expect({ input, status }).toEqual({ input, status: 2 })
      expect(err).toContain('is a file that this was read from')
    }
    expect(readFileSync(at('kept.json'), 'utf8')).toBe(kept)
  })

  it('a name as long as the disk allows can be written', async () => {
    const name = 'n'.repeat(255)
    expect((await ran('new', 'job', '-o', at(name))).status).toBe(0)
    expect((await ran('new', 'job', '-o', at(name), '--force')).status).toBe(0)
    rmSync(at(name))
  })

  it('a disk without links: the file is written, and one that exists is left alone', () => {
    const link = () => {
      throw Object.assign(new Error('EPERM'), { code: 'EPERM' })
    }
    writeWhole(process, at('plain.txt'), 'one', false, { link })
    expect(readFileSync(at('plain.txt'), 'utf8')).toBe('one')
    expect(() => writeWhole(process, at('plain.txt'), 'two', false, { link })).toThrow('EEXIST')
    expect(readFileSync(at('plain.txt'), 'utf8')).toBe('one')
  })

  it.runIf(existsSync('/proc/self/fdinfo/1'))('a sheet that nobody can get is no success', () => {
    const { status, stderr } = shell(`node ${BIN} sheet good.yaml >&-`)
    expect([status, stderr]).toEqual([2, expect.stringContaining('standard output is closed')])
    expect(shell(`node ${BIN} sheet good.yaml > /dev/null`)).toMatchObject({ status: 0, stderr: '' })
    expect(shell(`node ${BIN} check good.yaml >&-`)).toMatchObject({ status: 0 })
  })
})

describe('a program that is ended while it writes', () => {
  /** A process that starts a write, gets the signal in the middle of it, and goes on. */
  const ended = async (signal: string): Promise<string[]> => {
    const inside = at(signal)
    mkdirSync(inside)
    const script = `
      import { linkSync, readdirSync } from 'node:fs'
      import { writeWhole } from ${JSON.stringify(resolve('src/cli/write-file.ts'))}
      const link = (from, to) => { process.kill(process.pid, ${JSON.stringify(signal)}); linkSync(from, to) }
      writeWhole(process, ${JSON.stringify(join(inside, 'out.txt'))}, 'whole', false, { link })
      setTimeout(() => {}, 5000)`
    const { build } = await import('esbuild')
    const file = join(folder, `${signal}.mjs`)
    await build({
      stdin: { contents: script, resolveDir: folder },
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile: file,
    })
    const child = spawn('node', [file])
    const died = await new Promise<string | null>((done) => child.on('exit', (_, by) => done(by)))
    expect(died).toBe(signal)
    return readdirSync(inside)
  }

  it.runIf(unix).each(['SIGTERM', 'SIGHUP', 'SIGINT'])(
    'by %s: the file is whole, nothing else is left',
    async (signal) => {
      expect(await ended(signal)).toEqual(['out.txt'])
      expect(readFileSync(join(folder, signal, 'out.txt'), 'utf8')).toBe('whole')
    },
  )

  it.runIf(unix)(
    'by kill -9: what it leaves is taken away by the next write, not what a living one writes',
    async () => {
      const inside = at('SIGKILL')
      expect(await ended('SIGKILL')).toHaveLength(1)
      const [left = ''] = readdirSync(inside)
      expect(left).toMatch(/^\.groovewright-.*\.tmp$/)
      const living = left.replace(/-\d+-/, `-${process.ppid}-`)
      writeFileSync(join(inside, living), 'half')
      expect((await ran('new', 'job', '-o', join(inside, 'out.yaml'))).status).toBe(0)
      expect(readdirSync(inside).sort()).toEqual([living, 'out.yaml'].sort())
    },
  )
})
