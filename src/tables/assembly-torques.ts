/**
 * How far hydraulic joints of steel are tightened. Published tables differ by up to 40 per cent and no standard settles it,
 * so that every range of every table is kept and the lowest and highest are given. Where no table was at hand there is no
 * figure: the maker of the fitting has one. A machine maker's own figure wins over all of these.
 */
import type { Connection, ConnectionFamily } from '../machine.ts'
import type { Tightening } from '../work-order.ts'

type Torque = readonly [low: number, high: number]

export interface AssemblyTorque {
  readonly family: ConnectionFamily
  readonly size: string
  /** N·m, one range a published table. */
  readonly published: readonly Torque[]
  readonly turns: string | null
  readonly source: string
}

type Row = readonly [size: string, published: readonly Torque[], turns: string | null]

const rows = (family: ConnectionFamily, source: string, list: readonly Row[]): readonly AssemblyTorque[] =>
  list.map(([size, published, turns]) => ({ family, size, published, turns, source }))

/** Every size of a family alike. */
const turned = (family: ConnectionFamily, source: string, sizes: readonly string[], turns: string) =>
  rows(
    family,
    source,
    sizes.map((size) => [size, [], turns]),
  )

const FLARE =
  'three machine makers’ manuals and a reference page; steel, lightly oiled (SAE J514 prints test values only)'
const STUD = 'two machine makers’ manuals and a reference page; steel port, oiled; 25 to 30 % less in aluminium'
const FACE = 'a machine maker’s manual and a reference page'
const CONE = 'hose end: from memory; cutting ring: two published instructions for ISO 8434-1. Oil thread, cone and ring'
const TAPER = 'trade practice, from memory. Sealant on the male thread, the first two threads left bare'

const HOSE_NUT = '1/2 to 3/4 turn from finger tight (hose nut)'
const CONE_TURNS = '1/4 to 1/3 turn from hand tight; cutting ring set before: 1/4 to 1/2 turn from felt resistance'
const TAPER_TURNS = '2 to 3 turns from finger tight'

// biome-ignore format: one row a line reads as the table it is
export const assemblyTorques: readonly AssemblyTorque[] = [
  ...rows('JIC', FLARE, [
    ['-4', [[12, 12], [15, 17], [12, 15]], '1 to 2 flats of the nut from finger tight'],
    ['-5', [[16, 16], [19, 22]], '1 to 2 flats of the nut from finger tight'],
    ['-6', [[24, 24], [27, 30], [23, 27]], '1 to 1-1/4 flats of the nut from finger tight'],
    ['-8', [[46, 46], [59, 65], [41, 47]], '1 flat of the nut from finger tight'],
    ['-10', [[62, 62], [68, 79], [54, 68]], '1 flat of the nut from finger tight'],
    ['-12', [[102, 102], [107, 119], [75, 88]], '3/4 to 1 flat of the nut from finger tight'],
    ['-14', [[122, 122]], '3/4 flat of the nut from finger tight'],
    ['-16', [[158, 170], [122, 149]], '3/4 to 1 flat of the nut from finger tight'],
    ['-20', [[163, 203]], '3/4 flat of the nut from finger tight'],
  ]),
  ...rows('ORB', STUD, [
    ['-2', [[6, 7]], null],
    ['-3', [[12, 13], [8, 8]], null],
    ['-4', [[19, 21], [12, 12], [11, 14]], null],
    // One table prints 21 to 33 here, above its own -6: a misprint, of which only the low end is kept.
    ['-5', [[21, 21], [16, 16]], null],
    ['-6', [[26, 29], [24, 24], [23, 27]], null],
    ['-8', [[46, 50], [46, 46], [41, 47]], null],
    ['-10', [[75, 82], [62, 62], [61, 68]], null],
    ['-12', [[120, 132], [102, 102], [75, 88]], null],
    ['-14', [[153, 168], [122, 122]], null],
    ['-16', [[176, 193], [142, 142], [115, 136]], null],
    ['-20', [[221, 243], [190, 190]], null],
    ['-24', [[270, 298], [217, 217]], null],
  ]),
  ...rows('ORFS', FACE, [
    ['-4', [[14, 16], [15, 19]], HOSE_NUT],
    ['-6', [[24, 27], [30, 35]], HOSE_NUT],
    ['-8', [[43, 47], [45, 54]], HOSE_NUT],
    ['-10', [[60, 68], [68, 79]], HOSE_NUT],
    ['-12', [[90, 95], [95, 108]], HOSE_NUT],
    ['-16', [[125, 135], [149, 176]], HOSE_NUT],
    ['-20', [[170, 190]], HOSE_NUT],
    ['-24', [[200, 225]], HOSE_NUT],
  ]),
  ...turned('24L', CONE, ['6', '8', '10', '12', '15', '18', '22', '28', '35', '42'], CONE_TURNS),
  ...turned('24S', CONE, ['6', '8', '10', '12', '14', '16', '20', '25', '30', '38'], CONE_TURNS),
  ...turned('NPT', TAPER, ['1/8', '1/4', '3/8', '1/2', '3/4', '1', '1-1/4', '1-1/2', '2'], TAPER_TURNS),
  ...turned('BSPT', TAPER, ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '1', '1-1/4', '1-1/2', '2'], TAPER_TURNS),
]

const byConnection = new Map(assemblyTorques.map((row) => [`${row.family} ${row.size}`, row]))

/** Printed where no table has the connection. */
export const NO_TABLE = 'no published table was at hand: the figure of the fitting’s maker for this size and seal'

/**
 * How far a connection is tightened.
 * @param connection family and size
 * @returns torque [N·m] as the lowest and highest of the published tables, turns in words, and the source; both null where
 *   no table was at hand. Valid: steel, new or clean threads. Source: see each row.
 */
export const tighteningOf = ({ family, size }: Connection): Tightening => {
  const row = byConnection.get(`${family} ${size}`)
  if (row === undefined) return { torqueNm: null, turns: null, source: NO_TABLE }
  const { published, turns, source } = row
  const torqueNm =
    published.length === 0
      ? null
      : ([Math.min(...published.map(([low]) => low)), Math.max(...published.map(([, high]) => high))] as const)
  return { torqueNm, turns, source }
}
