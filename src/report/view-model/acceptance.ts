/** The record of the test after the work: promised, measured, kept or not. Not there until there was a test. */
import type { AcceptanceRow, ResultDocument } from '../../evaluation.ts'
import { date, quantity, typeset, type Units } from '../format.ts'
import { acceptance as words } from '../wording-proof.ts'

export interface AcceptanceView {
  readonly words: typeof words
  readonly shown: boolean
  readonly intro: string
  /** The verdict in a sentence. */
  readonly verdict: string
  readonly rows: readonly {
    readonly what: string
    readonly promised: string
    readonly measured: string
    readonly result: string
    readonly failed: boolean
    readonly note: string
    readonly source: string
  }[]
  readonly runs: readonly string[]
  readonly hasRuns: boolean
  readonly oil: string
}

const promisedText = ({ promisedLow, promisedHigh, bound, unit }: AcceptanceRow, units: Units): string => {
  const [low, high] = [promisedLow, promisedHigh].map((end) => (end === null ? null : quantity(end, unit, units)))
  if (bound === 'at least') return low == null ? words.nothing : words.atLeast(low)
  if (bound === 'at most') return high == null ? words.nothing : words.atMost(high)
  return low == null || high == null ? words.nothing : words.between(low, high)
}

const rowName = ({ what, component }: AcceptanceRow): string => {
  const [first, circuit] = component.split('.')
  const name = words.rows[what]
  return first === 'circuits' && circuit !== undefined && circuit !== 'main' ? words.ofCircuit(name, circuit) : name
}

const result = (kept: boolean | null): string => (kept === null ? words.open : kept ? words.kept : words.notKept)

const NOTHING: AcceptanceView = {
  words,
  shown: false,
  intro: '',
  verdict: '',
  rows: [],
  runs: [],
  hasRuns: false,
  oil: '',
}

export const acceptanceView = ({ acceptance }: ResultDocument, units: Units): AcceptanceView => {
  if (acceptance === null) return NOTHING
  const { rows, runs, kept, oilC } = acceptance
  return {
    words,
    shown: true,
    intro: words.intro(acceptance.date === null ? '' : date(acceptance.date), acceptance.option ?? words.restored),
    verdict: kept === null ? words.none : kept ? words.all : words.some,
    rows: rows.map((row) => ({
      what: rowName(row),
      promised: promisedText(row, units),
      measured: quantity(row.measured, row.unit, units),
      result: result(row.kept),
      failed: row.kept === false,
      note: row.note === null ? '' : typeset(row.note),
      source: words.source(typeset(row.source)),
    })),
    runs: runs.map(({ direction, distanceM, timeS, speedKmh }) =>
      words.run(
        words[direction],
        quantity(distanceM, 'm', units),
        quantity(timeS, 's', units),
        quantity(speedKmh, 'km/h', units),
      ),
    ),
    hasRuns: runs.length > 0,
    oil: oilC === null ? '' : words.oil(quantity(oilC, '°C', units)),
  }
}
