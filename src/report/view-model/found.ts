/** A way that was searched for: what was found, why it is the cheapest, and what more money would buy, drawn. */
import type { OptionResult, ResultDocument } from '../../evaluation.ts'
import type { FoundWay, Search } from '../../search.ts'
import { priceAndSpeedChart, type Step } from '../charts/price-and-speed.ts'
import { count, drawn, retold, typeset, type Units, unitName } from '../format.ts'
import {
  briefChanges,
  goalText,
  largeCount,
  priceText,
  reachedText,
  unitOf,
  wantedOf,
  wayPrice,
} from '../search-texts.ts'
import { reach as words } from '../wording-reach.ts'

export interface FoundView {
  readonly heading: string
  readonly sentences: readonly string[]
  readonly chartHeading: string
  readonly chartSvg: string
  readonly note: string
  /** Nothing is drawn of a single step. */
  readonly hasChart: boolean
}

/** Options whose changes were searched for, with the search. */
export const searchesOf = ({
  options,
}: ResultDocument): readonly { readonly name: string; readonly search: Search }[] =>
  options.flatMap((option: OptionResult & { readonly found?: Search | null }) =>
    option.found == null ? [] : [{ name: option.name, search: option.found }],
  )

/** More names than this beside one chart are not read. */
const MOST_NAMED = 8

const worth = (search: Search) => search.curve.filter(({ reached }) => reached !== null)

/** Ways that are named: the ends, the one that is offered and its neighbours, then those that bring the most. */
const namedOf = (levels: readonly number[], chosen: number): ReadonlySet<number> => {
  if (levels.length <= MOST_NAMED) return new Set(levels.keys())
  const first = [0, levels.length - 1, chosen, chosen - 1, chosen + 1].filter((i) => i >= 0 && i < levels.length)
  const gained = (i: number) => Math.abs((levels[i] ?? 0) - (levels[i - 1] ?? 0))
  const others = [...levels.keys()].toSorted((a, b) => gained(b) - gained(a) || a - b)
  return new Set([...new Set([...first, ...others])].slice(0, MOST_NAMED))
}

const sameWay = (one: object, other: object) => JSON.stringify(one) === JSON.stringify(other)

/** The steps of the curve; a cheapest way on special order stands beside them. */
const stepsOf = (search: Search, units: Units): readonly Step[] => {
  const { cheapest, measure } = search
  const ways = worth(search)
  const chosen = cheapest === null ? -1 : ways.findIndex(({ changes }) => sameWay(changes, cheapest.changes))
  const apart = cheapest !== null && cheapest.reached !== null && chosen < 0 ? [cheapest] : []
  const named = namedOf(
    ways.map(({ reached }) => reached ?? 0),
    chosen,
  )
  const all = [
    ...ways.map((way, i) => ({ way, isNamed: named.has(i), isApart: false })),
    ...apart.map((way) => ({ way, isNamed: true, isApart: true })),
  ]
  return all.map(({ way, isNamed, isApart }) => ({
    price: way.option.cost.likely,
    reached: drawn(way.reached ?? 0, unitOf(measure), units),
    text: words.chart.value(priceText(way.option.cost), reachedText(way.reached, search, units)),
    what: way.specialOrder ? words.specialOrder(briefChanges(way.option)) : briefChanges(way.option),
    look:
      isApart || sameWay(way.changes, cheapest?.changes ?? {})
        ? 'best'
        : way.option.changes.length === 0
          ? 'now'
          : 'way',
    named: isNamed,
    apart: isApart,
  }))
}

