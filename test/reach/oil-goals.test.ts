/**
 * Oil temperatures from just below today's down to what no cooler gives, on the whole demo list, against what anybody would
 * try by hand: every part of the list alone; and the two parts that two wishes ask for. There are too many ways to look at all.
 */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { assess, assessPatch, questionOf } from '../../src/reach/assess.ts'
import { KEEP } from '../../src/reach/candidate.ts'
import { placesFor } from '../../src/reach/places.ts'
import { reachFor } from '../../src/reach.ts'
import { loadQuestions } from '../../src/shell/load.ts'
import { begin } from '../../src/start.ts'
import { metresPerSecondFromKmh } from '../../src/units/shop-units.ts'

const ROOT = join(import.meta.dirname, '../..')

const begunWith = (file: string) => {
  const [found] = loadQuestions(join('scenarios', file), ROOT)
  if (found === undefined || 'problems' in found.read) throw new Error(`cannot read ${file}`)
  const { loaded } = found.read
  return { loaded, begun: begin(loaded) }
}

/** Half a cent for each of the lines of a price. */
const CENTS = 0.5

describe('a sound machine at 88 °C', () => {
  const { loaded, begun } = begunWith('too-hot-to-touch.yaml')
  test.each([87.5, 87, 86, 82, 75, 60, 55, 50])('oil below %d °C', { timeout: 120_000 }, (oilBelow) => {
    const wants = { travelSpeed: null, attachment: null, oilBelow }
    const question = questionOf(loaded, begun.start, wants, placesFor(begun.start.before.machine, wants, loaded))
    const none = question.places.map(() => KEEP)
    const alone = question.places
      .flatMap(({ options }, i) => options.map((_, option) => assess(question, none.with(i, option))))
      // A way with something that has no price is never called the cheapest.
      .filter(({ way }) => way.meets && way.option.cost.unpriced.length === 0)
    const { search } = reachFor(loaded, begun, wants, { budget: null })
    expect(search.isExact).toBe(true)
    for (const { price } of alone) expect(search.cheapest?.option.cost.likely).toBeLessThanOrEqual(price + CENTS)
    if (search.cheapest === null) {
      // Where nothing does it, the nearest is within a step of the coolest that any part alone gives.
      const coolest = question.places.flatMap(({ options }, i) =>
        options.flatMap((_, option) => {
          const { withinLimits, reached } = assess(question, none.with(i, option))
          return withinLimits && reached.oilC !== null ? [reached.oilC] : []
        }),
      )
      expect(search.nearest?.reached).toBeLessThanOrEqual(Math.min(...coolest) + 2)
    }
  })
})

test('more speed and cooler oil cost no more than the two parts that give them by hand', { timeout: 120_000 }, () => {
  const { loaded, begun } = begunWith('twice-as-fast.yaml')
  const wants = { travelSpeed: metresPerSecondFromKmh(2.1), attachment: null, oilBelow: 60 }
  const question = questionOf(loaded, begun.start, wants, placesFor(begun.start.before.machine, wants, loaded))
  const byHand = assessPatch(question, [], {
    travel: { sprocket: { part: 'sprocket-310' } },
    cooler: { part: 'cooler-s' },
  })
  expect(byHand.way.meets).toBe(true)
  const { search, cheaper } = reachFor(loaded, begun, wants, { budget: null })
  expect(search).toMatchObject({ isExact: true, cheapest: { meets: true } })
  // The sprocket alone gives the speed and leaves the oil hot: so a way that costs less misses one wish and no more.
  const sprocket = assessPatch(question, [], { travel: { sprocket: { part: 'sprocket-310' } } })
  expect(sprocket.reached.speedKmh).toBeGreaterThanOrEqual(2.1)
  expect(sprocket.reached.oilC ?? 999).toBeGreaterThan(60)
  expect(cheaper?.misses).toHaveLength(1)
  expect(cheaper?.way).toMatchObject({ withinLimits: true, way: { meets: false } })
  expect(cheaper?.way.price).toBeLessThan(search.cheapest?.option.cost.likely ?? 0)
  const { speedKmh = 0, oilC = null } = cheaper?.way.reached ?? {}
  expect(cheaper?.misses).toEqual(speedKmh < 2.1 ? ['travel-speed'] : ['oil-temperature'])
  expect(speedKmh < 2.1 || (oilC ?? 999) > 60).toBe(true)
  expect(search.cheapest?.option.cost.likely).toBeLessThanOrEqual(byHand.price + CENTS)
})
