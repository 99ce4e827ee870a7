/**
 * What has been found so far, for every question that one search answers at once: the cheapest that meets the goal, the
 * same without special orders, the curve, and the furthest that a budget pays for.
 *
 * The curve has steps: equal parts of the way from what the machine reaches today to the goal, at most STEPS, and none shorter
 * than the least gain that the shop can show with a stopwatch. Of each step it holds
 * the cheapest way without a special order and within every limit that reaches it; of two at one price the one that reaches
 * further. So no way is both cheaper and better than one of them: it would have taken its place. With a budget the steps go on as far
 * again behind the goal, for ways that it pays for: the furthest of them is what it buys.
 *
 * A way with something that has no price comes behind all whose price is known: nobody can call it the cheapest.
 *
 * Where nothing meets the goal, the nearest is the cheapest way within every limit, special orders allowed, that reaches the
 * last step that any reaches.
 */

import type { Goal } from '../search.ts'
import type { Assessed, Question } from './assess.ts'
import { simplerFirst } from './candidate.ts'
import { reachesGoal, restOf, scoreOf, wantedScore } from './goal.ts'
import type { Mode } from './sums.ts'

export const STEPS = 10
/** A wish may lie far behind what can be had; what is nearest to it is looked for in the smallest steps that count. */
const NEAREST_STEPS = 400
/** Oil cools little by little with every hose, but far only with a cooler: finer steps would be steps of hoses. */
const OIL_STEP = 0.1
/** What is nearest to a wish is looked for more finely: a fiftieth is two kelvin of hot oil. Our own choice, like OIL_STEP. */
const NEAREST_OIL_STEP = 0.02

/** Something of it has no price, so that what it costs is not known. */
const isUnpriced = ({ way }: Assessed): boolean => way.option.cost.unpriced.length > 0

/** Those whose price is known first, cheapest first; at one price the simpler. */
export const cheaper = (one: Assessed, other: Assessed): number =>
  Number(isUnpriced(one)) - Number(isUnpriced(other)) ||
  one.price - other.price ||
  simplerFirst(one.candidate, other.candidate)

/**
 * A way with something that has no price is told beside the cheapest where it seems a tenth cheaper: a missing price is no
 * saving. How much cheaper is our own choice.
 */
const WORTH_TELLING = 0.9

/** Cheapest first; at one price the further, then the simpler. */
const cheaperThenFurther = (one: Assessed, other: Assessed): number =>
  one.price - other.price || other.score - one.score || simplerFirst(one.candidate, other.candidate)

const better = (kept: Assessed | null, next: Assessed, order: (one: Assessed, other: Assessed) => number): Assessed =>
  kept === null || order(next, kept) < 0 ? next : kept

/**
 * Scores of the steps, ascending; the last is the wanted one. None before it where today already reaches it.
 * @param least share of what is reached today that a step is at least
 * @param atMost so many steps
 */
export const stepsTo = (today: number, wanted: number, least: number, atMost = STEPS): readonly number[] => {
  if (!(wanted > today) || !Number.isFinite(today)) return [wanted]
  const most = Math.floor((wanted - today) / (least * Math.abs(today)) + 1e-9)
  const steps = Math.max(1, Math.min(atMost, most))
  return Array.from({ length: steps }, (_, i) =>
    i === steps - 1 ? wanted : today + ((wanted - today) * (i + 1)) / steps,
  )
}

/** Of a set of ways that are still to be looked at: how dear at least, and how far at most. */
export interface Bounded {
  /** No way of the set scores more. */
  readonly high: number
  /** False: none of them meets all that is wanted, whatever it reaches of what is measured. Dear to work out. */
  readonly mayMeet: () => boolean
  /**
   * No way of the set that reaches a step (counted from 0) costs less.
   * @param step -1: whatever it reaches
   * @param mode of which ways; Infinity where there is none
   */
  readonly lowest: (step: number, mode: Mode) => number
  /** As `lowest`, of those that meet what is wanted besides the measured figure. */
  readonly meeting: (step: number, mode: Mode) => number
}

export type Cut = 'price' | 'reach'

/**
 * What is looked for. Where nothing meets the goal: the nearest to it, then the curve up to there. Of several wishes the
 * nearest is first looked for among the ways that meet all but the measured one. Past limits: what reaches the goal though
 * something stands against it, cheapest first, for the first few of them.
 */
