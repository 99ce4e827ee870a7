/** The overview of a batch as strings and flags: one row a scenario or a unit of a fleet. */
import { quantity, retold, type Units } from './format.ts'
import { pageStyle } from './page-style.ts'
import { moneySpan } from './prices.ts'
import type { SummaryRow, SummarySide } from './summary-row.ts'
import { en } from './wording.ts'
import { summary as words } from './wording-summary.ts'

/** What became of one scenario, or of one unit of a fleet. */
export interface SummaryEntry {
  readonly scenario: string
  /** null: the file is no fleet. */
  readonly unit: string | null
  readonly outcome: 'answered' | 'wrong input' | 'failed'
  /** Report, relative to the overview; null where there is none. */
  readonly report: string | null
  /** null where there is no answer. */
  readonly row: SummaryRow | null
}

export interface SummaryLine {
  readonly name: string
  readonly about: string
  readonly answer: string
  readonly provisional: boolean
  readonly speedNow: string
  readonly speedThen: string
  readonly oilNow: string
  readonly oilThen: string
  readonly price: string
  readonly obstacles: readonly string[]
  readonly hasObstacles: boolean
  readonly link: string
  readonly hasLink: boolean
}

export interface SummaryView {
  readonly words: typeof words
  readonly lang: string
  readonly title: string
  readonly style: string
  readonly lead: string
  readonly counts: readonly string[]
  readonly lines: readonly SummaryLine[]
}

const speed = ({ speedKmh }: SummarySide, units: Units) =>
  speedKmh === 0 ? en.stalled : quantity(speedKmh, 'km/h', units)

const oil = ({ oilC }: SummarySide, units: Units) => (oilC === null ? words.csv.unsettled : quantity(oilC, '°C', units))

const answered = (row: SummaryRow): string => {
  const answer = words.answers[row.answer]
  return row.option === null ? answer : words.answerWith(answer, row.option)
}

const lineOf = ({ scenario, unit, outcome, report, row }: SummaryEntry, units: Units): SummaryLine => {
  const link = { link: report ?? '', hasLink: report !== null }
  if (row === null)
    return {
      name: unit === null ? scenario : `${scenario}: ${unit}`,
      about: '',
      answer: words.csv.without,
      provisional: false,
      speedNow: en.dash,
      speedThen: en.dash,
      oilNow: en.dash,
      oilThen: en.dash,
      price: en.dash,
      obstacles: [outcome === 'wrong input' ? words.wrongInput : words.failed],
      hasObstacles: true,
      ...link,
    }
  const { price, now, after } = row
  return {
    name: row.title,
    about: `${row.machine}, ${row.customer}`,
    answer: answered(row),
    provisional: row.provisional,
    speedNow: speed(now, units),
    speedThen: after === null ? en.dash : speed(after, units),
    oilNow: oil(now, units),
    oilThen: after === null ? en.dash : oil(after, units),
    price: price === null ? words.noPrice : moneySpan(price.low, price.high, price.currency, price.open),
    obstacles: row.inTheWay.map((text) => en.sentence(retold(text, units))),
    hasObstacles: row.inTheWay.length > 0,
    ...link,
  }
}

/** How often each answer was given, the most frequent first. */
const countsOf = (entries: readonly SummaryEntry[]): readonly string[] => {
  const counts = new Map<string, number>()
  for (const { row } of entries) {
    const answer = row === null ? words.csv.without : words.answers[row.answer]
    counts.set(answer, (counts.get(answer) ?? 0) + 1)
  }
  return [...counts].sort(([, a], [, b]) => b - a).map(([answer, count]) => words.counted(count, answer))
}

export const summaryView = (entries: readonly SummaryEntry[], units: Units): SummaryView => ({
  words,
  lang: en.lang,
  title: words.title,
  style: pageStyle({ paper: 'a4', footer: words.footer, accent: null }),
  lead: words.lead(entries.length, entries.filter(({ row }) => row !== null).length),
  counts: countsOf(entries),
  lines: entries.map((entry) => lineOf(entry, units)),
})
