/** One browser for a file of tests: a page that prints as the tool prints, and one with scripts for the tests' own use. */
import type { Page } from 'puppeteer'
import { vi } from 'vitest'
import { launchBrowser } from '../../src/shell/browser/launch.ts'
import { printPdf, shutIn } from '../../src/shell/browser/print-pdf.ts'

/** A machine that does much else at the same time prints slowly, not wrongly. */
vi.setConfig({ testTimeout: 300_000, hookTimeout: 300_000 })

/** The quote's date of each print here. */
const DATE = '2026-03-02'

export interface TestBrowser {
  /** As "HeadlessChrome/143.0.7499.0". */
  readonly version: string
  /** Prints with the page that the tool prints with. */
  readonly print: (html: string) => Promise<Uint8Array>
  /** A page that the tool never opens: scripts run on it, so that it can be measured from inside. */
  readonly page: Page
  /** A page prepared as the tool prepares its own. */
  readonly shutPage: () => Promise<Page>
  readonly close: () => Promise<void>
}

/** Whichever browser the tool would print with. Rejects, and so fails the tests, where there is none. */
export const openBrowser = async (): Promise<TestBrowser> => {
  const { browser, close } = await launchBrowser(process.env)
  const shutPage = async () => {
    const page = await browser.newPage()
    await shutIn(page)
    return page
  }
  const printing = await shutPage()
  return {
    version: await browser.version(),
    print: (html) => printPdf(printing, html, DATE),
    page: await browser.newPage(),
    shutPage,
    close,
  }
}

/** Width of A4 and Letter between the margins of the reports, in CSS pixels: (210 - 34) and (215.9 - 34) mm of 96/25.4 px. */
export const PAPER_WIDTH = { a4: 665, letter: 687 } as const

/** Shows a page as it is laid out on paper, in one stretch. */
export const showAsPrinted = async (page: Page, html: string, paper: 'a4' | 'letter' = 'a4'): Promise<void> => {
  await page.emulateMediaType('print')
  await page.setViewport({ width: PAPER_WIDTH[paper], height: 1000 })
  await page.setContent(html, { waitUntil: 'load' })
  await page.evaluate('document.fonts.ready.then(() => null)')
}

/** Shows a page as it is read on a screen of this width. */
export const showOnScreen = async (page: Page, html: string, width: number): Promise<void> => {
  await page.emulateMediaType('screen')
  await page.setViewport({ width, height: 900 })
  await page.setContent(html, { waitUntil: 'load' })
  await page.evaluate('document.fonts.ready.then(() => null)')
}
