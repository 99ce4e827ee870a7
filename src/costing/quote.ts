/**
 * The price of what an option takes. Rules, all in the shop's currency:
 *
 * - A line is quantity x unit price, rounded to whole cents once; the unit price itself is not rounded.
 * - Unit price: the part's own, else cost x (1 + mark-up), else cost / (1 - margin); neither: the line is unpriced, named in
 *   `unpriced`, adds nothing, and the total is "from".
 * - A part that is not on the list counts with the special order's likely allowance where the shop takes one for its kind;
 *   low and high totals count with the low and the high one.
 * - Kits take the place of the parts they hold where all are used and the kit is cheaper.
 * - Supplies: share of labour, at most the cap; of the low, likely and high labour each.
 * - Freight once, where any part is bought. Disposal once, where oil is let out, as a line of its own.
 * - Contingency: its share of (high - low) of labour and special orders, the same in all three totals: an allowance for what
 *   cannot be seen before it is taken apart.
 * - Tax on all of it; total = (parts + labour + supplies + freight + contingency) + tax, for low, likely and high.
 *
 * Core deposits stand beside the totals, each a line that comes back with the old part; a kit has those of what it holds.
 */
import { priceOf } from '../consequences/part-price.ts'
import type { JobUse, PartUse } from '../consequences/uses.ts'
import type { CoreDeposit, Cost, CostLine } from '../evaluation.ts'
import type { Oil } from '../machine.ts'
import type { Part, PartKind, Shop, SpecialOrder } from '../shop.ts'
import { fillOil } from './fill-oil.ts'
import { withKits } from './kits.ts'
import { labourOf } from './labour.ts'
import { type Cents, cents, money, total } from './money.ts'
import { oilLost } from './oil-lost.ts'

export interface QuoteInput {
  readonly uses: readonly PartUse[]
  readonly jobs: readonly JobUse[]
  readonly shop: Shop
  /** Oil in the machine after the change [L]. */
  readonly reservoirLitres: number
  /** Oil that goes in. */
  readonly oil: Oil
}

interface Amounts {
  readonly low: Cents
  readonly likely: Cents
  readonly high: Cents
}

interface Line {
  readonly line: CostLine
  readonly amounts: Amounts
}

const flat = (amount: Cents): Amounts => ({ low: amount, likely: amount, high: amount })

const partLine = (part: Part, quantity: number, shop: Shop): Line => {
  const unitPrice = priceOf(part, shop)
  const amount = unitPrice === null ? null : cents(unitPrice * quantity)
  return {
    line: {
      what: part.name,
      part: part.id,
      quantity,
      unitPrice,
      amount: amount === null ? null : money(amount),
      leadDays: part.leadDays,
      stock: part.stock,
      unitCost: part.cost,
    },
    amounts: flat(amount ?? 0),
  }
}

const specialLine = ({ what, quantity }: PartUse, { allow, leadDays }: SpecialOrder): Line => {
  const amounts = {
    low: cents(allow.low * quantity),
    likely: cents(allow.likely * quantity),
    high: cents(allow.high * quantity),
  }
  const line = { what, part: null, quantity, unitPrice: allow.likely, amount: money(amounts.likely) }
  return { line: { ...line, leadDays, stock: null, unitCost: null }, amounts }
}

const unpricedLine = (what: string, quantity: number): Line => ({
  line: { what, part: null, quantity, unitPrice: null, amount: null, leadDays: null, stock: null, unitCost: null },
  amounts: flat(0),
})

/** Tenths of a metre and litres add up without a tail of digits. */
const tidy = (quantity: number): number => Math.round(quantity * 1000) / 1000

/** Parts from the list, each once, kits in place of what they hold; in the order in which they first came. */
const listedLines = (uses: readonly PartUse[], shop: Shop): readonly Line[] => {
  const basket = new Map<string, number>()
  for (const { part, quantity } of uses) if (part !== null) basket.set(part, tidy((basket.get(part) ?? 0) + quantity))
  const byId = new Map(shop.parts.map((part) => [part.id, part]))
  return [...withKits(basket, shop)].map(([id, quantity]) => {
    const part = byId.get(id)
    return part === undefined ? unpricedLine(id, quantity) : partLine(part, quantity, shop)
  })
}

