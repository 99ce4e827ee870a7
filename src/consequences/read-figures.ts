/**
 * Reading the figures of a part on the list: in SI, from what the shop wrote. The figures were checked when the files were
 * read; what cannot be read here counts as not stated.
 */
import type { Connection } from '../machine.ts'
import type { Json } from '../question.ts'
import { readConnection } from '../scenario/read-connection.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import type { Dimension } from '../units/dimensions.ts'
import { parseQuantity } from '../units/quantity.ts'

export type Written = { readonly [key: string]: Json }

/** One entry of the list with its figures. */
export interface Stocked<Figures> {
  readonly part: Part
  readonly figures: Figures
}

/** A mapping as written; an empty one for anything else. */
export const mapping = (value: Json | undefined): Written =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Written) : {}

/** A quantity in SI, null where it is not stated. */
export const quantity = (written: Written, key: string, dimension: Dimension): number | null => {
  const value = written[key]
  if (typeof value !== 'string' && typeof value !== 'number') return null
  const read = parseQuantity(value, dimension)
  return read.ok ? read.quantity.si : null
}

/** A word or text, null where it is not stated. */
export const words = (written: Written, key: string): string | null => {
  const value = written[key]
  return typeof value === 'string' && value.trim() !== '' ? value.trim() : null
}

/** A plain number, null where it is not stated. */
export const count = (written: Written, key: string): number | null => {
  const value = written[key]
  return typeof value === 'number' ? value : null
}

/** Dash size of `hose`: 8 for -8. */
export const dashOf = (written: Written): number | null => {
  const match = /^-?(\d{1,2})$/u.exec(String(written.hose ?? '').trim())
  return match === null ? null : Number(match[1])
}

/** A thread, port or flange in the list's own words; null where it is none (a plate or a hub). */
export const connectionOf = (value: Json | undefined): Connection | null => {
  if (typeof value !== 'string' && typeof value !== 'number') return null
  const read = readConnection(String(value))
  return 'family' in read ? read : null
}

/** A port of `ports`. */
export const port = (written: Written, name: string): Connection | null => connectionOf(mapping(written.ports)[name])

/** What is read of a list is read once for each shop: a search asks for it thousands of times. */
export const perShop = <T>(read: (shop: Shop) => T): ((shop: Shop) => T) => {
  const known = new WeakMap<Shop, T>()
  return (shop) => {
    const before = known.get(shop)
    if (before !== undefined) return before
    const now = read(shop)
    known.set(shop, now)
    return now
  }
}

/** Every part of a kind, in the list's order, with its figures. */
export const list = <F>(shop: Shop, kind: PartKind, read: (written: Written) => F): readonly Stocked<F>[] =>
  shop.parts.filter((part) => part.kind === kind).map((part) => ({ part, figures: read(part.figures) }))

/** Parts without figures that a choice reads. */
export const plainParts = (shop: Shop, kind: PartKind) => list(shop, kind, () => ({}))
