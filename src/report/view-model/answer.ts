/** First page: the answer, three figures now and then, what we recommend or offer with its price, the cautions. */
import type { OptionResult, ResultDocument } from '../../evaluation.ts'
import type { Units } from '../format.ts'
import { en } from '../wording.ts'
import { type Card, cardsOf } from './cards.ts'
import { shortCautions } from './cautions.ts'
import { findingValues } from './finding-text.ts'
import { type OfferView, offersOf } from './offers.ts'
import { sentences } from './sentences.ts'
import { findingOf, type Subject } from './subject.ts'

export interface AnswerView {
  readonly words: typeof en.answer
  readonly asked: string
  readonly headline: string
  readonly lead: readonly string[]
  readonly provisional: boolean
  /** Over the figures: what they compare. */
  readonly compare: string
  readonly cards: readonly Card[]
  readonly reasons: readonly string[]
  readonly hasReasons: boolean
  readonly conditions: readonly string[]
  readonly hasConditions: boolean
  readonly offerTitle: string
  readonly offers: readonly OfferView[]
  readonly cautions: readonly string[]
}

/**
 * Reasons to print under the answer: those of the way that was asked for where we decline, else those of the
 * recommendation; without what the headline says in figures already, and without what stands among the conditions.
 */
const reasons = (result: ResultDocument, subject: Subject, conditions: readonly string[]): readonly string[] => {
  const asked = subject.kind === 'decline' ? (subject.asked?.answer.reasons ?? []) : []
  const list = asked.length > 0 ? asked : result.recommendation.reasons
  const agreed = (subject.asked?.answer.conditions ?? []).map(en.sentence)
  const told = asked[0]?.code === 'engine-power' || asked[0]?.code === 'oil-too-hot' ? en.sentence(asked[0].text) : ''
  const left = (text: string) =>
    text !== told && !conditions.includes(text) && !(asked.length > 0 && agreed.includes(text))
  return [...new Set(list.map((reason) => en.sentence(reason.text)))].filter(left)
}

/** Checks that carry a yes, told where nobody gave another reason; with figures where a customer can weigh them. */
const CARRYING = ['engine-power', 'oil-temperature', 'turn-start', 'grade-start']
const IN_FIGURES = ['engine-power', 'oil-temperature']

const carrying = (option: OptionResult, units: Units): readonly string[] =>
  CARRYING.map((check) => findingOf(option.evaluation, check))
    .filter((finding) => finding?.severity === 'ok')
    .map((finding) => {
      if (finding === null) return ''
      const { value, limit } = findingValues(finding, units)
      return IN_FIGURES.includes(finding.check) &&
        typeof finding.value === 'number' &&
        typeof finding.limit === 'number'
        ? en.answer.checked(finding.heading, value, limit)
        : en.answer.checkedPlain(finding.heading)
    })

/** What a way that only protects is for, and why it is not the one that was asked for. */
const protecting = (option: OptionResult, asked: OptionResult | null): readonly string[] => {
  const against = asked?.answer.reasons[0]?.text
  return [
    ...(option.why === null ? [] : [en.sentence(option.why)]),
    ...(asked === null || against === undefined ? [] : [en.answer.askedAgainst(asked.name, en.sentence(against))]),
  ]
}

/** Where nobody gave a reason for what is recommended. */
const ownReasons = (
  option: OptionResult,
  asked: OptionResult | null,
  most: number,
  units: Units,
): readonly string[] => {
  const own = option.protecting ? protecting(option, asked) : []
  return own.length > 0 ? own : carrying(option, units).slice(0, most)
}

export const answerView = (result: ResultDocument, subject: Subject, units: Units): AnswerView => {
  const { headline, lead } = sentences(result, subject, units)
  const { title, list } = offersOf(result, subject, units)
  const conditions = (subject.recommended ?? subject.offered)?.answer.conditions.map(en.sentence) ?? []
  const given = reasons(result, subject, conditions)
  const why =
    given.length === 0 && subject.recommended !== null
      ? ownReasons(subject.recommended, subject.asked, conditions.length > 0 ? 2 : 4, units)
      : given
  return {
    words: en.answer,
    asked: result.scenario.asked,
    headline,
    lead,
    provisional: result.recommendation.provisional,
    compare: subject.after === null ? en.answer.onlyNow : en.answer.compare(subject.afterLabel),
    cards: cardsOf(result, subject, units),
    reasons: why,
    hasReasons: why.length > 0,
    conditions,
    hasConditions: conditions.length > 0,
    offerTitle: title,
    offers: list,
    cautions: shortCautions(result, subject, units),
  }
}
