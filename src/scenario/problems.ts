/**
 * What can be wrong with an input file, as data: a closed code, the place, what is there, what was expected and what was
 * probably meant. Problems are collected, never thrown; showing them is the shell's business. Every input message is here.
 */

/** Every code; MISTAKES.md says what each means and what to do. */
export const PROBLEM_CODES = [
  'file-missing',
  'file-too-large',
  'file-of-another-kind',
  'yaml-syntax',
  'duplicate-key',
  'too-deep',
  'control-character',
  'alias-refused',
  'empty-file',
  'key-missing',
  'key-unknown',
  'value-of-wrong-kind',
  'list-of-wrong-length',
  'text-too-long',
  'word-unknown',
  'number-out-of-range',
  'quantity-too-long',
  'unit-missing',
  'unit-unknown',
  'unit-of-another-dimension',
  'number-unreadable',
  'comma-in-number',
  'number-out-of-reach',
  'tolerance-unreadable',
  'provenance-unknown',
  'dash-unreadable',
  'dash-unknown',
  'connection-unreadable',
  'connection-unknown',
  'mount-unknown',
  'name-unusable',
  'name-twice',
  'steps-out-of-order',
  'one-of-two',
  'date-unreadable',
  'efficiency-out-of-range',
  'shares-not-whole',
  'nothing-drives',
  'drive-incomplete',
  'closed-loop',
  'part-unknown',
  'part-of-wrong-kind',
  'part-twice',
  'section-unknown',
  'circuit-unknown',
  'path-unknown',
  'shared-line-patched',
  'attachment-missing',
  'hose-kind-unknown',
  'oil-unknown',
  'running-gear-missing',
  'shop-missing',
  'nothing-wanted',
] as const

export type ProblemCode = (typeof PROBLEM_CODES)[number]

export type Path = readonly (string | number)[]

/** What a check finds before the place in the text is known. */
export interface Flaw {
  readonly code: ProblemCode
  readonly path: Path
  /** The place is the key itself, not its value. */
  readonly atKey?: boolean
  readonly message: string
  readonly expected: string | null
  /** What was probably meant, or what to do. */
  readonly remedy: string | null
}

export interface Problem extends Flaw {
  readonly file: string
  readonly line: number
  readonly column: number
  /** The line itself, and how much of it is meant. */
  readonly excerpt: string
  readonly width: number
}

/** "expected one of" in words. */
export const oneOf = (names: readonly string[]): string =>
  names.length === 1 ? `"${names[0]}"` : `one of ${names.map((name) => `"${name}"`).join(', ')}`

/** Edits between two words, two neighbours swapped counted as one: enough for "probably meant". */
const distance = (a: string, b: string): number => {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, i) => i)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      const edits = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (same ? 0 : 1))
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      next[j] = swapped ? Math.min(edits, (before[j - 2] ?? 0) + 1) : edits
    }
    before = row
    row = next
  }
  return row[b.length] ?? 0
}

/** The nearest of some names, where it is near enough to have been meant; null else. */
export const nearest = (word: string, names: readonly string[]): string | null => {
  let best: string | null = null
  let least = Math.max(1, Math.floor(word.length / 3)) + 1
  for (const name of names) {
    const edits = distance(word.toLowerCase(), name.toLowerCase())
    if (edits < least) {
      best = name
      least = edits
    }
  }
  return best
}

/** Names that hold the word whole, where it is long enough to say something and few do. */
const holding = (word: string, names: readonly string[]): readonly string[] => {
  const wanted = word.trim().toLowerCase()
  const found = names.filter((name) => name.toLowerCase().split(/[\s-]/u).includes(wanted))
  return wanted.length < 3 || found.length > 3 ? [] : found
}

export const didYouMean = (word: string, names: readonly string[]): string | null => {
  const near = nearest(word, names)
  const meant = near === null ? holding(word, names) : [near]
  return meant.length === 0 ? null : `did you mean ${meant.map((name) => `"${name}"`).join(' or ')}?`
}
