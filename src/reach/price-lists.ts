/** Prices and least costs that follow from the question alone: several searches of it work on one (tree.ts). */
import type { Ground } from './drive.ts'
import { type OilCost, oilCosts } from './drive-costs.ts'
import { type Bounder, bounderOf, circulationOf } from './line-bounds.ts'
import { carryingPlaces, type Place } from './places.ts'
import { type Mode, type Prices, pricesOf, type Sum } from './sums.ts'

export type ByMode<T> = { readonly [mode in Mode]: T }

export interface PriceLists {
  readonly prices: ByMode<Prices>
  readonly bounders: ByMode<readonly Bounder[]>
  /** Of what carries the flow and has no choice: too small for what flows, it has to be ordered, or there is no way. */
  readonly fixed: ByMode<readonly Bounder[]>
  readonly oils: ByMode<readonly OilCost[]>
  /** Of hoses made for the ports that will be there (joined-lines.ts). */
  readonly hoses: ByMode<Map<string, Sum>>
  readonly pumps: Map<string, Sum>
  readonly joints: Map<string, ReadonlyMap<string, Sum>>
}

/** @param drivingPlaces places that decide how far a way reaches come first; this many */
export const priceListsOf = (ground: Ground, drivingPlaces: number): PriceLists => {
  const { question } = ground
  const byMode = <T>(of: (mode: Mode) => T): ByMode<T> => ({
    any: of('any'),
    priced: of('priced'),
    'in stock': of('in stock'),
    imagined: of('imagined'),
  })
  const prices = byMode((mode) => pricesOf(question.loaded.shop, mode))
  const circulation = circulationOf(question)
  const boundersOf = (places: readonly Place[]) =>
    byMode((mode) => places.map((place) => bounderOf(question, place, prices[mode], circulation)))
  return {
    prices,
    bounders: boundersOf(question.places.slice(drivingPlaces)),
    fixed: boundersOf(carryingPlaces(question.start.before.machine, question.loaded.shop, question.places)),
    oils: byMode((mode) => oilCosts(ground, prices[mode])),
    hoses: byMode(() => new Map()),
    pumps: new Map(),
    joints: new Map(),
  }
}
