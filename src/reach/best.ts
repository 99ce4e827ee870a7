/**
 * What has been found so far, for every question that one search answers at once: the cheapest that meets the goal, the
 * same without special orders, the furthest within a budget, and the curve.
 *
 * The curve has steps: STEPS equal parts of the way from what the machine reaches today to the goal. Of each step it holds
 * the cheapest way without a special order and within every limit that reaches it; of two at one price the one that reaches
 * further. So no way is both cheaper and better than one of them: it would have taken its place. Closer steps would differ
 * by less than a stopwatch tells apart.
 */
import type { Assessed, Question } from './assess.ts'
import { simplerFirst } from './candidate.ts'
import { scoreOf, wantedScore } from './goal.ts'

export const STEPS = 10

/** Cheapest first; at one price the simpler. */
const cheaper = (one: Assessed, other: Assessed): number =>
  one.price - other.price || simplerFirst(one.candidate, other.candidate)

/** Cheapest first; at one price the further, then the simpler. */
const cheaperThenFurther = (one: Assessed, other: Assessed): number =>
  one.price - other.price || other.score - one.score || simplerFirst(one.candidate, other.candidate)

/** Furthest first; of those that reach as far the cheapest. */
const further = (one: Assessed, other: Assessed): number => other.score - one.score || cheaper(one, other)

const better = (kept: Assessed | null, next: Assessed, order: (one: Assessed, other: Assessed) => number): Assessed =>
  kept === null || order(next, kept) < 0 ? next : kept

/** Scores of the steps, ascending; the last is the wanted one. None where today already reaches it. */
export const stepsTo = (today: number, wanted: number): readonly number[] => {
  if (!(wanted > today)) return [wanted]
  if (!Number.isFinite(today)) return [wanted]
  return Array.from({ length: STEPS }, (_, i) =>
    i === STEPS - 1 ? wanted : today + ((wanted - today) * (i + 1)) / STEPS,
  )
}

/** Of a set of ways that are still to be looked at: how dear at least, and how far at most. */
export interface Bounded {
  /** No way of the set scores more. */
  readonly high: number
  /**
   * No way of the set that reaches a step (counted from 0) costs less.
   * @param step -1: whatever it reaches
   * @param inStock only those without a special order; Infinity where there is none
   */
  readonly lowest: (step: number, inStock: boolean) => number
}

export type Cut = 'price' | 'reach'

/** What is looked for. `furthest`: within every limit whatever it costs, where nothing meets the goal. */
export type Aim = 'goal' | 'furthest'

export class Best {
  readonly steps: readonly number[]
  readonly budget: number | null
  readonly aim: Aim
  cheapest: Assessed | null = null
  inStock: Assessed | null = null
  inBudget: Assessed | null = null
  furthest: Assessed | null = null
  readonly ofStep: (Assessed | null)[]

  constructor(question: Question, budget: number | null, aim: Aim) {
    const { start, goal, measure } = question
    const { travel, heat } = start.beforeJudged
    const reached = { speedKmh: travel.level.speedKmh, flowLpm: question.flowToday, oilC: heat.steadyOilC }
    this.steps = stepsTo(scoreOf(reached, measure), wantedScore(goal, measure))
    this.budget = budget
    this.aim = aim
    this.ofStep = this.steps.map(() => null)
  }

  offer(next: Assessed): void {
    const { way, withinLimits, score, price } = next
    if (way.meets) {
      this.cheapest = better(this.cheapest, next, cheaper)
      if (!way.specialOrder) this.inStock = better(this.inStock, next, cheaper)
    }
    if (!withinLimits) return
    this.furthest = better(this.furthest, next, further)
    if (way.specialOrder) return
    if (this.budget !== null && price <= this.budget) this.inBudget = better(this.inBudget, next, further)
    for (const [i, step] of this.steps.entries())
      if (score >= step) this.ofStep[i] = better(this.ofStep[i] ?? null, next, cheaperThenFurther)
  }

  /** Highest step that a score reaches; -1 for none. */
  stepOf(score: number): number {
    let step = -1
    while (step + 1 < this.steps.length && score >= (this.steps[step + 1] as number)) step += 1
    return step
  }

  /**
   * Whether a set of ways may still hold one that is better than what was found (or as good and simpler).
   * @returns the least price at which it could, by which sets are taken in turn; or why it cannot
   */
  judge({ high, lowest }: Bounded): number | Cut {
    if (this.aim === 'furthest') {
      if (high < (this.furthest?.score ?? Number.NEGATIVE_INFINITY)) return 'reach'
      return lowest(-1, false)
    }
    let least = Number.POSITIVE_INFINITY
    let reaches = false
    const last = this.steps.length - 1
    const highest = this.stepOf(high)
    const consider = (price: number, incumbent: Assessed | null) => {
      reaches = true
      if (price <= (incumbent?.price ?? Number.MAX_VALUE) && price < least) least = price
    }
    if (highest === last) {
      consider(lowest(last, false), this.cheapest)
      consider(lowest(last, true), this.inStock)
    }
    for (let step = 0; step <= highest; step++) consider(lowest(step, true), this.ofStep[step] ?? null)
    if (this.budget !== null) {
      const known = this.inBudget
      if (known === null || high >= known.score) {
        reaches = true
        const price = lowest(known === null ? -1 : this.stepOf(known.score), true)
        if (price <= this.budget && price < least) least = price
      }
    }
    if (!reaches) return 'reach'
    return least === Number.POSITIVE_INFINITY ? 'price' : least
  }
}
