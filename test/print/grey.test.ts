/** Charts and drawings as a printer without colour gives them: nothing is told apart by its hue alone. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { contrast, palette } from '../../src/report/accent.ts'
import { openBrowser, showAsPrinted, type TestBrowser } from './browser.ts'
import { copiesOf, surveyOf, type WrittenCopy } from './written.ts'

let browser: TestBrowser
let copies: readonly WrittenCopy[] = []
beforeAll(async () => {
  browser = await openBrowser()
  copies = (await copiesOf('two-speed-travel')).copies
})
afterAll(() => browser?.close())

interface Mark {
  /** "bar now", "curve best". */
  readonly look: string
  readonly fill: string
  readonly stroke: string
  readonly dash: string
  readonly width: number
}
interface Seen {
  readonly charts: readonly { readonly id: string; readonly marks: readonly Mark[] }[]
  readonly texts: readonly { readonly text: string; readonly fill: string }[]
  readonly circuits: readonly {
    readonly plain: readonly number[]
    readonly marked: readonly number[]
    readonly numbers: number
  }[]
}

/** Text for the page; colours as #rrggbb, none as white paper. */
const LOOK = `(() => {
  const colour = (text) => {
    const parts = /rgba?\\((\\d+), (\\d+), (\\d+)(?:, ([\\d.]+))?\\)/.exec(text)
    if (parts === null || parts[4] === '0') return '#ffffff'
    return '#' + parts.slice(1, 4).map((part) => Number(part).toString(16).padStart(2, '0')).join('')
  }
  const charts = [...document.querySelectorAll('svg.chart')].map((svg) => ({
    id: svg.querySelector('title').textContent,
    marks: [...svg.querySelectorAll('.bar, .curve, .band')].map((mark) => {
      const style = getComputedStyle(mark)
      const dash = mark.getAttribute('stroke-dasharray') ?? style.strokeDasharray
      return { look: mark.getAttribute('class'), fill: colour(style.fill), stroke: colour(style.stroke), dash, width: parseFloat(style.strokeWidth) }
    }),
  }))
  const texts = [...document.querySelectorAll('svg text')].map((text) => {
    const onDisc = text.matches('.sv-number')
    return { text: text.textContent, fill: onDisc ? '#000000' : colour(getComputedStyle(text).fill) }
  })
  const widths = (nodes) => [...nodes].map((node) => parseFloat(getComputedStyle(node).strokeWidth))
  const circuits = [...document.querySelectorAll('svg.circuit')].map((svg) => ({
    plain: widths(svg.querySelectorAll('.part:not(.marked)')),
    marked: widths(svg.querySelectorAll('.part.marked')),
    numbers: svg.querySelectorAll('text.number').length,
  }))
  return { charts, texts, circuits }
})()`

const look = async (html: string, accent: string | null = null): Promise<Seen> => {
  const coloured = accent === null ? html : html.replace(/--accent:#[0-9a-f]{6}/u, `--accent:${palette(accent).accent}`)
  await showAsPrinted(browser.page, coloured)
  return (await browser.page.evaluate(LOOK)) as Seen
}

/**
 * Whether two marks differ in grey: by the contrast of what fills or draws them (1.5 to 1, from memory what an eye tells
 * apart on paper), by dashes, or by a line a fifth heavier.
 */
const apart = (one: Mark, other: Mark): boolean =>
  contrast(one.fill, other.fill) >= 1.5 ||
  contrast(one.stroke, other.stroke) >= 1.5 ||
  one.dash !== other.dash ||
  Math.max(one.width, other.width) / Math.min(one.width, other.width) >= 1.2

const alike = ({ charts }: Seen): readonly string[] =>
  charts.flatMap(({ id, marks }) =>
    marks.flatMap((one, i) =>
      marks
        .slice(i + 1)
        .filter((other) => other.look !== one.look && !apart(one, other))
        .map((other) => `${id}: ${one.look} and ${other.look}`),
    ),
  )

// The shop's own, and one of each end: a yellow that is darkened, a red as dark as a grey, black, white.
describe.each([null, '#ffd400', '#c62828', '#000000', '#ffffff', '#6a737b'])('with the accent %s', (accent) => {
  test('no two looks of a chart differ by hue alone', async () => {
    for (const { name, html } of copies.filter(({ name: copy }) => !copy.endsWith('technician'))) {
      const seen = await look(html, accent)
      expect(seen.charts.length).toBeGreaterThanOrEqual(2)
      expect({ name, alike: alike(seen) }).toEqual({ name, alike: [] })
    }
  })
})

test('curves of one look have dashes of their own', async () => {
  const { charts } = await look(copies.find(({ name }) => name.endsWith('customer'))?.html ?? '')
  const curves = charts.flatMap(({ marks }) => marks.filter(({ look: of }) => of.startsWith('curve')))
  expect(curves.length).toBeGreaterThanOrEqual(3)
  const ways = curves.filter(({ look: of }) => /way|against/u.test(of)).map(({ dash }) => dash)
  expect(new Set(ways).size).toBe(ways.length)
})

test('every word in a chart or drawing has the contrast of text, 4.5 to 1', async () => {
  for (const html of [...copies.map((copy) => copy.html), await surveyOf(null)]) {
    const { texts } = await look(html)
    const pale = texts.filter(({ fill }) => contrast(fill, '#ffffff') < 4.5)
    expect(pale).toEqual([])
  }
})

test('what must change in the circuit is told by a line twice as heavy and a number', async () => {
  const { circuits } = await look(copies.find(({ name }) => name.endsWith('customer'))?.html ?? '')
  expect(circuits.length).toBeGreaterThan(0)
  for (const { plain, marked, numbers } of circuits) {
    expect(marked.length).toBeGreaterThan(0)
    expect(Math.min(...marked)).toBeGreaterThanOrEqual(2 * Math.max(...plain))
    expect(numbers).toBeGreaterThan(0)
  }
})

test('two hues of one grey would be seen', async () => {
  const html = (copies.find(({ name }) => name.endsWith('customer'))?.html ?? '').replace(
    '</style>',
    '.chart .bar.now{fill:#b02020;stroke:#b02020}.chart .bar.best{fill:#106a10;stroke:#106a10}</style>',
  )
  expect(alike(await look(html)).join()).toContain('bar now and bar best')
})
