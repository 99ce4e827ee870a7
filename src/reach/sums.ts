/**
 * Lower bounds of money. The price of an option grows with every part and every job it books:
 *
 *   total = (1 + tax) (parts + labour + supplies + freight + contingency), supplies = min(share of labour, cap)
 *
 * so a total over some of its parts and jobs never exceeds the total over all of them. Three things must be looked after:
 *
 * - a kit may cost less than what it holds: each part counts with the smallest share of its price that a kit leaves it,
 *   kit price / price of what the kit holds; the shares of a kit add up to no more than its price;
 * - a job may be contained in another (`contained-jobs.ts`): callers book of such a pair no more than the dearer needs;
 * - every line is rounded once, by half a cent at most: SLACK is more than all the lines of a quote can make together.
 *
 * A part without a price adds nothing; nor does a job without hours. Components of a sum are bounded one by one, so the
 * least of two sums is the least of each.
 */

import { priceOf } from '../consequences/part-price.ts'
import { perShop } from '../consequences/read-figures.ts'
import type { Job } from '../consequences/uses.ts'
import { LITRES_LOST } from '../costing/oil-lost.ts'
import type { Part, PartKind, Shop } from '../shop.ts'

/** In the shop's currency before tax, but for the oil. */
export interface Sum {
  /** Parts, labour and its contingency. */
  readonly money: number
  /** Of it labour, which supplies are a share of. */
  readonly labour: number
  /** Oil that the jobs let out [L]. */
  readonly litres: number
}

export const NOTHING: Sum = { money: 0, labour: 0, litres: 0 }
/** No way leads there. */
export const IMPOSSIBLE: Sum = { money: Number.POSITIVE_INFINITY, labour: 0, litres: 0 }

/** A hundred lines, half a cent each, and tax. */
const SLACK = 0.6

export const plus = (one: Sum, other: Sum): Sum => ({
  money: one.money + other.money,
  labour: one.labour + other.labour,
  litres: one.litres + other.litres,
})

export const times = (one: Sum, count: number): Sum => ({
  money: one.money * count,
  labour: one.labour * count,
  litres: one.litres * count,
})

export const addUp = (sums: readonly Sum[]): Sum => sums.reduce(plus, NOTHING)

/** The least of each component over those that are possible; IMPOSSIBLE where none is. */
export const leastOf = (sums: readonly Sum[]): Sum => {
  let [money, labour, litres] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const sum of sums) {
    if (sum.money === Number.POSITIVE_INFINITY) continue
    money = Math.min(money, sum.money)
    labour = Math.min(labour, sum.labour)
    litres = Math.min(litres, sum.litres)
  }
  return money === Number.POSITIVE_INFINITY ? IMPOSSIBLE : { money, labour, litres }
}

/** Two lower bounds of one and the same: the more of each component. */
export const most = (one: Sum, other: Sum): Sum => ({
  money: Math.max(one.money, other.money),
  labour: Math.max(one.labour, other.labour),
  litres: Math.max(one.litres, other.litres),
})

export const isPossible = ({ money }: Sum): boolean => money < Number.POSITIVE_INFINITY

/**
 * Which ways are bounded: all; those in which everything has a price; those without a special order (which all have one); and
 * those that could be if whatever is missing were to be had, for nothing.
 */
export type Mode = 'any' | 'priced' | 'in stock' | 'imagined'

/** Prices of a shop as a bound counts them; IMPOSSIBLE what a mode leaves out. */
export interface Prices {
  readonly part: (part: Part, quantity: number) => Sum
  readonly job: (job: Job, quantity: number) => Sum
  /** What the shop allows for a part to order; IMPOSSIBLE where it takes no such order. */
  readonly order: (kind: PartKind, quantity: number) => Sum
  /** What is not on the list, of a kind: the shop's allowance; without one it has no price. */
  readonly unlisted: (kind: PartKind, quantity: number) => Sum
  /** Least that any way costs whose parts and jobs include this sum; 0 for nothing at all. */
  readonly total: (sum: Sum, oilPrice: number, reservoirLitres: number) => number
}

/** Of each part the smallest share of its price that a kit leaves it. */
const kitShares = perShop((shop: Shop): ReadonlyMap<string, number> => {
  const byId = new Map(shop.parts.map((part) => [part.id, part]))
  const shares = new Map<string, number>()
  for (const kit of shop.parts) {
    const price = kit.kind === 'kit' ? priceOf(kit, shop) : null
    if (price === null || kit.holds.length === 0) continue
    const alone = kit.holds.reduce((sum, { part, quantity }) => {
      const held = byId.get(part)
      const each = held === undefined ? null : priceOf(held, shop)
      return sum + (each === null ? Number.POSITIVE_INFINITY : each * quantity)
    }, 0)
    const share = alone > 0 ? Math.min(1, price / alone) : 0
    for (const { part } of kit.holds) shares.set(part, Math.min(share, shares.get(part) ?? 1))
  }
  return shares
})

export const pricesOf = (shop: Shop, mode: Mode): Prices => {
  const isPriced = mode === 'priced' || mode === 'in stock'
  const shares = kitShares(shop)
  const hoursOf = new Map(shop.labour.map(({ job, hours }) => [job, hours]))
  const orders = new Map(shop.specialOrder.map((order) => [order.kind, order.allow]))
  const { labourRate, contingency, supplies } = shop
  const job = (name: Job, quantity: number): Sum => {
    const hours = hoursOf.get(name)
    const litres = (LITRES_LOST[name] ?? 0) * quantity
    if (hours === undefined) return isPriced && quantity > 0 ? IMPOSSIBLE : { money: 0, labour: 0, litres }
    const labour = hours.likely * labourRate * quantity
    return { money: labour + contingency * (hours.high - hours.low) * labourRate * quantity, labour, litres }
  }
  // A job without hours makes the price "from", of "test and record" every price: it must not make all impossible here.
  const test = hoursOf.has('test and record') ? job('test and record', 1) : isPriced ? IMPOSSIBLE : NOTHING
  const order = (kind: PartKind, quantity: number): Sum => {
    const allow = orders.get(kind)
    if (mode === 'imagined') return NOTHING
    if (allow === undefined || mode === 'in stock') return IMPOSSIBLE
    return {
      money: (allow.likely + contingency * (allow.high - allow.low)) * quantity,
      labour: 0,
      litres: 0,
    }
  }
  return {
    unlisted: (kind, quantity) => (orders.has(kind) ? order(kind, quantity) : isPriced ? IMPOSSIBLE : NOTHING),
    job,
    part: (part, quantity) => {
      const price = priceOf(part, shop)
      if (price === null) return isPriced && !shares.has(part.id) ? IMPOSSIBLE : NOTHING
      return { money: price * (shares.get(part.id) ?? 1) * quantity, labour: 0, litres: 0 }
    },
    order,
    total: (sum, oilPrice, reservoirLitres) => {
      if (sum.money === 0 && sum.labour === 0 && sum.litres === 0) return 0
      const { money, labour, litres } = plus(sum, test)
      const oil = Math.ceil(Math.min(litres, reservoirLitres) - 1e-6) * oilPrice
      const extra = Math.min(supplies.shareOfLabour * labour, supplies.atMost ?? Number.POSITIVE_INFINITY)
      const disposal = litres > 0 ? shop.disposal : 0
      // Whatever is done takes a part, and freight comes once with it.
      return Math.max(0, (money + oil + extra + disposal + shop.freight) * (1 + shop.tax) - SLACK)
    },
  }
}
