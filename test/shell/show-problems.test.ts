/** Problems as they stand on the terminal. */
import { expect, test } from 'vitest'
import { showProblems } from '../../src/shell/show-problems.ts'
import { MACHINE, problemsOf } from '../fixtures/fernhill.ts'

test('place, message, line, carets, what was expected, what was meant, code', () =>
  expect(showProblems(problemsOf([MACHINE, 'drives: both tracks', 'drives: both track']))).toBe(
    [
      'machines/wren-09.yaml:56:13: "both track" is not known here',
      '  56 |     drives: both track # both tracks | left track | right track | no track',
      '     |             ^^^^^^^^^^',
      '  expected: one of "both tracks", "left track", "right track", "no track"',
      '  did you mean "both tracks"?',
      '  [word-unknown]',
      '',
      '1 mistake in the input.',
      '',
    ].join('\n'),
  ))

test('carets stand under the place whatever the line', () => {
  for (const problem of problemsOf([MACHINE, 'mass: 980 kg', 'mas: 980'], [MACHINE, '13 L ', '13 stone '])) {
    const [, line = '', carets = ''] = showProblems([problem]).split('\n')
    const start = carets.indexOf('^')
    const under = line.slice(start, carets.lastIndexOf('^') + 1)
    expect(problem.excerpt.slice(problem.column - 1, problem.column - 1 + problem.width)).toBe(under)
  }
})

test('of a line that is longer than any terminal, what is around the place', () => {
  const long = `net-power: 8.6${' '.repeat(3000)}# ${'x'.repeat(100_000)}`
  const [problem] = problemsOf([MACHINE, 'net-power: 8.6 kW # at rated speed', long])
  const [head = '', line = '', carets = ''] = showProblems(problem === undefined ? [] : [problem]).split('\n')
  expect(head).toContain(':11:14:')
  expect(line.length).toBeLessThan(250)
  expect(line.slice(carets.indexOf('^'), carets.lastIndexOf('^') + 1)).toBe('8.6')
})

test('and of a text that stands in the wrong place, its beginning', () =>
  expect(showProblems(problemsOf([MACHINE, 'mass: 980 kg', `mass: [${'x'.repeat(90_000)}]`])).length).toBeLessThan(
    2000,
  ))

test('several are counted', () =>
  expect(showProblems(problemsOf([MACHINE, 'mass: 980 kg', 'mas: 980 kg']))).toContain('2 mistakes in the input.'))

test('a control character in a file does not reach the terminal', () => {
  const shown = showProblems(
    problemsOf(
      [MACHINE, 'mass: 980 kg', 'mass: "980 kg" # \u001b[2J\u202e'],
      [MACHINE, '13 L ', '13 \u001b[31mstone '],
    ),
  )
  expect(shown).toContain('stone')
  expect(shown.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u)
})

test('under a tab stands a tab', () => {
  const [problem] = problemsOf([MACHINE, 'mass: 980 kg', 'mass:\t\t980'])
  if (problem === undefined) throw new Error('no problem')
  expect(showProblems([problem]).split('\n')[2]).toMatch(/^ +\| {8}\t\t\^\^\^$/u)
})
