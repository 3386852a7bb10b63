import { describe, expect, it } from 'vitest'
import { namesFor } from '../../src/cli/safe-names.ts'
import { good, LATHE, misspelt, refused, runIn } from './world.ts'

const SHOP = {
  'shop/a/press.yaml': good('../bench.yaml'),
  'shop/b/screw.yaml': good('../bench.yaml'),
  'shop/bench.yaml': LATHE,
}
const out = (files: Record<string, string>): string[] => Object.keys(files).filter((name) => name.startsWith('out/'))

describe('sheet --out', () => {
  it('writes the sheet of every job in a folder, as -o writes each, and nothing to standard output', async () => {
    const all = await runIn({ files: SHOP }, 'sheet', 'shop', '--out', 'out', '--format', 'csv')
    expect(all).toMatchObject({ status: 0, out: '', err: '' })
    expect(out(all.files)).toEqual(['out/press.csv', 'out/screw.csv'])
    const one = await runIn({ files: SHOP }, 'sheet', 'shop/a/press.yaml', '--format', 'csv')
    expect(all.files['out/press.csv']).toBe(one.out)
  })

  it('replaces nothing without --force, and then writes none', async () => {
    const files = { ...SHOP, 'out/screw.txt': 'mine' }
    const asked = await runIn({ files }, 'sheet', 'shop', '--out', 'out')
    expect(asked.status).toBe(2)
    expect(asked.err).toBe('groovewright: "out" has screw.txt already; say --force to replace; nothing was written\n')
    expect(asked.files).toEqual(files)
    const forced = await runIn({ files }, 'sheet', 'shop', '--out', 'out', '--force')
    expect(forced.status).toBe(0)
    expect(forced.files['out/screw.txt']).not.toBe('mine')
  })

  it('goes on after a job that cannot be read or cut, and ends in the worst status', async () => {
    const bad = { ...SHOP, 'shop/a/bad.yaml': misspelt().replace('bench', '../bench') }
    const one = await runIn({ files: bad }, 'sheet', 'shop', '--out', 'out')
    expect(one.status).toBe(2)
    expect(one.err).toContain('widht')
    expect(out(one.files)).toEqual(['out/press.txt', 'out/screw.txt'])
    const wide = { ...SHOP, 'shop/a/wide.yaml': refused().replace('bench', '../bench') }
    const other = await runIn({ files: wide }, 'sheet', 'shop', 'nowhere.yaml', '--out', 'out')
    expect(other.status).toBe(2)
    expect(out(other.files)).toHaveLength(3)
    expect((await runIn({ files: wide }, 'sheet', 'shop', '--out', 'out')).status).toBe(1)
  })

  it('tells how many are done on a terminal only', async () => {
    const seen = await runIn({ files: SHOP, terminal: true }, 'sheet', 'shop', '--out', 'out')
    expect(seen.err).toContain('\r1 of 2')
    expect(seen.err.endsWith('\r\u001b[K')).toBe(true)
  })

  it.each([
    [['shop', '--out', 'out', '-o', 'x'], 'not both'],
    [['-', '--out', 'out'], 'standard input has no name'],
    [['shop', '--out', 'out', '--since', 'x'], '--since is about one sheet'],
    [['shop/a/press.yaml', 'shop/b/screw.yaml'], 'more than one job: give --out'],
    [['shop/bench-is-not-here', '--out', 'out'], 'no job found'],
  ])('says what is wrong with %j', async (args, says) => {
    const { status, err, files } = await runIn({ files: SHOP }, 'sheet', ...args)
    expect(status).toBe(2)
    expect(err).toContain(says)
    expect(files).toEqual(SHOP)
  })
})

describe('the names of the files', () => {
  it.each([
    [['jobs/press.yaml'], ['press.html']],
    [
      ['a/neck.yaml', 'b/neck.yml', 'c/Neck.YAML'],
      ['a-neck.html', 'b-neck.html', 'c-Neck.html'],
    ],
    [
      ['a/x.yaml', './a/X.yaml'],
      ['a-x.html', 'a-X-2.html'],
    ],
    [['../we ird $(rm) "name"\n.yaml'], ['we-ird-rm-name.html']],
    [
      ['-rf.yaml', '.hidden.yaml', '....yaml'],
      ['rf.html', 'hidden.html', 'job.html'],
    ],
    [
      ['CON.yaml', 'nul.yaml'],
      ['job-CON.html', 'job-nul.html'],
    ],
    [['Käfig Ω.yaml'], ['Käfig-Ω.html']],
  ])('%j', (jobs, names) => {
    expect(namesFor(jobs, '.html')).toEqual(names)
  })

  it('are short enough for any disk', () => {
    const [name] = namesFor([`${'\u{1F600}\u00e9'.repeat(200)}.yaml`, 'x'], '.html')
    expect(Buffer.byteLength(name!)).toBeLessThanOrEqual(255)
  })
})
