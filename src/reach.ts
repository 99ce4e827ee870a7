/**
 * The conductor of the search: from what is wanted to the cheapest way there.
 *
 *   begin (calibrated, restored) -> places of the parts list -> branch and bound for the goal, the curve and the budget
 *   where nothing meets the goal -> the furthest within every limit, what stops the ways beyond it, what it would take
 *   the way that was found under the tolerances of what nobody has read; the options that were written by hand
 */
import type { Loaded } from './loaded.ts'
import type { OptionRequest, Wants } from './question.ts'
import { type Assessed, assess, assessPatch, type Question, questionOf } from './reach/assess.ts'
import { attachmentTakes } from './reach/attachment-takes.ts'
import { Best, cheaper } from './reach/best.ts'
import { type Counts, search } from './reach/branch.ts'
import { combinations, KEEP } from './reach/candidate.ts'
import { movesOf } from './reach/moves.ts'
import { oilTakes } from './reach/oil-takes.ts'
import { placesFor } from './reach/places.ts'
import { stopsOf } from './reach/stops.ts'
import { wouldTakeOf } from './reach/would-take.ts'
import type { FoundBySearch, FoundWay, Search } from './search.ts'
import { type Begun, begin } from './start.ts'
import { mmFromMetres } from './units/shop-units.ts'

export interface ReachOptions {
  /** In the shop's currency, tax included; null: none. */
  readonly budget: number | null
}

/** Nothing is wanted: there is nothing to look for. */
export const wantsNothing = ({ travelSpeed, attachment, oilBelow }: Wants): boolean =>
  travelSpeed === null && attachment === null && oilBelow === null

/** Way of the machine as it is, then each step that is better, cheapest first. */
const curveOf = (today: Assessed, best: Best): readonly FoundWay[] => {
  const ways: Assessed[] = [today]
  for (const step of best.ofStep.slice(0, best.steps.length)) {
    const last = ways.at(-1) as Assessed
    if (step !== null && step !== last && step.score > last.score) ways.push(step)
  }
  return ways.map(({ way }) => way)
}

export interface Found {
  readonly search: Search
  readonly cheapest: Assessed | null
  readonly nearest: Assessed | null
  /** The cheapest of the other ways that were evaluated in full and meet the goal, with other parts. */
  readonly next: Assessed | null
}

/** It leaves out something that the other chooses: not merely the same with more. */
const isOther = (one: Assessed, than: Assessed): boolean =>
  than.candidate.some((option, i) => option !== KEEP && one.candidate[i] !== option)

/** The search for anything that is wanted of a machine that was begun. */
export const reachFor = (loaded: Loaded, begun: Begun, wants: Wants, { budget }: ReachOptions): Found => {
  const { start } = begun
  const question: Question = questionOf(loaded, start, wants, placesFor(start.before.machine, wants, loaded))
  const known = new Map<string, Assessed>()
  const keep = (one: Assessed) => known.set(one.candidate.join(), one)
  const today = assess(
    question,
    question.places.map(() => KEEP),
  )
  keep(today)
  const best = new Best(question, budget, 'goal')
  const forGoal = search(question, best, keep, known)
  let counts: Counts = forGoal.counts
  let { isExact } = forGoal
  let nearest: Assessed | null = null
  /** Of which the curve is, and what the budget pays for. */
  let shown = best
  if (best.cheapest === null) {
    const further = new Best(question, null, 'nearest')
    for (const one of known.values()) further.offer(one)
    const forNearest = search(question, further, keep, known)
    nearest = further.nearest ?? today
    counts = forNearest.counts
    isExact = isExact && forNearest.isExact
    if (nearest.score > today.score) {
      shown = new Best(question, budget, 'curve', nearest.score)
      for (const one of known.values()) shown.offer(one)
      search(question, shown, keep, known)
    }
  }
  const all = [...known.values()]
  const byHand = loaded.scenario.options
    .filter(({ reach }) => reach === null)
    .map((option) => ({ option, one: assessPatch(question, [], option.changes, option.name) }))
  const stops = best.cheapest === null ? stopsOf([...all, ...byHand.map(({ one }) => one)], nearest) : []
  const answer = best.cheapest ?? nearest
  const bore = start.before.machine.travel.swivel?.bore ?? null
  const { cheapest } = best
  const unpriced = best.cheaperUnpriced
  const next = all
    .filter((one) => one.way.meets && one !== unpriced && cheapest !== null && isOther(one, cheapest))
    .toSorted(cheaper)[0]
  return {
    cheapest,
    nearest,
    next: next ?? null,
    search: {
      format: 1,
      goal: question.goal,
      measure: question.measure,
      reachedToday: today.way.reached,
      cheapest: best.cheapest?.way ?? null,
      cheapestInStock: best.inStock?.way ?? null,
      cheapestUnpriced: unpriced?.way ?? null,
      withinBudget: budget === null ? null : { budget, way: (shown.inBudget ?? today).way },
      curve: curveOf(today, shown),
      nearest: nearest?.way ?? null,
      stops,
      wouldTake:
        best.cheapest === null
          ? [
              ...attachmentTakes(start.before.machine, wants),
              ...oilTakes(loaded.scenario.site, wants),
              ...wouldTakeOf(stops, bore === null ? null : mmFromMetres(bore)),
            ]
          : [],
      moves: answer === null ? [] : movesOf(question, begun, answer),
      counts: { combinations: combinations(question.places), ...counts },
      isExact,
      byHand: byHand.map(({ option, one }) => ({
        name: option.name,
        cost: one.way.option.cost,
        reached: one.way.reached,
        meets: one.way.meets,
      })),
    },
  }
}

/**
 * Looks for the cheapest set of changes that gives what the scenario wants.
 * @param loaded a scenario that wants something
 */
export const reach = (loaded: Loaded, options: ReachOptions): Search =>
  reachFor(loaded, begin(loaded), loaded.scenario.wants, options).search

/** What an option is worth that says what is to be reached: the changes that were found, and how. */
export interface Resolved {
  readonly request: OptionRequest
  readonly found: FoundBySearch
}

/** A way as the report names it beside others. */
const toldOf = ({ option, reached }: FoundWay) => ({
  price: option.cost.likely,
  reached,
  changes: option.changes,
})

/**
 * Searches for the changes of such an option: the cheapest way, else the nearest, else none.
 * @param request with `reach` set
 */
export const resolveReach = (loaded: Loaded, begun: Begun, request: OptionRequest, wants: Wants): Resolved => {
  const { search: result, cheapest, nearest, next } = reachFor(loaded, begun, wants, { budget: null })
  const way = (cheapest ?? nearest)?.way ?? null
  const { cheapestUnpriced: unpriced } = result
  return {
    request: { ...request, changes: way?.changes ?? {} },
    found: {
      goal: result.goal,
      measure: result.measure,
      reachedToday: result.reachedToday,
      reached: way?.reached ?? result.reachedToday,
      meets: cheapest !== null,
      counts: result.counts,
      isExact: result.isExact,
      price: way?.option.cost.likely ?? null,
      unpriced: unpriced === null ? null : { ...toldOf(unpriced), items: unpriced.option.cost.unpriced },
      next: next === null ? null : toldOf(next.way),
      wouldTake: result.wouldTake,
      moves: result.moves,
      curve: result.curve.map(toldOf),
    },
  }
}
