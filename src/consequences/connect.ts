/**
 * Joining a hose to a port: an end that fits, or an end with an adapter between. Two connections fit only where family and
 * size are the same: a thread that goes in is not a fit (24° 15L and 14S share M22x1.5, ORB and JIC of one dash share a
 * thread, NPT 1/2 and G 1/2 share a pitch, and none of these seal together).
 */
import type { Connection } from '../machine.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import { connectionBore, usualDash } from '../tables/fitting-bores.ts'
import { connectionRating } from '../tables/fitting-ratings.ts'
import type { Metres, Pascals } from '../units/si.ts'
import { cheaperFirst } from './choose.ts'
import { priceOf } from './part-price.ts'
import type { Stocked } from './read-figures.ts'
import { type AdapterFigures, adapters, type EndFigures, hoseEnds } from './stock-lines.ts'

/** The shop orders parts of a kind that are not on its list. */
export const takesOrders = (kind: PartKind, { specialOrder }: Shop): boolean =>
  specialOrder.some((order) => order.kind === kind)

export const fits = (one: Connection, other: Connection): boolean =>
  one.family === other.family && one.size === other.size

/**
 * Least bore of an adapter over the bore of the hose that it serves. A port one size below the hose is usual in the trade:
 * its short bore costs a bar or two at the guide velocity. Common practice, no source.
 */
export const LEAST_ADAPTER_BORE = 0.45

/**
 * Least nominal size of a port over that of its hose. It lets pass one step of the usual sizes 1/4, 3/8, 1/2, 3/4, 1 and
 * 1-1/4, which an adapter takes up; below it the component that owns the port is too small. Common practice, no source.
 */
export const LEAST_PORT_SIZE = 0.6

/** The port is more than one usual size below the hose. False where the size of the port is not known. */
export const portTooSmall = (port: Connection, dash: number): boolean => {
  const own = usualDash(port)
  return own !== null && own / dash < LEAST_PORT_SIZE - 1e-9
}

const bears = (
  stated: Pascals | null,
  connections: readonly (Connection | null)[],
  pressure: Pascals | null,
): boolean => {
  if (pressure === null) return true
  if (stated !== null) return stated >= pressure * (1 - 1e-9)
  return connections.every((connection) => {
    const rating = connection === null ? null : connectionRating(connection, 'new')
    return rating === null || rating >= pressure * (1 - 1e-9)
  })
}

const wideEnough = ({ bore, connections }: AdapterFigures, hoseBore: Metres): boolean => {
  const own = bore ?? Math.min(...connections.map((side) => (side && connectionBore(side)) ?? Number.POSITIVE_INFINITY))
  return own >= LEAST_ADAPTER_BORE * hoseBore * (1 - 1e-9)
}

/** Adapters that join two connections, whichever way round they are listed, cheapest first. */
export const adaptersBetween = (
  one: Connection,
  other: Connection,
  hoseBore: Metres,
  pressure: Pascals | null,
  shop: Shop,
): readonly Part[] => {
  const joins = ({ figures }: Stocked<AdapterFigures>): boolean => {
    const [a, b] = figures.connections
    if (a === null || b === null) return false
    return (fits(a, one) && fits(b, other)) || (fits(a, other) && fits(b, one))
  }
  return adapters(shop)
    .filter((adapter) => joins(adapter) && wideEnough(adapter.figures, hoseBore))
    .filter(({ figures }) => bears(figures.maxPressure, figures.connections, pressure))
    .map(({ part }) => part)
    .toSorted(cheaperFirst(shop))
}

export interface EndJoint {
  /** Hose end; null where the list has none that could be used. */
  readonly end: Part | null
  /** What the hose end is. */
  readonly connection: Connection | null
  readonly adapter: Part | null
  /** An adapter to order stands between. */
  readonly orders: boolean
  /** False where the joint cannot be made with what is on the list. */
  readonly made: boolean
}

const endsOf = (dash: number, pressure: Pascals | null, shop: Shop): readonly Stocked<EndFigures>[] => {
  const order = cheaperFirst(shop)
  return hoseEnds(shop)
    .filter(({ figures }) => figures.dash === dash && bears(figures.maxPressure, [figures.end], pressure))
    .toSorted((one, other) => order(one.part, other.part))
}

const total = (end: Part, adapter: Part, shop: Shop): number =>
  (priceOf(end, shop) ?? Number.POSITIVE_INFINITY) + (priceOf(adapter, shop) ?? Number.POSITIVE_INFINITY)

/**
 * Finds the end of a hose for a port: one that fits, else one with one adapter (never two stacked), the cheapest together;
 * else what the shop orders.
 * @param dash size of the hose in sixteenths of an inch
 * @param bore of the hose [m]
 * @param targets connections that will do, the best first: the port, or what an adapter that stays on it offers
 * @param pressure that the joint must bear [Pa], null where the relief does not reach
 */
export const joinEnd = (
  dash: number,
  bore: Metres,
  targets: readonly Connection[],
  pressure: Pascals | null,
  shop: Shop,
): EndJoint => {
  const ends = endsOf(dash, pressure, shop)
  for (const target of targets) {
    const direct = ends.find(({ figures }) => figures.end !== null && fits(figures.end, target))
    if (direct) return { end: direct.part, connection: direct.figures.end, adapter: null, orders: false, made: true }
  }
  const [port] = targets
  if (port === undefined) {
    // Nobody has read the port: any end of the size stands in for the price, and the joint is not called made.
    const any = ends[0]
    return { end: any?.part ?? null, connection: any?.figures.end ?? null, adapter: null, orders: false, made: false }
  }
  const pairs = ends.flatMap(({ part: end, figures }) => {
    const [adapter] = figures.end === null ? [] : adaptersBetween(figures.end, port, bore, pressure, shop)
    return adapter === undefined ? [] : [{ end, connection: figures.end, adapter, orders: false, made: true }]
  })
  const [best] = pairs.toSorted(
    (one, other) =>
      total(one.end, one.adapter, shop) - total(other.end, other.adapter, shop) ||
      cheaperFirst(shop)(one.end, other.end) ||
      cheaperFirst(shop)(one.adapter, other.adapter),
  )
  if (best !== undefined) return best
  // Where the shop orders hose ends, the very one is ordered; where it orders only adapters, one for the cheapest end.
  const [any] = ends.filter(({ figures }) => figures.end !== null)
  if (any !== undefined && takesOrders('adapter', shop) && !takesOrders('fitting', shop))
    return { end: any.part, connection: any.figures.end, adapter: null, orders: true, made: false }
  return { end: null, connection: null, adapter: null, orders: false, made: false }
}
