/** What the first page offers: the way we recommend, the one we offer instead, or what leaves the machine alone. */
import type { Cost, OptionResult, ResultDocument } from '../../evaluation.ts'
import { minutes, type Units } from '../format.ts'
import { moneySpan, roundMoney } from '../prices.ts'
import { en } from '../wording.ts'
import { leadTime } from './lead-time.ts'
import { isInRepair, type Subject } from './subject.ts'
import { hotterNote } from './ways.ts'

export interface OfferView {
  readonly name: string
  readonly text: readonly string[]
  readonly price: string
  readonly hasPrice: boolean
  readonly lead: string
  readonly hasLead: boolean
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

const alternativeOffers = (result: ResultDocument): readonly OfferView[] =>
  result.sheet.alternatives.map(({ name, minutesPerDay, cost }) => {
    const price = cost === 0 ? en.answer.free : roundMoney(cost, result.sheet.shop.currency)
    return unpricedOffer(name, [en.answer.alternative(minutesPerDay > 0 ? minutes(minutesPerDay) : '', price)])
  })

/** What else is offered beside the first thing: the other option, or the way that changes nothing on the machine. */
const besides = (
  result: ResultDocument,
  offered: OptionResult | null,
  word: (name: string) => string,
): readonly OfferView[] =>
  offered === null
    ? alternativeOffers(result).map((offer) => ({ ...offer, name: word(offer.name) }))
    : isInRepair(result, offered.name)
      ? [unpricedOffer(word(offered.name), [en.answer.inRepair])]
      : [{ ...optionOffer(offered), name: word(offered.name) }]

/** Never empty: a decline offers something too. */
export const offersOf = (
  result: ResultDocument,
  subject: Subject,
  units: Units,
): { title: string; list: readonly OfferView[] } => {
  const words = en.answer
  const { kind, recommended, offered } = subject
  if (kind === 'measure-first')
    return {
      title: words.next,
      list: [unpricedOffer(words.measureName, [words.measureOffer]), ...besides(result, offered, words.meanwhile)],
    }
  if (kind === 'restore') {
    const repair =
      result.restoration === null
        ? unpricedOffer(words.putRight)
        : priced(words.putRight, result.restoration.cost, hotterNote(result, units))
    return { title: words.recommendFirst, list: [repair, ...besides(result, recommended ?? offered, words.beside)] }
  }
  if (recommended !== null)
    return { title: words.recommend, list: [optionOffer(recommended), ...besides(result, offered, words.orInstead)] }
  if (offered !== null) return { title: words.offer, list: [optionOffer(offered), ...alternativeOffers(result)] }
  const alternatives = alternativeOffers(result)
  return {
    title: words.offer,
    list: alternatives.length > 0 ? alternatives : words.fallbackOffer.map((text) => unpricedOffer(text)),
  }
}
