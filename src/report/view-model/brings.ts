/**
 * What a way brings: minutes, money, cooler oil, oil for the attachment. A way that we would build is never told to bring
 * "nothing": what it is for stands there instead.
 */
import type { Gain, OptionResult, Restoration, ResultDocument } from '../../evaluation.ts'
import { decimal, minutes, moneyPerSpeed, quantity, type Units, wholeHours } from '../format.ts'
import { en } from '../wording.ts'
import { toolFlow } from './tool-flow.ts'

/** It would not work as it should: what it saves on paper is no gain. */
const isStopped = ({ answer, evaluation }: OptionResult): boolean =>
  answer.answer === 'decline' && evaluation.findings.some(({ severity, existing }) => severity === 'stop' && !existing)

/** Saved or lost, from a difference: positive saves. */
const timeText = (text: string, gained: boolean) => (gained ? en.ways.saves(text) : en.ways.costs(text))

const perTime = (perTrip: number, tripsPerDay: number | null): string =>
  tripsPerDay === null ? en.ways.perTrip(minutes(perTrip)) : en.ways.perDay(minutes(perTrip * tripsPerDay))

/** Hours a year, whole. */
const year = (hoursPerYear: number | null): readonly string[] =>
  hoursPerYear === null || Math.abs(hoursPerYear) < 0.5 ? [] : [en.ways.perYear(wholeHours(Math.abs(hoursPerYear)))]

/** Time is told by the day where the trips of a day are known, as it is for the ways that leave the machine alone. */
const timeOf = ({ minutesPerTrip: trip, hoursPerYear }: Gain, tripsPerDay: number | null): readonly string[] =>
  trip === null || Math.abs(trip) < 0.05
    ? []
    : [timeText([perTime(Math.abs(trip), tripsPerDay), ...year(hoursPerYear)].join(', '), trip > 0)]

const degreesOf = ({ steadyOilC: cooler }: Gain, units: Units): readonly string[] => {
  if (cooler === null || Math.abs(cooler) < 2.5) return []
  return [cooler < 0 ? en.ways.cooler(quantity(-cooler, 'K', units)) : en.ways.hotter(quantity(cooler, 'K', units))]
}

const moneyOf = (gain: Gain, currency: string, units: Units): readonly string[] => {
  const per =
    gain.costPerKmh === null || gain.speedKmh === null || gain.speedKmh <= 0
      ? []
      : [moneyPerSpeed(gain.costPerKmh, currency, units)]
  if (gain.paybackYears === null) return per
  return [...per, gain.paybackYears < 1 ? en.ways.paysSoon : en.ways.pays(decimal(gain.paybackYears, 1))]
}

/** Oil for the attachment, where it gets at least 2 % more than today. */
const toolOf = (option: OptionResult, result: ResultDocument, units: Units): readonly string[] => {
  const [now, then] = [toolFlow(result, result.baseline), toolFlow(result, option.evaluation)]
  return then === null || then <= 1.02 * (now ?? 0) ? [] : [en.ways.attachmentGets(quantity(then, 'L/min', units))]
}

const nothingMore = ({ protecting, answer }: OptionResult, recommended: boolean): string => {
  if (answer.answer === 'decline' && !recommended) return en.ways.nothing
  return protecting ? en.ways.protects : en.ways.noDifference
}

/** @param recommended it is what page one recommends, whatever its own answer */
export const optionBrings = (
  option: OptionResult,
  result: ResultDocument,
  recommended: boolean,
  units: Units,
): readonly string[] => {
  if (isStopped(option)) return [en.ways.noGain]
  const { gain, cost } = option
  const all = [
    ...toolOf(option, result, units),
    ...timeOf(gain, result.sheet.site.tripsPerDay),
    ...degreesOf(gain, units),
    ...moneyOf(gain, cost.currency, units),
  ]
  return all.length === 0 ? [nothingMore(option, recommended)] : all
}

/** What a speed costs by the piece is for ways of going faster, not for a repair. */
export const repairBrings = ({ gain }: Restoration, result: ResultDocument, units: Units): readonly string[] => {
  const time = timeOf(gain, result.sheet.site.tripsPerDay)
  return [...(time.length === 0 ? [en.ways.faultGone] : time), ...degreesOf(gain, units)]
}

/** @param minutesPerDay that it saves  @param daysPerYear null where nobody said */
export const alternativeBrings = (minutesPerDay: number, daysPerYear: number | null): string => {
  if (minutesPerDay <= 0) return en.dash
  const hours = daysPerYear === null ? null : (minutesPerDay * daysPerYear) / 60
  return en.ways.saves([en.ways.perDay(minutes(minutesPerDay)), ...year(hours)].join(', '))
}
