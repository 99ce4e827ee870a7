/** Prints one page of HTML to a PDF. */
import type { Page } from 'puppeteer'
import { mendBookmarks } from './mend-bookmarks.ts'
import { normalisePdf } from './normalise-pdf.ts'
import { packPdf } from './pack-pdf.ts'

/** What is wrong with the page itself: another browser would not print it better. */
export class Unprintable extends Error {
  override readonly name = 'Unprintable'
}

/**
 * Prepares a page for printing: no script, and no request but for what is inside the document. The HTML is our own, but
 * it carries names and sentences that others wrote.
 */
export const shutIn = async (page: Page): Promise<void> => {
  await page.setJavaScriptEnabled(false)
  await page.setRequestInterception(true)
  page.on('request', (request) => {
    const settled = request.url().startsWith('data:') ? request.continue() : request.abort()
    settled.catch(() => {}) // the page was closed meanwhile
  })
}

/**
 * Prints `html` and returns the bytes: tagged, with bookmarks from the headings, size and margins from its @page rule,
 * dates from `date` (ISO). Throws where a font of the page did not load: the print would lack text.
 */
export const printPdf = async (page: Page, html: string, date: string): Promise<Uint8Array> => {
  await page.setContent(html, { waitUntil: 'load', timeout: 60_000 })
  const { fonts, headings } = await page.evaluate(async () => {
    const { document } = globalThis as unknown as { document: PageDocument }
    await document.fonts.ready
    const found = document.querySelectorAll('h1, h2, h3, h4, h5, h6')
    return {
      fonts: [...document.fonts].map(({ family, weight, status }) => ({ family, weight, status })),
      headings: [...found].map(({ textContent }) => textContent ?? ''),
    }
  })
  const failed = fonts.filter(({ status }) => status === 'error')
  if (failed.length > 0) {
    const names = failed.map(({ family, weight }) => `${family} ${weight}`).join(', ')
    throw new Unprintable(`fonts of the report did not load: ${names}`)
  }
  const pdf = await page.pdf({
    preferCSSPageSize: true,
    printBackground: true,
    tagged: true,
    outline: true,
    timeout: 120_000,
  })
  if (!Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).includes('/Font'))
    throw new Unprintable('the PDF has no text')
  return packPdf(normalisePdf(mendBookmarks(pdf, headings), date))
}

/** What is used of the browser's document; the project is compiled without the browser's types. */
interface PageDocument {
  readonly fonts: FontSet
  readonly querySelectorAll: (selector: string) => Iterable<{ readonly textContent: string | null }>
}

interface FontSet extends Iterable<{ readonly family: string; readonly weight: string; readonly status: string }> {
  readonly ready: Promise<unknown>
}
