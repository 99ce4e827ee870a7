import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { ReasonCode } from '../../src/evaluation.ts'
import { type Assessed, type Question, questionOf } from '../../src/reach/assess.ts'
import { Best } from '../../src/reach/best.ts'
import { search } from '../../src/reach/branch.ts'
import { combinations } from '../../src/reach/candidate.ts'
import { attachmentFlow, restOf } from '../../src/reach/goal.ts'
import { searchNearest } from '../../src/reach/nearest.ts'
import { placesFor } from '../../src/reach/places.ts'
import { Tree } from '../../src/reach/tree.ts'
import { begin } from '../../src/start.ts'
import { assessAll } from './brute-force.ts'
import { BASES, type Base, HARD_BASES, listFor, loadedWith, type RandomList } from './random-lists.ts'

/** Cases a machine; more with REACH_CASES. */
const CASES = Number(process.env.REACH_CASES ?? 20)
/** Why an option is declined on the machines that are hard to better. */
const STOPS: ReadonlySet<ReasonCode> = new Set<ReasonCode>(['braking-or-slope', 'oil-too-hot'])
/** More combinations than this take too long to look at one by one. */
const MOST = 120

const questionFor = (base: Base, list: RandomList, order: 'as is' | 'turned round' = 'as is'): Question => {
  const loaded = loadedWith(base, list, order)
  const { start } = begin(loaded)
  const { wants } = loaded.scenario
  const speed = start.beforeJudged.travel.level.speedKmh / 3.6
  const tool = { flow: (11 / 60_000) * list.more, pressure: 70e5 }
  const site = loaded.scenario.site
  const today = attachmentFlow(start.before.machine, site, { ...wants, attachment: tool }) / 60_000
  const isFed = base.attachment !== 'no circuit' && base.attachment !== 'driving circuit'
  const attachment =
    base.attachment === undefined
      ? wants.attachment && { ...wants.attachment, flow: (22.4 / 60_000) * list.more }
      : isFed
        ? { ...tool, flow: today * (1 + (list.more - 1) / 3) }
        : tool
  // Half of the lists want the machine faster as well; of those that have pumps to feed the attachment a quarter.
  const isFaster = base.attachment === undefined || list.budget > (isFed ? 4000 : 2000)
  const isSpeed = base.faster === true || (wants.travelSpeed !== null && isFaster)
  const travelSpeed = isSpeed ? speed * list.more : null
  const isCooler = wants.oilBelow !== null || base.oil === true
  const oilBelow = !isCooler ? null : (start.beforeJudged.heat.steadyOilC ?? 90) - 12 * (list.more - 1)
  const wanted = { ...wants, travelSpeed, attachment, oilBelow }
  return questionOf(loaded, start, wanted, placesFor(start.before.machine, wanted, loaded))
}

const small = (base: Base) => listFor(base).filter((list) => combinations(questionFor(base, list).places) <= MOST)

/** What was found, without the evaluation of it. */
const told = (question: Question, found: Assessed | null) =>
  found === null
    ? null
    : {
        parts: found.candidate.map((option, i) => question.places[i]?.options[option]?.part.figures ?? 'kept'),
        price: found.price,
        score: found.score,
      }

const allTold = (question: Question, best: Best) => ({
  cheapest: told(question, best.cheapest),
  inStock: told(question, best.inStock),
  cheaperUnpriced: told(question, best.cheaperUnpriced),
  inBudget: told(question, best.inBudget),
  curve: best.ofStep.map((found) => told(question, found)),
})

const aimedAt = (question: Question): Best => new Best(question, null, 'nearest that meets the rest')

const found = (question: Question, budget: number): Best => {
  const best = new Best(question, budget, 'goal')
  expect(search(question, best).isExact).toBe(true)
  return best
}

