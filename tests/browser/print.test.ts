import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { printerOf } from '../../src/print/registry.ts'
import { drawnExample } from '../print/drawn.ts'
import { inChromium, PHONE } from './chromium.ts'

const print = await printerOf('sheet', 'html')
const page01 = print(drawnExample('01-press-screw'))
const page10 = print(drawnExample('10-crank-hub'))

/** How words break over lines is not compared, nor the dash that the style sets before what a move does. */
const packed = (text: string): string => text.replace(/[\s\u2013]/g, '')

inChromium('a page on paper', ({ open, folder }) => {
  const pdf = async (page: Page, format: string): Promise<string[]> => {
    const file = join(folder(), `${format}.pdf`)
    writeFileSync(file, await page.pdf({ format }))
    const text = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' })
    return text.split('\f').slice(0, -1)
  }

  describe.each([
    ['Letter', page01, 'Cider press screw, CP-14', 1, 7],
    ['A4', page10, 'Hub of the hand crank, CP-09', 3, 18],
  ])('%s', (format, html, title, features, most) => {
    it('has title, drawing number, feature and page n of m on each page, and splits no step', async () => {
      const { page } = await open(html)
      const pages = await pdf(page, format)
      expect(pages.length).toBeLessThanOrEqual(most)
      const heads = await page.evaluate<string[]>(
        "[...document.querySelectorAll('section.feature > h2 > span:first-child')].map((each) => each.textContent)",
      )
      expect(heads).toHaveLength(features)
      const steps = await page.evaluate<[feature: number, parts: string[]][]>(STEPS)
      expect(steps.length).toBeGreaterThan(20)
      pages.forEach((text, i) => {
        expect(packed(text)).toContain(`page${i + 1}of${pages.length}`)
        expect(packed(text)).toContain(packed(title))
      })
      for (const [feature, parts] of steps) {
        const place = features === 1 ? '' : `${feature + 1} of ${features}, `
        const both = [parts.join(''), `${place}${heads[feature]}`].map(packed)
        const on = pages.filter((text) => both.every((one) => packed(text).includes(one)))
        expect([parts.join(' '), on.length]).toEqual([parts.join(' '), 1])
      }
    })
  })

  it('has readings of 4 mm at the least, and no letter under 11 points but in drawings', async () => {
    const { page } = await open(page10)
    await page.emulateMedia({ media: 'print' })
    const high = await page.evaluate<number[]>(HIGH)
    expect(high.length).toBeGreaterThan(100)
    // A CSS pixel is 1/96 in.
    expect((Math.min(...high) * 25.4) / 96).toBeGreaterThanOrEqual(4)
    const sizes = await page.evaluate<number[]>(LETTERS)
    expect(sizes.length).toBeGreaterThan(100)
    expect((Math.min(...sizes) * 72) / 96).toBeGreaterThanOrEqual(10.99)
  })

  it('has readings of 24 px at the least on a phone, and nothing broader than it', async () => {
    const { page } = await open(page10, PHONE)
    const high = await page.evaluate<number[]>(HIGH)
    expect(Math.min(...high)).toBeGreaterThanOrEqual(24)
    expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBeLessThanOrEqual(390)
    await page.tap('#one')
    for (let i = 0; i < 14; i++) await page.tap('#on')
    const large = await page.evaluate<number[]>(HIGH.replace("'b.reading'", "'#now b.reading'"))
    expect(large.length).toBeGreaterThan(0)
    expect(Math.min(...large)).toBeGreaterThanOrEqual(40)
    expect(await page.locator('#now svg.dial').isVisible()).toBe(true)
  })
})

/** Of each step: the feature that it is in, and its words in their order. */
const STEPS = `[...document.querySelectorAll('.step')].map((step) => [
  [...document.querySelectorAll('section.feature')].indexOf(step.closest('section.feature')),
  [...step.querySelectorAll('.number, .thing, .does, .more > li')].map((each) => each.textContent),
])`

/** How high a figure of each reading really is, px: its ink, not its line; and of the mark on each face. */
const HIGH = `[...document.querySelectorAll('b.reading'), ...document.querySelectorAll('.dial.matters .mark')].flatMap((each) => {
  const box = each.getBoundingClientRect()
  if (box.width === 0) return []
  const pen = document.createElement('canvas').getContext('2d')
  const how = getComputedStyle(each)
  const drawn = each.ownerSVGElement
  const scale = drawn ? drawn.getBoundingClientRect().width / drawn.viewBox.baseVal.width : 1
  const size = drawn ? Number(each.getAttribute('font-size')) * scale : parseFloat(how.fontSize)
  pen.font = how.fontWeight + ' 100px ' + how.fontFamily
  return [(pen.measureText('0').actualBoundingBoxAscent * size) / 100]
})`

/** px, of all that is text and no drawing. */
const LETTERS = `[...document.querySelectorAll('main *:not(svg *)')].flatMap((each) =>
  [...each.childNodes].some((node) => node.nodeType === 3 && node.data.trim()) && each.getClientRects().length
    ? [parseFloat(getComputedStyle(each).fontSize)] : [])`
