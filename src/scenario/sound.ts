/**
 * Of a file with mistakes in it, what is sound: so that a mistake in one place does not hide those in others. What spans
 * several keys is judged only where all of them could be read.
 */
import type { z } from 'zod'
import type { Json } from '../question.ts'
import { isMapping } from './patch.ts'
import type { Path } from './problems.ts'
import { inside } from './schema-walk.ts'

/** True where a mistake lies at, above or under a place; `*` stands for any name. Nothing more can be told there. */
export type Unclear = (...path: Path) => boolean

const meets = (a: Path, b: Path): boolean =>
  a.every((step, i) => i >= b.length || step === '*' || b[i] === '*' || String(step) === String(b[i]))

/** Places with a mistake, as a question to ask. */
export const unclearAt =
  (places: readonly Path[]): Unclear =>
  (...path) =>
    places.some((place) => meets(place, path))

/** Nothing is wrong anywhere. */
export const CLEAR: Unclear = () => false

const entries = (value: { readonly [key: string]: Json }, schemaOf: (key: string) => unknown): unknown =>
  Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) => {
      const schema = schemaOf(key)
      const sound = schema === undefined ? undefined : soundPart(schema, inner)
      return sound === undefined ? [] : [[key, sound]]
    }),
  )

/**
 * What a schema makes of a value, without whatever it refuses; entries of a list keep their number.
 * @returns undefined where nothing of it is sound
 */
export const soundPart = (schema: unknown, value: Json): unknown => {
  const read = (schema as z.ZodType).safeParse(value)
  if (read.success) return read.data
  const { shape, valueType, element } = inside(schema)
  if (shape !== undefined && isMapping(value))
    return entries(value, (key) => (Object.hasOwn(shape, key) ? shape[key] : undefined))
  if (valueType !== undefined && isMapping(value)) return entries(value, () => valueType)
  if (element !== undefined && Array.isArray(value))
    return (value as readonly Json[]).map((one) => soundPart(element, one))
  return undefined
}
