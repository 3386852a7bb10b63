import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { realIo } from '../../src/cli/real-io.ts'
import { run } from '../../src/cli/run.ts'
import { good, LATHE, runIn } from './world.ts'

/** village/shop/jobs/ beside village/shop/lathes/, and files that are nobody's business. */
let village = ''
beforeAll(() => {
  village = mkdtempSync(join(tmpdir(), 'groovewright-'))
  for (const folder of ['shop/jobs', 'shop/lathes', 'elsewhere']) mkdirSync(join(village, folder), { recursive: true })
  writeFileSync(join(village, 'shop/lathes/bench.yaml'), LATHE)
  writeFileSync(join(village, 'elsewhere/bench.yaml'), LATHE)
  writeFileSync(join(village, 'elsewhere/secret'), 'password=hunter2: {\n')
  writeFileSync(join(village, 'shop/secret'), 'password=hunter2: {\n')
  symlinkSync('../../elsewhere', join(village, 'shop/lathes/link'))
})
afterAll(() => rmSync(village, { recursive: true }))

const checked = async (lathe: string, ...more: string[]): Promise<{ status: number; err: string }> => {
  const said: string[] = []
  const job = join(village, 'shop/jobs/good.yaml')
  writeFileSync(job, good(lathe))
  const sink = { isTTY: false, write: () => {} }
  const io = {
    ...realIo(process),
    stdout: sink,
    stderr: { isTTY: false, write: (text: string) => void said.push(text) },
  }
  return { status: await run(['check', job, ...more], io), err: said.join('') }
}

describe('where a job may name files', () => {
  it('below the folder above its own', async () => {
    expect(await checked('../lathes/bench.yaml')).toEqual({ status: 0, err: '' })
    expect(await checked(join(village, 'shop/lathes/bench.yaml'))).toEqual({ status: 0, err: '' })
  })

  it.each(['../../elsewhere/bench.yaml', '../lathes/link/bench.yaml', '/etc/passwd', '../../elsewhere/not-there'])(
    'not %s, whether it is there or not',
    async (lathe) => {
      const { status, err } = await checked(lathe)
      expect(status).toBe(2)
      expect(err).toContain('outside of the folders that a job may name files in')
    },
  )

  it('in another folder where --root says so', async () => {
    const root = join(village, 'elsewhere')
    expect(await checked('../../elsewhere/bench.yaml', '--root', root)).toEqual({ status: 0, err: '' })
    expect((await checked('../../elsewhere/bench.yaml', '--root', join(village, 'else'))).status).toBe(2)
  })

  it('where the job comes by standard input: as if it were in this folder', async () => {
    const files = { 'bench.yaml': LATHE, '../lathes/bench.yaml': LATHE, '/elsewhere/bench.yaml': LATHE }
    expect((await runIn({ files, stdin: good('bench.yaml') }, 'check')).status).toBe(0)
    expect((await runIn({ files, stdin: good('../lathes/bench.yaml') }, 'check')).status).toBe(0)
    expect((await runIn({ files, stdin: good('/elsewhere/bench.yaml') }, 'check')).status).toBe(2)
    expect((await runIn({ files, stdin: good('/elsewhere/bench.yaml') }, 'check', '--root', '/elsewhere')).status).toBe(
      0,
    )
  })
})

describe('a file that is no lathe or toolbox', () => {
  it.each([
    ['../secret', good('../secret')],
    ['shop/secret', good('shop/secret')],
  ])('%s: is named, never quoted', async (lathe) => {
    const { status, err } = await checked(lathe)
    expect(status).toBe(2)
    expect(err).not.toContain('hunter2')
    expect(err).toContain(lathe === '../secret' ? 'is no lathe file: nothing of it is read' : 'there is no such file')
  })

  it.each([
    ['root:x:0:0:root:/root:/bin/bash\n'],
    ['password: "abc\n  def'],
    ['- 1\n- hunter2\n'],
    ['title: hunter2\n'],
    ['NAME: hunter2\nunits:\n  - hunter2.service\n'],
    ['# hunter2\n{}\n'],
    ['hunter2: {a: 1}\nhunter2: {a: 1}\n'],
  ])('%j: neither as lathe nor as toolbox, as text or as data', async (text) => {
    for (const job of [good('hidden'), good().replace(/tools:\n.*/, 'tools: hidden')])
      for (const args of [['sheet'], ['check', '--format', 'json']]) {
        const files = { 'jobs/good.yaml': job, 'jobs/hidden': text, 'jobs/bench.yaml': LATHE }
        const { status, out, err } = await runIn({ files }, args[0]!, 'jobs/good.yaml', ...args.slice(1))
        expect(status).toBe(2)
        for (const word of text.match(/[a-z0-9]{3,}/g) ?? [])
          expect(`${out}${err}`.replace('title: Cider', '')).not.toContain(word)
        expect(err).toContain('nothing of it is read')
      }
  })

  it('a lathe file with a mistake in it is still quoted', async () => {
    const files = { 'good.yaml': good(), 'bench.yaml': LATHE.replace('cross-feed: {', 'cross-feed: [') }
    expect((await runIn({ files }, 'sheet', 'good.yaml')).err).toContain('    cross-feed: [ graduation: 0.001')
  })
  it.each([
    ['lathe', 'carriage: { backlash: 0 }\ncros-feed: 1\n', 'cros-feed'],
    ['lathe', 'units: inch\nnaem: Bench\n', 'naem'],
    ['tools', 'units: mm\nneck:\n', 'neck'],
    ['tools', 'neck: { shaep: square, width: 1/8 }\n', 'shaep'],
  ])('%s: one key that is known is enough to quote another: %j', async (key, text, wrong) => {
    const job = key === 'lathe' ? good('it.yaml') : good().replace(/tools:\n.*/, 'tools: it.yaml')
    const { err } = await runIn(
      { files: { 'good.yaml': job, 'it.yaml': text, 'bench.yaml': LATHE } },
      'sheet',
      'good.yaml',
    )
    expect(err).toMatch(new RegExp(`^it\\.yaml:\\d+:\\d+: error: .*${wrong}`, 'm'))
  })
})
