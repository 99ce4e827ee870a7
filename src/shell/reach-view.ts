/** What a search found, as the terminal shows it. Renders the search; works nothing out. */
import type { Consequence, Cost } from '../evaluation.ts'
import { count, retold, typeset, type Units } from '../report/format.ts'
import { componentName } from '../report/names.ts'
import { roundMoney } from '../report/prices.ts'
import {
  briefChanges,
  changeTexts,
  countTexts,
  givesText,
  goalText,
  moveText,
  priceText,
  spanText,
  verdictText,
  wayPrice,
} from '../report/search-texts.ts'
import { en } from '../report/wording.ts'
import { reach } from '../report/wording-reach.ts'
import type { FoundWay, Moves, Search } from '../search.ts'
import { findingLine } from './check-findings.ts'
import { type Line, table, terminalText } from './terminal-text.ts'
import type { World } from './world.ts'

const words = reach.terminal

/** A label once, then its lines one below the other. */
const labelled = (label: string, texts: readonly string[]): readonly string[] =>
  texts.map((text, i) => `  ${(i === 0 ? label : '').padEnd(9)}${text}`)

const consequenceText = ({ action, component, part, specialOrder, quantity }: Consequence): string =>
  words.part(
    words.action[action],
    componentName(component),
    words.times(part ?? (specialOrder ? words.toOrder : words.notToBeHad), count(quantity)),
  )

const wayLines = (way: FoundWay, search: Search, units: Units): readonly string[] => {
  const { option } = way
  const { answer, reasons, conditions } = option.answer
  const { unpriced } = option.cost
  const why = [...new Set([...reasons.map(({ text }) => text), ...conditions])].map((text) =>
    en.sentence(retold(text, units)),
  )
  const brings = option.consequences.map(consequenceText)
  return [
    ...labelled(words.price, [wayPrice(way), ...(unpriced.length === 0 ? [] : [words.unpriced(unpriced)])]),
    ...labelled(words.reaches, [givesText(way.gives, search.goal, units)]),
    ...labelled(words.changes, changeTexts(option)),
    ...labelled(words.brings, brings.length === 0 ? [words.noBrings] : brings),
    ...labelled(words.answer, [en.ways.verdict[answer], ...why]),
  ]
}

const heading = (text: string): Line => ({ heading: text })

const foundLines = (search: Search, cheapest: FoundWay, units: Units): readonly Line[] => {
  const { cheapestInStock } = search
  if (cheapest.option.changes.length === 0) return [words.already, '']
  const stock: readonly Line[] = !cheapest.specialOrder
    ? [words.sameInStock, '']
    : cheapestInStock === null
      ? [search.isExact ? words.noneInStock : words.noneInStockFound, '']
      : ['', heading(words.cheapestInStock), ...wayLines(cheapestInStock, search, units), '']
  const { cheapestUnpriced } = search
  const unpriced: readonly Line[] =
    cheapestUnpriced === null ? [] : [heading(words.cheapestUnpriced), ...wayLines(cheapestUnpriced, search, units), '']
  return [
    heading(search.isExact ? words.cheapest : words.cheapestSoFar),
    ...wayLines(cheapest, search, units),
    ...stock,
    ...unpriced,
  ]
}

const notFoundLines = (search: Search, units: Units): readonly Line[] => {
  const { nearest, nearestIsExact, stops, pastLimits, wouldTake, goal } = search
  const isOf =
    pastLimits === null
      ? []
      : [
          words.pastLimits(
            briefChanges(pastLimits.option),
            givesText(pastLimits.gives, goal, units),
            wayPrice(pastLimits),
          ),
        ]
  return [
    heading(search.isExact ? words.nothingReaches : words.nothingFound),
    '',
    ...(nearest === null || nearest.option.changes.length === 0
      ? [words.noNearest, '']
      : [heading(nearestIsExact ? words.nearest : words.nearestSoFar), ...wayLines(nearest, search, units), '']),
    ...(stops.length === 0 ? [] : [heading(words.stops), ...stops.map(findingLine(units)), '']),
    ...(wouldTake.length === 0
      ? []
      : [heading(words.wouldTake), ...[...isOf, ...wouldTake].map((text) => `  ${retold(text, units)}`), '']),
  ]
}

const same = (one: FoundWay, other: FoundWay | null): boolean =>
  other !== null && JSON.stringify(one.changes) === JSON.stringify(other.changes)

