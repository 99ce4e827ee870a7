/** Problems as a person reads them: file:line:column, what is wrong, the line with the place underlined, what was expected. */
import type { Problem } from '../scenario/problems.ts'
import { plain } from './plain-text.ts'

/** Under a tab stands a tab, so that the carets meet the place whatever the terminal makes of it. */
const gap = (excerpt: string, width: number): string => excerpt.slice(0, width).replace(/[^\t]/gu, ' ').padEnd(width)

/** Of a line that fills no terminal only what is around the place; of a text that quotes one only its beginning. */
const WIDEST = 200
const BEFORE = 60

const cut = (text: string): string => (text.length <= 2 * WIDEST ? text : `${text.slice(0, 2 * WIDEST)}…`)

const around = ({ excerpt, column, width }: Problem): { excerpt: string; column: number; width: number } => {
  if (excerpt.length <= WIDEST) return { excerpt, column, width }
  const from = Math.max(0, column - 1 - BEFORE)
  const [before, after] = [from > 0 ? '…' : '', from + WIDEST < excerpt.length ? '…' : '']
  const place = column - from + before.length
  const shown = `${before}${excerpt.slice(from, from + WIDEST)}${after}`
  return { excerpt: shown, column: place, width: Math.min(width, shown.length - place + 1) }
}

const one = (problem: Problem): string => {
  const { file, line, message, expected, remedy, code } = problem
  const { excerpt, column, width } = around(problem)
  const lines = [`${plain(file)}:${line}:${problem.column}: ${cut(plain(message))}`]
  if (excerpt !== '') {
    const number = String(line)
    lines.push(`  ${number} | ${excerpt.split('\t').map(plain).join('\t')}`)
    lines.push(
      `  ${' '.repeat(number.length)} | ${gap(excerpt, Math.max(0, column - 1))}${'^'.repeat(Math.max(1, width))}`,
    )
  }
  if (expected !== null) lines.push(`  expected: ${plain(expected)}`)
  if (remedy !== null) lines.push(`  ${cut(plain(remedy))}`)
  lines.push(`  [${code}]`)
  return lines.join('\n')
}

/** All problems, one after the other, with their number at the end. */
export const showProblems = (problems: readonly Problem[]): string => {
  const count = problems.length === 1 ? '1 mistake' : `${problems.length} mistakes`
  return `${problems.map(one).join('\n\n')}\n\n${count} in the input.\n`
}
