/**
 * Dash sizes of hoses: nominal bore, and the limits of the real bore. The dash is the bore in sixteenths of an inch.
 */
import { metresFromMm } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'
import type { SourceKey } from './sources.ts'

export interface LineSize {
  /** 8 for -8. */
  readonly dash: number
  /** Bore as the trade says it, in inches. */
  readonly label: string
  readonly dn: number
  readonly boreMm: number
  /** From memory of EN 853 table 1. */
  readonly boreMinMm: number
  /** From memory of EN 853 table 1. */
  readonly boreMaxMm: number
  readonly source: SourceKey
}

const SOURCE: SourceKey = 'hose-sizes'

export const lineSizes: readonly LineSize[] = [
  { dash: 3, label: '3/16', dn: 5, boreMm: 4.8, boreMinMm: 4.6, boreMaxMm: 5.4, source: SOURCE },
  { dash: 4, label: '1/4', dn: 6, boreMm: 6.4, boreMinMm: 6.2, boreMaxMm: 7.0, source: SOURCE },
  { dash: 5, label: '5/16', dn: 8, boreMm: 7.9, boreMinMm: 7.7, boreMaxMm: 8.5, source: SOURCE },
  { dash: 6, label: '3/8', dn: 10, boreMm: 9.5, boreMinMm: 9.3, boreMaxMm: 10.1, source: SOURCE },
  { dash: 8, label: '1/2', dn: 12, boreMm: 12.7, boreMinMm: 12.3, boreMaxMm: 13.5, source: SOURCE },
  { dash: 10, label: '5/8', dn: 16, boreMm: 15.9, boreMinMm: 15.5, boreMaxMm: 16.7, source: SOURCE },
  { dash: 12, label: '3/4', dn: 19, boreMm: 19.0, boreMinMm: 18.6, boreMaxMm: 19.8, source: SOURCE },
  { dash: 16, label: '1', dn: 25, boreMm: 25.4, boreMinMm: 25.0, boreMaxMm: 26.4, source: SOURCE },
  { dash: 20, label: '1-1/4', dn: 31, boreMm: 31.8, boreMinMm: 31.4, boreMaxMm: 33.0, source: SOURCE },
  { dash: 24, label: '1-1/2', dn: 38, boreMm: 38.1, boreMinMm: 37.7, boreMaxMm: 39.3, source: SOURCE },
  { dash: 32, label: '2', dn: 51, boreMm: 50.8, boreMinMm: 50.4, boreMaxMm: 52.0, source: SOURCE },
]

/** Nominal bore [m] of a dash size (8 for -8); null where no such size exists. */
export const nominalBore = (dash: number): Metres | null => {
  const row = lineSizes.find((size) => size.dash === dash)
  return row === undefined ? null : metresFromMm(row.boreMm)
}

/** The sizes that exist, as they are written: "-4", "-5", "-6". */
export const dashTexts = (): readonly string[] => lineSizes.map((size) => `-${size.dash}`)
