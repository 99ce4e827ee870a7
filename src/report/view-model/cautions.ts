/** The cautions that matter for one answer, in the order in which they matter. */
import type { ResultDocument } from '../../evaluation.ts'
import { quantity, type Units } from '../format.ts'
import { en } from '../wording.ts'
import { stillShort } from './still-short.ts'
import { findingOf, isFaster, oilAfterDay, type Subject } from './subject.ts'

const BURNS_FROM = 60

const hot = (celsius: number, units: Units) =>
  units === 'us' ? en.cautions.hotUs(quantity(celsius, '°C', units)) : en.cautions.hot(quantity(celsius, '°C', units))

/** Short list for the first page. */
export const shortCautions = (result: ResultDocument, subject: Subject, units: Units): readonly string[] => {
  const words = en.cautions
  const worksOn = subject.recommended ?? subject.offered
  // A repair brings back what its maker tested; only an option goes beyond.
  const faster = isFaster(result.baseline, subject.kind === 'restore' ? null : (worksOn?.evaluation ?? null))
  const oil = oilAfterDay(result.baseline)
  const brakes = ['holding-brake', 'counterbalance'].some(
    (check) => (findingOf(result.baseline, check)?.severity ?? 'ok') !== 'ok',
  )
  const arm = findingOf(worksOn?.evaluation ?? null, 'everything-faster')
  return [
    words.estimate,
    ...(faster ? [words.faster] : []),
    ...(arm !== null && arm.severity !== 'ok' ? [words.fasterArm] : []),
    ...(brakes ? [words.brakes] : []),
    ...(subject.kind === 'restore' ? [words.fault] : []),
    ...(worksOn === null ? [] : stillShort(result, worksOn.evaluation, units)),
    words.maker,
    ...(oil !== null && oil >= BURNS_FROM ? [hot(oil, units)] : []),
    words.injection,
  ]
}

/** All of them, for the last page; that of the faster machine in general where this one gets no faster. */
export const fullCautions = (result: ResultDocument, subject: Subject, units: Units): readonly string[] => {
  const words = en.cautions
  return [
    words.estimate,
    words.maker,
    isFaster(result.baseline, subject.after) ? words.faster : words.ifFaster,
    words.injection,
    hot(oilAfterDay(result.baseline) ?? BURNS_FROM, units),
    words.raised,
    words.within,
    words.governs,
  ]
}
