/** Turns what zod found into flaws with closed codes and words of the trade. */
import type { z } from 'zod'
import type { Json } from '../question.ts'
import { groupFor, keyMeant, shownPath } from './hints.ts'
import { didYouMean, type Flaw, oneOf, type Path } from './problems.ts'
import { descriptionAt, keysAt, valueAt } from './schema-walk.ts'
import type { IssueFlaw } from './values.ts'

type Issue = z.core.$ZodIssue

const kindOf = (value: unknown): string => {
  if (value === null) return 'nothing'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group of keys'
  return JSON.stringify(value) ?? String(value)
}

/** What zod calls a kind of value, in words for a shop. */
const KINDS: { readonly [kind: string]: string } = {
  object: 'a group of keys',
  record: 'a group of keys',
  array: 'a list',
  tuple: 'a list',
  string: 'a text',
  number: 'a plain number',
  int: 'a whole number',
  boolean: 'yes or no',
}

const missing = (path: Path, schema: unknown): Flaw => ({
  code: 'key-missing',
  path,
  message: `"${path.at(-1)}" is missing${path.length > 1 ? ` under "${shownPath(path.slice(0, -1))}"` : ''}`,
  expected: descriptionAt(schema, path),
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
    remedy: keyMeant(key, path, schema),
  }))
}

/** Of a union, the branch that came closest: the one whose issues lie deepest. */
const closest = (branches: readonly (readonly Issue[])[]): readonly Issue[] => {
  const depth = (issues: readonly Issue[]) => Math.max(0, ...issues.map((issue) => issue.path.length))
  return [...branches].sort((a, b) => depth(b) - depth(a))[0] ?? []
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
    const branch = closest(issue.errors)
    if (branch.some((inner) => inner.path.length > 0 || inner.code === 'custom'))
      return branch.flatMap((inner) => flawsOfIssue(inner, data, schema, path))
  }
  if ((issue.code === 'too_small' || issue.code === 'too_big') && !Array.isArray(value))
    return [
      {
        code: 'number-out-of-range',
        path,
        message: `${kindOf(value)} is out of range`,
        expected: issue.message.replace(/^[^:]*: /u, ''),
        remedy: null,
      },
    ]
  if (issue.code === 'invalid_value')
    return [
      {
        code: 'word-unknown',
        path,
        message: `${kindOf(value)} is not known here`,
        expected: oneOf(issue.values.map(String)),
        remedy: typeof value === 'string' ? didYouMean(value, issue.values.map(String)) : null,
      },
    ]
  const group = groupFor(value, path, schema)
  const kind = 'expected' in issue ? (KINDS[issue.expected] ?? issue.expected) : null
  const told = [typeof value === 'number' ? kind : null, descriptionAt(schema, path)].filter((text) => text !== null)
  const expected = group?.expected ?? (told.length > 0 ? told.join('; ') : kind)
  const message = `${kindOf(value)} does not belong here`
  return [{ code: 'value-of-wrong-kind', path, message, expected, remedy: group?.remedy ?? null }]
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
