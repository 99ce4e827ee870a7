/** A candidate: for every place "keep", or one of its parts. */

import { joinPatches } from './join-patches.ts'
import type { Patch, Place } from './places.ts'

/** For each place the index of its option; -1 keeps what is there. */
export type Candidate = readonly number[]

export const KEEP = -1

export const patchOf = (places: readonly Place[], candidate: Candidate): Patch =>
  joinPatches(
    candidate.flatMap((option, i) => {
      const patch = places[i]?.options[option]?.patch
      return patch === undefined ? [] : [patch]
    }),
  )

export const changesIn = (candidate: Candidate): number => candidate.filter((option) => option !== KEEP).length

/** Combinations of the list: one more than its parts for each place, multiplied. */
export const combinations = (places: readonly Place[]): number =>
  places.reduce((product, { options }) => product * (options.length + 1), 1)

/** Fewer changes first, then the place that comes first with the part whose id sorts first. The list's order never matters. */
export const simplerFirst = (one: Candidate, other: Candidate): number => {
  const changes = changesIn(one) - changesIn(other)
  if (changes !== 0) return changes
  // Options stand in the order of their ids.
  const rank = (option: number | undefined) =>
    option === undefined || option === KEEP ? Number.MAX_SAFE_INTEGER : option
  for (const [i, option] of one.entries()) {
    const difference = rank(option) - rank(other[i])
    if (difference !== 0) return difference
  }
  return 0
}
