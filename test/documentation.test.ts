/**
 * The comment of a formula is its specification: every exported function of src/formulas carries its equation, each argument
 * and the result with the unit in brackets, its valid range and its source. Read from the text of the files.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const FOLDER = new URL('../src/formulas/', import.meta.url)
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ts'))

interface Documented {
  readonly name: string
  readonly comment: string
  readonly parameters: readonly string[]
}

/** Names of the parameters of an arrow function, read up to the bracket that closes its list. */
const parametersOf = (text: string): readonly string[] => {
  let depth = 0
  let end = 0
  for (; end < text.length; end++) {
    const sign = text[end] as string
    if ('([{<'.includes(sign)) depth++
    if (')]}>'.includes(sign) && --depth === 0) break
  }
  const list = text.slice(1, end)
  const names: string[] = []
  let level = 0
  let current = ''
  for (const sign of `${list},`) {
    if ('([{<'.includes(sign)) level++
    if (')]}>'.includes(sign)) level--
    if (sign === ',' && level === 0) {
      const name = current.trim().split(/[:=?]/u)[0]?.trim() ?? ''
      if (name !== '') names.push(name)
      current = ''
    } else current += sign
  }
  return names
}

const documented = (text: string): Documented[] =>
  [...text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n)?export const (\w+) = (?=\()/gu)].map((match) => ({
    name: match[2] ?? '',
    comment: match[1] ?? '',
    parameters: parametersOf(text.slice((match.index ?? 0) + match[0].length)),
  }))

/** What a comment lacks. */
const lacks = ({ comment, parameters }: Documented): string[] => {
  const lines = comment.split('\n').map((line) => line.replace(/^\s*\/?\*+\/?\s?/u, ''))
  const prose = lines.filter((line) => !line.startsWith('@'))
  const named = lines.filter((line) => line.startsWith('@param')).join(' ')
  return [
    ...(prose.some((line) => /\S+ = \S/u.test(line)) ? [] : ['an equation']),
    ...parameters
      .filter((name) => !new RegExp(`(?:@param|,) ${name} \\[[^\\]]+\\]`, 'u').test(named))
      .map((name) => `@param ${name} [unit]`),
    ...(lines.some((line) => /^@returns .*\[[^\]]+\]/u.test(line)) ? [] : ['@returns [unit]']),
    ...(lines.some((line) => line.startsWith('Valid:')) ? [] : ['Valid:']),
    ...(lines.some((line) => line.startsWith('Source:')) ? [] : ['Source:']),
  ]
}

describe('formulas', () => {
  for (const file of files) {
    const text = readFileSync(new URL(file, FOLDER), 'utf8')
    test(`${file} opens with what it covers`, () => {
      expect(text).toMatch(/^\/\*\*\n? \*? ?[A-Z][\s\S]{40,}?\*\//u)
    })
    for (const one of documented(text))
      test(`${file} ${one.name}`, () => {
        expect(lacks(one)).toEqual([])
      })
  }

  test('most of the functions are found', () => {
    const count = files.flatMap((file) => documented(readFileSync(new URL(file, FOLDER), 'utf8'))).length
    expect(count).toBeGreaterThan(55)
  })

  test('no exported function goes unread', () => {
    for (const file of files) {
      const text = readFileSync(new URL(file, FOLDER), 'utf8')
      const exported = [...text.matchAll(/^export (?!interface |type )(?:const |function )?(\w+)/gmu)].map(
        ([, name]) => name,
      )
      expect(documented(text).map(({ name }) => name)).toEqual(exported)
    }
  })

  test('exported types say what they are, with an equation', () => {
    for (const file of files) {
      const text = readFileSync(new URL(file, FOLDER), 'utf8')
      for (const { index } of text.matchAll(/^export (?:interface|type) /gmu)) {
        const comment = text.slice(0, index).match(/\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n$/u)?.[0] ?? ''
        expect(comment, file).toMatch(/\w = \S|\w\) = \S|: \w+\(/u)
      }
    }
  })

  const whole = [
    '/**',
    ' * Flow of a pump.',
    ' * Q = V n',
    ' * @param displacement [m3/rev] displacement V',
    ' * @param speed [rev/s] speed n',
    ' * @returns [m3/s] flow',
    ' * Valid: always.',
    ' * Source: definition.',
    ' */',
    'export const flow = (displacement: number, speed: number): number => displacement * speed',
    '',
  ]
  const without = (part: string) => whole.filter((line) => !line.includes(part)).join('\n')

  test('a whole comment lacks nothing', () => {
    expect(documented(whole.join('\n')).map(lacks)).toEqual([[]])
  })
  for (const [part, lacking] of [
    ['Q = V n', 'an equation'],
    ['@param displacement', '@param displacement [unit]'],
    ['@param speed', '@param speed [unit]'],
    ['@returns', '@returns [unit]'],
    ['Valid:', 'Valid:'],
    ['Source:', 'Source:'],
  ] as const)
    test(`a comment without ${part} is caught`, () => {
      expect(documented(without(part)).map(lacks)).toEqual([[lacking]])
    })
  test('a missing unit is caught', () => {
    expect(documented(whole.join('\n').replace(' [rev/s]', '')).map(lacks)).toEqual([['@param speed [unit]']])
    expect(documented(whole.join('\n').replace(' [m3/s]', '')).map(lacks)).toEqual([['@returns [unit]']])
  })

  test('a comment that lacks each part is caught', () => {
    const text =
      '/** Flow. */\nexport const flow = (displacement: number, speed: number): number => displacement * speed\n'
    expect(documented(text).map(lacks)).toEqual([
      ['an equation', '@param displacement [unit]', '@param speed [unit]', '@returns [unit]', 'Valid:', 'Source:'],
    ])
  })
})
