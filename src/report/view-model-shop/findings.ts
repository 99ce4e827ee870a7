/** Every finding of every way, one row a check and component, one column a way; a source has a number, told once. */
import type { Evaluation, Finding, ResultDocument } from '../../evaluation.ts'
import { against, quantity, typeset, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'
import { shop } from '../wording-shop.ts'

export interface FindingCell {
  readonly value: string
  readonly mark: string
}

export interface FindingsRow {
  readonly check: string
  readonly id: string
  readonly limit: string
  readonly source: string
  readonly cells: readonly FindingCell[]
}

export interface FindingsTable {
  readonly heads: readonly string[]
  readonly rows: readonly FindingsRow[]
}

export interface FindingsView {
  readonly words: typeof shop.findings
  readonly key: string
  readonly hasKey: boolean
  readonly tables: readonly FindingsTable[]
  readonly sources: readonly { readonly number: string; readonly source: string }[]
}

const words = shop.findings

/** Columns that a page has room for; more ways make more tables. */
const MOST_COLUMNS = 5

interface Way {
  readonly head: string
  readonly evaluation: Evaluation
}

/** Values keep to one unit, the first of the customer's: the table is wide enough as it is. */
const first = (units: Units): Units => (units === 'us' ? 'us' : 'metric')

const EMPTY: FindingCell = { value: '', mark: '' }

const texts = (finding: Finding, units: Units): { value: string; limit: string } => {
  const { value, limit, unit } = finding
  if (typeof value === 'number' && typeof limit === 'number') return against(value, limit, unit, units)
  const text = (side: number | string | null, missing: string) =>
    typeof side === 'number' ? quantity(side, unit, units) : typeset(side ?? missing)
  return { value: text(value, en.notRead), limit: text(limit, en.dash) }
}

const cellOf = (finding: Finding | undefined, units: Units): FindingCell => {
  if (finding === undefined) return EMPTY
  const mark = words.marks[finding.severity]
  return {
    value: texts(finding, units).value,
    mark: mark !== '' && finding.existing ? `${mark}, ${words.before}` : mark,
  }
}

const tableOf = (ways: readonly Way[], numbers: ReadonlyMap<string, number>, units: Units): FindingsTable => {
  const byId = ways.map(({ evaluation }) => new Map(evaluation.findings.map((finding) => [finding.id, finding])))
  const ids = [...new Set(byId.flatMap((findings) => [...findings.keys()]))]
  return {
    heads: ways.map(({ head }) => head),
    rows: ids.map((id) => {
      const found = byId.map((findings) => findings.get(id))
      const told = found.filter((finding) => finding !== undefined)
      const byLimit = new Map(told.map((finding) => [finding.limit, texts(finding, units).limit]))
      const limits = [...new Set(byLimit.values())]
      const sources = [...new Set(told.map(({ source }) => String(numbers.get(source) ?? '')))]
      const { check = '', component = '' } = told[0] ?? {}
      return {
        check: `${en.checks[check] ?? en.capital(check.replaceAll('-', ' '))}: ${componentName(component)}`,
        id,
        limit: limits.join(' / '),
        source: sources.join(', '),
        cells: found.map((finding) => cellOf(finding, units)),
      }
    }),
  }
}

const letter = (index: number): string =>
  String.fromCharCode(65 + (index % 26)) + (index < 26 ? '' : String(Math.floor(index / 26)))

/** @returns tables of at most five ways each, the machine as it is in the first */
export const findingsView = (result: ResultDocument, units: Units): FindingsView => {
  const one = first(units)
  const ways: readonly Way[] = [
    { head: words.now, evaluation: result.baseline },
    ...(result.restored === null ? [] : [{ head: words.restored, evaluation: result.restored }]),
    ...result.options.map(({ evaluation }, index) => ({ head: letter(index), evaluation })),
  ]
  const all = ways.flatMap(({ evaluation }) => evaluation.findings.map(({ source }) => source))
  const numbers = new Map([...new Set(all)].map((source, index) => [source, index + 1]))
  const groups = Array.from({ length: Math.ceil(ways.length / MOST_COLUMNS) }, (_, index) =>
    ways.slice(index * MOST_COLUMNS, (index + 1) * MOST_COLUMNS),
  )
  return {
    words,
    key: words.key(result.options.map(({ name }, index) => words.letter(letter(index), name))),
    hasKey: result.options.length > 0,
    tables: groups.map((group) => tableOf(group, numbers, one)),
    sources: [...numbers].map(([source, number]) => ({ number: String(number), source: en.capital(typeset(source)) })),
  }
}