/** What is not on the list: special orders, and what stays unpriced; the same thing twice is one line. */
const otherLines = (uses: readonly PartUse[], shop: Shop): readonly Line[] => {
  const orders = new Map<PartKind, SpecialOrder>(shop.specialOrder.map((order) => [order.kind, order]))
  const byWhat = new Map<string, PartUse>()
  for (const use of uses) {
    if (use.part !== null) continue
    const key = `${use.kind} ${use.what}`
    byWhat.set(key, { ...use, quantity: tidy((byWhat.get(key)?.quantity ?? 0) + use.quantity) })
  }
  return [...byWhat.values()].map((use) => {
    const order = orders.get(use.kind)
    return order === undefined ? unpricedLine(use.what, use.quantity) : specialLine(use, order)
  })
}

/** The one line of a quote that is no part and nothing to order. */
export const DISPOSAL = 'Disposal of used oil'

const disposalLine = (shop: Shop): Line => {
  const amount = cents(shop.disposal)
  const line = {
    what: DISPOSAL,
    part: null,
    quantity: 1,
    unitPrice: shop.disposal,
    amount: money(amount),
  }
  return { line: { ...line, leadDays: null, stock: null, unitCost: null }, amounts: flat(amount) }
}

const depositsOf = (lines: readonly Line[], shop: Shop): readonly CoreDeposit[] => {
  const byId = new Map(shop.parts.map((part) => [part.id, part]))
  const of = (id: string, quantity: number): readonly CoreDeposit[] => {
    const part = byId.get(id)
    if (part === undefined || part.coreDeposit === null) return []
    return [{ what: part.name, part: id, quantity, amount: money(cents(part.coreDeposit * quantity)) }]
  }
  return lines.flatMap(({ line: { part, quantity } }) => {
    if (part === null) return []
    const held = byId.get(part)?.holds ?? []
    return [...of(part, quantity), ...held.flatMap((one) => of(one.part, one.quantity * quantity))]
  })
}

const CASES = ['low', 'likely', 'high'] as const
type Case = (typeof CASES)[number]

/**
 * Prices what an option takes.
 * @returns lines, labour and totals in the shop's currency, whole cents; nothing at all costs nothing
 */
export const quote = ({ uses, jobs, shop, reservoirLitres, oil }: QuoteInput): Cost => {
  const labour = labourOf(jobs, uses, shop)
  const litres = Math.ceil(oilLost(jobs, reservoirLitres) - 1e-6)
  const filled = litres > 0 ? [fillOil(litres, oil, shop)] : []
  const allUses = [...uses, ...filled]
  const disposal = litres > 0 && shop.disposal > 0 ? [disposalLine(shop)] : []
  const lines = [...listedLines(allUses, shop), ...otherLines(allUses, shop), ...disposal]
  const sumOf = (which: Case, list: readonly Line[]) => total(list.map(({ amounts }) => amounts[which]))
  const { shareOfLabour, atMost } = shop.supplies
  const suppliesOf = (which: Case): Cents =>
    Math.min(cents(money(labour[which]) * shareOfLabour), atMost === null ? Number.POSITIVE_INFINITY : cents(atMost))
  const freight = allUses.length > 0 ? cents(shop.freight) : 0
  // Of the lines only special orders are apart.
  const spread = labour.high - labour.low + sumOf('high', lines) - sumOf('low', lines)
  const contingency = cents(money(spread) * shop.contingency)
  const beforeTax = (which: Case): Cents =>
    total([sumOf(which, lines), labour[which], suppliesOf(which), freight, contingency])
  const taxOf = (which: Case): Cents => cents(money(beforeTax(which)) * shop.tax)
  const totalOf = (which: Case): number => money(beforeTax(which) + taxOf(which))
  return {
    currency: shop.currency,
    low: totalOf('low'),
    likely: totalOf('likely'),
    high: totalOf('high'),
    lines: lines.map(({ line }) => line),
    labour: labour.lines,
    parts: money(sumOf('likely', lines)),
    labourTotal: money(labour.likely),
    supplies: money(suppliesOf('likely')),
    freight: money(freight),
    contingency: money(contingency),
    tax: money(taxOf('likely')),
    deposits: depositsOf(lines, shop),
    unpriced: [...lines.filter(({ line }) => line.amount === null).map(({ line }) => line.what), ...labour.unpriced],
  }
}
