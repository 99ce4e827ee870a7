/** One YAML text: what is taken, what is refused, and that no text takes the tool down. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { locate, readDocument } from '../../src/scenario/document.ts'

const codeOf = (text: string): string | null => {
  const read = readDocument('a.yaml', text)
  const problems = 'problems' in read ? read.problems : read.document.mistakes
  return problems[0]?.code ?? null
}
const dataOf = (text: string): unknown => {
  const read = readDocument('a.yaml', text)
  return 'document' in read ? read.document.data : read.problems
}

describe('taken', () => {
  test('a byte order mark and the line ends of another system', () =>
    expect(dataOf('\ufeffformat: 1\r\nname: Wren\r\n')).toEqual({ format: 1, name: 'Wren' }))
  test('a key that other languages stumble over', () => {
    const data = dataOf('__proto__: {polluted: 1}\nformat: 1') as { polluted?: unknown }
    expect(data.polluted).toBeUndefined()
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })
  test('brackets in a text', () => expect(dataOf('a: "[[["')).toEqual({ a: '[[[' }))
  test('words that some YAML takes for yes and no stay words', () =>
    expect(dataOf('a: yes\nb: NO')).toEqual({ a: 'yes', b: 'NO' }))
})

describe('refused', () => {
  test.each<[string, string, string]>([
    ['an empty file', '', 'empty-file'],
    ['a word alone', 'hello', 'empty-file'],
    ['more than 256 kB', `a: ${'x'.repeat(300_000)}`, 'file-too-large'],
    ['a list in a list in a list', `${'- '.repeat(100_000)}x`, 'too-deep'],
    ['brackets without end', '['.repeat(100_000), 'too-deep'],
    ['brackets with an end', `${'['.repeat(2000)}${']'.repeat(2000)}`, 'too-deep'],
    ['groups in groups', `${'{a: '.repeat(500)}1${'}'.repeat(500)}`, 'too-deep'],
    ['a staircase', Array.from({ length: 700 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), 'too-deep'],
    ['a small staircase', Array.from({ length: 150 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), 'too-deep'],
    ['a key twice', 'a: 1\na: 2', 'duplicate-key'],
    ['an alias', 'a: &x 1\nb: *x', 'alias-refused'],
    ['an alias of an alias of an alias', 'a: &a [1,1]\nb: &b [*a,*a]\nc: [*b,*b]', 'alias-refused'],
    ['two documents', 'a: 1\n---\nb: 2', 'yaml-syntax'],
    ['a tag', 'a: !secret 1', 'yaml-syntax'],
    ['a tab', 'a:\n\tb: 1', 'yaml-syntax'],
    ['an open bracket', 'a: [1, 2', 'yaml-syntax'],
  ])('%s', (_, text, code) => expect(codeOf(text)).toBe(code))
})

describe('places', () => {
  const text = 'one:\n  two: 3 bar\n  list: [a, b]\nfour:\n  - x\n  - y\n'
  const at = (path: (string | number)[], atKey = false) => {
    const read = readDocument('a.yaml', text)
    if (!('document' in read)) throw new Error('unreadable')
    const { line, column, excerpt, width } = locate(read.document, {
      code: 'unit-missing',
      path,
      atKey,
      message: '',
      expected: null,
      remedy: null,
    })
    return [line, column, excerpt.slice(column - 1, column - 1 + width)]
  }
  test('a value', () => expect(at(['one', 'two'])).toEqual([2, 8, '3 bar']))
  test('a key', () => expect(at(['one', 'two'], true)).toEqual([2, 3, 'two']))
  test('an entry of a list', () => expect(at(['one', 'list', 1])).toEqual([3, 13, 'b']))
  test('an entry of a list on its own line', () => expect(at(['four', 1])).toEqual([6, 5, 'y']))
  test('a group over several lines, at its key', () => expect(at(['four'])).toEqual([4, 1, 'four']))
  test('what is missing, at the group that lacks it', () => expect(at(['one', 'three'])).toEqual([1, 1, 'one']))
  test('what is missing at the top', () => expect(at(['five'])).toEqual([1, 1, 'one:']))
})

test('no text throws', () => {
  const pieces = fc.constantFrom(
    'a',
    ':',
    ' ',
    '\n',
    '- ',
    '[',
    ']',
    '{',
    '}',
    '&x ',
    '*x',
    '!t ',
    '"',
    "'",
    '|',
    '>',
    '#',
    '?',
    '%',
    '\t',
    ',',
    '1',
    '---\n',
  )
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 60 }), (list) => {
      const read = readDocument('a.yaml', list.join(''))
      return 'document' in read || read.problems.every(({ line, column }) => line >= 1 && column >= 1)
    }),
    { numRuns: 500 },
  )
})
