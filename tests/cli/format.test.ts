import { describe, expect, it } from 'vitest'
import { runIn, SHOP } from './world.ts'

const sheet = (...args: string[]) => runIn({ files: SHOP }, 'sheet', 'shop/good.yaml', ...args)

describe('the format of what is written', () => {
  it.each([
    ['page.html', 'html'],
    ['page.HTM', 'html'],
    ['drawings.svg', 'svg'],
    ['kept.json', 'json'],
    ['moves.csv', 'csv'],
    ['sheet.txt', 'text'],
    ['sheet', 'text'],
    ['sheet.pdf', 'text'],
    ['html', 'text'],
  ])('%s is written as %s', async (file, format) => {
    const { status, err, out, files } = await sheet('-o', file)
    expect({ status, err, out }).toEqual({ status: 0, err: '', out: '' })
    expect(files[file]).toBe((await sheet('--format', format)).out)
  })

  it('is the one that is given, whatever the ending', async () => {
    const { files } = await sheet('--format', 'text', '-o', 'kept.json')
    expect(files['kept.json']).toBe((await sheet()).out)
  })

  it('is text on standard output', async () => {
    expect((await sheet('-o', '-')).out).toBe((await sheet()).out)
  })

  it('is one that the command prints, or it is said so and nothing is written', async () => {
    const { status, err, files } = await runIn({ files: SHOP }, 'grind', 'shop/good.yaml', '-o', 'tools.svg')
    expect(status).toBe(2)
    expect(err).toBe(
      'groovewright: "tools.svg" has the ending of svg, which grind does not print: end it in .txt or .json, or give --format\n',
    )
    expect(Object.keys(files).sort()).toEqual(Object.keys(SHOP).sort())
  })

  it('goes for the other commands that write: grind as data', async () => {
    const { status, files } = await runIn({ files: SHOP }, 'grind', 'shop/good.yaml', '-o', 'tools.json')
    expect(status).toBe(0)
    expect(JSON.parse(files['tools.json']!)).toMatchObject({ tools: expect.any(Array) })
  })

  it('has the drawings where it has any', async () => {
    const { out } = await sheet('--format', 'svg')
    expect(out).toContain('<svg id="part" class="picture part"')
    expect(out).toContain('<svg id="form-1" class="picture form"')
    expect((await sheet('--format', 'html')).out).toContain('<svg id="form-1" class="picture form"')
  })

  it('has a card of any width in lines, and nowhere else', async () => {
    expect((await sheet('--card', '--width', '40')).out).toMatch(/^ {2}1 \[ \] LAYOUT/m)
    const { status, err } = await sheet('--card', '--format', 'csv')
    expect(status).toBe(2)
    expect(err).toBe('groovewright: --card has no place in csv: leave it out, or print text\n')
    expect((await sheet('--card', '--width', '12')).err).toContain('a whole number from 40 to 120 is wanted')
    expect((await sheet('--width', '40', '--format', 'json')).err).toContain('--width has no place in json')
  })

  it('has no place for what changed where it is the drawings alone', async () => {
    const files = { ...SHOP, 'kept.json': (await sheet('--format', 'json')).out }
    const { status, err } = await runIn({ files }, 'sheet', 'shop/good.yaml', '--format', 'svg', '--since', 'kept.json')
    expect(status).toBe(2)
    expect(err).toBe(
      'groovewright: --since has no place in the drawings alone: leave it out, or print text, json, html or markdown\n',
    )
  })
})
