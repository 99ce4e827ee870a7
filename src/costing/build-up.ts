/**
 * What the parts of a quote earn, line by line: for the shop's own copy, never the customer's. Mark-up is on the cost,
 * margin is of the price; the two are named apart because 38 % of one is 28 % of the other.
 *
 *   profit = price - cost,  margin = profit / price,  mark-up = profit / cost
 */
import type { BuildUp, BuildUpLine, Cost, CostLine } from '../evaluation.ts'
import type { Part, Shop } from '../shop.ts'
import { cents, money } from './money.ts'

/** Cost of one: of the part, else of what a kit holds; null where any of it is not on the list. */
const unitCostOf = (line: CostLine, parts: ReadonlyMap<string, Part>): BuildUpLine['unitCost'] => {
  if (line.unitCost !== null || line.part === null) return line.unitCost
  const holds = parts.get(line.part)?.holds ?? []
  if (holds.length === 0) return null
  const costs = holds.map(({ part, quantity }) => {
    const cost = parts.get(part)?.cost ?? null
    return cost === null ? null : cost * quantity
  })
  return costs.some((cost) => cost === null) ? null : costs.reduce<number>((sum, cost) => sum + (cost ?? 0), 0)
}

const share = (part: number | null, whole: number | null): number | null =>
  part !== null && whole !== null && whole > 0 ? part / whole : null

const lineOf = (line: CostLine, parts: ReadonlyMap<string, Part>): BuildUpLine => {
  const unitCost = unitCostOf(line, parts)
  const cost = unitCost === null ? null : money(cents(unitCost * line.quantity))
  const profit = cost === null || line.amount === null ? null : money(cents(line.amount) - cents(cost))
  return {
    what: line.what,
    part: line.part,
    quantity: line.quantity,
    unitCost,
    cost,
    unitPrice: line.unitPrice,
    price: line.amount,
    profit,
    margin: share(profit, line.amount),
    markUp: share(profit, cost),
    stock: line.stock,
    leadDays: line.leadDays,
  }
}

/**
 * @param option name of the option; null: the restoration
 * @returns lines in the order of the quote, and their sum over the lines whose cost and price are both known
 */
export const buildUpOf = (option: string | null, cost: Cost, shop: Shop): BuildUp => {
  const parts = new Map(shop.parts.map((part) => [part.id, part]))
  const lines = cost.lines.map((line) => lineOf(line, parts))
  const known = lines.filter(({ profit }) => profit !== null)
  const sum = (of: (line: BuildUpLine) => number | null) =>
    money(known.reduce((total, line) => total + cents(of(line) ?? 0), 0))
  const [price, paid, profit] = [sum((line) => line.price), sum((line) => line.cost), sum((line) => line.profit)]
  return {
    option,
    lines,
    known: { price, cost: paid, profit, margin: share(profit, price), markUp: share(profit, paid) },
    open: lines.filter((line) => line.profit === null).map(({ what }) => what),
  }
}
