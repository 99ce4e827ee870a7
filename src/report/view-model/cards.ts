/** Three figures of the first page, now and then. */
import type { Evaluation, OptionResult, Range, ResultDocument } from '../../evaluation.ts'
import { decimal, type Figure, figure, minutes, quantity, span, tripMinutes, type Units } from '../format.ts'
import { en } from '../wording.ts'
import { oilAfterDay, readingsDisagree, type Subject } from './subject.ts'
import { toolFlow } from './tool-flow.ts'
import { isCooledByConsequence } from './ways.ts'

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
  readonly after: CardSide
  readonly hasAfter: boolean
  readonly notes: readonly string[]
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

/** Small print under a figure keeps to one unit; the figure itself has both. */
const oneOf = (units: Units): Units => (units === 'us' ? 'us' : 'metric')

const speedSide = ({ label, evaluation, range }: Side, units: Units): CardSide => {
  const { level } = evaluation.travel
  if (level.stalled) return inWords(label, en.stalled)
  const { p10, p90 } = range?.speedKmh ?? { p10: null, p90: null }
  const shown = p10 === null || p90 === null ? '' : span(p10, p90, 'km/h', oneOf(units))
  const alike = shown === quantity(level.speedKmh, 'km/h', oneOf(units))
  const notes = shown === '' ? [] : [alike ? en.answer.rangeAlike : en.answer.range(shown)]
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
    return time === null ? null : en.answer.passes(quantity(Number(limit), '°C', oneOf(units)), minutes(time))
  }
  const notes = [
    soon('70') ?? en.answer.staysBelow(quantity(70, '°C', oneOf(units))),
    soon('82'),
    heat.steadyOilC === null ? en.answer.stillRising : null,
  ]
  return inFigures(
    label,
    figure(oilAfterDay(evaluation), '°C', units),
    notes.filter((note) => note !== null),
  )
}

const toolSide = (result: ResultDocument, { label, evaluation }: Side, units: Units): CardSide => {
  const value = toolFlow(result, evaluation)
  return value !== null ? inFigures(label, figure(value, 'L/min', units)) : inWords(label, en.notWorkedOut)
}

/** What another way would give, with its answer: figures of ways beside a repair are those of the repaired machine. */
const namedNote = ({ name, evaluation, answer }: OptionResult, { kind }: Subject, units: Units): string => {
  const { level } = evaluation.travel
  const gives = level.stalled ? en.stalled : quantity(level.speedKmh, 'km/h', units)
  if (answer.answer === 'decline') return en.answer.namedAgainst(name, gives)
  return en.answer.named(name, gives, kind === 'restore', answer.answer === 'conditions')
}

/** Speed, trip and oil; where an attachment is asked for, its oil in place of the trip. */
export const cardsOf = (result: ResultDocument, subject: Subject, units: Units): readonly Card[] => {
  const { wants, site } = result.sheet
  const now: Side = { label: en.answer.now, evaluation: result.baseline, range: result.baselineRange }
  const after: Side | null =
    subject.after === null
      ? null
      : { label: en.answer.afterwards, evaluation: subject.after, range: subject.afterRange }
  const card = (label: string, side: (of: Side) => CardSide, notes: readonly string[]): Card => ({
    label,
    now: side(now),
    after: after === null ? EMPTY : side(after),
    hasAfter: after !== null,
    notes,
  })
  const wanted = wants.speedKmh === null ? [] : [en.answer.wanted(quantity(wants.speedKmh, 'km/h', units))]
  // Where something else is recommended than was asked, what gives the speed that was asked for stands beside it.
  const other = subject.named !== null && !subject.against && wants.speedKmh !== null ? subject.named : null
  const named = other === null ? [] : [namedNote(other, subject, units)]
  const { measuredSpeedKmh } = result.calibration
  const timed =
    measuredSpeedKmh === null || !readingsDisagree(result)
      ? []
      : [en.answer.timedRun(quantity(measuredSpeedKmh, 'km/h', units))]
  const speed = card(en.answer.speed, (side) => speedSide(side, units), [...timed, ...wanted, ...named])
  const then = result.options.find(({ evaluation }) => evaluation === subject.after)
  const cooled = then !== undefined && isCooledByConsequence(then) ? [en.answer.withCooler] : []
  const oil = card(en.answer.oil, (side) => oilSide(side, units), cooled)
  const isToolKnown = [now, ...(after === null ? [] : [after])].some(
    ({ evaluation }) => toolFlow(result, evaluation) !== null,
  )
  if (wants.attachmentFlowLpm !== null && isToolKnown) {
    const tool = card(en.answer.attachmentCard, (side) => toolSide(result, side, units), [
      en.answer.attachmentWants(quantity(wants.attachmentFlowLpm, 'L/min', units)),
    ])
    return [tool, speed, oil]
  }
  const trip = site.tripM === null ? en.answer.tripUnknown : en.answer.trip(quantity(site.tripM, 'm', units))
  const ways = card(trip, (side) => tripSide(side, site.tripM), [])
  const untold =
    site.tripM === null ? { ...ways, now: inWords('', en.answer.tripNotTold), after: EMPTY, hasAfter: false } : ways
  return [speed, untold, oil]
}
