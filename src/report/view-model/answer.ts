/** First page: the answer, three figures now and then, what we recommend or offer with its price, the cautions. */
import type { Cost, Evaluation, OptionResult, Range, ResultDocument } from '../../evaluation.ts'
import {
  decimal,
  type Figure,
  figure,
  minutes,
  moneySpan,
  quantity,
  roundMoney,
  span,
  tripMinutes,
  type Units,
} from '../format.ts'
import { en } from '../wording.ts'
import { shortCautions } from './cautions.ts'
import { leadTime } from './lead-time.ts'
import { sentences } from './sentences.ts'
import { findingOf, oilAfterDay, type Subject } from './subject.ts'

export interface CardSide {
  readonly label: string
  readonly value: string
  readonly unit: string
  readonly also: string
  readonly notes: readonly string[]
  /** The value is words, to be set smaller. */
  readonly words: boolean
}

export interface Card {
  readonly label: string
  readonly now: CardSide
  readonly then: CardSide
  readonly hasThen: boolean
  readonly notes: readonly string[]
}

export interface OfferView {
  readonly name: string
  readonly text: readonly string[]
  readonly price: string
  readonly hasPrice: boolean
  readonly lead: string
  readonly hasLead: boolean
}

export interface AnswerView {
  readonly words: typeof en.answer
  readonly asked: string
  readonly headline: string
  readonly lead: readonly string[]
  readonly provisional: boolean
  readonly cards: readonly Card[]
  readonly reasons: readonly string[]
  readonly hasReasons: boolean
  readonly conditions: readonly string[]
  readonly hasConditions: boolean
  readonly offerTitle: string
  readonly offers: readonly OfferView[]
  readonly cautions: readonly string[]
}

const EMPTY: CardSide = { label: '', value: '', unit: '', also: '', notes: [], words: false }
const inWords = (label: string, value: string): CardSide => ({ ...EMPTY, label, value, words: true })
const inFigures = (label: string, shown: Figure, notes: readonly string[] = []): CardSide => ({
  ...EMPTY,
  label,
  ...shown,
  notes,
})

interface Side {
  readonly label: string
  readonly evaluation: Evaluation
  readonly range: Range | null
}

const speedSide = ({ label, evaluation, range }: Side, units: Units): CardSide => {
  const { level } = evaluation.travel
  if (level.stalled) return inWords(label, en.stalled)
  const { p10, p90 } = range?.speedKmh ?? { p10: null, p90: null }
  const notes = p10 === null || p90 === null ? [] : [en.answer.range(span(p10, p90, 'km/h', units))]
  return inFigures(label, figure(level.speedKmh, 'km/h', units), notes)
}

const tripSide = ({ label, evaluation }: Side, tripM: number | null): CardSide => {
  const { level } = evaluation.travel
  if (level.stalled) return inWords(label, en.stalled)
  const time = tripMinutes(level.speedKmh, tripM)
  if (time === null) return inWords(label, en.answer.tripNotTold)
  if (time >= 90) return inFigures(label, { value: minutes(time), unit: '', also: '' })
  return inFigures(label, { value: decimal(time, time < 10 ? 1 : 0), unit: 'min', also: '' })
}

const oilSide = ({ label, evaluation }: Side, units: Units): CardSide => {
  const { heat } = evaluation
  const soon = (limit: '70' | '82') => {
    const time = heat.minutesTo[limit]
    return time === null ? null : en.answer.passes(quantity(Number(limit), '°C', units), minutes(time))
  }
  const notes = [
    soon('70') ?? en.answer.staysBelow(quantity(70, '°C', units)),
    soon('82'),
    heat.steadyOilC === null ? en.answer.stillRising : null,
  ]
  return inFigures(
    label,
    figure(oilAfterDay(evaluation), '°C', units),
    notes.filter((note) => note !== null),
  )
}

const toolSide = ({ label, evaluation }: Side, units: Units): CardSide => {
  const value = findingOf(evaluation, 'attachment-flow')?.value
  return typeof value === 'number' ? inFigures(label, figure(value, 'L/min', units)) : inWords(label, en.notWorkedOut)
}

