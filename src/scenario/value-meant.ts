/** What was probably meant by a value of the wrong kind: tried against the schema before it is offered. */
import type { z } from 'zod'
import { commaReadings } from '../units/quantity.ts'
import { entryOf, typeOf } from './expected.ts'
import type { IssueFlaw } from './values.ts'

/** A value that might serve, and how it is written. */
type Candidate = readonly [value: unknown, written: string]

const FIRST_NUMBER = /^[^\d.,-]{0,4}(-?\d+(?:\.\d+)?)(?:\s*[^\d.,\s].*)?$/u
const WITH_COMMA = /^-?\d[\d.]*(?:,\d+)+(?:\.\d+)?$/u

const isScalar = (value: unknown): value is string | number | boolean =>
  typeof value === 'string' || typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value))

/** As an entry of a list in brackets. */
const inBrackets = (value: string | number | boolean): string =>
  typeof value === 'string' && /[,:#[\]{}"']/u.test(value) ? JSON.stringify(value) : String(value)

const candidatesFor = (value: unknown): readonly Candidate[] => {
  if (Array.isArray(value)) {
    const [only] = value
    if (value.length === 1 && isScalar(only)) return [[only, String(only)]]
    // A text with a comma in brackets.
    const text = value.join(', ')
    return value.length > 1 && value.every(isScalar) ? [[text, `"${text}"`]] : []
  }
  if (typeof value === 'number' && value < 0) return [[-value, String(-value)]]
  if (!isScalar(value)) return []
  const number = typeof value === 'string' ? FIRST_NUMBER.exec(value)?.[1] : undefined
  return [
    ...(number === undefined ? [] : [[Number(number), number] as const, [-Number(number), number.slice(1)] as const]),
    ...(typeof value === 'string' ? [] : [[String(value), `"${value}"`] as const]),
    [[value], `[${inBrackets(value)}]`],
  ]
}

/** Words for "there is none". */
const NONE = /^(?:none|no|nothing|nil|n\/a|-+)$/iu

/**
 * How a value is written so that it serves.
 * @param schema of the place
 * @returns null where nothing that is tried serves
 */
export const valueMeant = (value: unknown, schema: unknown): string | null => {
  const type = schema as z.ZodType | undefined
  if (type === undefined) return null
  const serves = (one: unknown) => type.safeParse(one).success
  const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value)
  if (isGroup && typeOf(entryOf(schema)) === 'object') return 'begin each entry of the list with "- "'
  if (typeof value === 'string' && NONE.test(value.trim()) && serves(null))
    return 'leave the key out where there is none'
  const meant = candidatesFor(value).find(([one]) => serves(one))
  return meant === undefined ? null : `write ${meant[1]} if that is what you mean`
}

/** A number with a comma where a plain number is wanted; null where it is none. */
export const commaIn = (value: unknown, schema: unknown): IssueFlaw | null => {
  if (typeof value !== 'string' || typeOf(schema) !== 'number') return null
  const text = value.trim()
  if (!WITH_COMMA.test(text)) return null
  return {
    code: 'comma-in-number',
    message: `"${text}" can be read in two ways`,
    expected: 'a number without a comma',
    remedy: `write ${commaReadings(text).join(' or ')}`,
  }
}
