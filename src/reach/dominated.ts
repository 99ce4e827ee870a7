/**
 * Hoses that nobody would take: another of the list does the very same in that place for less.
 *
 * Two hoses of one size and bore take the same pressure from the oil, the same ends and the same work. Where both bear what
 * the lines of the place must bear, a way with the dearer one, with the other in its stead, is evaluated alike in all but the
 * price, which is less: so it is never the cheapest of anything, nor the furthest for its price. At one price it is the one
 * whose id sorts later that goes, as ties are told apart (candidate.ts). Left alone are hoses without a price or a rating, and
 * those of a kit, whose price hangs on what else is taken.
 */
import { priceOf } from '../consequences/part-price.ts'
import { type HoseFigures, hoses } from '../consequences/stock-lines.ts'
import type { Shop } from '../shop.ts'
import type { Place } from './places.ts'

interface Hose {
  readonly figures: HoseFigures
  readonly price: number
}

const bears = ({ lines }: Place, { maxPressure }: HoseFigures): boolean =>
  lines.every(
    ({ workingPressure }) => workingPressure === null || (maxPressure !== null && maxPressure >= workingPressure),
  )

/** Indices of options that another option of the place stands for. */
export const dominatedIn = (place: Place, shop: Shop): ReadonlySet<number> => {
  if (place.kind !== 'hose') return new Set()
  const inKits = new Set(shop.parts.flatMap(({ holds }) => holds.map(({ part }) => part)))
  const stocked = new Map(hoses(shop).map(({ part, figures }) => [part.id, figures]))
  const all = place.options.map(({ part }): Hose | null => {
    const figures = stocked.get(part.id)
    const price = priceOf(part, shop)
    const isPlain = figures !== undefined && price !== null && !inKits.has(part.id) && figures.dash !== null
    return isPlain && bears(place, figures) ? { figures, price } : null
  })
  const stands = (one: Hose | null, i: number, other: Hose, at: number): boolean =>
    one !== null &&
    one.figures.dash === other.figures.dash &&
    one.figures.bore === other.figures.bore &&
    (one.price < other.price || (one.price === other.price && i < at))
  return new Set(
    all.flatMap((hose, at) => (hose !== null && all.some((one, i) => stands(one, i, hose, at)) ? [at] : [])),
  )
}
