/** How a search came to its way: every step of the curve, and how many ways were tried. */
import type { ResultDocument } from '../../evaluation.ts'
import type { Units } from '../format.ts'
import { roundMoney } from '../prices.ts'
import { changeTexts, countTexts, givesText, goalText, priceText, verdictText } from '../search-texts.ts'
import { type Placed, placedSteps, searchedIn } from '../view-model/found.ts'
import type { Searched } from '../view-model/found-sentences.ts'
import { reach } from '../wording-reach.ts'

const words = reach.shop

export interface SearchRow {
  readonly price: string
  readonly reaches: string
  readonly verdict: string
  readonly changes: readonly string[]
}

export interface SearchTable {
  readonly intro: string
  readonly rows: readonly SearchRow[]
  readonly counts: readonly string[]
}

export interface SearchView {
  readonly words: typeof words
  readonly tables: readonly SearchTable[]
  readonly hasTables: boolean
}

const rowOf = ({ step, chosen }: Placed, searched: Searched, units: Units): SearchRow => {
  const { option, found } = searched
  const { gives, changes, price } = step
  return {
    price:
      changes.length === 0
        ? reach.nothing
        : chosen
          ? priceText(option.cost)
          : reach.about(roundMoney(price, option.cost.currency)),
    reaches: givesText(gives, found.goal, units),
    verdict: chosen ? words.offered : verdictText(step),
    changes: changeTexts({ changes }),
  }
}

const tableOf = (searched: Searched, units: Units): SearchTable => ({
  intro: words.intro(searched.option.name, goalText(searched.found.goal, units)),
  rows: placedSteps(searched)
    .toSorted((a, b) => a.step.price - b.step.price)
    .map((placed) => rowOf(placed, searched, units)),
  counts: countTexts(searched.found.counts),
})

/** One table for each option that was searched for. */
export const searchView = (result: ResultDocument, units: Units): SearchView => {
  const tables = searchedIn(result).map((searched) => tableOf(searched, units))
  return { words, tables, hasTables: tables.length > 0 }
}
