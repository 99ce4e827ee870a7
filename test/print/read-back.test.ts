/** The PDF of every copy, on both papers, read back with a PDF library. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, type TestBrowser } from './browser.ts'
import { almostEmpty, headingsOf, printFaults } from './print-faults.ts'
import { type Print, readPrint, squeezed } from './read-print.ts'
import { copiesOf, surveyOf, type WrittenCopy } from './written.ts'

let browser: TestBrowser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

/** ISO 216 A4, 210 by 297 mm, and US Letter, 8.5 by 11 in, in points of 1/72 in. */
const PAPERS = { a4: [595.3, 841.9], letter: [612, 792] } as const

const textOf = ({ pages }: Print): string =>
  squeezed(pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(''))
const copyOf = (copies: readonly WrittenCopy[], copy: string): string =>
  copies.find(({ name }) => name.endsWith(`/${copy}`))?.html ?? ''

// A yes with conditions, a repair, a no; and an attachment with the longest parts list.
describe.each([
  ['two-speed-travel', 'a4'],
  ['slower-every-season', 'letter'],
  ['twice-as-fast', 'a4'],
  ['high-flow-trencher', 'letter'],
] as const)('%s on %s', (scenario, paper) => {
  test('nothing cut, lost, alone or beside the page; tagged, with bookmarks and its own fonts', async () => {
    const { copies } = await copiesOf(scenario, { args: ['--paper', paper] })
    for (const { name, html } of copies) {
      const bytes = await browser.print(html)
      const print = await readPrint(bytes)
      expect({
        name,
        faults: [...printFaults(print, html), ...(name.endsWith('/shop') ? [] : almostEmpty(print))],
      }).toEqual({ name, faults: [] })
      for (const page of print.pages) {
        expect(page.width).toBeCloseTo(PAPERS[paper][0], 0)
        expect(page.height).toBeCloseTo(PAPERS[paper][1], 0)
      }
      // Inter is under the SIL Open Font License 1.1; a subset is named by six letters and a plus sign (ISO 32000-1, 9.6.4).
      for (const font of print.pages.flatMap(({ fonts }) => fonts))
        expect(font.name).toMatch(/^[A-Z]{6}\+Inter-(?:Regular|SemiBold|Bold)$/u)
      expect(bytes.length).toBeLessThan(400_000)
    }
  })
})

test('of a fleet, the machine with the most to say fills its pages', async () => {
  for (const paper of ['a4', 'letter'] as const) {
    const { copies } = await copiesOf('rental-yard', { args: ['--paper', paper] })
    for (const { name, html } of copies.filter((copy) => /unit-d\/(?:customer|technician)$/u.test(copy.name))) {
      const print = await readPrint(await browser.print(html))
      expect({ name, faults: [...printFaults(print, html), ...almostEmpty(print)] }).toEqual({ name, faults: [] })
    }
  }
})

test('the survey sheet is as good a print', async () => {
  for (const html of [await surveyOf(null), await surveyOf('alder-10', ['--paper', 'letter'])]) {
    const bytes = await browser.print(html)
    expect(printFaults(await readPrint(bytes), html)).toEqual([])
    expect(bytes.length).toBeLessThan(400_000)
  }
})

describe('of one scenario', () => {
  let copies: readonly WrittenCopy[] = []
  beforeAll(async () => {
    copies = (await copiesOf('two-speed-travel')).copies
  })

  test('what the customer has to find is there as text', async () => {
    const html = copyOf(copies, 'customer')
    const print = await readPrint(await browser.print(html))
    expect(print.title).toBe('Quote 3104: Hornbeam 18, for L. Dunwhistle')
    const headline = squeezed(/<p class="headline">([^<]+)/u.exec(html)?.[1] ?? '').replaceAll('&#x27;', "'")
    const first = squeezed(print.pages[0]?.texts.map(({ text }) => text).join('') ?? '')
    expect(headline.length).toBeGreaterThan(20)
    expect(first).toContain(headline)
    expect(first).toMatch(/\$\d,\d{3}/u)
    expect(first).toContain(`Page1of${print.pages.length}`)
  })

  test('the bookmarks are the headings, in their order and depth', async () => {
    for (const { name, html } of copies) {
      const print = await readPrint(await browser.print(html))
      const bookmarks = print.bookmarks.map(({ level, title }) => ({ level, title: squeezed(title) }))
      expect({ name, bookmarks }).toEqual({ name, bookmarks: headingsOf(html) })
      expect(bookmarks.length).toBeGreaterThan(8)
    }
  })

  test('the same page gives the same bytes', async () => {
    for (const { html } of copies) {
      const [one, two] = [await browser.print(html), await browser.print(html)]
      expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true)
    }
  })

  test('a page with faults shows that they would be seen', async () => {
    const html = copyOf(copies, 'customer').replace(
      '</main>',
      `<table><tr><td>${'tall row<br>'.repeat(90)}</td></tr></table></main>`,
    )
    const bad = html
      .replace('</style>', 'tr{break-inside:auto}h3{break-after:page}.headline{margin-left:-20mm;width:210mm}</style>')
      .replace('<html lang="en">', '<html>')
    const faults = (await readPrint(await browser.print(bad)).then((print) => printFaults(print, bad))).join('\n')
    expect(faults).toContain('a row is cut or lost')
    expect(faults).toContain('stands alone at the foot')
    expect(faults).toContain('crosses the left margin')
    expect(faults).toContain('without its language')
    expect(textOf(await readPrint(await browser.print(html)))).toContain('tallrow')
  })

  test('a page almost empty, and a row carried over alone, would be seen', async () => {
    const rows = (count: number, of: string) => `<tr><td>${of}</td><td>x</td></tr>`.repeat(count)
    const table = `<h3>Long</h3><table><thead><tr><th>Head</th><th>y</th></tr></thead><tbody>${rows(60, 'row')}</tbody></table>`
    const html = copyOf(copies, 'customer').replace('</main>', `${table}</main>`)
    // The last row on a page of its own, against the page's own rules.
    const bad = html.replace(
      '</style>',
      'tbody tr:last-child{break-before:page !important}section.cost{break-before:page;break-after:page}</style>',
    )
    const print = await readPrint(await browser.print(bad))
    expect(printFaults(print, bad).join('\n')).toContain('a row is carried over alone: rowx')
    expect(almostEmpty(print).join('\n')).toMatch(/page \d+: almost empty, \d+ % of its height/u)
  })
})
