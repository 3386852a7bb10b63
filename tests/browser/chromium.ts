import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

/** Where Debian's package, and some others, put it. `GROOVEWRIGHT_CHROMIUM` names another place. */
const PLACES = [process.env.GROOVEWRIGHT_CHROMIUM ?? '', '/usr/bin/chromium', '/usr/bin/chromium-browser']
const PROGRAM = PLACES.find((path) => path !== '' && existsSync(path))
const has = (program: string): boolean => {
  try {
    execFileSync(program, ['-v'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}
const MISSING = [
  ...(PROGRAM === undefined ? ['chromium'] : []),
  ...(has('pdftotext') ? [] : ['pdftotext (of poppler-utils)']),
]

export type Desk = {
  /** A page of this text, opened from a file as a person opens it, with every request that it makes. */
  readonly open: (html: string, how?: BrowserContextOptions) => Promise<{ page: Page; asked: string[]; file: string }>
  /** A folder that is gone after the tests. */
  readonly folder: () => string
}

/** Tests in a real browser, started once for the file. Where there is none they are not run, and say so. */
export const inChromium = (name: string, tests: (desk: Desk) => void): void => {
  if (MISSING.length > 0) {
    it.skip(`${name}: NOT RUN, ${MISSING.join(' and ')} missing here`, () => {
      expect(MISSING).toEqual([])
    })
    return
  }
  describe(name, () => {
    let browser: Browser
    let folder: string
    let pages = 0
    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'groovewright-'))
      // It runs as root where tests run in a container, and there it has no sandbox of its own.
      browser = await chromium.launch({
        executablePath: PROGRAM!,
        args: ['--no-sandbox', '--font-render-hinting=none'],
      })
    })
    afterAll(async () => {
      await browser.close()
      rmSync(folder, { recursive: true })
    })
    tests({
      folder: () => folder,
      open: async (html, how = {}) => {
        pages += 1
        const file = join(folder, `${pages}.html`)
        writeFileSync(file, html)
        const context = await browser.newContext(how)
        const page = await context.newPage()
        const asked: string[] = []
        page.on('request', (request) => asked.push(request.url()))
        page.on('pageerror', (error) => asked.push(`error: ${error.message}`))
        page.on('console', (message) => asked.push(`console: ${message.text()}`))
        const url = pathToFileURL(file).href
        await page.goto(url)
        return { page, asked, file: url }
      },
    })
  })
}

export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const
export const DESK = { viewport: { width: 1280, height: 900 } } as const
