/** What must not be on any print, whatever it says. Each fault as a sentence; an empty list is a good print. */
import { type Print, type PrintedPage, squeezed, type Tagged } from './read-print.ts'

/** Margins of the reports' @page rule in points: 15, 17 and 19 mm of 72/25.4 pt. */
const MARGIN = { top: 42.5, side: 48.2, bottom: 53.8 }

export const HEADING = /^H[1-6]$/u

/**
 * Without right-to-left letters: a PDF stores them as they are seen, by the font's forms of them, of which some have no code.
 * That they are there is for the fonts' test and the eye.
 */
const comparable = (text: string): string => text.replace(/[\0\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/gu, '')

/** Texts of an HTML page, by what they stand in: read roughly, it is our own and well formed. */
const plain = (html: string): string =>
  squeezed(
    html
      .replace(/<[^>]+>/gu, '')
      .replace(/&#x([0-9a-f]+);/giu, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&'),
  )
/** Without drawings, and without what is only there for those who listen to a table. */
const bodyOf = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/gu, '')
    .replace(/<svg[\s\S]*?<\/svg>/gu, '')
    .replace(/<thead class="unseen">[\s\S]*?<\/thead>/gu, '')

export const headingsOf = (html: string): readonly { readonly level: number; readonly title: string }[] =>
  [...bodyOf(html).matchAll(/<h([1-6])[^>]*>([\s\S]*?)<\/h\1>/gu)].map(([, level, inside = '']) => ({
    level: Number(level),
    title: plain(inside),
  }))

const rowsOf = (html: string): readonly string[] =>
  [...bodyOf(html).matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/gu)]
    .map(([, inside = '']) => plain(inside))
    .filter((row) => row !== '')

const isFoot = ({ y }: { readonly y: number }): boolean => y < MARGIN.bottom - 4

const edgeFaults = (page: PrintedPage, number: number): readonly string[] =>
  page.texts.flatMap(({ text, x, y, width, size }) => {
    const out =
      x < MARGIN.side - 0.5
        ? 'left'
        : x + width > page.width - MARGIN.side + (isFoot({ y }) ? 1 : 0.3)
          ? 'right'
          : y + size * 0.72 > page.height - MARGIN.top + 1
            ? 'top'
            : !isFoot({ y }) && y < MARGIN.bottom
              ? 'bottom'
              : y < 12
                ? 'foot'
                : null
    return out === null ? [] : [`page ${number}: "${text}" crosses the ${out} margin`]
  })

const lonelyHeading = (page: PrintedPage, number: number): readonly string[] => {
  const body = page.texts.filter((text) => !isFoot(text))
  const lowest = Math.min(...body.map(({ y }) => y))
  return body
    .filter(({ y, tag }) => HEADING.test(tag) && y < lowest + 1)
    .map(({ text }) => `page ${number}: the heading "${text}" stands alone at the foot`)
}

/** Least share of a page's height that is used, from the uppermost text to the lowest; common practice, no source. */
const LEAST_USED = 0.2

/** Pages with next to nothing on them. Of the demo only: with names of any length there is always one that spills over. */
export const almostEmpty = ({ pages }: Print): readonly string[] =>
  pages.flatMap((page, i) => {
    const heights = page.texts.filter((text) => !isFoot(text)).map(({ y }) => y)
    const used = (Math.max(...heights) - Math.min(...heights)) / (page.height - MARGIN.top - MARGIN.bottom)
    return pages.length > 1 && used < LEAST_USED
      ? [`page ${i + 1}: almost empty, ${Math.round(used * 100)} % of its height`]
      : []
  })

/** Everything inside a tag: what follows it and is deeper. */
const inside = (tags: readonly Tagged[], place: number): readonly Tagged[] => {
  const after = tags.slice(place + 1)
  const end = after.findIndex(({ depth }) => depth <= (tags[place]?.depth ?? 0))
  return end === -1 ? after : after.slice(0, end)
}

/** A table that goes on from the page before with one row: nothing stands above it but its repeated head. */
const lonelyRow = ({ tags }: PrintedPage, number: number): readonly string[] => {
  const first = tags.findIndex(
    ({ role, text }) => !['Root', 'Document', 'NonStruct', 'Div'].includes(role) && text !== '',
  )
  if (tags[first]?.role !== 'Table') return []
  const table = inside(tags, first)
  // Rows of the other pages are in the tree too, without their text.
  const rows = table.filter(
    ({ role, text }, i) => role === 'TR' && text !== '' && inside(table, i).some((cell) => cell.role === 'TD'),
  )
  return rows.length === 1
    ? [`page ${number}: a row is carried over alone: ${squeezed(rows[0]?.text ?? '').slice(0, 60)}`]
    : []
}

/** Faults of a print, held against the HTML that it was made from. */
export const printFaults = (print: Print, html: string): readonly string[] => {
  const { pages } = print
  const rows = new Set(
    pages.flatMap(({ tags }) => tags.filter(({ role }) => role === 'TR').map(({ text }) => comparable(squeezed(text)))),
  )
  const headings = headingsOf(html).map(({ level, title }) => `${level} ${title}`)
  const marks = print.bookmarks.map(({ level, title }) => `${level} ${squeezed(title)}`)
  const tagged = pages.flatMap(({ tags }) =>
    tags
      .filter(({ role }) => HEADING.test(role))
      .map(({ role, text }) => `${role.slice(1)} ${comparable(squeezed(text))}`),
  )
  return [
    ...(print.marked ? [] : ['not tagged']),
    ...(print.language === 'en' ? [] : ['without its language']),
    ...pages.flatMap((page, i) => [
      ...edgeFaults(page, i + 1),
      ...lonelyHeading(page, i + 1),
      ...lonelyRow(page, i + 1),
      ...(page.texts.some(({ text }) => squeezed(text) === `Page${i + 1}of${pages.length}`)
        ? []
        : [`page ${i + 1}: no "Page ${i + 1} of ${pages.length}"`]),
      ...(page.texts.filter((text) => !isFoot(text)).length > 0 ? [] : [`page ${i + 1}: empty`]),
      ...page.fonts.filter(({ embedded }) => !embedded).map(({ name }) => `page ${i + 1}: ${name} is not embedded`),
    ]),
    ...rowsOf(html)
      .filter((row) => !rows.has(comparable(row)))
      .map((row) => `a row is cut or lost: ${row.slice(0, 80)}`),
    ...headings.filter((heading) => !marks.includes(heading)).map((heading) => `no bookmark for "${heading}"`),
    ...(marks.filter((mark) => headings.includes(mark)).join() ===
    headings.filter((heading) => marks.includes(heading)).join()
      ? []
      : ['bookmarks in another order than the headings']),
    ...headings
      .filter((heading) => !tagged.includes(comparable(heading)))
      .map((heading) => `the heading "${heading}" is not tagged`),
  ]
}
