/**
 * What the hoses of one whole candidate cost at least, made for the ports that will be there: of pumps and motors, and of valve and
 * swivel where no consequence can change them (level-bound.ts). A hose that is kept is joined to a port that is not what it was.
 */
import { type LinePlace, linePlaces } from '../consequences/line-places.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { KEEP } from './candidate.ts'
import { type OwnerKind, ownersAt } from './end-costs.ts'
import { keptHoseCost } from './joint-costs.ts'
import { knownIn } from './known-in.ts'
import { hoseCost } from './line-bounds.ts'
import type { Place } from './places.ts'
import { addUp, NOTHING, type Prices, type Sum } from './sums.ts'

export interface Joined {
  /** Lines by id, with pumps, motors, valve and swivel as they will be. */
  readonly lines: ReadonlyMap<string, LinePlace>
  readonly before: ReadonlyMap<string, LinePlace>
  /** Kinds of owners of which that is sure. */
  readonly settled: ReadonlySet<OwnerKind>
}

export const linesById = (machine: Machine): ReadonlyMap<string, LinePlace> =>
  new Map(linePlaces(machine).map((place) => [place.line.id, place]))

const isSettled = (place: LinePlace, { settled }: Joined): boolean =>
  ([0, 1] as const).every((side) => ownersAt(place, side).every(({ kind }) => settled.has(kind)))

/**
 * Of one place of hoses.
 * @param option what is chosen, or KEEP
 * @param known costs at these prices, by what they follow from
 */
export const joinedCost = (
  place: Place,
  option: number,
  joined: Joined,
  shop: Shop,
  prices: Prices,
  known: Map<string, Sum>,
): Sum => {
  const id = place.options[option]?.part.id ?? ''
  return addUp(
    place.lines.map(({ line }) => {
      const [there, was] = [joined.lines.get(line.id), joined.before.get(line.id)]
      if (there === undefined || was === undefined || !isSettled(there, joined)) return NOTHING
      const ports = there.ports.map((port) => port?.connection.text)
      return knownIn(known, [line.id, id, ...ports].join(), () => {
        if (option === KEEP) return keptHoseCost(there, was, shop, prices) ?? NOTHING
        const hose = hoses(shop).find(({ part }) => part.id === id)
        return hose === undefined ? NOTHING : hoseCost(there, hose, shop, prices, joined.settled)
      })
    }),
  )
}
