/** Problems as a person reads them: file:line:column, what is wrong, the line with the place underlined, what was expected. */
import type { Problem } from '../scenario/problems.ts'

const one = (problem: Problem): string => {
  const { file, line, column, message, excerpt, width, expected, remedy, code } = problem
  const lines = [`${file}:${line}:${column}: ${message}`]
  if (excerpt !== '') {
    const number = String(line)
    lines.push(`  ${number} | ${excerpt}`)
    lines.push(
      `  ${' '.repeat(number.length)} | ${' '.repeat(Math.max(0, column - 1))}${'^'.repeat(Math.max(1, width))}`,
    )
  }
  if (expected !== null) lines.push(`  expected: ${expected}`)
  if (remedy !== null) lines.push(`  ${remedy}`)
  lines.push(`  [${code}]`)
  return lines.join('\n')
}

/** All problems, one after the other, with their number at the end. */
export const showProblems = (problems: readonly Problem[]): string => {
  const count = problems.length === 1 ? '1 mistake' : `${problems.length} mistakes`
  return `${problems.map(one).join('\n\n')}\n\n${count} in the input.\n`
}