/** The chart of price against what it gives, in the first of the customer's units. */
export const stepsChart = (search: Search, id: string, given: Units): string => {
  const units: Units = given === 'us' ? 'us' : 'metric'
  const { goal, measure, curve } = search
  const steps = stepsOf(search, units)
  const wanted = wantedOf(goal, measure)
  const wantedText = words.chart.wanted(reachedText(wanted, search, units))
  const currency = curve[0]?.option.cost.currency ?? ''
  const left = steps.filter(({ named }) => !named).length
  const axis = words.chart.axis(currency)
  return priceAndSpeedChart({
    id,
    title: words.chart.title(words.measure[measure]),
    description: words.chart.describe(
      steps.map(({ text, what }) => words.chart.step(text, what)),
      wanted === null ? '' : wantedText,
    ),
    axis: left === 0 ? axis : `${axis}; ${words.chart.more(count(left))}`,
    unit: unitName(unitOf(measure), units),
    steps,
    wanted: wanted === null ? null : { reached: drawn(wanted, unitOf(measure), units), text: wantedText },
  })
}

/** Why it is the cheapest: what costs less falls short; what it costs from the shelf; what the next step up would be. */
const reasons = (search: Search, cheapest: FoundWay, units: Units): readonly string[] => {
  const { cheapestInStock, measure } = search
  const reached = (way: FoundWay) => reachedText(way.reached, search, units)
  const price = cheapest.option.cost.likely
  const cheaper = worth(search).filter(({ option }) => option.cost.likely < price)
  const best = cheaper.filter(({ meets, option }) => !meets && option.changes.length > 0).at(-1)
  const next = worth(search).find(
    (way) => way.meets && way.option.cost.likely > price && reached(way) !== reached(cheapest),
  )
  const stocked = cheapest.specialOrder ? cheapestInStock : null
  return [
    best === undefined
      ? words.customer.belowNothing
      : words.customer.below(words.best[measure], reached(best), wayPrice(best), briefChanges(best.option)),
    ...(stocked === null
      ? []
      : [words.customer.inStock(wayPrice(stocked), reached(stocked), briefChanges(stocked.option))]),
    ...(next === undefined || (stocked !== null && sameWay(next.changes, stocked.changes))
      ? []
      : [words.customer.above(wayPrice(next), reached(next), briefChanges(next.option))]),
  ]
}

const sentences = (search: Search, units: Units): readonly string[] => {
  const { cheapest, nearest, goal, counts, isExact, stops, wouldTake } = search
  const wanted = goalText(goal, units)
  const tried = largeCount(counts.combinations)
  if (cheapest !== null && cheapest.option.changes.length === 0) return [words.customer.already(wanted)]
  if (cheapest !== null)
    return [
      counts.combinations === 1
        ? words.customer.only(wanted)
        : words.customer[isExact ? 'found' : 'foundSoFar'](tried, wanted),
      words.customer.isFound(
        briefChanges(cheapest.option),
        wayPrice(cheapest),
        reachedText(cheapest.reached, search, units),
      ),
      ...reasons(search, cheapest, units),
    ]
  return [
    words.customer[isExact ? 'none' : 'noneSoFar'](tried, wanted),
    ...(nearest === null
      ? []
      : [
          words.customer.nearest(
            reachedText(nearest.reached, search, units),
            wayPrice(nearest),
            briefChanges(nearest.option),
          ),
        ]),
    ...(stops.length === 0 ? [] : [words.customer.stops([...new Set(stops.map(({ heading }) => heading))])]),
    ...(wouldTake.length === 0 ? [] : [words.customer.wouldTake(wouldTake.map((text) => retold(text, units)))]),
  ]
}

/**
 * What the customer's copy says of one way that was searched for.
 * @param name of the option
 * @param id before every id of its chart
 */
export const foundView = (name: string, search: Search, id: string, units: Units): FoundView => ({
  heading: words.customer.heading(name),
  sentences: sentences(search, units).map(typeset),
  chartHeading: words.chart.heading(words.measure[search.measure]),
  chartSvg: worth(search).length < 2 ? '' : stepsChart(search, id, units),
  note: words.customer.chartNote,
  hasChart: worth(search).length > 1,
})

/** One for each option that was searched for. */
export const foundViews = (result: ResultDocument, units: Units): readonly FoundView[] =>
  searchesOf(result).map(({ name, search }, index) => foundView(name, search, `found-${index}`, units))
