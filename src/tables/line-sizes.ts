/** Nominal bore of a hose by dash size (sixteenths of an inch). One row a size; a stated bore wins over the table. */
import { metresFromMm } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'

export interface LineSize {
  readonly dash: number
  readonly boreMm: number
  readonly source: string
}

const source = 'EN 853 / SAE J517 dash sizes, nominal bore'

export const lineSizes: readonly LineSize[] = (
  [
    [3, 4.8],
    [4, 6.4],
    [5, 7.9],
    [6, 9.5],
    [8, 12.7],
    [10, 15.9],
    [12, 19.0],
    [16, 25.4],
    [20, 31.8],
    [24, 38.1],
    [32, 50.8],
  ] as const
).map(([dash, boreMm]) => ({ dash, boreMm, source }))

/** Bore of a dash size; null where there is no such size. */
export const boreOfDash = (dash: number): Metres | null => {
  const row = lineSizes.find((size) => size.dash === dash)
  return row === undefined ? null : metresFromMm(row.boreMm)
}
