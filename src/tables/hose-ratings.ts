/** Highest working pressure of a hose by kind and dash size. A rating stated on the part or the machine wins. */
import { pascalsFromBar } from '../units/shop-units.ts'
import type { Pascals } from '../units/si.ts'

export interface HoseRating {
  readonly kind: string
  readonly dash: number
  readonly bar: number
  readonly source: string
}

type Row = readonly [dash: number, bar: number]

const rows = (kind: string, source: string, list: readonly Row[]): readonly HoseRating[] =>
  list.map(([dash, bar]) => ({ kind, dash, bar, source }))

const oneWire: readonly Row[] = [
  [3, 250],
  [4, 225],
  [5, 215],
  [6, 180],
  [8, 160],
  [10, 130],
  [12, 105],
  [16, 88],
  [20, 63],
  [24, 50],
  [32, 40],
]

const twoWire: readonly Row[] = [
  [3, 415],
  [4, 400],
  [5, 350],
  [6, 330],
  [8, 275],
  [10, 250],
  [12, 215],
  [16, 165],
  [20, 125],
  [24, 90],
  [32, 80],
]

const between = (list: readonly Row[], least: number, most: number): readonly Row[] =>
  list.filter(([dash]) => dash >= least && dash <= most)

export const hoseRatings: readonly HoseRating[] = [
  ...rows('1-wire hose', 'EN 853 type 1SN', oneWire),
  ...rows('2-wire hose', 'EN 853 type 2SN', twoWire),
  ...rows('compact 1-wire hose', 'EN 857 type 1SC, from memory', between(oneWire, 4, 16)),
  ...rows('compact 2-wire hose', 'EN 857 type 2SC, from memory', between(twoWire, 4, 16)),
  ...rows('suction hose', 'SAE J517 100R4, from memory', [
    [12, 21],
    [16, 17],
    [20, 14],
    [24, 10],
    [32, 7],
  ]),
  ...rows('return hose', 'SAE J517 100R6, from memory', [
    [4, 28],
    [5, 28],
    [6, 28],
    [8, 28],
    [10, 24],
    [12, 21],
  ]),
]

/** Kinds that the table knows. */
export const hoseKinds: readonly string[] = [...new Set(hoseRatings.map((row) => row.kind))]

/** Rating of a hose; null where the table has none. */
export const hoseRating = (kind: string | null, dash: number | null): Pascals | null => {
  const row = hoseRatings.find((rating) => rating.kind === kind && rating.dash === dash)
  return row === undefined ? null : pascalsFromBar(row.bar)
}
