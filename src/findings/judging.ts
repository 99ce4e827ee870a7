/** Holding a value against a limit, the same way in every check. */
import type { Severity } from '../evaluation.ts'
import type { Judged } from './check.ts'

/** Rounding in a unit conversion must not make a finding of a value that stands on its limit. */
const HAIR = 1e-9

/** Value above limit, by more than rounding. */
export const isAbove = (value: number, limit: number): boolean => value > limit + HAIR * Math.abs(limit)

/** Value below limit, by more than rounding. */
export const isBelow = (value: number, limit: number): boolean => value < limit - HAIR * Math.abs(limit)

/** What is held against what. */
export interface Held {
  readonly component: string
  readonly value: number
  readonly limit: number
  readonly unit: string
  readonly source: string
}

/** Within the limit up to and including it; `over` above. */
export const atMost = (held: Held, over: Exclude<Severity, 'ok'>): Judged => ({
  ...held,
  severity: isAbove(held.value, held.limit) ? over : 'ok',
  worseWhenHigher: true,
})

/** Within the limit down to and including it; `under` below. */
export const atLeast = (held: Held, under: Exclude<Severity, 'ok'>): Judged => ({
  ...held,
  severity: isBelow(held.value, held.limit) ? under : 'ok',
  worseWhenHigher: false,
})

/** Two words that must be one: "SAE A 2-bolt" as fitted against what is there. Case and blanks do not count. */
export const sameText = (one: string, other: string): boolean => plain(one) === plain(other)

const plain = (text: string): string => text.toLowerCase().replaceAll(/\s+/g, ' ').trim()

const order: { readonly [severity in Severity]: number } = { ok: 0, watch: 1, change: 2, stop: 3 }

/** One severity worse than another: ok, watch, change, stop. */
export const isWorse = (one: Severity, other: Severity): boolean => order[one] > order[other]
