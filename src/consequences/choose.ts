/**
 * The one choice of a part: the smallest that meets every requirement of its place, among those that suit the place best
 * where that is told. Between parts of one size the cheaper, then the one that is there sooner, then the id that sorts
 * first; the order of the list never matters.
 */
import type { Part, Shop } from '../shop.ts'
import { priceOf } from './part-price.ts'

export interface Requirement<F> {
  /** In words, for saying why nothing fits: "rated flow of 44 L/min or more". */
  readonly what: string
  /** False too where the part does not state what is asked: not known is not met. */
  readonly met: (figures: F) => boolean
}

export interface Candidate<F> {
  readonly part: Part
  readonly figures: F
}

export type Choice<F> =
  | { readonly chosen: Candidate<F>; readonly failed: null }
  /** `failed`: the requirement that the last of the candidates did not meet. */
  | { readonly chosen: null; readonly failed: string }

const orLast = (value: number | null): number => value ?? Number.POSITIVE_INFINITY

const compare = (one: number, other: number): number => (one === other ? 0 : one < other ? -1 : 1)

/** Cheaper first (unpriced last), then sooner, then by id. */
export const cheaperFirst =
  (shop: Shop) =>
  (one: Part, other: Part): number =>
    compare(orLast(priceOf(one, shop)), orLast(priceOf(other, shop))) ||
    compare(orLast(one.leadDays), orLast(other.leadDays)) ||
    (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)

/**
 * Chooses a part.
 * @param candidates parts of the right kind, in any order
 * @param requirements all of them must be met; they are tried in this order, which decides what is named when none fits
 * @param size what "smallest" means here; candidates without a size count as largest
 * @param suits comes before size among those that meet everything: the most is taken; left out, all suit alike
 * @returns the part, or the requirement at which the last candidate fell out
 */
export const choose = <F>(
  candidates: readonly Candidate<F>[],
  requirements: readonly Requirement<F>[],
  size: (figures: F) => number | null,
  shop: Shop,
  suits: (figures: F) => number = () => 0,
): Choice<F> => {
  let left = candidates
  if (left.length === 0) return { chosen: null, failed: 'none on the parts list' }
  for (const { what, met } of requirements) {
    left = left.filter(({ figures }) => met(figures))
    if (left.length === 0) return { chosen: null, failed: what }
  }
  const byPrice = cheaperFirst(shop)
  const [chosen] = left.toSorted(
    (one, other) =>
      compare(suits(other.figures), suits(one.figures)) ||
      compare(orLast(size(one.figures)), orLast(size(other.figures))) ||
      byPrice(one.part, other.part),
  )
  return chosen === undefined ? { chosen: null, failed: 'none on the parts list' } : { chosen, failed: null }
}

/** At least so much, where it is stated. Rounding of a unit conversion does not count. */
export const atLeastStated = (value: number | null, needed: number): boolean =>
  value !== null && value >= needed * (1 - 1e-9)
