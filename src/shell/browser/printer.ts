/** One browser and one page of it, used for every report of a run. */
import type { Page } from 'puppeteer'
import type { Launched } from './launch.ts'
import { launchBrowser } from './launch.ts'
import { printPdf, shutIn } from './print-pdf.ts'

export interface Printer {
  /** Prints a page of HTML; `date` (ISO) becomes the date of the document. */
  readonly print: (html: string, date: string) => Promise<Uint8Array>
  readonly close: () => Promise<void>
}

/** Starts a browser. Rejects with a BrowserMissing where none can be started. */
export const openPrinter = async (env: { readonly [name: string]: string | undefined }): Promise<Printer> => {
  const launched = await launchBrowser(env)
  let page: Page | null = null
  const print = async (html: string, date: string): Promise<Uint8Array> => {
    page ??= await preparedPage(launched)
    try {
      return await printPdf(page, html, date)
    } catch (error) {
      const broken = page
      page = null // the next report gets a page that nothing went wrong on
      await broken.close().catch(() => {})
      throw error
    }
  }
  return { print, close: launched.close }
}

const preparedPage = async ({ browser }: Launched): Promise<Page> => {
  const [blank] = await browser.pages()
  const page = blank ?? (await browser.newPage())
  await shutIn(page)
  return page
}
