/** Turns what zod found into flaws with closed codes and words of the trade. */
import type { z } from 'zod'
import type { Json } from '../question.ts'
import { didYouMean, type Flaw, oneOf, type Path } from './problems.ts'
import type { IssueFlaw } from './values.ts'

type Issue = z.core.$ZodIssue

const isMapping = (value: unknown): value is { readonly [key: string]: unknown } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Value on a path of plain data; undefined where the path ends early. */
export const valueAt = (data: unknown, path: Path): unknown => {
  let value: unknown = data
  for (const step of path) {
    if (Array.isArray(value)) value = value[Number(step)]
    else if (isMapping(value) && Object.hasOwn(value, String(step))) value = value[String(step)]
    else return undefined
  }
  return value
}

interface Inside {
  readonly shape?: { readonly [key: string]: unknown }
  readonly valueType?: unknown
  readonly element?: unknown
  readonly options?: readonly unknown[]
}

/** What a schema is (or wraps): an object, a record, a list or a union; nothing of these for a plain value. */
export const inside = (schema: unknown): Inside => {
  let inner = schema as { def?: Inside & { innerType?: unknown; in?: unknown } } | undefined
  for (let i = 0; i < 10 && inner?.def !== undefined; i++) {
    const { shape, valueType, element, options } = inner.def
    if ((shape ?? valueType ?? element ?? options) !== undefined) return inner.def
    inner = (inner.def.innerType ?? inner.def.in) as typeof inner
  }
  return {}
}

/** Keys that a schema takes, where it is (or wraps) an object. */
const keysOf = (schema: unknown): readonly string[] => {
  const { shape, options } = inside(schema)
  return shape !== undefined ? Object.keys(shape) : (options ?? []).flatMap((option) => keysOf(option))
}

const stepInto = (schema: unknown, step: string | number): unknown => {
  const { shape, valueType, element, options } = inside(schema)
  if (shape !== undefined) return Object.hasOwn(shape, String(step)) ? shape[String(step)] : undefined
  return valueType ?? element ?? options?.map((option) => stepInto(option, step)).find((found) => found !== undefined)
}

/** Schema of what stands at a path; undefined where nothing is taken there. */
export const schemaAt = (schema: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, step) => stepInto(at, step), schema)

/** Keys that are taken at a path of a schema. */
export const keysAt = (schema: unknown, path: Path): readonly string[] => keysOf(schemaAt(schema, path))

const descriptionAt = (schema: unknown, path: Path): string | null => {
  let inner = schemaAt(schema, path) as {
    description?: string
    def?: { innerType?: unknown; in?: unknown }
  }
  for (let i = 0; i < 10 && inner !== undefined && inner !== null; i++) {
    if (typeof inner.description === 'string') return inner.description
    inner = (inner.def?.innerType ?? inner.def?.in) as typeof inner
  }
  return null
}

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
  message: `"${path.at(-1)}" is missing${path.length > 1 ? ` under "${path.at(-2)}"` : ''}`,
  expected: descriptionAt(schema, path),
  remedy: null,
})

const unknownKeys = (keys: readonly string[], path: Path, schema: unknown): Flaw[] => {
  const known = keysAt(schema, path)
  return keys.map((key) => ({
    code: 'key-unknown',
    path: [...path, key],
    atKey: true,
    message: `"${key}" is no key${path.length > 0 ? ` under "${path.at(-1)}"` : ' of this file'}`,
    expected: known.length > 0 ? oneOf(known) : null,
    remedy: didYouMean(key, known),
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
  const expected =
    descriptionAt(schema, path) ?? ('expected' in issue ? (KINDS[issue.expected] ?? issue.expected) : null)
  return [
    { code: 'value-of-wrong-kind', path, message: `${kindOf(value)} does not belong here`, expected, remedy: null },
  ]
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
