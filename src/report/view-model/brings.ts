/**
 * What a way brings: minutes, money, cooler oil, oil for the attachment. A way that we would build is never told to bring
 * "nothing": what it is for stands there instead.
 */
import type { Cost, Gain, OptionResult, Restoration, ResultDocument } from '../../evaluation.ts'
import { decimal, minutes, quantity, type Units, wholeHours } from '../format.ts'
import { moneyPerSpeed } from '../prices.ts'
import { en } from '../wording.ts'
import { toolFlow } from './tool-flow.ts'

/** Something of it has no price yet. */
export const isOpen = ({ unpriced }: Cost): boolean => unpriced.length > 0

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

/** Under this many of the currency, or years, there is nothing to tell of what is not priced whole. */
const NO_PRICE = 0.5
const NO_YEARS = 0.05

/**
 * Price of what is gained. Both stand on the likely cost of what has a price: where something has none yet, it is the least
 * that they can be.
 */
const moneyOf = ({ costPerKmh, paybackYears, speedKmh }: Gain, cost: Cost, units: Units): readonly string[] => {
  const words = en.ways
  const open = isOpen(cost)
  const isTold = costPerKmh !== null && speedKmh !== null && speedKmh > 0 && !(open && costPerKmh < NO_PRICE)
  const per = isTold ? [moneyPerSpeed(costPerKmh, cost.currency, units)] : []
  if (open) {
    const years = paybackYears === null || paybackYears < NO_YEARS ? [] : [decimal(paybackYears, 1)]
    return [...per.map(words.atLeast), ...years.map(words.paysAtBest)]
  }
  if (paybackYears === null) return per
  return [...per, paybackYears < 1 ? words.paysSoon : words.pays(decimal(paybackYears, 1))]
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
    ...moneyOf(gain, cost, units),
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