const budgetLines = (search: Search, currency: string, units: Units): readonly Line[] => {
  if (search.withinBudget === null) return []
  const budget = roundMoney(search.withinBudget.budget, currency)
  const { way } = search.withinBudget
  if (way === null || way.option.changes.length === 0) return [words.budgetNothing(budget), '']
  if (same(way, search.cheapest)) return [words.budgetCheapest(budget), '']
  if (same(way, search.cheapestInStock)) return [words.budgetInStock(budget), '']
  if (same(way, search.nearest)) return [words.budgetNearest(budget), '']
  return [heading(words.withinBudget(budget)), ...wayLines(way, search, units), '']
}

const curveLines = (search: Search, units: Units): readonly Line[] => {
  const { curve, measure } = search
  if (curve.length < 2) return []
  const rows = curve.map((way) => [
    wayPrice(way),
    givesText(way.gives, search.goal, units),
    verdictText(way),
    briefChanges(way.option),
  ])
  return [heading(words.curve(reach.measure[measure])), ...table(rows), '']
}

const movesLines = (search: Search, units: Units): readonly Line[] => {
  const { moves, cheapest } = search
  if (moves.length === 0) return []
  // What does not do it to begin with cannot cease to.
  const holds = (one: Moves) => (cheapest === null ? '' : one.holds ? words.holds : words.breaks)
  const rows = moves.map((one) => [moveText(one), spanText(one, search, units), holds(one)])
  return [heading(words.moves), ...table(rows), '']
}

/** What a hand-made way is held against: a sum with a hole in it says nothing, where there is one without. */
const comparable = ({ cheapest, cheapestInStock }: Search, byHand: Cost): FoundWay | null =>
  cheapest !== null && cheapest.option.cost.unpriced.length > byHand.unpriced.length
    ? (cheapestInStock ?? cheapest)
    : cheapest

/** How the hand-made ways that do it compare with what was found. */
const comparison = (search: Search): readonly string[] => {
  if (search.cheapest?.option.changes.length === 0) return []
  const [best] = search.byHand.filter(({ meets }) => meets).toSorted((a, b) => a.cost.likely - b.cost.likely)
  if (best === undefined) return [words.byHandNone]
  const found = comparable(search, best.cost)
  if (found === null) return [search.isExact ? words.byHandOnly(best.name) : words.byHandMissed(best.name)]
  const { likely, currency } = found.option.cost
  const less = best.cost.likely - likely
  // Half a unit of money is the rounding of what is printed.
  if (Math.abs(less) < 0.5) return [words.byHandSame(best.name)]
  const amount = roundMoney(Math.abs(less), currency)
  if (less > 0) return [words.byHandLess(best.name, amount)]
  if (best.cost.unpriced.length > found.option.cost.unpriced.length) return [words.byHandOpen(best.name)]
  return [search.isExact ? words.byHandMore(best.name, amount) : words.byHandMissedMore(best.name, amount)]
}

const byHandLines = (search: Search, units: Units): readonly Line[] => {
  const { byHand } = search
  if (byHand.length === 0) return []
  const rows = byHand.map((one) => [
    priceText(one.cost),
    givesText(one.gives, search.goal, units),
    verdictText(one),
    one.name,
  ])
  return [heading(words.byHand), ...table(rows), ...comparison(search).map((text) => `  ${text}`), '']
}

/**
 * Whole view of one search.
 * @param head what stands before it: the scenario's title and customer
 * @param currency of the shop
 */
export const reachView = (search: Search, head: string, currency: string, units: Units, world: World): string => {
  const { cheapest, goal, today, counts, evaluatedBesides } = search
  const lines: readonly Line[] = [
    heading(head),
    words.wanted(goalText(goal, units)),
    words.today(givesText(today, goal, units)),
    ...search.disagreements.map((text) => words.disagree(retold(text, units))),
    ...search.faults.map((text) => words.fault(retold(text, units))),
    '',
    ...(cheapest === null ? notFoundLines(search, units) : foundLines(search, cheapest, units)),
    ...budgetLines(search, currency, units),
    ...curveLines(search, units),
    ...movesLines(search, units),
    ...byHandLines(search, units),
    heading(words.counts),
    ...countTexts(counts, evaluatedBesides).map((text) => `  ${text}`),
  ]
  return terminalText(
    lines.map((line) => (typeof line === 'string' ? typeset(line) : line)),
    world,
  )
}
