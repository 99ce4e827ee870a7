/** Kits: where the parts of a kit are all used and the kit costs less than they do together, the kit is sold. */
import { priceOf } from '../consequences/part-price.ts'
import type { Part, Shop } from '../shop.ts'

/** Parts of a quote by id: how many, or how many metres. */
export type Basket = ReadonlyMap<string, number>

const HAIR = 1e-9

/** What a kit holds, each part once, however often it is named. */
const heldBy = (kit: Part): ReadonlyMap<string, number> => {
  const held = new Map<string, number>()
  for (const { part, quantity } of kit.holds) held.set(part, (held.get(part) ?? 0) + quantity)
  return held
}

/** How many of a kit the basket suffices for; a kit that holds nothing is none. */
const timesIn = (basket: Basket, held: ReadonlyMap<string, number>): number =>
  held.size === 0
    ? 0
    : Math.floor(Math.min(...[...held].map(([part, quantity]) => (basket.get(part) ?? 0) / quantity)) + HAIR)

/** What the kit saves; a kit that gives a price to unpriced parts saves most. Null where it saves nothing. */
const saving = (kit: Part, shop: Shop): number | null => {
  const price = priceOf(kit, shop)
  if (price === null) return null
  const byId = new Map(shop.parts.map((part) => [part.id, part]))
  const alone = kit.holds.map(({ part, quantity }) => {
    const held = byId.get(part)
    const each = held === undefined ? null : priceOf(held, shop)
    return each === null ? Number.POSITIVE_INFINITY : each * quantity
  })
  const saved = alone.reduce((sum, amount) => sum + amount, 0) - price
  return saved > HAIR ? saved : null
}

/**
 * Puts kits in the place of the parts they hold, the one that saves most first, as long as one saves.
 * @returns the basket with kits in it; parts that are left over stay
 */
export const withKits = (basket: Basket, shop: Shop): Basket => {
  const kits = shop.parts
    .filter(({ kind }) => kind === 'kit')
    .flatMap((kit) => {
      const saved = saving(kit, shop)
      return saved === null ? [] : [{ kit, saved }]
    })
    .toSorted((one, other) =>
      one.saved === other.saved ? (one.kit.id < other.kit.id ? -1 : 1) : other.saved - one.saved,
    )
  const left = new Map(basket)
  for (const { kit } of kits) {
    const held = heldBy(kit)
    const times = timesIn(left, held)
    if (times === 0) continue
    for (const [part, quantity] of held) {
      const rest = Math.round(((left.get(part) ?? 0) - times * quantity) * 1000) / 1000
      if (rest > 0) left.set(part, rest)
      else left.delete(part)
    }
    left.set(kit.id, (left.get(kit.id) ?? 0) + times)
  }
  return left
}