/** Of one list: the search against every combination, and every bound against every way within limits. */
const holdAgainstAll = (base: Base, list: RandomList) => {
  const question = questionFor(base, list)
  const all = assessAll(question)
  const brute = new Best(question, list.budget, 'goal')
  for (const one of all) brute.offer(one)
  const best = new Best(question, list.budget, 'goal')
  const { counts, isExact } = search(question, best)
  expect(isExact).toBe(true)
  expect(allTold(question, best)).toEqual(allTold(question, brute))
  const { evaluated, cutByPrice, cutByReach, cutByLimit } = counts
  expect(evaluated + cutByPrice + cutByReach + cutByLimit).toBe(combinations(question.places))
  const [nearest, bruteNearest] = [new Best(question, null, 'nearest'), new Best(question, null, 'nearest')]
  for (const one of all) bruteNearest.offer(one)
  expect(searchNearest(question, nearest, new Map())).toBe(true)
  expect(told(question, nearest.nearest)).toEqual(told(question, bruteNearest.nearest))
  if (restOf(question.goal, question.measure) !== null) {
    const [meeting, bruteMeeting] = [aimedAt(question), aimedAt(question)]
    for (const one of all) bruteMeeting.offer(one)
    expect(searchNearest(question, meeting, new Map())).toBe(true)
    expect(told(question, meeting.nearest)).toEqual(told(question, bruteMeeting.nearest))
  }
  const tree = new Tree(question, new Best(question, list.budget, 'goal'))
  for (const { candidate, price, score, way } of all.filter((one) => one.withinLimits)) {
    for (let length = 0; length <= candidate.length; length++) {
      const begun = candidate.slice(0, length)
      if (way.meets) expect(tree.mayMeet(begun)).toBe(true)
      expect(tree.tooHot(begun)).toBe(false)
      const high = tree.high(begun)
      expect(high).not.toBeNull()
      expect(high ?? 0).toBeGreaterThanOrEqual(score)
      expect(tree.tight(begun)).toBeGreaterThanOrEqual(score)
      for (let step = -1; step <= Math.min(best.stepOf(score), best.steps.length - 1); step++) {
        const { unpriced } = way.option.cost
        for (const isWorkedOut of [false, true]) {
          expect(tree.lowest(begun, step, 'any', isWorkedOut)).toBeLessThanOrEqual(price)
          if (unpriced.length === 0) expect(tree.lowest(begun, step, 'priced', isWorkedOut)).toBeLessThanOrEqual(price)
          if (!way.specialOrder) expect(tree.lowest(begun, step, 'in stock', isWorkedOut)).toBeLessThanOrEqual(price)
          if (way.meets) expect(tree.lowest(begun, step, 'any', isWorkedOut, true)).toBeLessThanOrEqual(price)
        }
      }
    }
  }
  const ways = all.filter(({ withinLimits }) => withinLimits)
  return {
    within: ways.length,
    meets: ways.filter(({ way }) => way.meets).length,
    stopped: all.filter(({ way }) => way.option.answer.reasons.some(({ code }) => STOPS.has(code))).length,
    cut: combinations(question.places) - evaluated,
  }
}

describe.each(HARD_BASES)(
  '$scenario, brakeless $brakeless, hot air $hotAir, overrun $overrun, cooler oil $oil',
  (base) => {
    test('nothing is cut that would do', { timeout: 3_600_000 }, () => {
      let [stopped, cut, within] = [0, 0, 0]
      fc.assert(
        fc.property(small(base), (list) => {
          const of = holdAgainstAll(base, list)
          stopped += of.stopped
          cut += of.cut
          within += of.within
        }),
        { seed: 7, numRuns: CASES },
      )
      // What only these machines stop is there, and cut.
      if (base.overrun !== true) expect(stopped).toBeGreaterThan(0)
      expect(within).toBeGreaterThan(CASES)
      expect(cut).toBeGreaterThan(0)
    })
  },
)

describe.each(BASES)(
  '$scenario on small lists at random, attachment on $attachment, cooler oil $oil, faster $faster',
  (base) => {
    test('the search finds what looking at every combination finds, and no bound is passed', {
      timeout: 3_600_000,
    }, () => {
      let [within, meets, cut, met, missed] = [0, 0, 0, 0, 0]
      fc.assert(
        fc.property(small(base), (list) => {
          const of = holdAgainstAll(base, list)
          within += of.within
          meets += of.meets
          if (of.meets > 0) met += 1
          else missed += 1
          cut += of.cut
        }),
        { seed: 7, numRuns: CASES },
      )
      // The lists must be worth the trouble: some ways are within limits, some meet the goal, and something is cut.
      expect(within).toBeGreaterThan(0)
      expect(meets).toBeGreaterThan(0)
      // A tenth of the lists at least reach the goal, and a tenth at least do not.
      expect(met).toBeGreaterThanOrEqual(CASES / 10)
      expect(missed).toBeGreaterThanOrEqual(CASES / 10)
      expect(cut).toBeGreaterThan(0)
    })

    test('the order of the list changes nothing', { timeout: 600_000 }, () => {
      fc.assert(
        fc.property(small(base), (list) => {
          const [one, other] = [questionFor(base, list), questionFor(base, list, 'turned round')]
          expect(allTold(other, found(other, list.budget))).toEqual(allTold(one, found(one, list.budget)))
        }),
        { seed: 11, numRuns: Math.ceil(CASES / 2) },
      )
    })
  },
)
