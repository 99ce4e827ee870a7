/** Of several wishes: which of them a way misses, and the cheaper way that comes nearest to what was found. */
import type { Goal, Measure } from '../search.ts'
import type { Assessed, Question } from './assess.ts'
import { simplerFirst } from './candidate.ts'
import { type Reached, reachesGoal, restOf } from './goal.ts'

const NOTHING: Goal = { travelSpeedKmh: null, attachment: null, oilBelowC: null }

/** Each wish alone, by its measure. */
const wishes = (goal: Goal): readonly (readonly [Measure, Goal])[] => [
  ...(goal.travelSpeedKmh === null
    ? []
    : [['travel-speed', { ...NOTHING, travelSpeedKmh: goal.travelSpeedKmh }] as const]),
  ...(goal.attachment === null ? [] : [['attachment-flow', { ...NOTHING, attachment: goal.attachment }] as const]),
  ...(goal.oilBelowC === null ? [] : [['oil-temperature', { ...NOTHING, oilBelowC: goal.oilBelowC }] as const]),
]

export const missedOf = (reached: Reached, goal: Goal): readonly Measure[] =>
  wishes(goal).flatMap(([measure, wish]) => (reachesGoal(reached, wish) ? [] : [measure]))

/**
 * How far a way stays behind all that is wanted: the sum of the shares of each wish, of the oil per 100 degC; 0 where it
 * gives it. As options are ranked (answer/recommend.ts); oil that does not settle is infinitely far.
 */
const shortfall = ({ speedKmh, flowLpm, oilC }: Reached, { travelSpeedKmh, attachment, oilBelowC }: Goal): number =>
  (travelSpeedKmh === null ? 0 : Math.max(0, 1 - speedKmh / travelSpeedKmh)) +
  (attachment === null ? 0 : Math.max(0, 1 - flowLpm / attachment.flowLpm)) +
  (oilBelowC === null ? 0 : Math.max(0, (oilC ?? Number.POSITIVE_INFINITY) - oilBelowC) / 100)

export interface Cheaper {
  readonly way: Assessed
  readonly misses: readonly Measure[]
}

/**
 * Of the ways that were evaluated in full, cost less than what was found and keep every limit, the one that comes nearest: it misses
 * the fewest wishes, and those by least. One wish has its curve, and needs none.
 * @param known every way that was evaluated
 * @returns null where there is one wish, or where nothing cheaper changes anything
 */
export const cheaperThan = (
  { goal, measure }: Question,
  found: Assessed,
  known: readonly Assessed[],
): Cheaper | null => {
  if (restOf(goal, measure) === null) return null
  const [nearest] = known
    .filter(
      ({ way, withinLimits, price }) =>
        withinLimits && price < found.price && way.option.changes.length > 0 && way.option.cost.unpriced.length === 0,
    )
    .map((way) => ({ way, misses: missedOf(way.reached, goal), short: shortfall(way.reached, goal) }))
    .filter(({ misses }) => misses.length > 0)
    .toSorted(
      (a, b) =>
        a.misses.length - b.misses.length ||
        a.short - b.short ||
        a.way.price - b.way.price ||
        simplerFirst(a.way.candidate, b.way.candidate),
    )
  return nearest === undefined ? null : { way: nearest.way, misses: nearest.misses }
}
