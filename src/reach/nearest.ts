/**
 * The nearest to a goal that nothing meets: the furthest step that any way reaches, by halves, then the cheapest way to it.
 * What each step on the way costs at least nobody asks.
 */
import type { Assessed, Question } from './assess.ts'
import type { Best } from './best.ts'
import { search } from './branch.ts'

/** Evaluations after which a step counts as out of reach, and is not proved to be. */
const MOST = 100
/** Nodes likewise. */
const MOST_NODES = 30_000

/**
 * @param best with the aim of the nearest
 * @param known every way that was evaluated before, by its choices; what is looked at here is added
 * @returns nothing was left open
 */
export const searchNearest = (question: Question, best: Best, known: Map<string, Assessed>): boolean => {
  for (const one of known.values()) best.offer(one)
  const keep = (one: Assessed) => known.set(one.candidate.join(), one)
  const isProved = () => search(question, best, keep, known, MOST, MOST_NODES).isExact
  let isExact = true
  let last = best.steps.length - 1
  while (best.reachedStep < last) {
    const step = Math.ceil((best.reachedStep + last) / 2)
    best.aimAt(step)
    const isClosed = isProved()
    if (best.reachedStep >= step) continue
    isExact = isExact && isClosed
    last = step - 1
  }
  best.aimAt(null)
  return best.nearest === null ? isExact : isProved() && isExact
}
