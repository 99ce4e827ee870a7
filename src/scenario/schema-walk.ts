/** Ways through plain data and through the schema that checks it. */
import type { Path } from './problems.ts'

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
  /** Of a list with so many entries. */
  readonly items?: readonly unknown[]
}

/** What a schema is (or wraps): an object, a record, a list or a union; nothing of these for a plain value. */
export const inside = (schema: unknown): Inside => {
  let inner = schema as { def?: Inside & { innerType?: unknown; in?: unknown } } | undefined
  for (let i = 0; i < 10 && inner?.def !== undefined; i++) {
    const { shape, valueType, element, options, items } = inner.def
    if ((shape ?? valueType ?? element ?? options ?? items) !== undefined) return inner.def
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
  const { shape, valueType, element, options, items } = inside(schema)
  if (shape !== undefined) return Object.hasOwn(shape, String(step)) ? shape[String(step)] : undefined
  return (
    valueType ??
    element ??
    items?.[Number(step)] ??
    options?.map((option) => stepInto(option, step)).find((found) => found !== undefined)
  )
}

/** Schema of what stands at a path; undefined where nothing is taken there. */
export const schemaAt = (schema: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, step) => stepInto(at, step), schema)

/** Keys that are taken at a path of a schema. */
export const keysAt = (schema: unknown, path: Path): readonly string[] => keysOf(schemaAt(schema, path))
