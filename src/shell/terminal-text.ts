/** What every view for the terminal is made with: colour where it is taken, columns, and text that obeys nothing. */
import { styleText } from 'node:util'
import { plain } from './plain-text.ts'
import type { World } from './world.ts'

/** One line; `heading` is set bold where the terminal takes it. */
export type Line = string | { readonly heading: string }

/** Colour only where the terminal takes it; NO_COLOR and FORCE_COLOR are kept. */
const takesColour = (world: World): boolean =>
  world.env.NO_COLOR ? false : world.env.FORCE_COLOR ? true : world.stdout.isTTY === true

const pad = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - [...text].length))

/** Rows in columns as wide as their widest cell, indented by two. */
export const table = (rows: readonly (readonly string[])[]): readonly string[] => {
  const columns = Math.max(0, ...rows.map((row) => row.length))
  const widths = Array.from({ length: columns }, (_, column) =>
    Math.max(...rows.map((row) => [...(row[column] ?? '')].length)),
  )
  return rows.map((row) => `  ${row.map((cell, i) => pad(cell, widths[i] ?? 0)).join('  ')}`.trimEnd())
}

/** The whole text of a view. */
export const terminalText = (lines: readonly Line[], world: World): string => {
  const colour = takesColour(world)
  // A no-break space keeps a figure and its unit together on paper; here it would only be in the way of a search.
  const shown = (text: string) => plain(text).replaceAll('\u00a0', ' ')
  const one = (line: Line): string => {
    if (typeof line === 'string') return shown(line)
    const text = shown(line.heading)
    return colour ? styleText('bold', text, { validateStream: false }) : text
  }
  return lines.map((line) => `${one(line)}\n`).join('')
}
