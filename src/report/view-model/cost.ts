/** Fourth page: what each priced way is made of, what is not in it, the terms, and where to sign. Never cost or margin. */
import type { Cost, OptionResult, ResultDocument } from '../../evaluation.ts'
import { count, date, hours, typeset } from '../format.ts'
import { money, moneySpan, roundMoney } from '../prices.ts'
import { en } from '../wording.ts'
import { findingRow } from './finding-text.ts'
import { leadTime, lineReady } from './lead-time.ts'
import { changesNothing, isInRepair, type Subject } from './subject.ts'

export interface CostRow {
  readonly what: string
  readonly quantity: string
  readonly unitPrice: string
  readonly amount: string
  readonly ready: string
}

export interface QuoteView {
  readonly heading: string
  readonly rows: readonly CostRow[]
  readonly hasRows: boolean
  readonly labour: readonly { readonly job: string; readonly hours: string }[]
  readonly hasLabour: boolean
  readonly rate: string
  readonly sums: readonly { readonly label: string; readonly amount: string }[]
  readonly totalLabel: string
  readonly total: string
  readonly span: string
  readonly spanLabel: string
  readonly spanNote: string
  /** Paid and given back: beside the total, never in it. */
  readonly deposits: readonly { readonly label: string; readonly amount: string }[]
  readonly hasDeposits: boolean
  readonly unpriced: readonly string[]
  readonly hasUnpriced: boolean
  readonly wait: string
}

export interface CostView {
  readonly words: typeof en.cost
  readonly quotes: readonly QuoteView[]
  readonly hasQuotes: boolean
  readonly none: string
  readonly excluded: readonly string[]
  readonly hasExcluded: boolean
  readonly terms: readonly string[]
  readonly hasTerms: boolean
  readonly validity: string
  readonly signHead: string
  /** Which machine the signature is for. */
  readonly signFor: string
  readonly signTexts: readonly string[]
  readonly advised: readonly string[]
  readonly hasAdvised: boolean
}

const wait = (cost: Cost): string => {
  const longest = leadTime(cost)
  if (longest === '') return ''
  if (longest === en.cost.shelf) return en.cost.allInStock
  if (longest === en.cost.shelfSome) return en.cost.shelfOpen
  return longest === en.cost.leadUnknown ? en.cost.leadOpen : en.cost.leadTime(longest)
}

const quoteView = (heading: string, cost: Cost): QuoteView => {
  const words = en.cost
  const amount = (value: number | null) => money(value, cost.currency)
  const sums = [
    { label: words.partsTotal, value: cost.parts },
    { label: words.labourTotal, value: cost.labourTotal },
    { label: words.supplies, value: cost.supplies },
    { label: words.freight, value: cost.freight },
    { label: words.allowance, value: cost.contingency },
    { label: words.tax, value: cost.tax },
  ]
  const open = cost.unpriced.length > 0
  const rates = [...new Set(cost.labour.map((line) => line.rate))]
  return {
    heading,
    rows: cost.lines.map((line) => ({
      what: en.capital(typeset(line.what)),
      quantity: count(line.quantity),
      unitPrice: amount(line.unitPrice),
      amount: amount(line.amount),
      ready: lineReady(line),
    })),
    hasRows: cost.lines.length > 0,
    labour: cost.labour.map((line) => ({ job: en.capital(line.job), hours: hours(line.hoursLow, line.hoursHigh) })),
    hasLabour: cost.labour.length > 0,
    rate: rates.length === 0 ? '' : words.rate(en.list(rates.map((rate) => amount(rate)))),
    sums: sums.filter(({ value }) => value !== 0).map(({ label, value }) => ({ label, amount: amount(value) })),
    // Where the price is told as "from", that is its low end; this is the likely sum of what has a price.
    totalLabel: open ? words.totalPriced : words.total,
    total: amount(cost.likely),
    // What has no price yet has no upper end either; what is priced has both.
    spanLabel: open ? words.pricedSoFar : words.totalSpan,
    span: moneySpan(cost.low, cost.high, cost.currency, false),
    spanNote: open ? '' : words.totalSpanNote(roundMoney(cost.high, cost.currency)),
    deposits: cost.deposits.map((one) => ({ label: words.deposit(typeset(one.what)), amount: amount(one.amount) })),
    hasDeposits: cost.deposits.length > 0,
    unpriced: cost.unpriced.map((what) => en.capital(typeset(what))),
    hasUnpriced: open,
    wait: wait(cost),
  }
}

