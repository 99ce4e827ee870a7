/**
 * Prints reports: one browser, several of its pages at once. A page that crashes, or a browser that is gone, gives way to a
 * new browser, in which what failed is printed once more; the others go on.
 */
import type { Page } from 'puppeteer'
import { type Launched, launchBrowser } from './launch.ts'
import { printPdf, shutIn, Unprintable } from './print-pdf.ts'

export interface Printer {
  /** Prints a page of HTML; `date` (ISO) becomes the date of the document. Any number may be asked for at once. */
  readonly print: (html: string, date: string) => Promise<Uint8Array>
  /** Ends the browser; what it is printing fails. */
  readonly close: () => Promise<void>
}

/** Pages that print at the same time: two print a fifth more in a second than one, three and four no more (`npm run bench`). */
export const PAGES_AT_ONCE = 2

/** Prints after which a browser is replaced, so that what it keeps of every page cannot grow without end. */
const PRINTS_A_BROWSER = 250

interface OpenPage {
  readonly page: Page
  /** While nothing was printed on it. */
  crashed: boolean
}

/** What waits for an answer of a page that has crashed would wait for minutes. */
const unlessItCrashes = async <T>(page: Page, work: Promise<T>): Promise<T> => {
  let told: (error: Error) => void = () => {}
  const crash = new Promise<never>((_, reject) => {
    told = reject
  })
  page.on('error', told)
  try {
    return await Promise.race([work, crash])
  } finally {
    page.off('error', told)
  }
}

/** One browser with the pages that it has open. */
interface Session {
  readonly launched: Launched
  readonly idle: OpenPage[]
  printing: number
  printed: number
  retired: boolean
  ended: Promise<void> | null
}

/** A page that crashes before anybody listens says nothing at all. */
const OPEN_WITHIN_MS = 15_000

const inTime = async <T>(work: Promise<T>): Promise<T> => {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('the browser does not open a page')), OPEN_WITHIN_MS)
  })
  try {
    return await Promise.race([work, late])
  } finally {
    clearTimeout(timer)
  }
}

const openPage = async ({ launched: { browser } }: Session, first: boolean): Promise<OpenPage> => {
  const blank = first ? (await browser.pages())[0] : undefined
  const page = blank ?? (await browser.newPage())
  const on: OpenPage = { page, crashed: false }
  page.on('error', () => {
    on.crashed = true
  })
  await unlessItCrashes(page, shutIn(page))
  return on
}

/** Lets so many in at once, the others in the order in which they came. */
const gate = (most: number) => {
  let free = most
  const waiting: (() => void)[] = []
  return async <T>(work: () => Promise<T>): Promise<T> => {
    if (free > 0) free -= 1
    else await new Promise<void>((enter) => waiting.push(enter))
    try {
      return await work()
    } finally {
      const next = waiting.shift()
      if (next === undefined) free += 1
      else next()
    }
  }
}

/** Starts a browser. Rejects with a BrowserMissing where none can be started. */
export const openPrinter = async (
  env: { readonly [name: string]: string | undefined },
  pagesAtOnce: number = PAGES_AT_ONCE,
): Promise<Printer> => {
  const open = new Set<Session>()
  let closed = false

  const launch = async (): Promise<Session> => {
    const launched = await launchBrowser(env)
    const session: Session = { launched, idle: [], printing: 0, printed: 0, retired: false, ended: null }
    open.add(session)
    if (closed) await end(session)
    return session
  }
  const end = (session: Session): Promise<void> => {
    session.ended ??= session.launched.close().finally(() => open.delete(session))
    return session.ended
  }
  let current: Promise<Session> = launch()
  await current

  /** No more prints in this browser; it ends when the last of its pages is done. */
  const retire = (session: Session): void => {
    if (session.retired) return
    session.retired = true
    if (!closed) current = launch()
    current.catch(() => {}) // told to whoever prints next
  }

  /** The browser that there is; where the last start of one failed, another start. */
  const alive = (): Promise<Session> => {
    const last = current
    return last.catch((error: unknown) => {
      if (closed) throw error
      if (current === last) current = launch()
      return current
    })
  }

  const attempt = async (html: string, date: string): Promise<Uint8Array> => {
    const session = await alive()
    session.printing += 1
    session.printed += 1
    let on: OpenPage | null = null
    try {
      on = session.idle.pop() ?? (await inTime(openPage(session, session.printed === 1)))
      if (on.crashed) throw new Error('the page crashed')
      const bytes = await unlessItCrashes(on.page, printPdf(on.page, html, date))
      session.idle.push(on)
      if (session.printed >= PRINTS_A_BROWSER) retire(session)
      return bytes
    } catch (error) {
      if (error instanceof Unprintable) await on?.page.close().catch(() => {})
      else retire(session)
      throw error
    } finally {
      session.printing -= 1
      // The next report does not wait for it; close() does.
      if (session.retired && session.printing === 0) end(session).catch(() => {})
    }
  }

  const inTurn = gate(pagesAtOnce)
  return {
    print: (html, date) =>
      inTurn(async () => {
        try {
          return await attempt(html, date)
        } catch (error) {
          if (closed || error instanceof Unprintable) throw error
          return await attempt(html, date)
        }
      }),
    close: async () => {
      closed = true
      await current.catch(() => {})
      await Promise.all([...open].map(end))
    },
  }
}
