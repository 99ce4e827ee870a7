/**
 * What it costs at least to join the hoses that are kept to the ports of a pump that was chosen: an adapter or a new hose, as
 * the evaluation finds it (line-work.ts), or, where a consequence makes the hose new, the least that any hose costs.
 */
import { type LinePlace, linePlaces } from '../consequences/line-places.ts'
import { adaptHose, type LineWork, metresOf } from '../consequences/line-work.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Shop } from '../shop.ts'
import { type Ground, type Known, pieceOf } from './drive.ts'
import { addUp, leastOf, type Prices, plus, type Sum } from './sums.ts'

/** What is not on the list is ordered, or ends the option. */
const workCost = ({ uses, jobs }: LineWork, shop: Shop, prices: Prices): Sum =>
  addUp([
    ...uses.map(({ part: id, kind, quantity }) => {
      const part = shop.parts.find((one) => one.id === id)
      return part === undefined ? prices.order(kind, quantity) : prices.part(part, quantity)
    }),
    ...jobs.map(({ job, quantity }) => prices.job(job, quantity)),
  ])

/**
 * A hose that is kept, on ports of which one may be another; a consequence may still make it new, of another size.
 * @param was the same place on the machine as it is
 * @returns null where it fits as it is
 */
export const keptHoseCost = (place: LinePlace, was: LinePlace, shop: Shop, prices: Prices): Sum | null => {
  const work = adaptHose(place, was, shop)
  if (work === null) return null
  const metres = metresOf(place.line.length, place.count)
  const least = leastOf(hoses(shop).map(({ part }) => prices.part(part, metres)))
  const anew = plus(leastOf([least, prices.order('hose', place.count)]), prices.job('replace hose', place.count))
  return leastOf([workCost(work, shop, prices), anew])
}

/** By the id of the line; lines that fit as they are have none. */
export const jointCosts = (
  ground: Ground,
  known: Known | null,
  option: number,
  prices: Prices,
): ReadonlyMap<string, Sum> => {
  const { shop } = ground.question.loaded
  const machine = known?.pieces[pieceOf(option)]?.machine
  if (machine === undefined) return new Map()
  const were = new Map(linePlaces(ground.plant.machine).map((place) => [place.line.id, place]))
  return new Map(
    linePlaces(machine).flatMap((place): readonly (readonly [string, Sum])[] => {
      const was = were.get(place.line.id) ?? null
      const cost = was === null ? null : keptHoseCost(place, was, shop, prices)
      return cost === null ? [] : [[place.line.id, cost]]
    }),
  )
}
