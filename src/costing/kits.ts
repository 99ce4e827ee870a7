/** Kits: where the parts of a kit are all used and the kit costs less than they do together, the kit is sold. */
import { priceOf } from '../consequences/part-price.ts'
import type { Part, Shop } from '../shop.ts'

/** Parts of a quote by id: how many, or how many metres. */
export type Basket = ReadonlyMap<string, number>

const HAIR = 1e-9

const covers = (basket: Basket, kit: Part): boolean =>
  kit.holds.length > 0 && kit.holds.every(({ part, quantity }) => (basket.get(part) ?? 0) >= quantity - HAIR)

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
  for (const { kit } of kits)
    while (covers(left, kit)) {
      for (const { part, quantity } of kit.holds) {
        const rest = (left.get(part) ?? 0) - quantity
        if (rest > HAIR) left.set(part, Math.round(rest * 1000) / 1000)
        else left.delete(part)
      }
      left.set(kit.id, (left.get(kit.id) ?? 0) + 1)
    }
  return left
}
