/** Cost, price and what is left, line by line, and the hours: for every way that has a price. */
import type { BuildUp, BuildUpLine, Cost, LabourLine, ResultDocument } from '../../evaluation.ts'
import { count, decimal, typeset } from '../format.ts'
import { money as cash } from '../prices.ts'
import { changesNothing } from '../view-model/subject.ts'
import { en } from '../wording.ts'
import { shop } from '../wording-shop.ts'

export interface MoneyRow {
  readonly what: string
  readonly id: string
  readonly cells: readonly string[]
  readonly ready: string
}

export interface MoneyWay {
  readonly heading: string
  readonly rows: readonly MoneyRow[]
  readonly hasRows: boolean
  readonly sum: readonly string[]
  readonly open: string
  readonly labour: readonly { readonly job: string; readonly cells: readonly string[] }[]
  readonly hasLabour: boolean
  readonly sums: readonly { readonly label: string; readonly amount: string }[]
  readonly total: string
  readonly unpriced: string
}

export interface MoneyView {
  readonly words: typeof shop.money
  readonly rule: string
  readonly ways: readonly MoneyWay[]
  /** False where nothing is changed: then there is nothing to price. */
  readonly hasWays: boolean
}

const words = shop.money

const percent = (share: number | null): string => (share === null ? en.dash : `${decimal(100 * share, 0)}\u00a0%`)

const ready = ({ stock, leadDays }: BuildUpLine): string => {
  const parts = [
    ...(stock === null ? [] : [stock > 0 ? words.stock(count(stock)) : words.noStock]),
    ...(leadDays === null ? [] : [words.lead(en.days(count(leadDays)))]),
  ]
  return parts.length === 0 ? en.dash : parts.join(', ')
}

const labourCells = (line: LabourLine, currency: string): readonly string[] => [
  decimal(line.hoursLow, 1),
  decimal(line.hoursLikely, 1),
  decimal(line.hoursHigh, 1),
  cash(line.rate, currency),
]

const hoursCells = (labour: readonly LabourLine[], total: string): readonly string[] => {
  const sum = (of: (line: LabourLine) => number) =>
    decimal(
      labour.reduce((all, line) => all + of(line), 0),
      1,
    )
  return [sum((line) => line.hoursLow), sum((line) => line.hoursLikely), sum((line) => line.hoursHigh), total]
}

const wayOf = (heading: string, cost: Cost, buildUp: BuildUp | undefined): MoneyWay => {
  const { currency } = cost
  const orDash = (amount: number | null) => (amount === null ? en.dash : cash(amount, currency))
  const lines = buildUp?.lines ?? []
  const known = buildUp?.known
  return {
    heading,
    rows: lines.map((line) => ({
      what: typeset(line.what),
      id: line.part ?? '',
      cells: [
        count(line.quantity),
        orDash(line.unitCost),
        orDash(line.unitPrice),
        orDash(line.cost),
        orDash(line.price),
        orDash(line.profit),
        percent(line.margin),
        percent(line.markUp),
      ],
      ready: ready(line),
    })),
    hasRows: lines.length > 0,
    sum:
      known === undefined
        ? []
        : [
            cash(known.cost, currency),
            cash(known.price, currency),
            cash(known.profit, currency),
            percent(known.margin),
            percent(known.markUp),
          ],
    open: buildUp === undefined || buildUp.open.length === 0 ? '' : words.open(buildUp.open.map(typeset)),
    labour: [
      ...cost.labour.map((line) => ({ job: en.capital(line.job), cells: labourCells(line, currency) })),
      ...(cost.labour.length > 1
        ? [{ job: words.hours, cells: hoursCells(cost.labour, cash(cost.labourTotal, currency)) }]
        : []),
    ],
    hasLabour: cost.labour.length > 0,
    sums: [
      { label: words.partsTotal, amount: cash(cost.parts, currency) },
      { label: words.labourTotal, amount: cash(cost.labourTotal, currency) },
      { label: words.supplies, amount: cash(cost.supplies, currency) },
      { label: words.freight, amount: cash(cost.freight, currency) },
      { label: words.contingency, amount: cash(cost.contingency, currency) },
      { label: words.tax, amount: cash(cost.tax, currency) },
    ],
    total: [cost.low, cost.likely, cost.high].map((amount) => cash(amount, currency)).join(' / '),
    unpriced: cost.unpriced.length === 0 ? '' : words.unpriced(cost.unpriced.map(typeset)),
  }
}

/** Every way that has a price, the restoration first. */
export const moneyView = (result: ResultDocument): MoneyView => {
  const { markUp, margin, buildUps } = result.pricing
  const buildUpFor = (option: string | null) => buildUps.find((one) => one.option === option)
  const rule =
    markUp !== null
      ? words.ruleMarkUp(percent(markUp))
      : margin !== null
        ? words.ruleMargin(percent(margin))
        : words.ruleNone
  const ways = [
    ...(result.restoration === null ? [] : [wayOf(words.restore, result.restoration.cost, buildUpFor(null))]),
    ...result.options
      .filter((option) => !changesNothing(option))
      .map(({ name, cost }) => wayOf(en.quoted(name), cost, buildUpFor(name))),
  ]
  return { words, rule, ways, hasWays: ways.length > 0 }
}
