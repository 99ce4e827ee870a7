/**
 * What the demo scenarios ask for, searched for: the search beats the options that were written by hand on price, or shows
 * that they were the best, or that nothing of the list gives it.
 */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { reach } from '../../src/reach.ts'
import type { Search } from '../../src/search.ts'
import { loadQuestions } from '../../src/shell/load.ts'

const ROOT = join(import.meta.dirname, '../..')

const found = (file: string): Search => {
  const [name = '', wanted = null] = file.split(': ')
  const question = loadQuestions(join('scenarios', name), ROOT).find(({ unit }) => unit === wanted)
  if (question === undefined) throw new Error(`no question ${file}`)
  const { read } = question
  if ('problems' in read) throw new Error(JSON.stringify(read.problems, null, 2))
  return reach(read.loaded, { budget: null })
}

/** How the cheapest way stands against the cheapest by hand that meets the goal; `nothing`: no way of the list does. */
const EXPECTED: { readonly [file: string]: 'beats' | 'the same' | 'only the search' | 'nothing' } = {
  'twice-as-fast.yaml': 'only the search',
  'too-hot-to-touch.yaml': 'beats',
  'slower-every-season.yaml': 'only the search',
  'two-speed-travel.yaml': 'the same',
  'high-flow-trencher.yaml': 'nothing',
  'broom-for-the-loader.yaml': 'the same',
  'which-reading-is-right.yaml': 'nothing',
  'rental-yard.yaml: Unit A': 'only the search',
  'rental-yard.yaml: Unit B': 'only the search',
  'rental-yard.yaml: Unit C': 'only the search',
  'rental-yard.yaml: Unit D': 'only the search',
  'rental-yard.yaml: Unit E': 'only the search',
  'rental-yard.yaml: Unit F': 'only the search',
}

describe.each(Object.entries(EXPECTED))('%s', (file, expected) => {
  test(`${expected}`, { timeout: 300_000 }, () => {
    const { cheapest, byHand, isExact, curve } = found(file)
    expect(isExact).toBe(true)
    const hands = byHand.filter(({ meets }) => meets).map(({ cost }) => cost.likely)
    const hand = hands.length === 0 ? null : Math.min(...hands)
    const price = cheapest?.option.cost.likely ?? null
    const how =
      price === null
        ? 'nothing'
        : hand === null
          ? 'only the search'
          : price < hand
            ? 'beats'
            : price === hand
              ? 'the same'
              : 'dearer'
    expect(how === 'nothing' && hand !== null ? 'missed' : how).toBe(expected)
    if (cheapest !== null) expect(cheapest.meets).toBe(true)
    // No way of the curve is dearer and no better than the one before it.
    for (const [i, way] of curve.slice(1).entries())
      expect(way.option.cost.likely).toBeGreaterThan(curve[i]?.option.cost.likely ?? Number.NaN)
  })
})
