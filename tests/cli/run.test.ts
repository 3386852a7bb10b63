import { describe, expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { jsonSchema } from '../../src/job/json-schema.ts'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { good, LATHE, mayNotHold, misspelt, refused, runIn, SHOP } from './world.ts'

describe('the command line', () => {
  it('prints its version and its help with examples', async () => {
    expect(await runIn({}, '--version')).toMatchObject({
      status: 0,
      out: `groovewright ${manifest.version}\n`,
      err: '',
    })
    const help = await runIn({}, '--help')
    expect(help).toMatchObject({ status: 0, err: '' })
    expect(help.out).toContain('$ groovewright sheet press.yaml')
    for (const line of help.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
    for (const command of ['sheet', 'check', 'new', 'keys', 'schema']) {
      expect(await runIn({}, command, '--help')).toMatchObject({
        status: 0,
        err: '',
        out: expect.stringContaining('Usage: groovewright '),
      })
    }
  })

  it.each([
    [['shete', 'a.yaml'], 'sheet'],
    [['sheet', 'a.yaml', '--formt', 'json'], '--format'],
    [['sheet', 'a.yaml', '--format', 'pdf'], 'text, json'],
    [['sheet', 'a.yaml', 'b.yaml'], 'more than one job: give --out'],
    [['new'], 'kind'],
    [['new', 'bicycle'], 'job, lathe, toolbox'],
    [['schema', 'bicycle'], 'sheet'],
    [['sheet', '-o'], 'argument missing'],
  ])('%j is a wrong command: status 2, said on standard error', async (args, hint) => {
    const { status, out, err } = await runIn({}, ...args)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain(hint)
  })

  it('shows help on standard error where there is no command', async () => {
    const { status, out, err } = await runIn({})
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain('Usage: groovewright')
  })

  it.each(['sheet', 'check'])('%s waits for no keyboard: short help, status 2', async (command) => {
    const { status, out, err } = await runIn({ terminal: true }, command)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain(`Usage: groovewright ${command}`)
  })
})

describe('sheet', () => {
  it('prints a job and the files it includes', async () => {
    const { status, out, err } = await runIn({ files: SHOP }, 'sheet', 'shop/good.yaml')
    expect({ status, err }).toEqual({ status: 0, err: '' })
    expect(out).toContain('CIDER PRESS SCREW')
    expect(out.replace(/\s+/g, ' ')).toContain(
      'CHECKED BY REPLAY, any backlash 0 to .008 (cross-feed) and 0 to .006 (compound)',
    )
  })

  it('reads standard input, named or not, with includes from the current folder', async () => {
    const world = { files: { 'bench.yaml': LATHE, 'good.yaml': good() }, stdin: good() }
    const { out } = await runIn(world, 'sheet', 'good.yaml')
    for (const args of [['sheet'], ['sheet', '-']])
      expect(await runIn(world, ...args)).toMatchObject({ status: 0, out, err: '' })
    expect((await runIn({ ...world, terminal: true }, 'sheet')).status).toBe(0)
  })

  it('prints data on request', async () => {
    const { status, out } = await runIn({ files: SHOP }, 'sheet', '--format', 'json', 'shop/good.yaml')
    expect(status).toBe(0)
    expect(JSON.parse(out)).toMatchObject({ format: 'groovewright.sheet/1', features: [{ status: 'planned' }] })
  })

  it('writes to a file, and over one only when told to', async () => {
    const first = await runIn({ files: SHOP }, 'sheet', 'shop/good.yaml', '-o', 'sheet.txt')
    expect(first).toMatchObject({ status: 0, out: '', err: '' })
    expect(first.files['sheet.txt']).toBe((await runIn({ files: SHOP }, 'sheet', 'shop/good.yaml', '-o', '-')).out)
    const files = { ...SHOP, 'sheet.txt': 'mine' }
    const kept = await runIn({ files }, 'sheet', 'shop/good.yaml', '-o', 'sheet.txt')
    expect(kept).toMatchObject({ status: 2, files: { 'sheet.txt': 'mine' } })
    expect(kept.err).toBe('groovewright: cannot write "sheet.txt": it exists already; say --force to replace it\n')
    const replaced = await runIn({ files }, 'sheet', 'shop/good.yaml', '-o', 'sheet.txt', '--force')
    expect(replaced.files['sheet.txt']).toBe(first.files['sheet.txt'])
  })

  it('says in one line that a disk is full', async () => {
    const { status, err } = await runIn(
      { files: SHOP, writing: 'ENOSPC' },
      'sheet',
      'shop/good.yaml',
      '-o',
      'sheet.txt',
    )
    expect({ status, err }).toEqual({
      status: 2,
      err: 'groovewright: cannot write "sheet.txt": no space is left on the disk\n',
    })
  })

  it('prints what can be cut, says what cannot, and ends with 1', async () => {
    const { status, out, err } = await runIn(
      { files: { ...SHOP, 'shop/wide.yaml': refused() } },
      'sheet',
      'shop/wide.yaml',
    )
    expect(status).toBe(1)
    expect(out).toContain('REFUSED')
    expect(err).toContain('cannot be cut as asked: Relief:')
  })

  it('stays at 0 where a dimension may not hold, and says so on the sheet', async () => {
    const { status, out } = await runIn(
      { files: { ...SHOP, 'shop/fine.yaml': mayNotHold() } },
      'sheet',
      'shop/fine.yaml',
    )
    expect(status).toBe(0)
    expect(out).toContain('MAY MISS TOLERANCE')
  })

  it('points at what it cannot read, and prints no sheet', async () => {
    const { status, out, err } = await runIn(
      { files: { ...SHOP, 'shop/bad.yaml': misspelt() } },
      'sheet',
      'shop/bad.yaml',
    )
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toMatch(/^shop\/bad\.yaml:8:\d+: error: .*"widht"/)
    expect(err).toContain('did you mean "width"?')
  })

  it.each([
    ['nowhere.yaml', 'there is no such file'],
    ['shop', 'it is a folder'],
  ])('says why %s cannot be read', async (path, why) => {
    const { status, err } = await runIn({ files: SHOP }, 'sheet', path)
    expect(status).toBe(2)
    expect(err).toContain(why)
  })
})

describe('check', () => {
  const files = {
    ...SHOP,
    'shop/fine.yaml': mayNotHold(),
    'shop/more/wide.yaml': refused(),
    'shop/more/bench.yaml': LATHE,
  }

  it('gives a line for each job, skips what is none, and ends with the worst', async () => {
    const { status, out, err } = await runIn({ files }, 'check', 'shop')
    expect(status).toBe(1)
    expect(out.split('\n')).toEqual([
      'shop/fine.yaml: may miss tolerance: Relief (depth)',
      'shop/good.yaml: good, 1 feature',
      expect.stringMatching(/^shop\/more\/wide\.yaml: refused: Relief: /),
      '3 jobs: 1 good, 1 may miss tolerance, 1 refused, 2 skipped',
      '',
    ])
    expect(err).toMatch(/^shop\/fine\.yaml:8:69: warning: Relief: May miss tolerance: depth .* drawn \.0695 to \.0705/)
    expect(err).toMatch(/^shop\/more\/wide\.yaml:\d+:\d+: error: cannot be cut as asked: Relief: /m)
    expect(err).toContain('skipped, not a job: shop/bench.yaml\nskipped, not a job: shop/more/bench.yaml\n')
  })

  it('ends with 0 where all hold', async () => {
    expect(await runIn({ files }, 'check', 'shop/good.yaml')).toMatchObject({
      status: 0,
      err: '',
      out: 'shop/good.yaml: good, 1 feature\n1 job: 1 good\n',
    })
    expect((await runIn({ files: { 'bench.yaml': LATHE }, stdin: good() }, 'check')).status).toBe(0)
  })

  it('ends with 2 where something cannot be read, after checking the rest', async () => {
    const { status, out, err } = await runIn(
      { files: { ...files, 'shop/bad.yaml': misspelt() } },
      'check',
      'shop',
      'nowhere',
    )
    expect(status).toBe(2)
    expect(out).toContain('shop/bad.yaml: unreadable\n')
    expect(out).toContain('4 jobs: 1 good, 1 may miss tolerance, 1 refused, 1 unreadable, 2 skipped\n')
    expect(err).toContain('did you mean "width"?')
    expect(err).toContain('cannot read "nowhere": there is no such file or folder')
  })

  it('says where there is nothing to check', async () => {
    const { status, err } = await runIn({ files: { 'shop/bench.yaml': LATHE } }, 'check', 'shop')
    expect(status).toBe(2)
    expect(err).toContain('no job found')
  })

  it('prints data on request', async () => {
    const { out } = await runIn(
      { files: { ...files, 'shop/bad.yaml': misspelt() } },
      'check',
      'shop',
      '--format',
      'json',
    )
    const { jobs, skipped, summary } = JSON.parse(out)
    expect(summary).toEqual({ jobs: 4, good: 1, mayNotHold: 1, refused: 1, unreadable: 1, skipped: 2 })
    expect(skipped).toEqual(['shop/bench.yaml', 'shop/more/bench.yaml'])
    expect(jobs[0]).toMatchObject({ file: 'shop/bad.yaml', verdict: 'unreadable', problems: [{ severity: 'error' }] })
    expect(jobs[1]).toMatchObject({ verdict: 'may not hold', features: [{ name: 'Relief', mayNotHold: ['depth'] }] })
    expect(jobs[3]).toMatchObject({
      verdict: 'refused',
      features: [{ status: 'refused', refusal: { remedy: expect.any(String) } }],
    })
  })
})

describe('new and schema', () => {
  it('starts a job that can be printed at once', async () => {
    const { status, files } = await runIn({}, 'new', 'job', '-o', 'press.yaml')
    expect(status).toBe(0)
    expect((await runIn({ files }, 'check', 'press.yaml')).status).toBe(0)
  })

  it.each(['job', 'lathe', 'toolbox'])('prints a %s to start from', async (kind) => {
    expect((await runIn({}, 'new', kind)).out.length).toBeGreaterThan(100)
  })

  it('prints schemas', async () => {
    for (const kind of ['job', 'lathe', 'toolbox'] as const) {
      expect(JSON.parse((await runIn({}, 'schema', kind)).out)).toEqual(JSON.parse(JSON.stringify(jsonSchema(kind))))
    }
    expect(JSON.parse((await runIn({}, 'schema', 'sheet')).out)).toEqual(sheetSchema())
  })
})

describe('color', () => {
  const out = async (env: Record<string, string>, terminal: boolean, ...flags: string[]): Promise<boolean> =>
    (await runIn({ files: SHOP, env, terminal }, 'check', 'shop/good.yaml', ...flags)).out.includes('\u001b[')

  it('follows the flag, then NO_COLOR, then FORCE_COLOR, then TERM, then the terminal', async () => {
    expect(await out({}, true)).toBe(true)
    expect(await out({}, false)).toBe(false)
    expect(await out({ TERM: 'dumb' }, true)).toBe(false)
    expect(await out({ TERM: 'dumb', FORCE_COLOR: '1' }, false)).toBe(true)
    expect(await out({ FORCE_COLOR: '0' }, true)).toBe(false)
    expect(await out({ FORCE_COLOR: '1', NO_COLOR: '1' }, true)).toBe(false)
    expect(await out({ NO_COLOR: '1' }, false, '--color')).toBe(true)
    expect(await out({ FORCE_COLOR: '1' }, true, '--no-color')).toBe(false)
  })

  it('never gets into a sheet', async () => {
    expect((await runIn({ files: SHOP, terminal: true }, '--color', 'sheet', 'shop/good.yaml')).out).not.toContain(
      '\u001b',
    )
  })
})

describe('a failure of our own', () => {
  const broken = { files: SHOP, writing: 'EOURS' }
  it('is one line that calls it a bug, with status 70', async () => {
    const env = {}
    Object.defineProperty(env, 'NO_COLOR', {
      get: () => {
        throw new Error('the lathe fell over')
      },
    })
    const { status, err } = await runIn({ ...broken, env }, 'check', 'shop/good.yaml')
    expect({ status, err }).toEqual({
      status: 70,
      err: 'groovewright: this is a bug: the lathe fell over (DEBUG=1 shows where)\n',
    })
    const debug = await runIn(
      {
        ...broken,
        env: Object.defineProperty({ DEBUG: '1' }, 'NO_COLOR', {
          get: () => {
            throw new Error('again')
          },
        }),
      },
      'check',
      'shop/good.yaml',
    )
    expect(debug.err).toMatch(/this is a bug: again.*\nError: again\n {4}at /)
  })
})
