/** Bookmarks as their headings read. */

/**
 * A heading that is pushed to the next page is named twice in its bookmark ("TermsTerms"): the browser lays it out on both
 * pages and joins what fitted on the first, a line or the whole, with the heading. Such a title is put back to its
 * heading; the room that it leaves is filled with spaces, so that nothing in the document moves. A title that its heading
 * really has is left alone.
 * @param pdf as the browser printed it
 * @param headings texts of the page's headings
 */
export const mendBookmarks = (pdf: Uint8Array, headings: readonly string[]): Uint8Array => {
  const known = new Map(headings.map((heading) => [bare(heading), heading.replace(/\s+/g, ' ').trim()]))
  const longestFirst = [...known.keys()].sort((a, b) => b.length - a.length)
  const mended = (whole: string, title: string, written: (text: string) => string): string => {
    if (known.has(bare(title))) return whole
    const heading = longestFirst.find((candidate) => isBegunTwice(bare(title), candidate))
    const put = written(known.get(heading ?? '') ?? '')
    return heading === undefined || put.length > whole.length ? whole : put.padEnd(whole.length)
  }
  const text = Buffer.from(pdf).toString('latin1')
  const all = text
    .replace(/\/Title \(((?:\\[\s\S]|[^\\()])*)\)/g, (whole, raw: string) =>
      mended(whole, raw.replace(/\\([()\\])/g, '$1'), (put) => `/Title (${put.replace(/[()\\]/g, '\\$&')})`),
    )
    .replace(/\/Title <FEFF((?:[0-9A-F]{4})*)>/gi, (whole, raw: string) =>
      mended(whole, utf16(raw), (put) => `/Title <FEFF${hexOf(put)}>`),
    )
  return Buffer.from(all, 'latin1')
}

/** Without spaces: a title loses them where its heading's lines end. */
const bare = (text: string): string => text.replace(/\s+/g, '')

/** Whether a title is beginnings of a heading, and then the heading. */
const isBegunTwice = (title: string, heading: string): boolean => {
  if (heading === '' || !title.endsWith(heading)) return false
  let rest = title.slice(0, -heading.length)
  while (rest !== '') {
    let begun = 0
    while (begun < rest.length && rest[begun] === heading[begun]) begun++
    if (begun === 0) return false
    rest = rest.slice(begun)
  }
  return true
}

const utf16 = (raw: string): string => Buffer.from(raw, 'hex').swap16().toString('utf16le')

const hexOf = (text: string): string => Buffer.from(text, 'utf16le').swap16().toString('hex').toUpperCase()
