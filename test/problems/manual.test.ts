/** The page of mistakes is whole: every code has a row and a fixture, and no row speaks of a code that there is not. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { PROBLEM_CODES } from '../../src/scenario/problems.ts'

const page = readFileSync(new URL('../../MISTAKES.md', import.meta.url), 'utf8')
const rows = page.split('\n').flatMap((line) => {
  const match = /^\| `([a-z-]+)` \| (.+) \| (.+) \|$/u.exec(line)
  return match === null ? [] : [{ code: match[1], meaning: match[2] ?? '', remedy: match[3] ?? '' }]
})

describe('the manual of mistakes', () => {
  test('has every code once, in the order of the code', () => {
    expect(rows.map(({ code }) => code)).toEqual([...PROBLEM_CODES])
  })

  test('says of each what it means and what to do', () => {
    for (const { code, meaning, remedy } of rows) {
      expect(meaning.length, code).toBeGreaterThan(10)
      expect(remedy.length, code).toBeGreaterThan(3)
    }
  })

  test('is named in the README', () => {
    expect(readFileSync(new URL('../../README.md', import.meta.url), 'utf8')).toContain('MISTAKES.md')
  })
})

/** Told by a command of its own, not by reading: where it is tried. */
const ELSEWHERE: { readonly [code: string]: string } = { 'nothing-wanted': '../shell/reach.test.ts' }

test('every code has a fixture', () => {
  const folder = new URL('.', import.meta.url)
  const seen = new Set(
    readdirSync(folder)
      .filter((name) => name.endsWith('.yaml'))
      .flatMap((name) => {
        const { expect: wanted } = parse(readFileSync(new URL(name, folder), 'utf8')) as { expect: { code: string }[] }
        return wanted.map(({ code }) => code)
      }),
  )
  for (const [code, file] of Object.entries(ELSEWHERE))
    if (readFileSync(new URL(file, folder), 'utf8').includes(`[${code}]`)) seen.add(code)
  expect(PROBLEM_CODES.filter((code) => !seen.has(code))).toEqual([])
})
