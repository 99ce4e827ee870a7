/** Turns what zod found into flaws with closed codes and words of the trade. */
import type { z } from 'zod'
import type { Json } from '../question.ts'
import { expectedOf, isList, isText, typeOf } from './expected.ts'
import { groupFor, keyMeant, shownPath } from './hints.ts'
import { didYouMean, type Flaw, oneOf, type Path } from './problems.ts'
import { keysAt, schemaAt, valueAt } from './schema-walk.ts'
import { commaIn, valueMeant } from './value-meant.ts'
import type { IssueFlaw } from './values.ts'

type Issue = z.core.$ZodIssue
type Told = Pick<Flaw, 'code' | 'message' | 'expected' | 'remedy'>

const kindOf = (value: unknown): string => {
  if (value === null) return 'nothing'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group of keys'
  if (typeof value === 'number' && !Number.isFinite(value)) return `a number that is none (${value})`
  return JSON.stringify(value) ?? String(value)
}

/** "title", "entry 2 of "terms"": the place by its name. */
const nameOf = (path: Path): string => {
  const last = path.at(-1)
  return typeof last === 'number' ? `entry ${last + 1} of "${path.at(-2)}"` : `"${last}"`
}

const missing = (path: Path, schema: unknown): Flaw => ({
  code: 'key-missing',
  path,
  message: `${nameOf(path)} is missing${path.length > 1 ? ` under "${shownPath(path.slice(0, -1))}"` : ''}`,
  expected: expectedOf(schemaAt(schema, path)),
  remedy: null,
})

const unknownKeys = (keys: readonly string[], path: Path, schema: unknown): Flaw[] => {
  const known = keysAt(schema, path)
  return keys.map((key) => ({
    code: 'key-unknown',
    path: [...path, key],
    atKey: true,
    message: `"${key}" is no key${path.length > 0 ? ` under "${shownPath(path)}"` : ' of this file'}`,
    expected: known.length > 0 ? oneOf(known) : null,
    // In braces {a: 7,400} is a: 7 and a key 400.
    remedy: keyMeant(key, path, schema) ?? (/^\d/u.test(key) ? 'a number is written without a comma' : null),
  }))
}

/** Of a union, the branch that came closest: the one whose issues lie deepest, and that is not of another kind. */
const closest = (branches: readonly (readonly Issue[])[], value: unknown): readonly Issue[] => {
  const isBounds = ({ code }: Issue) => code === 'too_small' || code === 'too_big'
  const weight = (issues: readonly Issue[]) =>
    10 * Math.max(0, ...issues.map((issue) => issue.path.length)) +
    (typeof value === 'number' && issues.some(isBounds) ? 2 : 0) +
    (issues.some(({ code }) => code === 'custom') ? 1 : 0)
  return [...branches].sort((a, b) => weight(b) - weight(a))[0] ?? []
}

const isWithin = (issue: Issue): boolean =>
  issue.path.length > 0 || issue.code === 'custom' || issue.code === 'too_small' || issue.code === 'too_big'

const entries = (count: string): string => `${count} ${/(?:^| )1$/u.test(count) ? 'entry' : 'entries'}`

/** A list that is too long or too short, a text that is, or a number outside its bounds. */
const outOfBounds = (
  issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall,
  value: unknown,
  path: Path,
  at: unknown,
): Told | null => {
  const bound = issue.code === 'too_big' ? `at most ${issue.maximum}` : `at least ${issue.minimum}`
  if (Array.isArray(value)) {
    if (!isList(at)) return null
    const message = `the list has ${entries(String(value.length))}`
    const many = issue.code === 'too_big'
    if (typeOf(at) === 'tuple') {
      const remedy = many ? 'a comma begins another entry' : null
      return { code: 'list-of-wrong-length', message, expected: expectedOf(at), remedy }
    }
    return { code: 'list-of-wrong-length', message, expected: entries(bound), remedy: many ? 'take some out' : null }
  }
  if (typeof value === 'number')
    return {
      code: 'number-out-of-range',
      message: `${value} is out of range`,
      expected: expectedOf(at),
      remedy: valueMeant(value, at),
    }
  // A text where a list belongs, or a list for a text: that it is of another kind is told by an issue of its own.
  if (typeof value !== 'string' || issue.origin !== 'string' || !isText(at)) return null
  if (issue.code === 'too_big')
    return {
      code: 'text-too-long',
      message: `a text of ${value.trim().length} characters`,
      expected: `${bound} characters`,
      remedy: 'shorten it',
    }
  const mayGo = (at as z.ZodType).safeParse(undefined).success && typeof path.at(-1) === 'string'
  return {
    code: 'key-missing',
    message: `${nameOf(path)} is blank`,
    expected: expectedOf(at),
    remedy: mayGo ? 'leave the key out where there is nothing to say' : null,
  }
}

const wordFlaw = (values: readonly unknown[], value: unknown, at: unknown): Told => {
  const words = values.map(String)
  const allTexts = values.every((one) => typeof one === 'string')
  return {
    code: 'word-unknown',
    message: `${kindOf(value)} is not known here`,
    expected: allTexts ? oneOf(words) : expectedOf(at),
    remedy: typeof value === 'string' && allTexts ? didYouMean(value, words) : valueMeant(value, at),
  }
}

const wrongKind = (value: unknown, path: Path, schema: unknown): Told => {
  const at = schemaAt(schema, path)
  const group = groupFor(value, path, schema)
  const expected = expectedOf(at)
  // The words of a text say what it is, not that it has to be one.
  const asText = typeof value !== 'string' && isText(at) && expected !== 'a text' ? `a text: ${expected}` : expected
  return {
    code: 'value-of-wrong-kind',
    message: `${kindOf(value)} does not belong here`,
    expected: asText,
    remedy: group ?? valueMeant(value, at),
  }
}

const toldOf = (issue: Issue, value: unknown, path: Path, schema: unknown): Told | null => {
  const at = schemaAt(schema, path)
  if (issue.code === 'too_small' || issue.code === 'too_big') return outOfBounds(issue, value, path, at)
  if (issue.code === 'invalid_value') return wordFlaw(issue.values, value, at)
  return commaIn(value, at) ?? wrongKind(value, path, schema)
}

const flawsOfIssue = (issue: Issue, data: unknown, schema: unknown, base: Path): Flaw[] => {
  const path: Path = [...base, ...(issue.path as Path)]
  const value = valueAt(data, path)
  const custom = issue.code === 'custom' ? (issue.params as { flaw?: IssueFlaw } | undefined)?.flaw : undefined
  if (custom !== undefined) return [{ ...custom, path }]
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue.keys, path, schema)
  // A key that was left blank is as good as one that is not there.
  if (value === undefined || value === null) return [missing(path, schema)]
  if (issue.code === 'invalid_union') {
    const branch = closest(issue.errors, value)
    if (branch.some(isWithin)) return branch.flatMap((inner) => flawsOfIssue(inner, data, schema, path))
  }
  const told = toldOf(issue, value, path, schema)
  return told === null ? [] : [{ ...told, path }]
}

/** Everything that is wrong with some plain data under a schema, each flaw once. */
export const flawsOf = (error: z.ZodError, data: Json, schema: unknown, base: Path = []): Flaw[] => {
  const seen = new Set<string>()
  return error.issues
    .flatMap((issue) => flawsOfIssue(issue, data, schema, base))
    .filter((flaw) => {
      const key = `${flaw.code}|${flaw.path.join('/')}|${flaw.message}`
      const isNew = !seen.has(key)
      seen.add(key)
      return isNew
    })
}
