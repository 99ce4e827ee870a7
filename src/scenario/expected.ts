/** What belongs at a place of a file, in words for a shop, read from the schema that checks it. */
import { oneOf } from './problems.ts'

interface Check {
  readonly check?: string
  readonly value?: unknown
  readonly inclusive?: boolean
  readonly format?: string
}

interface Definition {
  readonly type?: string
  readonly innerType?: unknown
  readonly in?: unknown
  readonly shape?: object
  readonly options?: readonly unknown[]
  readonly element?: unknown
  readonly valueType?: unknown
  readonly values?: readonly unknown[]
  readonly checks?: readonly { readonly _zod: { readonly def: Check } }[]
}

/** What a schema is once everything around it is taken off: what may be left out, what is made of it. */
const kernel = (schema: unknown): Definition => {
  let def = (schema as { def?: Definition } | undefined)?.def ?? {}
  for (let inner = def.innerType ?? def.in; inner !== undefined; inner = def.innerType ?? def.in)
    def = (inner as { def?: Definition }).def ?? {}
  return def
}

/** "object", "array", "number", "string" …: what a file has to hold there. */
export const typeOf = (schema: unknown): string => kernel(schema).type ?? ''

/** What a list takes as its entries; undefined where it is no list of any number of them. */
export const entryOf = (schema: unknown): unknown => kernel(schema).element

/** A text, and nothing else, is taken there. */
export const isText = (schema: unknown): boolean => typeOf(schema) === 'string'

/** A list is taken there, of any or of so many entries. */
export const isList = (schema: unknown): boolean => ['array', 'tuple'].includes(typeOf(schema))

/** "0 to 366", "above 0 and up to 1000", "0 or more"; empty where any number serves. */
const rangeIn = (checks: readonly Check[]): string => {
  const least = checks.find(({ check }) => check === 'greater_than')
  const most = checks.find(({ check }) => check === 'less_than')
  const above = least?.inclusive === false
  if (least === undefined) return most === undefined ? '' : `at most ${most.value}`
  if (most === undefined) return above ? `above ${least.value}` : `${least.value} or more`
  return above ? `above ${least.value} and up to ${most.value}` : `${least.value} to ${most.value}`
}

const numberIn = ({ checks = [] }: Definition): string => {
  const all = checks.map(({ _zod }) => _zod.def)
  const kind = all.some(({ format }) => format !== undefined) ? 'a whole number' : 'a plain number'
  return [kind, rangeIn(all)].filter((text) => text !== '').join(', ')
}

const bare = (value: unknown): string => (typeof value === 'string' ? `"${value}"` : String(value))

const wordsOf = (schema: unknown): string | null => {
  const def = kernel(schema)
  switch (def.type) {
    case 'object':
      return `a group with ${Object.keys(def.shape ?? {})
        .map((name) => `"${name}"`)
        .join(', ')}`
    case 'record':
      return typeOf(def.valueType) === 'object' ? 'names of your own, each with a group of keys' : 'a group of keys'
    case 'array':
      return typeOf(def.element) === 'object' ? `a list, each entry ${wordsOf(def.element)}` : 'a list'
    case 'tuple':
      return 'a list'
    case 'string':
      return 'a text'
    case 'number':
      return numberIn(def)
    case 'boolean':
      return 'yes or no'
    case 'literal':
      return (def.values?.length ?? 0) > 1 ? `one of ${def.values?.map(bare).join(', ')}` : bare(def.values?.[0])
    case 'enum':
      return oneOf((schema as { options?: readonly string[] }).options ?? [])
    case 'union':
      return [...new Set((def.options ?? []).map(expectedOf))].filter((text) => text !== null).join(', or ')
    default:
      return null
  }
}

/** What a schema says of itself, or the one that it is made from; null where it says nothing. */
const saidOf = (schema: unknown): string | null => {
  let inner = schema as { description?: string; def?: Definition } | undefined
  while (inner !== undefined && inner !== null) {
    if (typeof inner.description === 'string') return inner.description
    inner = (inner.def?.innerType ?? inner.def?.in) as typeof inner
  }
  return null
}

/** What is wanted where a schema stands: its own words where it has some, else the kind of value with its bounds. */
export const expectedOf = (schema: unknown): string | null => {
  const [said, words] = [saidOf(schema), wordsOf(schema)]
  if (words === null || typeOf(schema) === 'object') return words ?? said
  if (said === null) return words
  if (said.startsWith('default:')) return `${words}; ${said}`
  const tellsMore = ['array', 'record', 'number'].includes(typeOf(schema))
  return tellsMore ? `${words}; ${said}` : said
}
