import { describe, expect, it } from 'vitest'
import { good, LATHE, mayNotHold, refused, runIn, SHOP, type World } from './world.ts'

/** What a terminal obeys, or what turns or hides a text; line ends and tabs are none. */
const OBEYED = /[^\P{C}\n\t]|[\u2028\u2029]/u
const HOSTILE = 'a\u001b[31m\u0007\u009b2J\u0085\u202eb\u2028\r\nd.yaml'
const ESCAPED = 'a\\u001b[31m\\u0007\\u009b2J\\u0085\\u202eb\\u2028\\r\\nd.yaml'

const inShop = (name: string, text: string): World => ({
  files: { [`shop/${name}`]: text, 'shop/bench.yaml': LATHE, [`shop/aside ${name}`]: 'a: 1\n' },
})

const clean = async (world: World, ...args: string[]) => {
  const outcome = await runIn(world, ...args)
  expect({ args, out: OBEYED.exec(outcome.out)?.[0], err: OBEYED.exec(outcome.err)?.[0] }).toEqual({ args })
  expect(outcome.err).not.toContain('this is a bug')
  return outcome
}

describe('names of files that a terminal would obey', () => {
  it('check of a folder: escaped, and one line a job', async () => {
    const { out, err } = await clean(inShop(HOSTILE, good()), 'check', 'shop')
    expect(out).toBe(`shop/${ESCAPED}: good, 1 feature\n1 job: 1 good, 2 skipped\n`)
    expect(err.split('\n').toSorted()).toEqual(
      ['', 'skipped, not a job: shop/bench.yaml', `skipped, not a job: shop/aside ${ESCAPED}`].toSorted(),
    )
  })

  it.each([[mayNotHold()], [refused()], ['a: [']])('of any verdict, as text and as data', async (text) => {
    await clean(inShop(HOSTILE, text), 'check', 'shop')
    await clean(inShop(HOSTILE, text), 'sheet', `shop/${HOSTILE}`)
    const { out } = await clean(inShop(HOSTILE, text), 'check', 'shop', '--format', 'json')
    expect(JSON.parse(out).jobs[0].file).toBe(`shop/${HOSTILE}`)
  })

  it('files that are not there, options and arguments that are none', async () => {
    for (const args of [
      ['check', HOSTILE],
      ['sheet', HOSTILE],
      ['sheet', 'shop/good.yaml', `--${HOSTILE}`],
      ['sheet', 'shop/good.yaml', '--format', HOSTILE],
      ['sheet', 'shop/good.yaml', '--since', HOSTILE],
      ['check', 'shop', '--against', HOSTILE],
      ['finish', 'shop/good.yaml', '--bottom-diameter', HOSTILE],
      ['finish', 'shop/good.yaml', '--bottom-diameter', '1', '--feature', HOSTILE],
      ['replay', 'shop/good.yaml', HOSTILE],
      ['keys', 'job', HOSTILE],
      [HOSTILE],
    ])
      expect((await clean({ files: SHOP }, ...args)).status).toBeGreaterThan(0)
  })
})

describe('a kept sheet with such text', () => {
  it('what changed is printed without it, as text, as data and to a file', async () => {
    const kept = (await runIn({ files: SHOP }, 'sheet', 'shop/good.yaml', '--format', 'json')).out
    const files = { ...SHOP, 'kept.json': kept.replaceAll('Cider', `\\u001b]0;\\u0007\u202e\u0085`) }
    for (const format of ['text', 'json', 'html'])
      await clean({ files }, 'sheet', 'shop/good.yaml', '--since', 'kept.json', '--format', format)
    const args = ['sheet', 'shop/good.yaml', '--since', 'kept.json', '--format', 'json']
    const { out } = await clean({ files }, ...args)
    expect(out).toContain('\\u202e\\u0085')
    expect(JSON.stringify(JSON.parse(out))).toContain('\u202e\u0085')
    const written = await clean({ files }, ...args, '-o', 'out.json')
    expect(written.files['out.json']).toBe(out)
  })
})

it('colors are let through, in a name they are not', async () => {
  const { out } = await runIn(inShop('\u001b[32mgood.yaml', mayNotHold()), 'check', 'shop', '--color')
  expect(out).toContain('shop/\\u001b[32mgood.yaml: \u001b[33mmay miss tolerance\u001b[39m: ')
})

it('a value of twenty thousand characters is cut in its middle where it is told', async () => {
  const long = 'x'.repeat(20_000)
  for (const text of [
    good().replace('0.156', `"${long}"`),
    good().replace('tool: neck', `tool: ${long}`),
    good(long),
  ]) {
    const world = { files: { 'good.yaml': text, 'bench.yaml': LATHE } }
    const { status, err } = await runIn(world, 'sheet', 'good.yaml')
    expect(status).toBe(2)
    expect(err.length).toBeLessThan(2000)
    expect(err).toContain('…')
    expect((await runIn(world, 'check', 'good.yaml', '--format', 'json')).out.length).toBeLessThan(4000)
  }
  expect((await runIn({ files: SHOP }, 'sheet', long)).err.length).toBeLessThan(1000)
  expect((await runIn({ files: SHOP }, 'sheet', `--${long}`)).err.length).toBeLessThan(1000)
})
