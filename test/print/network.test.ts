/** Nothing on any page asks for anything: seen on an open page, so that it is the page and not a lock that keeps quiet. */
import type { HTTPRequest, Page } from 'puppeteer'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, type TestBrowser } from './browser.ts'
import { copiesOf, surveyOf } from './written.ts'

let browser: TestBrowser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

interface Traffic {
  /** Every address that a page asks for but for what is inside it. */
  readonly asked: readonly string[]
  readonly answered: readonly string[]
}

const trafficOf = async (page: Page, html: string): Promise<Traffic> => {
  const [asked, answered] = [[] as string[], [] as string[]]
  const noted = (list: string[]) => (request: { readonly url: () => string }) => {
    if (!request.url().startsWith('data:')) list.push(request.url())
  }
  const [onRequest, onFinished] = [noted(asked), noted(answered)]
  page.on('request', onRequest)
  page.on('requestfinished', onFinished)
  await page.setContent(html, { waitUntil: 'load' })
  await page.waitForNetworkIdle({ idleTime: 200, timeout: 20_000 })
  page.off('request', onRequest)
  page.off('requestfinished', onFinished)
  return { asked, answered }
}

const POLICY = /<meta http-equiv="Content-Security-Policy"[^>]*>/u
const QUIET: Traffic = { asked: [], answered: [] }

/** Without its policy, which would keep a request back before it is seen. */
const opened = (html: string): string => {
  const open = html.replace(POLICY, '')
  expect(open).not.toBe(html)
  return open
}

test.each(['two-speed-travel', 'twice-as-fast', 'which-reading-is-right'])('%s asks for nothing', async (scenario) => {
  const { copies } = await copiesOf(scenario)
  expect(copies).toHaveLength(3)
  for (const { name, html } of copies)
    expect({ name, ...(await trafficOf(browser.page, opened(html))) }).toEqual({ name, ...QUIET })
})

test('nor does the survey sheet', async () => {
  expect(await trafficOf(browser.page, opened(await surveyOf(null)))).toEqual(QUIET)
})

describe('a page that would ask', () => {
  const ORIGIN = 'http://outside.example'
  const OUTSIDE = ['picture.png', 'style.png', 'sheet.css', 'frame']
  let html = ''
  beforeAll(async () => {
    const outside = [
      `<img src="${ORIGIN}/picture.png" alt="">`,
      `<style>main{background:url(${ORIGIN}/style.png)}</style>`,
      `<link rel="stylesheet" href="${ORIGIN}/sheet.css">`,
      `<iframe src="${ORIGIN}/frame"></iframe>`,
      '<script>document.title = "ran"</script>',
    ].join('')
    html = (await surveyOf(null)).replace('</main>', `${outside}</main>`)
  })

  test('is seen to ask, so that this test can fail; and the browser itself reaches nobody', async () => {
    const failures: string[] = []
    const note = (request: HTTPRequest) => failures.push(request.failure()?.errorText ?? '')
    browser.page.on('requestfailed', note)
    const { asked, answered } = await trafficOf(browser.page, opened(html))
    browser.page.off('requestfailed', note)
    for (const path of OUTSIDE) expect(asked).toContain(`${ORIGIN}/${path}`)
    expect(answered).toEqual([])
    expect(failures).toContain('net::ERR_NAME_NOT_RESOLVED')
    expect(await browser.page.title()).toBe('ran')
  })

  test('is kept from it by its policy', async () => {
    const failures: string[] = []
    const note = (request: HTTPRequest) => failures.push(request.failure()?.errorText ?? '')
    browser.page.on('requestfailed', note)
    const { answered } = await trafficOf(browser.page, html)
    browser.page.off('requestfailed', note)
    expect(answered).toEqual([])
    // One that the browser tried and could not has an error of the network (net::...); one that the policy refused has none.
    expect([...new Set(failures)].filter((failure) => failure !== '')).toEqual([])
    expect(await browser.page.title()).not.toBe('ran')
  })

  test('is kept from it by the printer, and runs no script, even without a policy', async () => {
    const page = await browser.shutPage()
    const failures: string[] = []
    page.on('requestfailed', (request) => failures.push(request.failure()?.errorText ?? ''))
    const { answered } = await trafficOf(page, opened(html))
    expect(answered).toEqual([])
    // Refused by the printer's own lock before the browser would have looked for the name.
    expect(failures.length).toBeGreaterThanOrEqual(OUTSIDE.length)
    expect([...new Set(failures)]).toEqual(['net::ERR_FAILED'])
    expect(await page.title()).not.toBe('ran')
    await page.close()
  })
})
