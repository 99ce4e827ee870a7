/**
 * Working pressure and smallest bend radius of hoses by kind and dash size (proof 2 times, burst 4 times the working
 * pressure). A hose with its own figures on the parts list goes by those.
 */
import { metresFromMm, pascalsFromBar } from '../units/shop-units.ts'
import type { Metres, Pascals } from '../units/si.ts'
import type { SourceKey } from './sources.ts'

export interface HoseRating {
  readonly kind: string
  readonly dash: number
  readonly maxBar: number
  readonly bendMinMm: number
  readonly source: SourceKey
}

/** Kinds that have rows here, with the type that the standard gives them. */
export const hoseKinds: readonly { readonly kind: string; readonly type: string }[] = [
  { kind: '1-wire hose', type: 'EN 853 1SN' },
  { kind: '2-wire hose', type: 'EN 853 2SN' },
  { kind: 'compact 1-wire hose', type: 'EN 857 1SC' },
  { kind: 'compact 2-wire hose', type: 'EN 857 2SC' },
  { kind: 'suction hose', type: 'SAE 100R4' },
  { kind: 'return hose', type: 'SAE 100R6' },
]

// biome-ignore format: one row a line reads as the table it is
export const hoseRatings: readonly HoseRating[] = [
  { kind: '1-wire hose', dash: 3, maxBar: 250, bendMinMm: 90, source: 'en-853' },
  { kind: '1-wire hose', dash: 4, maxBar: 225, bendMinMm: 100, source: 'en-853' },
  { kind: '1-wire hose', dash: 5, maxBar: 215, bendMinMm: 115, source: 'en-853' },
  { kind: '1-wire hose', dash: 6, maxBar: 180, bendMinMm: 130, source: 'en-853' },
  { kind: '1-wire hose', dash: 8, maxBar: 160, bendMinMm: 180, source: 'en-853' },
  { kind: '1-wire hose', dash: 10, maxBar: 130, bendMinMm: 200, source: 'en-853' },
  { kind: '1-wire hose', dash: 12, maxBar: 105, bendMinMm: 240, source: 'en-853' },
  { kind: '1-wire hose', dash: 16, maxBar: 88, bendMinMm: 300, source: 'en-853' },
  { kind: '1-wire hose', dash: 20, maxBar: 63, bendMinMm: 420, source: 'en-853' },
  { kind: '1-wire hose', dash: 24, maxBar: 50, bendMinMm: 500, source: 'en-853' },
  { kind: '1-wire hose', dash: 32, maxBar: 40, bendMinMm: 630, source: 'en-853' },
  { kind: '2-wire hose', dash: 3, maxBar: 415, bendMinMm: 90, source: 'en-853' },
  { kind: '2-wire hose', dash: 4, maxBar: 400, bendMinMm: 100, source: 'en-853' },
  { kind: '2-wire hose', dash: 5, maxBar: 350, bendMinMm: 115, source: 'en-853' },
  { kind: '2-wire hose', dash: 6, maxBar: 330, bendMinMm: 130, source: 'en-853' },
  { kind: '2-wire hose', dash: 8, maxBar: 275, bendMinMm: 180, source: 'en-853' },
  { kind: '2-wire hose', dash: 10, maxBar: 250, bendMinMm: 200, source: 'en-853' },
  { kind: '2-wire hose', dash: 12, maxBar: 215, bendMinMm: 240, source: 'en-853' },
  { kind: '2-wire hose', dash: 16, maxBar: 165, bendMinMm: 300, source: 'en-853' },
  { kind: '2-wire hose', dash: 20, maxBar: 125, bendMinMm: 420, source: 'en-853' },
  { kind: '2-wire hose', dash: 24, maxBar: 90, bendMinMm: 500, source: 'en-853' },
  { kind: '2-wire hose', dash: 32, maxBar: 80, bendMinMm: 630, source: 'en-853' },
  { kind: 'compact 1-wire hose', dash: 4, maxBar: 225, bendMinMm: 75, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 5, maxBar: 215, bendMinMm: 85, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 6, maxBar: 180, bendMinMm: 90, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 8, maxBar: 160, bendMinMm: 130, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 10, maxBar: 130, bendMinMm: 150, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 12, maxBar: 105, bendMinMm: 180, source: 'en-857' },
  { kind: 'compact 1-wire hose', dash: 16, maxBar: 88, bendMinMm: 230, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 4, maxBar: 400, bendMinMm: 75, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 5, maxBar: 350, bendMinMm: 85, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 6, maxBar: 330, bendMinMm: 90, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 8, maxBar: 275, bendMinMm: 130, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 10, maxBar: 250, bendMinMm: 170, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 12, maxBar: 215, bendMinMm: 200, source: 'en-857' },
  { kind: 'compact 2-wire hose', dash: 16, maxBar: 165, bendMinMm: 250, source: 'en-857' },
  { kind: 'suction hose', dash: 12, maxBar: 21, bendMinMm: 125, source: 'sae-100r4' },
  { kind: 'suction hose', dash: 16, maxBar: 17, bendMinMm: 150, source: 'sae-100r4' },
  { kind: 'suction hose', dash: 20, maxBar: 14, bendMinMm: 200, source: 'sae-100r4' },
  { kind: 'suction hose', dash: 24, maxBar: 10, bendMinMm: 255, source: 'sae-100r4' },
  { kind: 'suction hose', dash: 32, maxBar: 7, bendMinMm: 305, source: 'sae-100r4' },
  { kind: 'return hose', dash: 4, maxBar: 28, bendMinMm: 65, source: 'sae-100r6' },
  { kind: 'return hose', dash: 5, maxBar: 28, bendMinMm: 75, source: 'sae-100r6' },
  { kind: 'return hose', dash: 6, maxBar: 28, bendMinMm: 75, source: 'sae-100r6' },
  { kind: 'return hose', dash: 8, maxBar: 28, bendMinMm: 100, source: 'sae-100r6' },
  { kind: 'return hose', dash: 10, maxBar: 24, bendMinMm: 125, source: 'sae-100r6' },
  { kind: 'return hose', dash: 12, maxBar: 21, bendMinMm: 150, source: 'sae-100r6' },
]

const rowOf = (kind: string, dash: number): HoseRating | undefined =>
  hoseRatings.find((row) => row.kind === kind && row.dash === dash)

/** Working pressure [Pa] of a kind and size; null where the table has none. */
export const hosePressure = (kind: string, dash: number): Pascals | null => {
  const row = rowOf(kind, dash)
  return row === undefined ? null : pascalsFromBar(row.maxBar)
}

/** Smallest bend radius [m] of a kind and size; null where the table has none. */
export const hoseBendRadius = (kind: string, dash: number): Metres | null => {
  const row = rowOf(kind, dash)
  return row === undefined ? null : metresFromMm(row.bendMinMm)
}

/** True where `kind` is one that a standard rates; any other kind needs its own maximum pressure. */
export const isRatedKind = (kind: string): boolean => hoseKinds.some((known) => known.kind === kind)
