/** How a search came to its way: every step of the curve, and how many ways were tried. */
import type { ResultDocument } from '../../evaluation.ts'
import { roundMoney, type Units } from '../format.ts'
import { changeTexts, countTexts, goalText, priceText, reachedText, verdictText, wantedOf } from '../search-texts.ts'
import { type Placed, placedSteps, type Searched, searchedIn } from '../view-model/found.ts'
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

/** The curve says what a step reaches; whether it is enough is seen against what is wanted. */
const reaches = (reached: number | null, { found }: Searched): boolean => {
  const wanted = wantedOf(found.goal, found.measure)
  if (reached === null || wanted === null) return false
  return found.measure === 'oil-temperature' ? reached <= wanted : reached >= wanted
}

const rowOf = ({ step, chosen }: Placed, searched: Searched, units: Units): SearchRow => {
  const { option, found } = searched
  const { reached, changes, price } = step
  return {
    price:
      changes.length === 0
        ? reach.nothing
        : chosen
          ? priceText(option.cost)
          : reach.about(roundMoney(price, option.cost.currency)),
    reaches: reachedText(reached, found, units),
    verdict: chosen ? words.offered : verdictText({ reached, meets: reaches(reached, searched) }, found),
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