export type Aim = 'goal' | 'nearest that meets the rest' | 'nearest' | 'curve' | 'past limits'

export class Best {
  /** The last is the wanted score. */
  readonly steps: readonly number[]
  /** Behind the goal, for the budget. */
  readonly beyond: readonly number[]
  readonly budget: number | null
  readonly aim: Aim
  cheapest: Assessed | null = null
  /** Cheapest of those with something that has no price: it may cost more than it seems to. */
  private unpriced: Assessed | null = null
  inStock: Assessed | null = null
  /** Nearest to the goal, and the step that it reaches. */
  nearest: Assessed | null = null
  private nearestStep: number
  private target: number | null = null
  /** Lowest step that the nearest may be on; -1: it need go no further than today, for it meets what today does not. */
  private readonly floor: number
  /** More is wanted than what is measured. */
  private readonly hasRest: boolean
  /** What the nearest has to reach besides. */
  private readonly rest: Goal | null
  /** Offers so far: what was judged since the last of them is judged alike. */
  offers = 0
  /** Of each step, those behind the goal included. */
  readonly ofStep: (Assessed | null)[]
  private readonly all: readonly number[]

  /** @param upTo score that the steps lead to in place of the wanted one */
  constructor(question: Question, budget: number | null, aim: Aim, upTo?: number) {
    const { start, goal, measure } = question
    const { travel, heat } = start.beforeJudged
    const reached = { speedKmh: travel.level.speedKmh, flowLpm: question.flowToday, oilC: heat.steadyOilC }
    const [today, wanted] = [scoreOf(reached, measure), upTo ?? wantedScore(goal, measure)]
    const { leastGain } = question.loaded.shop.limits
    const isNearest = aim === 'nearest' || aim === 'nearest that meets the rest'
    const least = measure !== 'oil-temperature' ? leastGain : isNearest ? NEAREST_OIL_STEP : OIL_STEP
    this.steps = stepsTo(today, wanted, least, isNearest ? NEAREST_STEPS : STEPS)
    this.hasRest = restOf(goal, measure) !== null
    this.rest = aim === 'nearest that meets the rest' ? restOf(goal, measure) : null
    this.floor = this.rest === null ? 0 : -1
    this.nearestStep = this.floor - 1
    const step = (wanted - today) / this.steps.length
    this.beyond =
      budget === null || measure === 'oil-temperature' || !(step > 0) || !Number.isFinite(step)
        ? []
        : Array.from({ length: STEPS }, (_, i) => wanted + step * (i + 1))
    this.budget = budget
    this.aim = aim
    this.all = [...this.steps, ...this.beyond]
    this.ofStep = this.all.map(() => null)
  }

  /** Seems a tenth cheaper than the cheapest, but something of it has no price. */
  get cheaperUnpriced(): Assessed | null {
    const { cheapest, unpriced } = this
    const isCheaper =
      cheapest !== null && unpriced !== null && unpriced !== cheapest && unpriced.price < cheapest.price * WORTH_TELLING
    return isCheaper ? unpriced : null
  }

  /** The furthest that the budget pays for; of several wishes what meets them all, where it pays for that. */
  get inBudget(): Assessed | null {
    const { budget, cheapest, inStock } = this
    if (budget === null) return null
    const whole = [inStock, cheapest].find((one) => one !== null && one.price <= budget) ?? null
    if (this.hasRest && whole !== null) return whole
    const step = this.ofStep.findLast((found) => found !== null && found.price <= budget) ?? null
    // The steps have no special orders; what meets the goal on one counts as well.
    return [inStock, cheapest].reduce(
      (best, one) =>
        one !== null && one.price <= budget && one.score > (best?.score ?? Number.NEGATIVE_INFINITY) ? one : best,
      step,
    )
  }

