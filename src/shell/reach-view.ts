/** What a search found, as the terminal shows it. Renders the search; works nothing out. */
import type { Consequence } from '../evaluation.ts'
import { count, retold, roundMoney, typeset, type Units } from '../report/format.ts'
import { componentName } from '../report/names.ts'
import {
  briefChanges,
  changeTexts,
  countTexts,
  goalText,
  leftOpen,
  priceText,
  reachedText,
  wayPrice,
} from '../report/search-texts.ts'
import { en } from '../report/wording.ts'
import { reach } from '../report/wording-reach.ts'
import type { FoundWay, Search } from '../search.ts'
import { findingLine } from './check-view.ts'
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
  const why = [...new Set([...reasons.map(({ text }) => text), ...conditions])].map((text) =>
    en.sentence(retold(text, units)),
  )
  const brings = option.consequences.map(consequenceText)
  return [
    ...labelled(words.price, [wayPrice(way)]),
    ...labelled(words.reaches, [reachedText(way.reached, search, units)]),
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
      ? [words.noneInStock, '']
      : ['', heading(words.cheapestInStock), ...wayLines(cheapestInStock, search, units), '']
  return [
    heading(leftOpen(search.counts) === 0 ? words.cheapest : words.cheapestSoFar),
    ...wayLines(cheapest, search, units),
    ...stock,
  ]
}

const notFoundLines = (search: Search, units: Units): readonly Line[] => {
  const { nearest, stops, wouldTake } = search
  return [
    heading(leftOpen(search.counts) === 0 ? words.nothingReaches : words.nothingFound),
    '',
    ...(nearest === null ? [words.noNearest, ''] : [heading(words.nearest), ...wayLines(nearest, search, units), '']),
    ...(stops.length === 0 ? [] : [heading(words.stops), ...stops.map(findingLine(units)), '']),
    ...(wouldTake.length === 0
      ? []
      : [heading(words.wouldTake), ...wouldTake.map((text) => `  ${retold(text, units)}`), '']),
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
    reachedText(way.reached, search, units),
    way.meets ? words.does : words.short,
    briefChanges(way.option),
  ])
  return [heading(words.curve(reach.measure[measure])), ...table(rows), '']
}

const movesLines = (search: Search, units: Units): readonly Line[] => {
  const { moves } = search
  if (moves.length === 0) return []
  const rows = moves.map(({ label, tolerance, reachedLow, reachedHigh, holds }) => [
    tolerance === null ? label : words.tolerance(label, tolerance),
    words.between(reachedText(reachedLow, search, units), reachedText(reachedHigh, search, units)),
    holds ? words.holds : words.breaks,
  ])
  return [heading(words.moves), ...table(rows), '']
}

/** How the hand-made ways that do it compare with what was found. */
const comparison = ({ byHand, cheapest }: Search): string => {
  const [best] = byHand.filter(({ meets }) => meets).toSorted((a, b) => a.cost.likely - b.cost.likely)
  if (best === undefined) return words.byHandNone
  if (cheapest === null) return words.byHandOnly(best.name)
  const { likely, currency } = cheapest.option.cost
  const less = best.cost.likely - likely
  // Half a unit of money is the rounding of what is printed.
  if (Math.abs(less) < 0.5) return words.byHandSame(best.name)
  const amount = roundMoney(Math.abs(less), currency)
  return less > 0 ? words.byHandLess(best.name, amount) : words.byHandMore(best.name, amount)
}

const byHandLines = (search: Search, units: Units): readonly Line[] => {
  const { byHand } = search
  if (byHand.length === 0) return []
  const rows = byHand.map(({ name, cost, reached, meets }) => [
    priceText(cost),
    reachedText(reached, search, units),
    meets ? words.does : words.short,
    name,
  ])
  return [heading(words.byHand), ...table(rows), `  ${comparison(search)}`, '']
}

/**
 * Whole view of one search.
 * @param head what stands before it: the scenario's title and customer
 * @param currency of the shop
 */
export const reachView = (search: Search, head: string, currency: string, units: Units, world: World): string => {
  const { cheapest, goal, reachedToday, counts } = search
  const lines: readonly Line[] = [
    heading(head),
    words.wanted(goalText(goal, units)),
    words.today(reachedText(reachedToday, search, units)),
    '',
    ...(cheapest === null ? notFoundLines(search, units) : foundLines(search, cheapest, units)),
    ...budgetLines(search, currency, units),
    ...curveLines(search, units),
    ...movesLines(search, units),
    ...byHandLines(search, units),
    heading(words.counts),
    ...countTexts(counts).map((text) => `  ${text}`),
  ]
  return terminalText(
    lines.map((line) => (typeof line === 'string' ? typeset(line) : line)),
    world,
  )
}
