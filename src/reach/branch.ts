/**
 * Branch and bound, best first. A node stands for all candidates that begin with some choices. Of all open nodes the one
 * whose least price is lowest is taken: a whole candidate is evaluated, another node split over the options of its next
 * place. A node is cut where no candidate of it can be better than what was found (best.ts), by bounds that hold for every
 * candidate of it (tree.ts); so what remains when nothing is open any more is what looking at all of them would have found.
 */
import { type Assessed, assess, type Question } from './assess.ts'
import type { Best } from './best.ts'
import { type Candidate, combinations, KEEP } from './candidate.ts'
import { dominatedIn } from './dominated.ts'
import { Queue } from './queue.ts'
import type { Mode } from './sums.ts'
import { Tree } from './tree.ts'

export interface Counts {
  evaluated: number
  cutByPrice: number
  cutByReach: number
  cutByLimit: number
}

interface Node {
  readonly choices: Candidate
  readonly length: number
  /** Offers that the best had when it was judged. */
  readonly judgedAt: number
}

/** Evaluations after which a search gives up the proof: more would keep a customer waiting. */
export const MOST_EVALUATIONS = 600

/** Nodes taken after which it gives up as well. */
export const MOST_NODES = 150_000

export interface Searched {
  readonly counts: Counts
  /** Nothing was left open. */
  readonly isExact: boolean
}

/**
 * Looks for everything that `best` asks for.
 * @param keep called with each way that was evaluated
 * @param known ways that were evaluated before, by their choices
 */
export const search = (
  question: Question,
  best: Best,
  keep: (assessed: Assessed) => void = () => {},
  known: ReadonlyMap<string, Assessed> = new Map(),
  most = MOST_EVALUATIONS,
  mostNodes = MOST_NODES,
): Searched => {
  const { places } = question
  const tree = new Tree(question, best)
  const counts: Counts = { evaluated: 0, cutByPrice: 0, cutByReach: 0, cutByLimit: 0 }
  /** Candidates that begin with so many choices. */
  const below = places.map((_, depth) => combinations(places.slice(depth))).concat(1)
  const dominated = places.map((place) => dominatedIn(place, question.loaded.shop))
  const open = new Queue<Node>()
  const bound = (choices: Candidate): number | null => {
    const size = below[choices.length] ?? 1
    const high = tree.high(choices)
    if (high === null) {
      counts.cutByLimit += size
      return null
    }
    const pricesOf = (isWorkedOut: boolean) => ({
      lowest: (step: number, mode: Mode) => tree.lowest(choices, step, mode, isWorkedOut),
      meeting: (step: number, mode: Mode) => tree.lowest(choices, step, mode, isWorkedOut, true),
    })
    const loosely = pricesOf(false)
    let meets: boolean | null = null
    const mayMeet = () => {
      meets ??= tree.mayMeet(choices)
      return meets
    }
    const loose = best.judge({ high, mayMeet, ...loosely })
    // Each dearer bound only where the cheaper one does not cut.
    const nearer = Math.min(high, typeof loose === 'number' ? tree.tight(choices) : high)
    const isSame = typeof loose !== 'number' || best.stepOf(nearer) === best.stepOf(high)
    const solved = isSame ? loose : best.judge({ high: nearer, mayMeet, ...loosely })
    const judged =
      typeof solved === 'number' && choices.length >= tree.drivingPlaces
        ? best.judge({ high: nearer, mayMeet, ...pricesOf(true) })
        : solved
    const isLast = choices.length === places.length || choices.length === tree.settledAt
    if (typeof judged === 'number' && isLast && tree.tooHot(choices)) {
      counts.cutByLimit += size
      return null
    }
    if (typeof judged === 'number') return judged
    if (judged === 'price') counts.cutByPrice += size
    else counts.cutByReach += size
    return null
  }
  const push = (choices: Candidate) => {
    const price = bound(choices)
    if (price !== null) open.push({ choices, length: choices.length, judgedAt: best.offers }, price)
  }
  let taken = 0
  push([])
  for (let next = open.pop(); next !== null; next = open.pop()) {
    taken += 1
    if (taken > mostNodes) return { counts, isExact: false }
    const { choices, judgedAt } = next.item
    // What was found since may cut it, or leave only dearer ways of it that matter.
    const price = judgedAt === best.offers ? next.key : bound(choices)
    if (price === null) continue
    if (price > next.key) {
      open.push({ ...next.item, judgedAt: best.offers }, price)
      continue
    }
    if (choices.length < places.length) {
      const options = places[choices.length]?.options.length ?? 0
      const skipped = dominated[choices.length]
      for (let option = KEEP; option < options; option++) {
        if (skipped?.has(option) === true) counts.cutByPrice += below[choices.length + 1] ?? 1
        else push([...choices, option])
      }
      continue
    }
    if (counts.evaluated >= most) return { counts, isExact: false }
    const assessed = known.get(choices.join()) ?? assess(question, choices)
    counts.evaluated += 1
    best.offer(assessed)
    keep(assessed)
    if (best.isThere) return { counts, isExact: true }
  }
  return { counts, isExact: true }
}
