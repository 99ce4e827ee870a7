/**
 * What the last run wrote and from what, in `.made-from/` of the output folder: a report whose every input is the same, and
 * whose files are as they were written, need not be made again.
 */
import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { SummaryRow } from '../../report/summary-row.ts'
import { writeWhole } from '../write-file.ts'

/** One file that was written. */
export interface Stamped {
  /** Digest of everything that went in. */
  readonly from: string
  /** Digest of the file itself. */
  readonly is: string
  readonly line: string
  /** What the copies had to go without: told again each time. */
  readonly warnings: readonly string[]
  readonly row: SummaryRow
  readonly units: 'metric' | 'us' | 'both'
}

export type Stamp = ReadonlyMap<string, Stamped>

const VERSION = 1

export const stampPath = (out: string, folder: string): string => join(out, '.made-from', `${folder}.json`)

export const digestOf = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex')

const isStamped = (value: unknown): value is Stamped => {
  const { from, is, line, warnings, row, units } = (value ?? {}) as { readonly [key: string]: unknown }
  const texts = [from, is, line, units].every((text) => typeof text === 'string')
  return texts && Array.isArray(warnings) && typeof row === 'object' && row !== null
}

/** What the last run noted; nothing where it noted nothing that can be read. */
export const readStamp = (path: string): Stamp => {
  try {
    const read = JSON.parse(readFileSync(path, 'utf8')) as { readonly version?: unknown; readonly files?: object }
    if (read.version !== VERSION) return new Map()
    return new Map(Object.entries(read.files ?? {}).filter(([, file]) => isStamped(file)))
  } catch {
    return new Map()
  }
}

export const writeStamp = (path: string, stamp: Stamp): void => {
  const files = Object.fromEntries([...stamp].sort(([a], [b]) => (a < b ? -1 : 1)))
  writeWhole(path, `${JSON.stringify({ version: VERSION, files }, null, 1)}\n`)
}

/**
 * @param wanted digest of what goes in now, for each file that is wanted
 * @returns what is known of them where all are as they were written; null where one is not
 */
export const asBefore = (stamp: Stamp, wanted: ReadonlyMap<string, string>, folder: string): Stamped | null => {
  let first: Stamped | null = null
  for (const [name, from] of wanted) {
    const known = stamp.get(name)
    const path = join(folder, name)
    if (known === undefined || known.from !== from || !existsSync(path)) return null
    if (digestOf(readFileSync(path)) !== known.is) return null
    first ??= known
  }
  return first
}
