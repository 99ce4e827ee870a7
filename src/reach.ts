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
import { type Aim, Best, cheaper } from './reach/best.ts'
import { search } from './reach/branch.ts'
import { combinations, KEEP } from './reach/candidate.ts'
import { type Cheaper, cheaperThan } from './reach/falls-short.ts'
import { restOf } from './reach/goal.ts'
import { movesOf } from './reach/moves.ts'
import { searchNearest } from './reach/nearest.ts'
import { oilTakes } from './reach/oil-takes.ts'
import { pastLimits, standing } from './reach/past-limits.ts'
import { placesFor } from './reach/places.ts'
import { stopsOf } from './reach/stops.ts'
import { listTakes, wouldTakeOf } from './reach/would-take.ts'
import type { FoundBySearch, FoundWay, Search, ToldWay } from './search.ts'
import { type Begun, begin } from './start.ts'
import { kwFromWatts, mmFromMetres } from './units/shop-units.ts'

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
  /** The cheapest of the other ways that were evaluated in full, have a price and meet the goal, with other parts. */
  readonly next: Assessed | null
  /** Of several wishes: what costs less, and which of them it misses. */
  readonly cheaper: Cheaper | null
}

/** It leaves out something that the other chooses: not merely the same with more. */
const isOther = (one: Assessed, than: Assessed): boolean =>
  than.candidate.some((option, i) => option !== KEEP && one.candidate[i] !== option)

/** Everything of it has a price. */
const hasPrice = ({ way }: Assessed): boolean => way.option.cost.unpriced.length === 0

interface Near {
  readonly nearest: Assessed
  readonly shown: Best
  readonly isExact: boolean
}

/** The nearest to a goal that nothing meets, and the curve up to it. */
const nearestFor = (question: Question, today: Assessed, budget: number | null, known: Map<string, Assessed>): Near => {
  const keep = (one: Assessed) => known.set(one.candidate.join(), one)
  const aims: readonly Aim[] =
    restOf(question.goal, question.measure) === null ? ['nearest'] : ['nearest that meets the rest', 'nearest']
  let [nearest, isExact]: [Assessed | null, boolean] = [null, true]
  for (const aim of aims) {
    if (nearest !== null) break
    const further = new Best(question, null, aim)
    isExact = searchNearest(question, further, known) && isExact
    nearest = further.nearest
  }
  const found = nearest ?? today
  const shown = new Best(question, budget, 'curve', found.score)
  for (const one of known.values()) shown.offer(one)
  if (found.score > today.score) isExact = search(question, shown, keep, known).isExact && isExact
  return { nearest: found, shown, isExact }
}

/** What would have to be true for a way of the list to reach the goal, or for any to. */
const takesOf = (question: Question, past: Assessed | null, isExact: boolean): readonly string[] => {
  const { start, loaded, wants, measure } = question
  const { site } = loaded.scenario
  const plain = [...attachmentTakes(start.before.machine, wants), ...oilTakes(site, wants)]
  if (past === null) return plain.length > 0 || !isExact ? plain : [listTakes[measure]]
  const { swivel } = past.outcome.prepared.resolve().machine.travel
  const bore = swivel?.bore ?? null
  const { deratedPowerKw } = start.before.more
  const plateOver = deratedPowerKw > 0 ? kwFromWatts(start.before.machine.engine.netPower) / deratedPowerKw : 1
  return [
    ...plain,
    ...wouldTakeOf(standing(past), { swivelBoreMm: bore === null ? null : mmFromMetres(bore), plateOver }),
  ]
}

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
  const { cheapest } = best
  const forTheGoal = known.size
  const near = cheapest === null ? nearestFor(question, today, budget, known) : null
  const nearest = near?.nearest ?? null
  const all = [...known.values()]
  const byHand = loaded.scenario.options
    .filter(({ reach }) => reach === null)
    .map((option) => ({ option, one: assessPatch(question, [], option.changes, option.name) }))
  const stops = cheapest === null ? stopsOf([...all, ...byHand.map(({ one }) => one)], nearest) : []
  const past = cheapest === null ? pastLimits(question, known) : null
  const answer = cheapest ?? nearest
  /** Of which the curve is, and what the budget pays for. */
  const shown = near?.shown ?? best
  const unpriced = best.cheaperUnpriced
  const next = all
    .filter((one) => one.way.meets && hasPrice(one) && cheapest !== null && isOther(one, cheapest))
    .toSorted(cheaper)[0]
  return {
    cheapest,
    nearest,
    next: next ?? null,
    cheaper: cheapest === null ? null : cheaperThan(question, cheapest, all),
    search: {
      format: 1,
      goal: question.goal,
      measure: question.measure,
      reachedToday: today.way.reached,
      today: today.way.gives,
      disagreements: begun.calibration.disagreements,
      faults: begun.calibration.faults.map(({ text }) => text),
      cheapest: cheapest?.way ?? null,
      cheapestInStock: best.inStock?.way ?? null,
      cheapestUnpriced: unpriced?.way ?? null,
      withinBudget: budget === null ? null : { budget, way: (shown.inBudget ?? today).way },
      curve: curveOf(today, shown),
      nearest: nearest?.way ?? null,
      nearestIsExact: near?.isExact ?? true,
      stops,
      pastLimits: past?.way ?? null,
      wouldTake: cheapest === null ? takesOf(question, past, forGoal.isExact) : [],
      moves: answer === null ? [] : movesOf(question, begun, answer),
      counts: { combinations: combinations(question.places), ...forGoal.counts },
      evaluatedBesides: known.size - forTheGoal,
      isExact: forGoal.isExact,
      byHand: byHand.map(({ option, one: { way } }) => ({
        name: option.name,
        cost: way.option.cost,
        reached: way.reached,
        gives: way.gives,
        reaches: way.reaches,
        meets: way.meets,
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
export const toldOf = ({ option, reached, gives, reaches, meets }: FoundWay): ToldWay => ({
  reached,
  gives,
  reaches,
  meets,
  price: option.cost.likely,
  changes: option.changes,
})

/**
 * Searches for the changes of such an option: the cheapest way, else the nearest, else none.
 * @param request with `reach` set
 */
export const resolveReach = (loaded: Loaded, begun: Begun, request: OptionRequest, wants: Wants): Resolved => {
  const { search: result, cheapest, nearest, next, cheaper: less } = reachFor(loaded, begun, wants, { budget: null })
  const way = (cheapest ?? nearest)?.way ?? null
  const { cheapestUnpriced: unpriced } = result
  return {
    request: { ...request, changes: way?.changes ?? {} },
    found: {
      goal: result.goal,
      measure: result.measure,
      reachedToday: result.reachedToday,
      reached: way?.reached ?? result.reachedToday,
      gives: way?.gives ?? result.today,
      meets: cheapest !== null,
      counts: result.counts,
      isExact: result.isExact,
      price: way?.option.cost.likely ?? null,
      unpriced: unpriced === null ? null : { ...toldOf(unpriced), items: unpriced.option.cost.unpriced },
      next: next === null ? null : toldOf(next.way),
      cheaper: less === null ? null : { ...toldOf(less.way.way), misses: less.misses },
      nearestIsExact: result.nearestIsExact,
      pastLimits: result.pastLimits === null ? null : toldOf(result.pastLimits),
      wouldTake: result.wouldTake,
      moves: result.moves,
      curve: result.curve.map(toldOf),
    },
  }
}
