/**
 * Through-bore of a fitting or port and the hose size that it usually goes with, by family and size. All of it is a
 * typical figure (adapter bores, stud bores and port drillings differ from maker to maker): a dealer's own figure wins
 * where a part on the list states its bore. Values from memory unless the source says otherwise.
 */
import type { Connection, ConnectionFamily } from '../machine.ts'
import { metresFromMm } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'

export interface FittingBore {
  readonly family: ConnectionFamily
  readonly size: string
  /** Usual hose, in sixteenths of an inch. */
  readonly dash: number
  /** Typical smallest bore; null where no typical figure is known. */
  readonly boreMm: number | null
  readonly source: string
}

type Row = readonly [size: string, dash: number, boreMm: number | null]

const rows = (family: ConnectionFamily, source: string, list: readonly Row[]): readonly FittingBore[] =>
  list.map(([size, dash, boreMm]) => ({ family, size, dash, boreMm, source }))

const flare = 'SAE J514 drilling, from memory'
const face = 'SAE J1453 drilling, from memory'
const stud = 'ISO 11926-2 stud drilling, from memory'
const parallel = 'BSP adapter bore, trade practice from memory'
const taper = 'SAE J514 taper drilling, from memory'
const cone = 'ISO 8434-1 union bore and ISO 12151-2 usual hose, from memory'
const metricPort = 'ISO 6149-1 stud bore and usual hose, from memory'
const splitFlange = 'ISO 6162 port bore'
const squareFlange = 'trade pattern of gear pump ports (no standard), from memory'

const bsp: readonly Row[] = [
  ['1/8', 2, null],
  ['1/4', 4, 6],
  ['3/8', 6, 9],
  ['1/2', 8, 12],
  ['5/8', 10, 13.5],
  ['3/4', 12, 16],
  ['1', 16, 21.5],
  ['1-1/4', 20, 27.5],
  ['1-1/2', 24, 34],
  ['2', 32, null],
]

const flanged: readonly Row[] = [
  ['1/2', 8, 13],
  ['3/4', 12, 19.2],
  ['1', 16, 25.6],
  ['1-1/4', 20, 32],
  ['1-1/2', 24, 38.2],
  ['2', 32, 51],
]

export const fittingBores: readonly FittingBore[] = [
  ...rows('G', parallel, bsp),
  ...rows('BSPT', parallel, bsp),
  ...rows('NPT', taper, [
    ['1/8', 2, null],
    ['1/4', 4, 7.1],
    ['3/8', 6, 10.3],
    ['1/2', 8, 13.5],
    ['3/4', 12, 18.3],
    ['1', 16, 23.8],
    ['1-1/4', 20, 31.8],
    ['1-1/2', 24, 38.1],
    ['2', 32, null],
  ]),
  ...rows('JIC', flare, [
    ['-4', 4, 4.4],
    ['-5', 5, 5.9],
    ['-6', 6, 7.5],
    ['-8', 8, 9.9],
    ['-10', 10, 12.3],
    ['-12', 12, 15.5],
    ['-14', 14, null],
    ['-16', 16, 21.4],
    ['-20', 20, 27.4],
    ['-24', 24, 33.3],
    ['-32', 32, null],
  ]),
  ...rows('ORFS', face, [
    ['-4', 4, 4.4],
    ['-6', 6, 6.7],
    ['-8', 8, 9.5],
    ['-10', 10, 12.3],
    ['-12', 12, 15.5],
    ['-16', 16, 20.6],
    ['-20', 20, 26],
    ['-24', 24, 32],
  ]),
  ...rows('ORB', stud, [
    ['-2', 2, null],
    ['-3', 3, null],
    ['-4', 4, 4.5],
    ['-5', 5, 6],
    ['-6', 6, 7.5],
    ['-8', 8, 10],
    ['-10', 10, 12.5],
    ['-12', 12, 15.5],
    ['-14', 14, null],
    ['-16', 16, 21.5],
    ['-20', 20, 27.5],
    ['-24', 24, 33.5],
    ['-32', 32, null],
  ]),
  ...rows('24L', cone, [
    ['6', 3, 4],
    ['8', 4, 6],
    ['10', 5, 8],
    ['12', 6, 10],
    ['15', 8, 12],
    ['18', 10, 15],
    // A union has 19 mm, a male stud 18 mm (maker's catalogue): the smallest bore along the joint counts.
    ['22', 12, 18],
    ['28', 16, 24],
    ['35', 20, 30],
    ['42', 24, 36],
  ]),
  ...rows('24S', cone, [
    ['6', 2, 4],
    ['8', 3, 5],
    ['10', 4, 7],
    ['12', 5, 8],
    ['14', 6, 10],
    ['16', 8, 12],
    ['20', 10, 16],
    ['25', 12, 20],
    ['30', 16, 25],
    ['38', 20, 32],
  ]),
  ...rows('metric', metricPort, [
    ['8x1', 2, 3],
    ['10x1', 3, 4.5],
    ['12x1.5', 4, 6],
    ['14x1.5', 4, 7.5],
    ['16x1.5', 5, 9],
    ['18x1.5', 6, 11],
    ['22x1.5', 8, 14],
    ['27x2', 12, 18],
    ['33x2', 16, 23],
    ['42x2', 20, 30],
  ]),
  ...rows('code 61', splitFlange, flanged),
  ...rows('code 62', splitFlange, flanged),
  ...rows('flange 4-bolt', squareFlange, [
    ['26', 8, 12],
    ['30', 8, 13.5],
    ['35', 8, 15],
    ['40', 12, 20],
    ['51', 16, 27],
    ['55', 16, 26],
    ['62', 20, 33],
  ]),
]

const byConnection = new Map(fittingBores.map((row) => [`${row.family} ${row.size}`, row]))

/** Row of a connection, or null for a size that the table does not know. */
export const fittingBore = (connection: Connection): FittingBore | null =>
  byConnection.get(`${connection.family} ${connection.size}`) ?? null

/** Typical smallest bore of a connection [m], null where none is known. */
export const connectionBore = (connection: Connection): Metres | null => {
  const mm = fittingBore(connection)?.boreMm ?? null
  return mm === null ? null : metresFromMm(mm)
}

/** Dash size of the hose that a connection usually goes with (8 for -8), null for an unknown size. */
export const usualDash = (connection: Connection): number | null => fittingBore(connection)?.dash ?? null
