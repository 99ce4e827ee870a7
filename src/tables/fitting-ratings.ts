/**
 * Working pressure of a connection by family and size, where a standard or a widely published list gives one. A port or
 * a fitting of unknown age takes the older and lower figure; a new fitting takes the current one. Families without rows
 * (G, BSPT, NPT, ORB, metric ports, square pump flanges) have no rating here and are not judged by it.
 */
import type { Connection, ConnectionFamily } from '../machine.ts'
import { pascalsFromBar } from '../units/shop-units.ts'
import type { Pascals } from '../units/si.ts'

export interface FittingRating {
  readonly family: ConnectionFamily
  readonly size: string
  /** Current edition. */
  readonly bar: number
  /** Older edition or lowest published figure. */
  readonly olderBar: number
  readonly source: string
}

type Row = readonly [size: string, bar: number, olderBar: number]

const rows = (family: ConnectionFamily, source: string, list: readonly Row[]): readonly FittingRating[] =>
  list.map(([size, bar, olderBar]) => ({ family, size, bar, olderBar, source }))

const cone = 'ISO 8434-1 current rating; older edition (DIN 2353) from memory'
const coneFromMemory = 'ISO 8434-1 rating, from memory'
const flare = 'SAE J514 37-degree flare, rating list from memory'
const face = 'SAE J1453 O-ring face seal, rating list from memory'
const code61 = 'SAE J518-1 / ISO 6162-1 by size, from memory; trade pages give 207 bar at every size'
const code62 = 'SAE J518-2 / ISO 6162-2'

export const fittingRatings: readonly FittingRating[] = [
  ...rows('24L', cone, [
    ['6', 315, 250],
    ['8', 315, 250],
    ['10', 315, 250],
    ['12', 315, 250],
    ['15', 315, 250],
    ['18', 315, 160],
    ['22', 160, 160],
    ['28', 160, 100],
    ['35', 160, 100],
    ['42', 160, 100],
  ]),
  ...rows('24S', cone, [
    ['6', 630, 630],
    ['8', 630, 630],
    ['10', 630, 630],
    ['12', 630, 630],
  ]),
  ...rows('24S', coneFromMemory, [
    ['14', 630, 630],
    ['16', 400, 400],
  ]),
  ...rows('24S', cone, [
    ['20', 400, 400],
    ['25', 400, 400],
    ['30', 250, 250],
    ['38', 250, 250],
  ]),
  ...rows('JIC', flare, [
    ['-4', 345, 345],
    ['-5', 345, 345],
    ['-6', 345, 345],
    ['-8', 310, 310],
    ['-10', 241, 241],
    ['-12', 241, 241],
    ['-14', 207, 207],
    ['-16', 207, 207],
    ['-20', 172, 172],
    ['-24', 138, 138],
    ['-32', 103, 103],
  ]),
  ...rows('ORFS', face, [
    ['-4', 414, 414],
    ['-6', 414, 414],
    ['-8', 414, 414],
    ['-10', 414, 414],
    ['-12', 414, 414],
    ['-16', 414, 414],
    ['-20', 276, 276],
    ['-24', 276, 276],
  ]),
  ...rows('code 61', code61, [
    ['1/2', 345, 207],
    ['3/4', 345, 207],
    ['1', 320, 207],
    ['1-1/4', 276, 207],
    ['1-1/2', 207, 207],
    ['2', 207, 207],
  ]),
  ...rows('code 62', code62, [
    ['1/2', 414, 414],
    ['3/4', 414, 414],
    ['1', 414, 414],
    ['1-1/4', 414, 414],
    ['1-1/2', 414, 414],
    ['2', 414, 414],
  ]),
]

const byConnection = new Map(fittingRatings.map((row) => [`${row.family} ${row.size}`, row]))

/**
 * Row of a connection, or null where no rating is known.
 * @param connection family and size as read from the shop's files
 */
export const fittingRating = (connection: Connection): FittingRating | null =>
  byConnection.get(`${connection.family} ${connection.size}`) ?? null

/**
 * Working pressure that a connection may be held to [Pa], null where nobody rates it. A fitting whose age is unknown
 * takes the older figure; one that is bought new takes the current one.
 * @param connection family and size
 * @param age `unknown` for what is on the machine, `new` for what is bought
 */
export const connectionRating = (connection: Connection, age: 'unknown' | 'new' = 'unknown'): Pascals | null => {
  const row = fittingRating(connection)
  if (row === null) return null
  return pascalsFromBar(age === 'new' ? row.bar : row.olderBar)
}
