/**
 * Groups of keys that were left blank, as on a survey sheet that is filled in bit by bit: a group that need not be there,
 * and that holds nothing but blanks, is not there. Groups that must be there stay, so that each blank in them is named.
 */
import type { z } from 'zod'
import type { Json } from '../question.ts'
import { isMapping } from './patch.ts'
import { keysAt, schemaAt } from './schema-walk.ts'

const isBlank = (value: Json | undefined): boolean =>
  value === null ||
  value === undefined ||
  (isMapping(value) && Object.keys(value).length > 0 && Object.values(value).every(isBlank))

/** A key of this schema may be left out. */
const mayBeAbsent = (schema: unknown): boolean => {
  const type = schema as z.ZodType | undefined
  return typeof type?.safeParse === 'function' && type.safeParse(undefined).success && type.safeParse(null).success
}

/** A schema that says which keys or names there are; what it leaves open is nobody's blank. */
const describes = (schema: unknown): boolean => keysAt(schema, []).length > 0 || schemaAt(schema, ['*']) !== undefined

/**
 * Plain data of a file without its blank groups.
 * @param schema of the file
 */
export const withoutBlanks = (data: Json, schema: unknown): Json => {
  if (!isMapping(data)) return data
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => {
      const inner = schemaAt(schema, [key])
      if (!isMapping(value) || !describes(inner)) return [key, value]
      return [key, mayBeAbsent(inner) && isBlank(value) ? null : withoutBlanks(value, inner)]
    }),
  )
}