  offer(next: Assessed): void {
    this.offers += 1
    const { way, withinLimits, score } = next
    if (way.meets) {
      this.cheapest = better(this.cheapest, next, cheaper)
      if (isUnpriced(next)) this.unpriced = better(this.unpriced, next, cheaper)
      if (!way.specialOrder) this.inStock = better(this.inStock, next, cheaper)
    }
    if (!withinLimits) return
    const reached = Math.min(this.stepOf(score), this.steps.length - 1)
    const meetsRest = this.rest === null || reachesGoal(next.reached, this.rest)
    if (meetsRest && reached >= Math.max(this.floor, this.nearestStep)) {
      this.nearest = reached > this.nearestStep ? next : better(this.nearest, next, cheaperThenFurther)
      this.nearestStep = reached
    }
    if (way.specialOrder) return
    for (const [i, step] of this.all.entries())
      if (score >= step && next.price <= this.dearest(i))
        this.ofStep[i] = better(this.ofStep[i] ?? null, next, cheaperThenFurther)
  }

  /** Highest step that a score reaches; -1 for none. */
  stepOf(score: number): number {
    let step = -1
    while (step + 1 < this.all.length && score >= (this.all[step + 1] as number)) step += 1
    return step
  }

  /** Behind the goal only what the budget pays for is looked for. */
  private dearest(step: number): number {
    return step >= this.steps.length ? (this.budget ?? Number.NEGATIVE_INFINITY) : Number.MAX_VALUE
  }

  /** Dearest that a way of a step may be and still be of use. */
  private most(step: number): number {
    return Math.min(this.dearest(step), this.ofStep[step]?.price ?? Number.MAX_VALUE)
  }

  /** Highest step of the nearest so far; one below the lowest that counts where there is none. */
  get reachedStep(): number {
    return this.nearestStep
  }

  /**
   * For the nearest: looks for any way to a step from here on.
   * @param step null: for a cheaper way to the furthest step that was found
   */
  aimAt(step: number | null): void {
    this.target = step
  }

  /** A way to the step that was aimed at is found. */
  get isThere(): boolean {
    return this.target !== null && this.nearestStep >= this.target
  }

  private judgeNearest(highest: number, { lowest: of, meeting, mayMeet }: Bounded): number | Cut {
    const step = this.target ?? Math.max(this.floor, this.nearestStep)
    if (highest < step) return 'reach'
    const most = this.target === null ? (this.nearest?.price ?? Number.MAX_VALUE) : Number.MAX_VALUE
    const alone = of(step, 'any')
    if (alone > most) return 'price'
    if (this.rest === null) return alone
    if (!mayMeet()) return 'reach'
    const price = meeting(step, 'any')
    return price <= most ? price : 'price'
  }

  /**
   * Whether a set of ways may still hold one that is better than what was found (or as good and simpler).
   * @returns the least price at which it could, by which sets are taken in turn; or why it cannot
   */
  judge(set: Bounded): number | Cut {
    const { high, mayMeet, lowest, meeting } = set
    const last = this.steps.length - 1
    const highest = this.stepOf(high)
    if (this.aim === 'past limits') {
      const price = highest >= last && mayMeet() ? meeting(last, 'imagined') : Number.POSITIVE_INFINITY
      return price < Number.POSITIVE_INFINITY ? price : 'reach'
    }
    if (this.aim !== 'goal' && this.aim !== 'curve') return this.judgeNearest(Math.min(highest, last), set)
    if (highest < 0) return 'reach'
    let least = Number.POSITIVE_INFINITY
    let isMissed = false
    const consider = (price: number, most: number) => {
      if (price <= most && price < least) least = price
    }
    if (highest >= last && this.aim === 'goal') {
      const { cheapest, unpriced } = this
      const known = cheapest !== null && !isUnpriced(cheapest) ? cheapest.price : Number.MAX_VALUE
      const wanted: readonly (readonly [Mode, number])[] = [
        ['any', Math.min(known * WORTH_TELLING, unpriced?.price ?? Number.MAX_VALUE)],
        ['priced', known],
        ['in stock', this.inStock?.price ?? Number.MAX_VALUE],
      ]
      // What is wanted besides makes nothing cheaper: asked only of what is cheap enough without.
      const cheap = wanted.filter(([mode, most]) => lowest(last, mode) <= most)
      isMissed = cheap.length > 0 && !mayMeet()
      if (!isMissed) for (const [mode, most] of cheap) consider(meeting(last, mode), most)
    }
    for (let step = 0; step <= highest; step++) consider(lowest(Math.min(step, last), 'in stock'), this.most(step))
    if (least < Number.POSITIVE_INFINITY) return least
    return isMissed ? 'reach' : 'price'
  }
}
