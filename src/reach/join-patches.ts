/** Merge patches of places that have nothing in common, as one. */
import type { Json } from '../question.ts'

type Mapping = { readonly [key: string]: Json }

const isMapping = (value: Json | undefined): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const joined = (one: Mapping, other: Mapping): Mapping => {
  const result: { [key: string]: Json } = { ...one }
  for (const [key, value] of Object.entries(other)) {
    const there = result[key]
    // What one takes out, none can change.
    if (there === null) continue
    result[key] = isMapping(there) && isMapping(value) ? joined(there, value) : value
  }
  return result
}

/** A later patch wins where two write the same figure; what one takes out stays out. */
export const joinPatches = (patches: readonly Mapping[]): Mapping =>
  patches.reduce<Mapping>((all, next) => joined(all, next), {})
