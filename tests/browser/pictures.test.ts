import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { printerOf } from '../../src/print/registry.ts'
import type { Sheet, SheetFeature } from '../../src/sheet/sheet.ts'
import { drawnExample } from '../print/drawn.ts'
import { DESK, inChromium, PHONE } from './chromium.ts'

const [html, svg] = [await printerOf('sheet', 'html'), await printerOf('sheet', 'svg')]
const GOLDEN = join(import.meta.dirname, 'golden')

const isMark = (part: Sheet['steps'][number]['does'][number]): boolean =>
  typeof part !== 'string' && part.role === 'mark'

/** The press screw with other words: its pictures change with the look of the page, and not with a word of a step. */
const screw = ((): Sheet => {
  const sheet = drawnExample('01-press-screw')
  const heading = (['material', 'held', 'tool', 'speed'] as const).map((about) => ({
    about,
    label: 'Label',
    says: [['what is said of it, in a line that is about so long']],
  }))
  return {
    ...sheet,
    identity: 'AAAAAAA',
    heading,
    cautions: ['The first caution, in a line of its own.', 'The second caution.'],
    steps: sheet.steps.map((step) => ({
      ...step,
      does: step.reading === null ? ['what the hand does'] : ['turned to ', ...step.does.filter(isMark).slice(0, 1)],
      effect: ['what comes of it'],
      more: step.action === 'measure' ? [['a size, ', ' expected']] : [],
    })),
    features: sheet.features.map(
      (feature): SheetFeature =>
        feature.status === 'planned' ? { ...feature, heading, notes: [], warnings: [], inspection: [] } : feature,
    ),
  }
})()
inChromium('pictures of the page', ({ open, folder }) => {
  it('on a phone: where it begins, and one step large', async () => {
    const { page } = await open(html(screw), PHONE)
    await same(page, 'phone', await page.screenshot())
    await page.click('#one')
    for (let i = 0; i < 12; i++) await page.click('#on')
    await same(page, 'phone-next', await page.screenshot())
  })

  it('on a desk: form, tool and steps', async () => {
    const { page } = await open(html(screw), DESK)
    await page.locator('#feature-1').scrollIntoViewIfNeeded()
    await page.evaluate(
      "document.documentElement.style.scrollBehavior = 'auto'; document.getElementById('feature-1').scrollIntoView()",
    )
    await same(page, 'desk', await page.screenshot())
  })

  it('on paper: the page where a feature begins, and the one where it is finished', async () => {
    const { page } = await open(html(screw))
    const file = join(folder(), 'paper.pdf')
    writeFileSync(file, await page.pdf({ format: 'Letter' }))
    execFileSync('pdftoppm', ['-r', '50', '-gray', '-png', '-f', '2', '-l', '3', file, join(folder(), 'paper')])
    for (const number of [2, 3])
      await same(page, `paper-${number}`, readFileSync(join(folder(), `paper-${number}.png`)))
  })

  it('of the drawings alone', async () => {
    const { page } = await open(`<body>${svg(drawnExample('10-crank-hub'))}`, {
      viewport: { width: 730, height: 1500 },
    })
    await same(page, 'drawings', await page.screenshot())
  })
})

/** Parts of all places that may be another gray: letters are drawn a little differently from one release to the next. */
const TOLERANCE = 0.01

/** Compares with the picture that was looked at and kept; kept anew where that is asked for and it is another. */
const same = async (page: Page, name: string, picture: Buffer): Promise<void> => {
  const file = join(GOLDEN, `${name}.png`)
  const other = existsSync(file) ? await difference(page, readFileSync(file), picture) : 1
  if (process.env.GROOVEWRIGHT_ACCEPT !== undefined && other > TOLERANCE) writeFileSync(file, picture)
  else expect([name, other <= TOLERANCE, other]).toEqual([name, true, other])
  expect(existsSync(file)).toBe(true)
}

/** Each picture in places of 4 by 4 pixels: how many of them are another gray by more than an eighth. Of another size: all. */
const difference = async (page: Page, one: Buffer, other: Buffer): Promise<number> => {
  const clean = await page.context().browser()!.newPage()
  try {
    return await clean.evaluate<number>(`(async () => {
      const grays = async (data) => {
        const image = new Image()
        image.src = 'data:image/png;base64,' + data
        await image.decode()
        const canvas = new OffscreenCanvas(Math.ceil(image.width / 4), Math.ceil(image.height / 4))
        const pen = canvas.getContext('2d')
        pen.imageSmoothingQuality = 'high'
        pen.drawImage(image, 0, 0, canvas.width, canvas.height)
        const { data: all } = pen.getImageData(0, 0, canvas.width, canvas.height)
        return { size: image.width + 'x' + image.height, all }
      }
      const [one, other] = [await grays('${one.toString('base64')}'), await grays('${other.toString('base64')}')]
      if (one.size !== other.size) return 1
      let differ = 0
      for (let i = 0; i < one.all.length; i += 4) if (Math.abs(one.all[i] - other.all[i]) > 32) differ++
      return differ / (one.all.length / 4)
    })()`)
  } finally {
    await clean.close()
  }
}
