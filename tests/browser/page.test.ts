import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { GRINDER_CAUTIONS } from '../../src/handbook/grinding.ts'
import { printerOf } from '../../src/print/registry.ts'
import { grindSheet } from '../../src/sheet/grind/grind.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { slipsFor } from '../../src/slips-for.ts'
import { drawnExample, HOSTILE, named } from '../print/drawn.ts'
import { examplePlans } from '../print/examples.ts'
import { DESK, inChromium, PHONE } from './chromium.ts'

const require = createRequire(import.meta.url)
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8')
const printed = await printerOf('sheet', 'html')
const print = (sheet: Sheet): string => printed(sheet, { inspection: true })
const screw = print(drawnExample('01-press-screw'))
/** With all that may stand on a page. */
const whole = ((): string => {
  const [, plan] = examplePlans().find(([name]) => name.startsWith('01-'))!
  return print({ ...drawnExample('01-press-screw'), grind: grindSheet(plan, GRINDER_CAUTIONS), slips: slipsFor(plan) })
})()

inChromium('a page in Chromium', ({ open }) => {
  it('has nothing that axe would change, on a desk, on a phone, and one step at a time', {
    timeout: 120_000,
  }, async () => {
    const desk = await open(whole, { ...DESK, bypassCSP: true })
    expect(await violations(desk.page)).toEqual([])
    const { page } = await open(whole, { ...PHONE, bypassCSP: true })
    expect(await violations(page)).toEqual([])
    await page.click('#one')
    for (let i = 0; i < 12; i++) await page.click('#on')
    expect(await violations(page)).toEqual([])
  })

  it('asks nobody for anything, and says nothing to the console', async () => {
    const { page, asked, file } = await open(screw)
    await page.click('#one')
    await page.click('#on')
    await page.click('#all')
    expect(asked).toEqual([file])
  })

  it('keeps ticks and sizes through a reload without a net, of each sheet its own', async () => {
    const { page, file } = await open(screw, PHONE)
    await page.context().setOffline(true)
    await page.tap('#step-1 .thing')
    await page.tap('#step-2 .number')
    // What a tap does may come after the tap is over: a busy browser answers late.
    await expect.poll(() => ticked(page)).toEqual(['1', '2'])
    await page.fill('.blank >> nth=1', '.0545')
    // What a page keeps is written by another process: a page that is opened again in the same millisecond may come before it.
    const again = async (how: () => Promise<unknown>) => {
      await how()
      return ticked(page)
    }
    await expect.poll(() => again(() => page.reload())).toEqual(['1', '2'])
    expect(await page.inputValue('.blank >> nth=1')).toBe('.0545')
    await page.tap('#one')
    await expect.poll(() => page.textContent('#now .number')).toBe('3')
    await page.tap('#on')
    await expect.poll(() => page.textContent('#now .number')).toBe('4')
    await page.tap('#back')
    await expect.poll(() => page.textContent('#now .number')).toBe('3')
    await page.keyboard.press('Escape')
    await expect.poll(() => again(() => page.goto(file))).toEqual(['1', '2', '3'])
    expect(await page.evaluate<string[]>('Object.keys(localStorage)')).toHaveLength(1)
    page.on('dialog', (dialog) => dialog.accept())
    await page.tap('#clear')
    await expect.poll(() => ticked(page)).toEqual([])
    await expect.poll(() => again(() => page.reload())).toEqual([])
    expect(await page.inputValue('.blank >> nth=1')).toBe('')
  })

  it('can be ticked and read without its script', async () => {
    const { page } = await open(screw, { javaScriptEnabled: false })
    await page.click('#step-1 .thing')
    expect(await page.isChecked('#step-1 input')).toBe(true)
    expect(await page.isVisible('#bar')).toBe(false)
    expect(await page.isVisible('#next')).toBe(false)
    expect(await page.isVisible('#step-32')).toBe(true)
  })

  it('shows names that are meant to do harm as text, and runs nothing of them', async () => {
    const name = HOSTILE.join(' ')
    const { page, asked, file } = await open(print(named(name)))
    const shown = await page.textContent('h1')
    expect(shown!.replace(/\[U\+[0-9A-F]{4}\]/g, '')).toBe(name.replace(/[\u202a-\u202e\u2066-\u2069]/g, ''))
    expect(await page.locator('script').count()).toBe(1)
    expect(await page.locator('img, link, iframe, style ~ style, b:not(.reading)').count()).toBe(0)
    expect(asked).toEqual([file])
  })

  it('is whole without drawings', async () => {
    const { page } = await open(print(sheetFor(examplePlans()[0]![1])), PHONE)
    await page.tap('#one')
    await expect.poll(() => page.isVisible('#now .does')).toBe(true)
  })
})

const ticked = (page: Page): Promise<string[]> =>
  page.evaluate("[...document.querySelectorAll('.step input:checked')].map((box) => box.dataset.step)")

/** As axe says them: the rule, and where. */
const violations = async (page: Page): Promise<string[]> => {
  await page.evaluate(AXE)
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
    }
    const { violations } = await axe.run()
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
  })
}
