/**
 * Where nothing reaches the goal within every limit: a way of the list that would reach it, and all that stands against it.
 * Nothing is said of one thing alone that would not be enough: the words are of one way, and of everything that stops it.
 */
import type { Finding } from '../evaluation.ts'
import { type Assessed, type Question, stands } from './assess.ts'
import { Best } from './best.ts'
import { search } from './branch.ts'
import { excess } from './stops.ts'

/** So many are looked at, cheapest first. */
const MOST = 24

/** What stands against a way. */
export const standing = ({ way }: Assessed): readonly Finding[] => way.option.evaluation.findings.filter(stands)

/** Least in the way: the fewest findings, then those that are least past their limits, then the cheapest. */
const fewerFirst = (one: Assessed, other: Assessed): number => {
  const past = (of: Assessed) => standing(of).reduce((sum, finding) => sum + excess(finding), 0)
  return standing(one).length - standing(other).length || past(one) - past(other) || one.price - other.price
}

/**
 * @param known every way that was evaluated before, by its choices; what is looked at here is added
 * @returns null where even past the limits nothing of the list reaches the goal, or none of those that were looked at
 */
export const pastLimits = (question: Question, known: Map<string, Assessed>): Assessed | null => {
  const keep = (one: Assessed) => known.set(one.candidate.join(), one)
  // No limit of engine or pull keeps oil hot.
  if (question.measure !== 'oil-temperature')
    search(question, new Best(question, null, 'past limits'), keep, known, MOST)
  const reaching = [...known.values()].filter((one) => one.way.reaches && !one.way.meets && standing(one).length > 0)
  return reaching.toSorted(fewerFirst)[0] ?? null
}