interface Priced {
  readonly heading: string
  readonly cost: Cost
}

const priced = (result: ResultDocument, subject: Subject): readonly Priced[] => {
  const words = en.cost
  if (subject.kind === 'measure-first') return []
  const repair =
    subject.kind === 'restore' && result.restoration !== null
      ? [{ heading: words.quoteRestore, cost: result.restoration.cost }]
      : []
  const apart = (option: OptionResult | null) => (isInRepair(result, option?.name ?? null) ? null : option)
  const [recommended, offered] = [apart(subject.recommended), apart(subject.offered)]
  if (recommended !== null) return [...repair, { heading: words.quoteFor(recommended.name), cost: recommended.cost }]
  if (offered === null) return repair
  return [
    ...repair,
    {
      heading:
        subject.kind === 'decline' ? `${words.quoteFor(offered.name)}, ${words.offered}` : words.quoteFor(offered.name),
      cost: offered.cost,
    },
  ]
}

/** Options advised against, but for one that is recommended all the same as the best there is. */
const against = ({ options }: ResultDocument, { recommended }: Subject): readonly OptionResult[] =>
  options.filter((option) => option.answer.answer === 'decline' && option !== recommended && !changesNothing(option))

/** What was declined, recommended and may be refused, or is outside a limit already: the customer ticks what stays undone. */
const advised = (result: ResultDocument, subject: Subject): readonly string[] => {
  const words = en.cost
  const declined = against(result, subject).map((option) =>
    words.advisedDeclined(
      option.name,
      option.answer.reasons
        .map((reason) => reason.text)
        .slice(0, 1)
        .join(' '),
    ),
  )
  const wanted = subject.recommended ?? subject.offered
  const warned = result.baseline.findings
    .filter((finding) => finding.severity === 'stop' || finding.severity === 'change')
    .map((finding) => words.advisedFinding(findingRow(finding, 'metric').what, finding.because))
  return [
    ...(subject.kind === 'restore' ? [words.advisedRestore] : []),
    ...(subject.kind === 'measure-first' ? [words.advisedMeasure] : []),
    ...(wanted === null || isInRepair(result, wanted.name) ? [] : [words.advisedOffered(wanted.name)]),
    ...declined,
    ...warned,
  ]
}

export const costView = (result: ResultDocument, subject: Subject): CostView => {
  const words = en.cost
  const costs = priced(result, subject)
  const quotes = costs.map(({ heading, cost }) => quoteView(heading, cost))
  const { validUntil } = result.sheet.quote
  const declined = against(result, subject)
  const excluded = [...words.notIncludedItems, ...declined.map((option) => words.declinedItem(option.name))]
  const notes = advised(result, subject)
  // The box is for what we advised against or warned of; a plain yes needs none.
  const hasAdvised = notes.length > 0 && !(subject.kind === 'upgrade' && notes.length === 1)
  return {
    words,
    quotes,
    hasQuotes: quotes.length > 0,
    none: subject.kind === 'measure-first' ? words.noneMeasure : words.none,
    excluded: quotes.length === 0 ? [] : excluded,
    hasExcluded: quotes.length > 0,
    // Where nothing is sold there is nothing that terms could be about.
    terms: quotes.length === 0 ? [] : result.sheet.shop.terms,
    hasTerms: quotes.length > 0 && result.sheet.shop.terms.length > 0,
    validity: validUntil === null ? '' : words.validity(date(validUntil)),
    signHead: costs.length === 0 ? words.received : words.sign,
    signFor: words.signFor(result.scenario.title, result.sheet.machine.name, result.sheet.quote.number ?? ''),
    signTexts:
      costs.length === 0
        ? [words.signTextNone]
        : costs.map(({ heading, cost }) =>
            words.signText(
              costs.length > 1 ? heading : '',
              cost.unpriced.length > 0 ? '' : roundMoney(cost.high, cost.currency),
            ),
          ),
    advised: hasAdvised ? notes : [],
    hasAdvised,
  }
}
