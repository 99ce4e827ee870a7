/** Price of one of a part, before any rounding. The choice of parts and the quote both ask here, so that they agree. */
import type { Part, Shop } from '../shop.ts'

/**
 * Price for one (piece, metre, litre), in the shop's currency:
 * the part's own price, else cost x (1 + mark-up), else cost / (1 - margin). Unrounded; a line is rounded once.
 * @returns null where neither a price nor a cost with a rule is stated: unpriced, and said so
 */
export const priceOf = (part: Part, shop: Shop): number | null => {
  if (part.price !== null) return part.price
  if (part.cost === null) return null
  if (shop.markUp !== null) return part.cost * (1 + shop.markUp)
  if (shop.marginStated !== null && shop.marginStated < 1) return part.cost / (1 - shop.marginStated)
  return null
}
