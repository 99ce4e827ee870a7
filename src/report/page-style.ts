/** Page rules and palette of one report, as CSS: the part of its style that depends on the quote. */
import { palette } from './accent.ts'
import { en } from './wording.ts'

export type Paper = 'a4' | 'letter'

/** Text as a CSS string. Nothing in it can end the string, the rule or the style element. */
export const cssString = (text: string): string =>
  `"${[...text]
    .map((sign) => {
      const code = sign.codePointAt(0) ?? 0x20
      if (code < 0x20 || code === 0x7f) return ' '
      return /[\\"'<>&{};]/.test(sign) ? `\\${code.toString(16)} ` : sign
    })
    .join('')}"`

/** Two lines of the foot; names can be longer. */
const MOST_AT_FOOT = 200

const clipped = (text: string): string => {
  const signs = [...text]
  return signs.length > MOST_AT_FOOT
    ? `${signs
        .slice(0, MOST_AT_FOOT - 1)
        .join('')
        .trimEnd()}…`
    : text
}

/**
 * @param footer running text at the foot of each page
 * @param accent colour of the letterhead as the shop wrote it, null for the default
 */
export const pageStyle = (input: { paper: Paper; footer: string; accent: string | null }): string => {
  const { accent, wash, line } = palette(input.accent)
  return `:root{--accent:${accent};--wash:${wash};--line:${line}}
@page{size:${input.paper === 'letter' ? 'Letter' : 'A4'};margin:15mm 17mm 19mm;
@bottom-left{content:${cssString(clipped(input.footer))};font:400 7.5pt 'Inter',sans-serif;color:#55606a;vertical-align:top;padding-top:4mm}
@bottom-right{content:${cssString(en.page.before)} counter(page) ${cssString(en.page.between)} counter(pages);white-space:nowrap;font:400 7.5pt 'Inter',sans-serif;color:#55606a;vertical-align:top;padding-top:4mm}}`
}
