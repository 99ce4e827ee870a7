/** axe-core over every page in a real browser, colour contrast included: on a screen and on a telephone's. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, showOnScreen, type TestBrowser } from './browser.ts'
import { copiesOf, surveyOf } from './written.ts'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Every rule of axe but the experimental ones; none is switched off. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

let browser: TestBrowser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

interface Judged {
  readonly violations: readonly string[]
  readonly passed: readonly string[]
}

const judge = async (): Promise<Judged> => {
  await browser.page.evaluate(AXE)
  const found = (await browser.page.evaluate(
    `axe.run(document, { runOnly: ${JSON.stringify(TAGS)}, resultTypes: ['violations'], preload: false })`,
  )) as AxeResults
  return {
    violations: found.violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary ?? ''}`),
    ),
    passed: found.passes.map(({ id }) => id),
  }
}

/** On a screen and, where text and tables have to make room, on a telephone. */
const clean = async (html: string, widths: readonly number[]) => {
  for (const width of widths) {
    await showOnScreen(browser.page, html, width)
    const { violations, passed } = await judge()
    expect(violations).toEqual([])
    // Without these the pages were not looked at as they should be.
    expect(passed).toEqual(expect.arrayContaining(['color-contrast', 'heading-order', 'region']))
  }
}

// An upgrade with all its parts, a no with something to offer, a wait for a reading.
describe.each([
  ['two-speed-travel', [1280, 390]],
  ['twice-as-fast', [1280]],
  ['which-reading-is-right', [390]],
])('%s', (scenario, widths) => {
  test('no violation in any copy', async () => {
    const { copies } = await copiesOf(scenario)
    expect(copies).toHaveLength(3)
    for (const { html } of copies) await clean(html, widths)
  })
})

test.each([null, 'alder-10'])('the survey sheet of %s has none', async (machine) =>
  clean(await surveyOf(machine), [1280]),
)

test('a page with faults shows that it would be seen', async () => {
  const { copies } = await copiesOf('which-reading-is-right')
  const html = copies[0]?.html ?? ''
  const pale = html
    .replace('<p class="intro"', '<p style="color:#ccc" class="intro"')
    .replace('</main>', '<img src="data:,"><h6>deep</h6></main>')
  expect(pale).not.toBe(html)
  await showOnScreen(browser.page, pale, 1280)
  const rules = (await judge()).violations.map((violation) => violation.split(':')[0])
  expect(rules).toEqual(expect.arrayContaining(['color-contrast', 'image-alt', 'heading-order']))
})
