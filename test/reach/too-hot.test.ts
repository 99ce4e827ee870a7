/**
 * As the answer judges it (spec, methods: "The answer"): above 82 °C, or thinner than 10 cSt, the oil is in the severe class; that
 * declines a way where it was not so before, or where it is noticeably (2 %) hotter than it was.
 */
import { expect, test } from 'vitest'
import { preparePlant } from '../../src/circuit/plant.ts'
import { questionOf } from '../../src/reach/assess.ts'
import { placesFor } from '../../src/reach/places.ts'
import { allTooHot } from '../../src/reach/too-hot.ts'
import { begin } from '../../src/start.ts'
import { BASES, type Base, loadedWith } from './random-lists.ts'

const NO_LIST = { parts: [], orders: [], more: 1, budget: 0, kit: null, withoutHours: null }
const loaded = loadedWith(BASES[0] as Base, NO_LIST)
const { start } = begin(loaded)
const { wants, site } = loaded.scenario
const question = questionOf(loaded, start, wants, placesFor(start.before.machine, wants, loaded))
const plant = preparePlant(start.before.machine, site)

const withBefore = (steadyOilC: number | null, risk: 'low' | 'severe') => {
  const heat = { ...start.beforeJudged.heat, steadyOilC, risk }
  return { ...question, start: { ...start, beforeJudged: { ...start.beforeJudged, heat } } }
}

test.each([
  [60, 'low', 82, false],
  [60, 'low', 82.1, true],
  [60, 'low', Number.POSITIVE_INFINITY, true],
  [90, 'severe', 91.7, false],
  [90, 'severe', 91.9, true],
  [null, 'severe', 120, false],
] as const)('before %s °C (%s), now at least %s °C: %s', (was, risk, now, expected) => {
  expect(allTooHot(withBefore(was, risk), now, plant)).toBe(expected)
})

test('thin oil is too hot earlier', () => {
  // 22 cSt at 40 °C and 4.3 at 100 °C: 8.4 cSt at 70 °C and 13.0 at 55 °C on the straight line of ASTM D341, by hand.
  const thin = { ...start.before.machine.oil, viscosityAt40: 22e-6, viscosityAt100: 4.3e-6 }
  const thinly = preparePlant({ ...start.before.machine, oil: thin }, site)
  expect(allTooHot(withBefore(50, 'low'), 70, thinly)).toBe(true)
  expect(allTooHot(withBefore(50, 'low'), 55, thinly)).toBe(false)
})
