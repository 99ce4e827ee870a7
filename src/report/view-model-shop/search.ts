/** How a search came to its way: every step of the curve, how many ways were tried, and what moves it most. */
import type { ResultDocument } from '../../evaluation.ts'
import type { FoundWay, Search } from '../../search.ts'
import type { Units } from '../format.ts'
import { componentName } from '../names.ts'
import {
  changeTexts,
  countTexts,
  goalText,
  moveText,
  reachedText,
  spanText,
  verdictText,
  wayPrice,
} from '../search-texts.ts'
import { searchesOf } from '../view-model/found.ts'
import { en } from '../wording.ts'
import { reach } from '../wording-reach.ts'

const words = reach.shop

export interface SearchRow {
  readonly price: string
  readonly reaches: string
  readonly verdict: string
  readonly changes: readonly string[]
  readonly follows: string
  readonly answer: string
}

export interface SearchTable {
  readonly intro: string
  readonly rows: readonly SearchRow[]
  readonly counts: readonly string[]
  readonly moves: readonly { readonly what: string; readonly span: string; readonly holds: string }[]
  readonly hasMoves: boolean
}

export interface SearchView {
  readonly words: typeof words
  readonly tables: readonly SearchTable[]
  readonly hasTables: boolean
}

const same = (one: FoundWay, other: FoundWay | null): boolean =>
  other !== null && JSON.stringify(one.changes) === JSON.stringify(other.changes)

const rowOf = (way: FoundWay, search: Search, units: Units): SearchRow => {
  const { option } = way
  const offered = same(way, search.cheapest ?? search.nearest)
  const names = [...new Set(option.consequences.map(({ component }) => componentName(component)))]
  return {
    price: wayPrice(way),
    reaches: reachedText(way.reached, search, units),
    verdict: offered ? words.offered : verdictText(way, search),
    changes: changeTexts(option),
    follows: names.length === 0 ? en.dash : en.capital(en.list(names)),
    answer: option.changes.length === 0 ? en.dash : en.ways.verdict[option.answer.answer],
  }
}

/** The curve has no special orders; what is offered on one stands at its price all the same. */
const rowsOf = (search: Search): readonly FoundWay[] => {
  const { curve, cheapest } = search
  if (cheapest === null || curve.some((way) => same(way, cheapest))) return curve
  const dearer = curve.findIndex(({ option }) => option.cost.likely > cheapest.option.cost.likely)
  return dearer < 0 ? [...curve, cheapest] : curve.toSpliced(dearer, 0, cheapest)
}

const tableOf = (name: string, search: Search, units: Units): SearchTable => ({
  intro: words.intro(name, goalText(search.goal, units)),
  rows: rowsOf(search).map((way) => rowOf(way, search, units)),
  counts: countTexts(search.counts),
  moves: search.moves.map((one) => ({
    what: moveText(one),
    span: spanText(one, search, units),
    holds: search.cheapest === null ? en.dash : one.holds ? words.yes : words.no,
  })),
  hasMoves: search.moves.length > 0,
})

/** One table for each option that was searched for. */
export const searchView = (result: ResultDocument, units: Units): SearchView => {
  const tables = searchesOf(result).map(({ name, search }) => tableOf(name, search, units))
  return { words, tables, hasTables: tables.length > 0 }
}
