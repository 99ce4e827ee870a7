/** The sizes of a place, one above the other, and what each costs at least. */
import type { Part } from '../shop.ts'
import { IMPOSSIBLE, leastOf, NOTHING, type Sum } from './sums.ts'

/**
 * A place whose parts have a size, and whose check asks for a size in proportion to what flows. What is there in the end is
 * as big as that. A part that was chosen must be so itself (assess.ts: it stays). A place that is kept costs nothing while
 * what is there is big enough, else the cheapest of the list that is, or one to order.
 */
interface Sized {
  /** Of the present one; null where nothing is there or its size is not stated: then nothing is asked. */
  readonly present: number | null
  readonly parts: readonly { readonly part: Part; readonly size: number | null; readonly cost: Sum }[]
  readonly order: Sum
}

/** Rounding must not call too small what is just big enough. */
const HAIR = 1e-6

/** Least cost of a place: of keeping what is there, and of choosing a part, where so much is asked. */
interface Ladder {
  readonly kept: (asked: number) => Sum
  readonly chosen: (id: string, asked: number) => Sum
}

export const ladderOf = ({ present, parts, order }: Sized): Ladder => {
  const rungs = parts
    .map(({ part, size, cost }) => ({ id: part.id, size: size ?? Number.POSITIVE_INFINITY, cost }))
    .toSorted((one, other) => one.size - other.size)
  const own = new Map(rungs.map((rung) => [rung.id, rung]))
  const least: Sum[] = [order]
  for (const { cost } of rungs.toReversed()) least.unshift(leastOf([least[0] as Sum, cost]))
  const from = (asked: number): Sum => {
    let [low, high] = [0, rungs.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((rungs[middle] as { size: number }).size < asked * (1 - HAIR)) low = middle + 1
      else high = middle
    }
    return least[low] as Sum
  }
  return {
    kept: (asked) => (present === null || present >= asked * (1 - HAIR) ? NOTHING : from(Math.max(asked, present))),
    chosen: (id, asked) => {
      const found = own.get(id)
      return found === undefined || found.size < asked * (1 - HAIR) ? IMPOSSIBLE : found.cost
    },
  }
}