const cards = (result: ResultDocument, subject: Subject, units: Units): readonly Card[] => {
  const { wants, site } = result.sheet
  const now: Side = { label: en.answer.now, evaluation: result.baseline, range: result.baselineRange }
  const then: Side | null =
    subject.then === null ? null : { label: subject.thenLabel, evaluation: subject.then, range: subject.thenRange }
  const card = (label: string, side: (of: Side) => CardSide, notes: readonly string[]): Card => ({
    label,
    now: side(now),
    then: then === null ? EMPTY : side(then),
    hasThen: then !== null,
    notes,
  })
  const wanted = wants.speedKmh === null ? [] : [en.answer.wanted(quantity(wants.speedKmh, 'km/h', units))]
  // Where something else is recommended than was asked, the figure that was asked for stands beside it.
  const other = subject.asked !== null && !subject.against && wants.speedKmh !== null ? subject.asked : null
  const asked =
    other === null
      ? []
      : [
          en.answer.asked(
            other.name,
            other.evaluation.travel.level.stalled
              ? en.stalled
              : quantity(other.evaluation.travel.level.speedKmh, 'km/h', units),
          ),
        ]
  const speed = card(en.answer.speed, (side) => speedSide(side, units), [...wanted, ...asked])
  const oil = card(en.answer.oil, (side) => oilSide(side, units), [])
  if (wants.attachmentFlowLpm !== null) {
    const tool = card(en.answer.attachmentCard, (side) => toolSide(side, units), [
      en.answer.attachmentWants(quantity(wants.attachmentFlowLpm, 'L/min', units)),
    ])
    return [tool, speed, oil]
  }
  const trip = site.tripM === null ? en.answer.tripUnknown : en.answer.trip(quantity(site.tripM, 'm', units))
  return [speed, card(trip, (side) => tripSide(side, site.tripM), []), oil]
}

const priced = (name: string, cost: Cost, text: readonly string[]): OfferView => {
  const lead = leadTime(cost)
  return {
    name,
    text: cost.unpriced.length === 0 ? text : [...text, en.answer.unpriced(cost.unpriced)],
    price: moneySpan(cost.low, cost.high, cost.currency, cost.unpriced.length > 0),
    hasPrice: true,
    lead,
    hasLead: lead !== '',
  }
}

const unpricedOffer = (name: string, text: readonly string[] = []): OfferView => ({
  name,
  text,
  price: '',
  hasPrice: false,
  lead: '',
  hasLead: false,
})

const optionOffer = (option: OptionResult): OfferView =>
  priced(option.name, option.cost, [en.answer.madeOf(option.changes.length, option.consequences.length)])

const offers = (result: ResultDocument, subject: Subject): { title: string; list: readonly OfferView[] } => {
  const words = en.answer
  const { kind, recommended, offered } = subject
  if (kind === 'measure-first') return { title: words.next, list: [unpricedOffer(words.measureOffer)] }
  if (kind === 'restore') {
    const repair =
      result.restoration === null
        ? unpricedOffer(words.putRight)
        : priced(
            words.putRight,
            result.restoration.cost,
            result.recommendation.faults.map((fault) => fault.text),
          )
    const beside = recommended ?? offered
    return {
      title: words.recommendFirst,
      list: [repair, ...(beside === null ? [] : [{ ...optionOffer(beside), name: words.beside(beside.name) }])],
    }
  }
  if (recommended !== null) return { title: words.recommend, list: [optionOffer(recommended)] }
  if (offered !== null) return { title: words.offer, list: [optionOffer(offered)] }
  const named = result.recommendation.offerInstead
  const alternatives = result.sheet.alternatives.map(({ name, minutesPerDay, cost }) =>
    unpricedOffer(
      words.alternative(
        name,
        minutes(minutesPerDay),
        cost === 0 ? words.free : roundMoney(cost, result.sheet.shop.currency),
      ),
    ),
  )
  const more =
    named === null || result.sheet.alternatives.some(({ name }) => name === named) ? [] : [unpricedOffer(named)]
  const list = [...more, ...alternatives]
  return { title: words.offer, list: list.length > 0 ? list : words.fallbackOffer.map((text) => unpricedOffer(text)) }
}

/** Reasons to print under the answer: those of the recommendation, else those of the way that was asked for. */
const reasons = (result: ResultDocument, subject: Subject): readonly string[] => {
  const own = result.recommendation.reasons.map((reason) => reason.text)
  const texts = own.length > 0 ? own : (subject.asked?.answer.reasons ?? []).map((reason) => reason.text)
  return [...new Set(texts)]
}

export const answerView = (result: ResultDocument, subject: Subject, units: Units): AnswerView => {
  const { headline, lead } = sentences(result, subject, units)
  const { title, list } = offers(result, subject)
  const why = reasons(result, subject)
  const conditions = (subject.recommended ?? subject.offered)?.answer.conditions ?? []
  return {
    words: en.answer,
    asked: result.scenario.asked,
    headline,
    lead: subject.kind === 'measure-first' ? [] : lead,
    provisional: result.recommendation.provisional,
    cards: cards(result, subject, units),
    reasons: why,
    hasReasons: why.length > 0,
    conditions,
    hasConditions: conditions.length > 0,
    offerTitle: title,
    offers: list,
    cautions: shortCautions(result, subject, units),
  }
}
