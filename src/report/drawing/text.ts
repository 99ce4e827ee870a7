/**
 * Room that texts take in the drawing. A label is a block: its numbers as discs in a row, its lines of text right of them.
 * Widths are those of Inter with figures of one width, each rounded up, so that a block is never wider than its box.
 */

/** Advance widths in shares of the size, by group of signs: the greatest of Inter 400, 600 and 700, rounded up. */
const WIDTHS: readonly (readonly [signs: RegExp, width: number])[] = [
  [/[ \u00a0ijlI,.:;]/u, 0.29],
  [/[ft|`'’!·()/[\]{}\\r°²³]/u, 0.47],
  [/[–_^"“”?Lsz-]/u, 0.58],
  [/[acekvxyJFEoö]/u, 0.62],
  [/[bdghnpquüäéµ]/u, 0.64],
  [/[0-9#*+<=>~−×$BPRSZTß&]/u, 0.68],
  [/[DKUYCXGHANVÅÄÖOQ]/u, 0.79],
  [/[wmM]/u, 0.94],
]
/** Of a sign that is in none of them. */
const WIDEST = 1.1

/** Width of a text at this size, rather too wide than too narrow. */
export const widthOf = (text: string, size: number): number =>
  size * [...text].reduce((sum, sign) => sum + (WIDTHS.find(([signs]) => signs.test(sign))?.[1] ?? WIDEST), 0)

/** Cut at the end, with an ellipsis, to fit a width. */
export const fitted = (text: string, size: number, width: number): string => {
  if (widthOf(text, size) <= width) return text
  const signs = [...text]
  while (signs.length > 1 && widthOf(`${signs.join('')}…`, size) > width) signs.pop()
  return `${signs.join('').trimEnd()}…`
}

/** Broken between words into lines of this width; a longer word has a line of its own. */
const broken = (text: string, size: number, width: number): readonly string[] => {
  const lines: string[] = []
  for (const word of text.split(/[ \u00a0]/u)) {
    const last = lines.at(-1)
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= width)
      lines[lines.length - 1] = `${last}\u00a0${word}`
    else lines.push(word)
  }
  return lines
}

/** No line is wider than this many times its size; what is longer is cut. */
const LONGEST = 9.5
const LONGEST_NARROW = 6.2
const BROKEN_AT = 4.8

/** Wide: numbers left of the text. Stacked: over it. Narrow: over it, and the text broken between its words. */
export type Arrangement = 'wide' | 'stacked' | 'narrow'

export interface Block {
  readonly lines: readonly string[]
  readonly numbers: readonly string[]
  readonly size: number
  readonly arrangement: Arrangement
  readonly width: number
  readonly height: number
}

/** Diameter of the disc around a number, and from one disc to the next. */
export const discOf = (size: number): number => size * 1.62
export const discStep = (size: number): number => size * 1.76
/** Between the last disc and the text. */
export const discGap = (size: number): number => size * 0.22
export const leading = (size: number): number => size * 1.2

/** A label with its room. Without lines and numbers it takes none. */
export const blockOf = (
  lines: readonly string[],
  numbers: readonly string[],
  size: number,
  arrangement: Arrangement,
): Block => {
  const isWide = arrangement === 'wide'
  const isNarrow = arrangement === 'narrow'
  const kept = (isNarrow ? lines.flatMap((line) => broken(line, size, BROKEN_AT * size)) : lines).map((line) =>
    fitted(line, size, (isNarrow ? LONGEST_NARROW : LONGEST) * size),
  )
  const text = Math.max(0, ...kept.map((line) => widthOf(line, size)))
  const discs = numbers.length * discStep(size)
  const row = numbers.length > 0 ? discOf(size) : 0
  const tall = kept.length * leading(size)
  const gap = text > 0 && discs > 0 ? discGap(size) : 0
  return {
    lines: kept,
    numbers,
    size,
    arrangement,
    width: isWide ? discs + gap + text : Math.max(discs, text),
    height: isWide ? Math.max(row, tall) : row + gap + tall,
  }
}
