/** A way that was searched for: what was found, why it is the cheapest, and what more money would buy, drawn. */
import type { OptionResult, ResultDocument } from '../../evaluation.ts'
import type { FoundBySearch } from '../../search.ts'
import { priceAndSpeedChart, type Step } from '../charts/price-and-speed.ts'
import { count, drawn, type Units, unitName } from '../format.ts'
import { roundMoney } from '../prices.ts'
import {
  briefChanges,
  givesShortly,
  otherWishes,
  priceText,
  reachedText,
  unitOf,
  wantedOf,
  wantsSeveral,
} from '../search-texts.ts'
import { reach as words } from '../wording-reach.ts'
import { foundSentences, type Searched } from './found-sentences.ts'

export interface FoundView {
  readonly heading: string
  readonly sentences: readonly string[]
  readonly chartHeading: string
  readonly chartSvg: string
  readonly note: string
  /** Nothing is drawn of a single step. */
  readonly hasChart: boolean
}

export const searchedIn = ({ options }: ResultDocument): readonly Searched[] =>
  options.flatMap((option) => (option.found === null ? [] : [{ option, found: option.found }]))

type CurveStep = FoundBySearch['curve'][number]

/** One step, and where it stands. */
export interface Placed {
  readonly step: CurveStep
  /** It is the way that is offered. */
  readonly chosen: boolean
  /** The curve has no special orders and knows one wish: what is offered on one, or for several, or as the nearest, stands beside it. */
  readonly apart: boolean
}

/** Every step of the curve, and what is offered where it is none of them. */
export const placedSteps = ({ option, found }: Searched): readonly Placed[] => {
  const { curve, price, reached, gives, meets } = found
  const sameAsOption = ({ changes }: CurveStep) => JSON.stringify(changes) === JSON.stringify(option.changes)
  const steps = curve.map((step) => ({ step, chosen: sameAsOption(step), apart: false }))
  return option.changes.length === 0 || price === null || steps.some(({ chosen }) => chosen)
    ? steps
    : [
        ...steps,
        {
          step: { price, reached, gives, reaches: meets, meets, changes: option.changes },
          chosen: true,
          apart: true,
        },
      ]
}

const drawnSteps = (searched: Searched): readonly Placed[] =>
  placedSteps(searched).filter(({ step }) => step.reached !== null)

/** More names than this beside one chart are not read. */
const MOST_NAMED = 8

/** Steps that are named: the ends, the one that is offered and its neighbours, then those that bring the most. */
const namedOf = (steps: readonly Placed[]): ReadonlySet<Placed> => {
  if (steps.length <= MOST_NAMED) return new Set(steps)
  const chosen = steps.findIndex((one) => one.chosen)
  const near = chosen < 0 ? [] : [chosen, chosen - 1, chosen + 1]
  const level = (i: number) => steps[i]?.step.reached ?? 0
  const gained = (i: number) => (i === 0 ? 0 : Math.abs(level(i) - level(i - 1)))
  const others = [...steps.keys()].toSorted((a, b) => gained(b) - gained(a) || a - b)
  const order = [...new Set([0, steps.length - 1, ...near, ...others])].slice(0, MOST_NAMED)
  return new Set(order.flatMap((i) => steps[i] ?? []))
}

/** What is offered has a range of price like everywhere else; the other steps have their likely price. */
const stepPrice = ({ step, chosen }: Placed, { option }: Searched): string =>
  chosen
    ? priceText(option.cost)
    : step.changes.length === 0
      ? words.nothing
      : words.about(roundMoney(step.price, option.cost.currency))

/** Something of it has to be ordered, or has no price yet. */
const isSpecial = ({ cost, consequences }: OptionResult): boolean =>
  cost.unpriced.length > 0 || consequences.some(({ specialOrder }) => specialOrder)

const stepsOf = (searched: Searched, units: Units): readonly Step[] => {
  const { found } = searched
  // One wish is named by the axis; of several each says what it is.
  const said = (step: CurveStep) =>
    wantsSeveral(found.goal) ? givesShortly(step.gives, found.goal, units) : reachedText(step.reached, found, units)
  const placed = drawnSteps(searched)
  const named = namedOf(placed)
  return placed.map((one) => ({
    price: one.step.price,
    reached: drawn(one.step.reached ?? 0, unitOf(found.measure), units),
    text: words.chart.value(stepPrice(one, searched), said(one.step)),
    what: one.apart && isSpecial(searched.option) ? words.specialOrder(briefChanges(one.step)) : briefChanges(one.step),
    look: one.chosen ? 'best' : one.step.changes.length === 0 ? 'now' : 'way',
    named: named.has(one),
    apart: one.apart,
  }))
}

/** The chart of price against what it gives, in the first of the customer's units. */
const stepsChart = (searched: Searched, id: string, given: Units): string => {
  const units: Units = given === 'us' ? 'us' : 'metric'
  const { goal, measure } = searched.found
  const steps = stepsOf(searched, units)
  const wanted = wantedOf(goal, measure)
  const wantedText = words.chart.wanted(reachedText(wanted, searched.found, units))
  const left = steps.filter(({ named }) => !named).length
  const axis = words.chart.axis(searched.option.cost.currency)
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

const noteOf = ({ found: { goal, measure } }: Searched, units: Units): string =>
  wantsSeveral(goal)
    ? words.customer.chartNoteSeveral(words.measure[measure], otherWishes(goal, measure, units))
    : words.customer.chartNote

/**
 * What the customer's copy says of one way that was searched for.
 * @param id before every id of its chart
 */
export const foundView = (searched: Searched, id: string, units: Units): FoundView => {
  const hasChart = drawnSteps(searched).length > 1
  return {
    heading: words.customer.heading(searched.option.name),
    sentences: foundSentences(searched, units),
    chartHeading: words.chart.heading(words.measure[searched.found.measure]),
    chartSvg: hasChart ? stepsChart(searched, id, units) : '',
    note: noteOf(searched, units),
    hasChart,
  }
}

/** One for each option that was searched for. */
export const foundViews = (result: ResultDocument, units: Units): readonly FoundView[] =>
  searchedIn(result).map((searched, index) => foundView(searched, `found-${index}`, units))
