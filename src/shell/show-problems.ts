/** Problems as a person reads them: file:line:column, what is wrong, the line with the place underlined, what was expected. */
import type { Problem } from '../scenario/problems.ts'
import { plain } from './plain-text.ts'

/** Under a tab stands a tab, so that the carets meet the place whatever the terminal makes of it. */
const gap = (excerpt: string, width: number): string => excerpt.slice(0, width).replace(/[^\t]/gu, ' ').padEnd(width)

const one = (problem: Problem): string => {
  const { file, line, column, message, excerpt, width, expected, remedy, code } = problem
  const lines = [`${plain(file)}:${line}:${column}: ${plain(message)}`]
  if (excerpt !== '') {
    const number = String(line)
    lines.push(`  ${number} | ${excerpt.split('\t').map(plain).join('\t')}`)
    lines.push(
      `  ${' '.repeat(number.length)} | ${gap(excerpt, Math.max(0, column - 1))}${'^'.repeat(Math.max(1, width))}`,
    )
  }
  if (expected !== null) lines.push(`  expected: ${plain(expected)}`)
  if (remedy !== null) lines.push(`  ${plain(remedy)}`)
  lines.push(`  [${code}]`)
  return lines.join('\n')
}

/** All problems, one after the other, with their number at the end. */
export const showProblems = (problems: readonly Problem[]): string => {
  const count = problems.length === 1 ? '1 mistake' : `${problems.length} mistakes`
  return `${problems.map(one).join('\n\n')}\n\n${count} in the input.\n`
}
