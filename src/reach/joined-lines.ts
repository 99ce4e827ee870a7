/**
 * What the hoses of one whole candidate cost at least, made for the ports that will be there: of pumps and motors, and of valve and
 * swivel where no consequence can change them (level-bound.ts). A hose that is kept is joined to a port that is not what it was.
 */
import { type LinePlace, linePlaces } from '../consequences/line-places.ts'
import { adaptHose, metresOf } from '../consequences/line-work.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { KEEP } from './candidate.ts'
import { type OwnerKind, ownersAt } from './end-costs.ts'
import { workCost } from './joint-costs.ts'
import { hoseCost } from './line-bounds.ts'
import type { Place } from './places.ts'
import { addUp, leastOf, NOTHING, type Prices, plus, type Sum } from './sums.ts'

export interface Joined {
  /** With pumps, motors, valve and swivel as they will be. */
  readonly machine: Machine
  readonly before: Machine
  /** Kinds of which that is sure. */
  readonly settled: ReadonlySet<OwnerKind>
}

const isSettled = (place: LinePlace, { settled }: Joined): boolean =>
  ([0, 1] as const).every((side) => ownersAt(place, side).every(({ kind }) => settled.has(kind)))

/** A consequence may still make it new, of another size. */
const keptCost = (place: LinePlace, was: LinePlace, shop: Shop, prices: Prices): Sum => {
  const work = adaptHose(place, was, shop)
  if (work === null) return NOTHING
  const metres = metresOf(place.line.length, place.count)
  const least = leastOf(hoses(shop).map(({ part }) => prices.part(part, metres)))
  const anew = plus(leastOf([least, prices.order('hose', place.count)]), prices.job('replace hose', place.count))
  return leastOf([workCost(work, shop, prices), anew])
}

/** Of one place of hoses: what is chosen, or KEEP. */
export const joinedCost = (place: Place, option: number, joined: Joined, shop: Shop, prices: Prices): Sum => {
  const now = new Map(linePlaces(joined.machine).map((one) => [one.line.id, one]))
  const were = new Map(linePlaces(joined.before).map((one) => [one.line.id, one]))
  const id = place.options[option]?.part.id
  const hose = hoses(shop).find(({ part }) => part.id === id)
  return addUp(
    place.lines.map(({ line }) => {
      const [there, was] = [now.get(line.id), were.get(line.id)]
      if (there === undefined || was === undefined) return NOTHING
      if (option !== KEEP) return hose === undefined ? NOTHING : hoseCost(there, hose, shop, prices, joined.settled)
      return isSettled(there, joined) ? keptCost(there, was, shop, prices) : NOTHING
    }),
  )
}
