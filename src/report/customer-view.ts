/**
 * The customer's copy as strings and flags: everything that the templates print, nothing that they would have to work out.
 * No field is optional, so that a strict template fails where it names one that is not there.
 */
import type { ResultDocument } from '../evaluation.ts'
import { date, quantity, type Units } from './format.ts'
import { type Paper, pageStyle } from './page-style.ts'
import { type AcceptanceView, acceptanceView } from './view-model/acceptance.ts'
import { type AnswerView, answerView } from './view-model/answer.ts'
import { type CostView, costView } from './view-model/cost.ts'
import { type KnowView, knowView } from './view-model/how-we-know.ts'
import { type PartsView, partsView } from './view-model/parts.ts'
import { publishedResult } from './view-model/published.ts'
import { retoldResult } from './view-model/retold.ts'
import { subjectOf } from './view-model/subject.ts'
import { type WaysView, waysView } from './view-model/ways.ts'
import { en } from './wording.ts'

export interface LetterheadView {
  readonly words: typeof en.letterhead
  readonly shop: string
  readonly lines: readonly string[]
  /** The shop's mark as a data: address; '' where there is none. */
  readonly mark: string
  readonly hasMark: boolean
  readonly facts: readonly { readonly label: string; readonly text: string }[]
  readonly title: string
  readonly customer: string
  readonly machine: string
  /** Which of a customer's machines the sheet is about, where the title does not say it; else ''. */
  readonly job: string
}

export interface CustomerView {
  readonly lang: string
  readonly title: string
  /** Page rules and palette: CSS made by page-style.ts, every text in it escaped. */
  readonly style: string
  readonly letterhead: LetterheadView
  readonly answer: AnswerView
  readonly ways: WaysView
  readonly parts: PartsView
  readonly cost: CostView
  readonly know: KnowView
  /** Of the test after the work; not shown until there was one. */
  readonly acceptance: AcceptanceView
}

export interface CustomerOptions {
  readonly units: Units
  readonly paper: Paper
  /** The shop's mark as a data: address of a picture; anything else is left out. */
  readonly mark?: string | null
}

const MARK = /^data:image\/(svg\+xml|png|jpeg|webp);base64,[A-Za-z0-9+/=]+$/

export const letterhead = (result: ResultDocument, options: CustomerOptions): LetterheadView => {
  const words = en.letterhead
  const { shop, customer, quote, machine } = result.sheet
  const mark = options.mark ?? ''
  const fact = (label: string, text: string | null) => (text === null ? [] : [{ label, text }])
  return {
    words,
    shop: shop.name,
    lines: [
      ...shop.address,
      ...(shop.phone === null ? [] : [`${words.phone} ${shop.phone}`]),
      ...(shop.email === null ? [] : [shop.email]),
    ],
    mark: MARK.test(mark) ? mark : '',
    hasMark: MARK.test(mark),
    facts: [
      ...fact(words.quote, quote.number),
      ...fact(words.date, quote.date === null ? null : date(quote.date)),
      ...fact(words.validUntil, quote.validUntil === null ? null : date(quote.validUntil)),
    ],
    title: result.scenario.title,
    customer: customer.place === null ? customer.name : `${customer.name}, ${customer.place}`,
    machine: words.machineLine(machine.name, machine.type, quantity(machine.massKg, 'kg', options.units)),
    job: '',
  }
}

/**
 * The customer's copy of one result.
 * @param document the result document
 * @param options units and paper; `mark` is the shop's mark as a data: address, where the shell has read it
 */
export const customerView = (document: ResultDocument, options: CustomerOptions): CustomerView => {
  const result = publishedResult(retoldResult(document, options.units))
  const subject = subjectOf(result)
  const { shop, quote, machine, customer } = result.sheet
  const words = en.letterhead
  const number = quote.number === null ? '' : words.footerQuote(quote.number)
  const footer = words.footer(shop.name, number, words.footerMachine(result.scenario.title, machine.name))
  return {
    lang: en.lang,
    title: words.documentTitle(quote.number ?? '', machine.name, customer.name),
    style: pageStyle({ paper: options.paper, footer, accent: shop.accent }),
    letterhead: letterhead(result, options),
    answer: answerView(result, subject, options.units),
    ways: waysView(result, subject, options.units),
    parts: partsView(result, subject, options.units),
    cost: costView(result, subject),
    know: knowView(result, subject, options.units),
    acceptance: acceptanceView(result, options.units),
  }
}
