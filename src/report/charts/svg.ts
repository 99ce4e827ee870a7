/**
 * What both charts are drawn with: escaped text, rounded numbers, an estimate of how wide a text will be, and labels that
 * keep clear of each other. SVG as strings; no DOM.
 */

const ESCAPES: { readonly [sign: string]: string } = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Text for SVG: nothing in it can end an element or an attribute; control characters become spaces. */
export const escapeText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not reach the XML.
  text.replace(/[\u0000-\u001f\u007f]/g, ' ').replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? '')

/** A coordinate with at most two decimals, never "-0". */
export const at = (value: number): string => String(Math.round(value * 100) / 100 + 0)

/** Wide and narrow signs of a sans-serif, in shares of its size; measured roughly on Inter, on the wide side. */
const widthOf = (sign: string): number =>
  /[ijlIt.,:;'’|!()]/.test(sign) ? 0.34 : /[mwMW@%]/.test(sign) ? 0.92 : /[A-Z–—€]/.test(sign) ? 0.72 : 0.6

/** How wide a text is at this size, rather too wide than too narrow. */
export const textWidth = (text: string, size: number): number =>
  size * [...text].reduce((sum, sign) => sum + widthOf(sign), 0)

/** Cut at the end, with an ellipsis, to fit a width. */
export const clipped = (text: string, size: number, width: number): string => {
  if (textWidth(text, size) <= width) return text
  const signs = [...text]
  while (signs.length > 1 && textWidth(`${signs.join('')}…`, size) > width) signs.pop()
  return `${signs.join('').trimEnd()}…`
}

/** Broken at spaces into at most `most` lines of this width; what is left over is cut with an ellipsis. */
export const wrapped = (text: string, size: number, width: number, most: number): readonly string[] => {
  const lines: string[] = []
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && (textWidth(`${last} ${word}`, size) <= width || lines.length === most))
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines.map((line) => clipped(line, size, width))
}

/**
 * Positions that keep a distance from each other, as near as may be to where they want to be: those that collide form a
 * block around their mean, and blocks that collide join.
 * @param wanted positions, any order  @param gaps room that each needs  @param from, to the ends they stay between
 * @returns the positions in the order given
 */
export const keptApart = (
  wanted: readonly number[],
  gaps: readonly number[],
  from: number,
  to: number,
): readonly number[] => {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b)
  interface Block {
    readonly members: readonly number[]
    readonly size: number
    readonly centre: number
  }
  const middle = (members: readonly number[]) =>
    members.reduce((sum, index) => sum + (wanted[index] ?? 0), 0) / members.length
  const block = (members: readonly number[]): Block => {
    const size = members.reduce((sum, index) => sum + (gaps[index] ?? 0), 0)
    return { members, size, centre: Math.max(from + size / 2, Math.min(to - size / 2, middle(members))) }
  }
  let blocks: Block[] = []
  for (const index of order) {
    let next = block([index])
    for (
      let last = blocks.at(-1);
      last !== undefined && last.centre + last.size / 2 > next.centre - next.size / 2;
      last = blocks.at(-1)
    ) {
      blocks = blocks.slice(0, -1)
      next = block([...last.members, ...next.members])
    }
    blocks.push(next)
  }
  const placed = [...wanted]
  for (const { members, size, centre } of blocks) {
    let edge = centre - size / 2
    for (const index of members) {
      placed[index] = edge + (gaps[index] ?? 0) / 2
      edge += gaps[index] ?? 0
    }
  }
  return placed
}

/**
 * The most ticks, of at most `most`, whose labels keep clear of each other.
 * @param scale where a tick lies, its ticks and their texts  @param size of the labels
 */
export const clearTicks = (
  scale: {
    (value: number): number
    ticks(count: number): readonly number[]
    tickFormat(count: number): (value: number) => string
  },
  most: number,
  size: number,
): readonly { readonly place: number; readonly text: string }[] => {
  const format = scale.tickFormat(most)
  const ticks = scale.ticks(most).map((tick) => ({ place: scale(tick), text: format(tick) }))
  const meet = ticks.some(({ place, text }, index) => {
    const next = ticks[index + 1]
    return (
      next !== undefined && next.place - place < (textWidth(text, size) + textWidth(next.text, size)) / 2 + size / 3
    )
  })
  return meet && most > 1 ? clearTicks(scale, most - 1, size) : ticks
}

export type Anchor = 'start' | 'middle' | 'end'

/** One line of text. `kind` is a class of the charts' stylesheet. */
export const label = (text: string, x: number, y: number, anchor: Anchor, kind: string): string =>
  `<text class="${kind}" x="${at(x)}" y="${at(y)}" text-anchor="${anchor}">${escapeText(text)}</text>`

export const rule = (x1: number, y1: number, x2: number, y2: number, kind: string): string =>
  `<line class="${kind}" x1="${at(x1)}" y1="${at(y1)}" x2="${at(x2)}" y2="${at(y2)}"/>`

/** The frame of a drawing: one picture with a title and a description for a screen reader. */
export const picture = (input: {
  id: string
  width: number
  height: number
  title: string
  description: string
  body: string
}): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" class="chart" viewBox="0 0 ${at(input.width)} ${at(input.height)}" role="img" aria-labelledby="${input.id}-t ${input.id}-d">` +
  `<title id="${input.id}-t">${escapeText(input.title)}</title><desc id="${input.id}-d">${escapeText(input.description)}</desc>${input.body}</svg>`
