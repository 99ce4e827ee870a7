/** One line of the overview of a batch, picked from the result document; figures as they are there, unrounded. */
import type { Cost, RecommendationKind, ResultDocument } from '../evaluation.ts'
import { subjectOf } from './view-model/subject.ts'

export interface SummarySide {
  /** 0: the machine does not move. */
  readonly speedKmh: number
  /** Settled oil; null: it does not settle below 150 degC. */
  readonly oilC: number | null
}

export interface SummaryPrice {
  readonly low: number
  readonly high: number
  readonly currency: string
  /** Something in it has no price yet: it is "from" the lower end. */
  readonly open: boolean
}

/** A row of summary.json. */
export interface SummaryRow {
  readonly title: string
  readonly customer: string
  readonly machine: string
  readonly answer: RecommendationKind
  /** The option that is recommended or offered; null: none. */
  readonly option: string | null
  readonly provisional: boolean
  readonly now: SummarySide
  /** With what is recommended or offered; null where nothing is, or nobody can say yet. */
  readonly after: SummarySide | null
  /** Of what is recommended or offered, tax included; null where nothing has to be paid for. */
  readonly price: SummaryPrice | null
  /** Sentences, metric. */
  readonly inTheWay: readonly string[]
}

const sideOf = ({ travel, heat }: ResultDocument['baseline']): SummarySide => ({
  speedKmh: travel.level.stalled ? 0 : travel.level.speedKmh,
  oilC: heat.steadyOilC,
})

const priceOf = ({ low, high, currency, unpriced }: Cost): SummaryPrice => ({
  low,
  high,
  currency,
  open: unpriced.length > 0,
})

/** What stands between the machine and what was asked: faults, reasons against, conditions. */
const obstacles = (result: ResultDocument): readonly string[] => {
  const { recommendation } = result
  const { kind, asked, recommended, offered } = subjectOf(result)
  // Where the change is recommended, what speaks against another one is beside the point.
  const against = kind === 'upgrade' || kind === 'upgrade-on-conditions' ? [] : (asked?.answer.reasons ?? [])
  const unanswered = kind === 'measure-first' || (kind === 'decline' && (asked?.answer.reasons.length ?? 0) === 0)
  return [
    ...new Set([
      ...recommendation.faults.map(({ text }) => text),
      ...(unanswered ? recommendation.reasons.map(({ text }) => text) : []),
      ...against.map(({ text }) => text),
      ...((recommended ?? offered)?.answer.conditions ?? []),
    ]),
  ]
}

export const summaryRow = (result: ResultDocument): SummaryRow => {
  const { scenario, recommendation, baseline, restoration } = result
  const { kind, recommended, offered, after, against } = subjectOf(result)
  const chosen = recommended ?? offered
  const cost = kind === 'restore' ? restoration?.cost : chosen?.cost
  return {
    title: scenario.title,
    customer: scenario.customer,
    machine: scenario.machine,
    answer: kind,
    option: chosen?.name ?? null,
    provisional: recommendation.provisional,
    now: sideOf(baseline),
    after: after === null || against ? null : sideOf(after),
    price: cost === undefined ? null : priceOf(cost),
    inTheWay: obstacles(result),
  }
}
