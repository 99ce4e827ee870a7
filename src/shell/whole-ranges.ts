/** Ranges of a page on one line: a browser may break a line behind the dash of "1.8–1.9". */

/** What is no text of the page: styles, drawings, the title, and tags. */
const APART = /(<style[\s\S]*?<\/style>|<svg[\s\S]*?<\/svg>|<title>[^<]*<\/title>|<[^>]+>)/u

/** Two figures with a dash between, a currency before either: "1.8–1.9", "$1,200–$1,400", "CHF\u00a0900–CHF\u00a01,100". */
const RANGE = /[\p{Sc}−]?\d[\d.,]*–(?:\p{Lu}{2,3}\u00a0)?[\p{Sc}−]?\d[\d.,]*/gu

/** @param html of a whole page, as the templates write it */
export const wholeRanges = (html: string): string =>
  html
    .split(APART)
    .map((piece) => (piece.startsWith('<') ? piece : piece.replace(RANGE, '<span class="whole">$&</span>')))
    .join('')
