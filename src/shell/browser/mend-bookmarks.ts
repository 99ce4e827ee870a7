/** Bookmarks as their headings read. */

/**
 * A heading that is pushed to the next page is named twice in its bookmark ("TermsTerms"): the browser lays it out on both
 * pages and joins the two. Such a title is put back to one; the room that it leaves is filled with spaces, so that nothing
 * in the document moves. A title that its heading really has is left alone.
 * @param pdf as the browser printed it
 * @param headings texts of the page's headings
 */
export const mendBookmarks = (pdf: Uint8Array, headings: readonly string[]): Uint8Array => {
  const known = new Set(headings.map(squeezed))
  const once = (
    whole: string,
    raw: string,
    read: (raw: string) => string,
    written: (raw: string) => string,
  ): string => {
    if (known.has(squeezed(read(raw)))) return whole
    const one = repeated(raw).find((part) => known.has(squeezed(read(part))))
    return one === undefined ? whole : written(one).padEnd(whole.length)
  }
  const text = Buffer.from(pdf).toString('latin1')
  const mended = text
    .replace(/\/Title \(((?:\\[\s\S]|[^\\()])*)\)/g, (whole, raw: string) =>
      once(whole, raw, literal, (part) => `/Title (${part})`),
    )
    .replace(/\/Title <FEFF((?:[0-9A-F]{4})*)>/gi, (whole, raw: string) =>
      once(whole, raw, utf16, (part) => `/Title <FEFF${part}>`),
    )
  return Buffer.from(mended, 'latin1')
}

const squeezed = (text: string): string => text.replace(/\s+/g, ' ').trim()

/** What a text repeats twice or more, the longest first. */
const repeated = (text: string): readonly string[] =>
  [2, 3, 4].flatMap((times) => {
    const part = text.slice(0, text.length / times)
    return part !== '' && part.repeat(times) === text ? [part] : []
  })

const literal = (raw: string): string => raw.replace(/\\([()\\])/g, '$1')

const utf16 = (raw: string): string => Buffer.from(raw, 'hex').swap16().toString('utf16le')
