/** What is already known of a machine when its survey is written, and how each entry of the table stands. */
import type { Assumption, Json } from '../question.ts'
import type { SurveyEntry } from './entry.ts'

export interface Known {
  /** Plain data of the file as it was written; null for a blank survey. */
  readonly data: Json
  /** Of the machine as far as it can be worked out: what the tool took where nothing was read. */
  readonly assumptions: readonly Assumption[]
}

export const NOTHING_KNOWN: Known = { data: null, assumptions: [] }

/**
 * `read`: written down. `assumed`: written down, marked as assumed. `default`: the tool takes its own figure. `part`: comes
 * with a part of the parts list. `missing`: nothing can be worked out without it. `open`: not read.
 */
export type Standing = 'read' | 'assumed' | 'default' | 'part' | 'missing' | 'open'

export interface Stand {
  readonly standing: Standing
  /** As written, or as taken: "8 %"; '' where there is nothing. */
  readonly text: string
}

export type Group = { readonly [key: string]: Json }

export const isGroup = (value: Json | undefined): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const valueAt = (data: Json, path: readonly string[]): Json =>
  path.reduce<Json>((at, step) => (isGroup(at) && Object.hasOwn(at, step) ? (at[step] ?? null) : null), data)

/** A text that YAML takes without quotes: in a list or group too. */
const PLAIN = /^[\p{L}\p{N}°+−-][\p{L}\p{N} .°²³µ·%/±()"'_×+−-]*$/u
const WORDS = /^(?:true|false|null|~)$/iu
const NUMBER = /^(?:[-+]?[\d.][\d._eE+-]*|0[xo][\da-fA-F]+)$/u

const textOf = (value: string): string =>
  PLAIN.test(value) && !WORDS.test(value) && !NUMBER.test(value) && value === value.trim() && !value.startsWith('- ')
    ? value
    : JSON.stringify(value)

/** A value as it may stand in a file, on one line. */
export const written = (value: Json): string => {
  if (value === null) return ''
  if (typeof value === 'string') return textOf(value)
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  const inner = (item: Json) => (item === null ? 'null' : written(item))
  if (!isGroup(value)) return `[${(value as readonly Json[]).map(inner).join(', ')}]`
  return `{${Object.entries(value)
    .map(([key, item]) => `${textOf(key)}: ${inner(item)}`)
    .join(', ')}}`
}

const taken = ({ value, unit }: Assumption): string => {
  const number = typeof value === 'number' ? String(Number(value.toPrecision(3))) : value
  return unit === '' ? number : `${number} ${unit}`
}

/** A group on the way names a part, whose figures stand where none is written. */
const comesWithPart = (data: Json, path: readonly string[]): boolean =>
  path.some((_, depth) => {
    const group = depth === 0 ? null : valueAt(data, path.slice(0, depth))
    return isGroup(group) && typeof group.part === 'string'
  })

/** How one entry stands. */
export const standOf = (entry: SurveyEntry, path: readonly string[], known: Known): Stand => {
  const value = valueAt(known.data, path)
  if (value !== null)
    return {
      standing: /\(assumed\)/u.test(written(value)) ? 'assumed' : 'read',
      text: typeof value === 'string' ? value : written(value),
    }
  if (known.data !== null && comesWithPart(known.data, path)) return { standing: 'part', text: '' }
  const assumption = known.assumptions.find((one) => one.path === path.join('.'))
  if (assumption !== undefined) return { standing: 'default', text: taken(assumption) }
  return { standing: entry.needed ? 'missing' : 'open', text: '' }
}
