/** Method, "The answer": a place has no part on the list and none to special order: declined, `no-part`. */
import { expect, test } from 'vitest'
import { evaluateOption } from '../../src/option.ts'
import type { PartKind } from '../../src/shop.ts'
import { begin } from '../../src/start.ts'
import { BASES, type Base, loadedWith, type RandomPart } from '../reach/random-lists.ts'

const hose: RandomPart = {
  kind: 'hose',
  figures: { hose: -10, kind: '2-wire hose', 'max-pressure': '275 bar' },
  price: 16,
}
/** The pressure line goes from G 1/2 to G 1/2. */
const end: RandomPart = { kind: 'fitting', figures: { hose: -10, end: 'G 1/2' }, price: 8 }

const answerTo = (parts: readonly RandomPart[], orders: readonly PartKind[]) => {
  const list = { parts, orders, more: 1, budget: 1, kit: null, withoutHours: null }
  const loaded = loadedWith(BASES[0] as Base, list)
  const changes = { circuits: { main: { lines: { pressure: { part: 'part-00-hose' } } } } }
  const { start } = begin(loaded)
  const { result } = evaluateOption(loaded, start, { name: 'Hose', why: null, changes, reach: null })
  return {
    answer: result.answer.answer,
    isDeclinedForIt: result.answer.reasons.some(({ code }) => code === 'no-part'),
    stops: result.evaluation.findings
      .filter(({ severity }) => severity === 'stop')
      .map(({ id, value, limit }) => [id, value, limit]),
    had: result.consequences.map(({ available, specialOrder }) => [available, specialOrder]),
  }
}

test('a new hose whose ends nobody makes is declined', () => {
  expect(answerTo([hose], [])).toEqual({
    answer: 'decline',
    isDeclinedForIt: true,
    stops: [['line-joint:circuits.main.lines.pressure', 'hose -10', 'G 1/2']],
    had: [[false, false]],
  })
})

test('one whose ends are ordered is not, and says so', () => {
  expect(answerTo([hose], ['fitting'])).toMatchObject({ isDeclinedForIt: false, stops: [], had: [[false, true]] })
})

test('one with its ends on the list brings nothing', () => {
  expect(answerTo([hose, end], [])).toMatchObject({ isDeclinedForIt: false, had: [] })
})
