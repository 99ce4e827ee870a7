/** What comes into a shop one day: every print is measured in the browser, read back, and looked through for what was let in. */
import { readFileSync } from 'node:fs'
import { PNG } from 'pngjs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { customerView } from '../../src/report/customer-view.ts'
import { shopView } from '../../src/report/shop-view.ts'
import { load } from '../../src/shell/load.ts'
import { htmlRenderer } from '../../src/shell/render-html.ts'
import { openBrowser, showAsPrinted, type TestBrowser } from './browser.ts'
import { printFaults } from './print-faults.ts'
import { readPrint, squeezed } from './read-print.ts'
import { type Stress, stressedCopies } from './stress.ts'
import { SCENARIOS, surveyOf, type WrittenCopy } from './written.ts'

const MEASURE = readFileSync(new URL('measure-layout.js', import.meta.url), 'utf8')

let browser: TestBrowser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

const layoutFaults = async (html: string, paper: 'a4' | 'letter' = 'a4'): Promise<unknown> => {
  await showAsPrinted(browser.page, html, paper)
  return browser.page.evaluate(MEASURE)
}

const made = (stress: Stress) => stressedCopies('two-speed-travel', 'hornbeam-18', stress)

/** @returns the text of each print */
const printsWell = async (copies: readonly WrittenCopy[], mostBytes = 400_000): Promise<readonly string[]> => {
  expect(copies.length).toBeGreaterThan(0)
  const texts: string[] = []
  for (const { name, html } of copies) {
    expect({ name, layout: await layoutFaults(html) }).toEqual({ name, layout: [] })
    const bytes = await browser.print(html)
    const print = await readPrint(bytes)
    expect({ name, print: printFaults(print, html) }).toEqual({ name, print: [] })
    expect(bytes.length).toBeLessThan(mostBytes)
    // None but the embedded families, whatever the names are written in.
    for (const { name: font } of print.pages.flatMap(({ fonts }) => fonts))
      expect(font).toMatch(/^[A-Z]{6}\+(?:Inter|NotoSans(?:Hebrew|Arabic))/u)
    texts.push(squeezed(print.pages.flatMap((page) => page.texts.map(({ text }) => text)).join('')))
  }
  return texts
}

describe('names', () => {
  const words = (text: string) => `${text}, ${'one of a long row of words that goes on '.repeat(4)}`.slice(0, 120)
  test('of 120 characters', async () => {
    const { copies } = await made({ everyText: words })
    await printsWell(copies)
  })
  test('of 120 characters without a space', async () => {
    const { copies } = await made({ everyText: (text) => text.replaceAll(' ', '').padEnd(120, 'Abcdefghijklmnop') })
    await printsWell(copies)
  })
  test('written from right to left', async () => {
    const { copies } = await made({
      everyText: (text, key) => (['name', 'place', 'title'].includes(key) ? `שלום ${text} مرحبا` : text),
    })
    const [customer] = await printsWell(copies)
    // Hebrew letters have one form and a code each.
    expect(customer).toContain('שלום')
  })
  test('in Greek, Cyrillic and Vietnamese letters', async () => {
    const { copies } = await made({
      everyText: (text, key) => (key === 'name' ? `Ελιά Ольха Nguyễn ${text}` : text),
      args: ['--copy', 'customer'],
    })
    const [customer] = await printsWell(copies)
    expect(customer).toContain('ΕλιάОльхаNguyễn')
  })
})

describe('how much there is', () => {
  test('ten options', async () => {
    const { copies } = await made({
      scenario: (document) => {
        const { options } = document.toJS() as { options: { name: string }[] }
        const ways = Array.from({ length: 10 }, (_, i) => ({ ...options[i % options.length], name: `Way ${i + 1}` }))
        document.set('options', document.createNode(ways, { aliasDuplicateObjects: false }))
      },
    })
    // The shop's copy draws and lists each of the ten: 35 pages.
    await printsWell(copies, 700_000)
  })
  test('no options', async () => {
    const { copies } = await made({ scenario: (document) => document.set('options', document.createNode([])) })
    await printsWell(copies)
  })
  test('no readings, and a machine of which little is known', async () => {
    const { copies } = await made({
      scenario: (document) => {
        document.delete('measured')
        document.deleteIn(['site', 'coldest-start'])
      },
      machine: (document) => {
        for (const path of [
          ['filter'],
          ['cooler'],
          ['strainer'],
          ['machine', 'design-travel-speed'],
          ['machine', 'market-value'],
        ])
          document.deleteIn(path)
      },
    })
    await printsWell(copies)
  })
})

test('a price list of forty lines', async () => {
  const read = load('two-speed-travel.yaml', SCENARIOS)
  if ('problems' in read) throw new Error('the demo scenario has a mistake')
  const result = evaluate(read.loaded)
  const options = result.options.map((option) => {
    const { lines } = option.cost
    const forty = Array.from({ length: 40 }, (_, i) => ({ ...lines[i % lines.length], what: `Part of line ${i + 1}` }))
    return { ...option, cost: { ...option.cost, lines: forty as typeof lines } }
  })
  const [long, view] = [{ ...result, options }, { units: 'metric', paper: 'a4' } as const]
  const texts = await printsWell([
    { name: 'forty/customer', html: htmlRenderer('customer')(customerView(long, view)) },
    { name: 'forty/shop', html: htmlRenderer('shop')(shopView(long, view)) },
  ])
  for (const text of texts) for (const line of [1, 20, 40]) expect(text).toContain(`Partofline${line}`)
})

describe('the shop’s mark', () => {
  const png = (width: number, height: number) => {
    const picture = new PNG({ width, height })
    picture.data.fill(0x80)
    return PNG.sync.write(picture)
  }
  const withMark = (mark: string, content: string | Uint8Array) =>
    made({
      shop: (document) => document.setIn(['shop', 'mark'], mark),
      files: { [mark]: content },
      args: ['--copy', 'customer'],
    })
  const shown = async (html: string) => {
    await showAsPrinted(browser.page, html)
    return browser.page.evaluate(
      `(() => { const mark = document.querySelector('img'); const box = mark.getBoundingClientRect()
         return { fit: getComputedStyle(mark).objectFit, loaded: mark.complete && mark.naturalWidth > 0, width: box.width, height: box.height } })()`,
    ) as Promise<{ fit: string; loaded: boolean; width: number; height: number }>
  }
  test.each([
    ['wide', 1200, 60],
    ['tall', 60, 1200],
    ['tiny', 1, 1],
  ])('a %s PNG keeps to the letterhead', async (_, width, height) => {
    const { copies, stderr } = await withMark('a.png', png(width, height))
    expect(stderr).toBe('')
    const box = await shown(copies[0]?.html ?? '')
    expect(box).toMatchObject({ loaded: true })
    expect(box.width).toBeLessThan(260)
    expect(box.height).toBeLessThan(100)
    expect(box.fit).toBe('contain')
    expect(await layoutFaults(copies[0]?.html ?? '')).toEqual([])
  })
  test('an SVG without a size, and a JPEG', async () => {
    const svg = await withMark(
      'a.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 30"><rect width="90" height="30"/></svg>',
    )
    expect(await shown(svg.copies[0]?.html ?? '')).toMatchObject({ loaded: true })
    await printsWell(svg.copies)
    const clip = { x: 0, y: 0, width: 80, height: 30 }
    const jpeg = await withMark('a.jpg', await browser.page.screenshot({ type: 'jpeg', clip }))
    expect(await shown(jpeg.copies[0]?.html ?? '')).toMatchObject({ loaded: true })
    await printsWell(jpeg.copies)
  })
  test('one that is refused is told, and the report goes without', async () => {
    const { copies, stderr } = await withMark('a.svg', '<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')
    expect(stderr).toContain('carries script')
    for (const { html } of copies) expect(html).not.toContain('<img')
  })
})

test('hostile text in every field stays text', async () => {
  const HOSTILE = `"><img src=x onerror=alert(1)><script>alert(2)</script>{{title}}{{{x}}}</style>'`
  const { copies } = await made({ everyText: (text) => `${text.slice(0, 20)} ${HOSTILE}` })
  expect(copies).toHaveLength(3)
  const dialogs: string[] = []
  const note = (dialog: { readonly message: () => string; readonly dismiss: () => Promise<void> }) => {
    dialogs.push(dialog.message())
    void dialog.dismiss()
  }
  browser.page.on('dialog', note)
  const texts = await printsWell(copies)
  browser.page.off('dialog', note)
  expect(dialogs).toEqual([])
  for (const text of texts) {
    expect(text).toContain(squeezed('<script>alert(2)</script>{{title}}{{{x}}}</style>'))
    expect(text).toContain(squeezed('"><img src=x onerror=alert(1)>'))
  }
  for (const { html } of copies) {
    await showAsPrinted(browser.page, html)
    const letIn = await browser.page.evaluate(
      `document.querySelectorAll('script, [onerror], img:not(.letterhead img), style ~ style').length`,
    )
    expect(letIn).toBe(0)
  }
})

test('a page with faults shows that they would be seen', async () => {
  const html = (await surveyOf(null)).replace(
    '</main>',
    `<p style="width:300mm">Far too wide a line of words, over and over and over and over and over and over and over and over and
      over and over and over and over</p><div style="position:relative;height:1em"><b style="position:absolute">One</b><i
      style="position:absolute">Two</i></div><div style="overflow:hidden;height:5px;width:50px">cut off</div>
      <svg class="circuit" viewBox="0 0 99 20"><text x="5" y="15">struck</text><path d="M0 11h99" stroke="#000"/></svg></main>`,
  )
  const faults = ((await layoutFaults(html)) as readonly string[]).join('\n')
  for (const fault of [
    'leaves the page',
    'is wider than its box',
    '"One" meets "Two"',
    'is cut',
    'runs through "struck"',
  ])
    expect(faults).toContain(fault)
})
