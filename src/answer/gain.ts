/** What an option brings against the machine it starts from: speed, time, money. */
import type { Cost, Evaluation, Gain } from '../evaluation.ts'
import type { Site } from '../machine.ts'

/** Minutes for one trip at the level speed; null where there is no trip or the machine stands. */
export const minutesForTrip = (site: Site, speedKmh: number): number | null =>
  site.trip === null || speedKmh <= 0 ? null : (site.trip / 1000 / speedKmh) * 60

/**
 * Gain of one evaluation over another.
 * speed ratio = v1/v0; minutes a trip = trip/v0 - trip/v1; hours a year = minutes x trips a day x days a year / 60;
 * payback = likely cost / (hours a year x what an hour is worth)
 * @param cost null where nothing is priced
 */
export const gainOver = (before: Evaluation, after: Evaluation, site: Site, cost: Cost | null): Gain => {
  const from = before.travel.level.speedKmh
  const to = after.travel.level.speedKmh
  const [slow, fast] = [minutesForTrip(site, from), minutesForTrip(site, to)]
  const minutesPerTrip = slow === null || fast === null ? null : slow - fast
  const trips = site.tripsPerDay === null || site.daysPerYear === null ? null : site.tripsPerDay * site.daysPerYear
  const hoursPerYear = minutesPerTrip === null || trips === null ? null : (minutesPerTrip * trips) / 60
  const yearly = hoursPerYear === null || site.hourIsWorth === null ? null : hoursPerYear * site.hourIsWorth
  const [coolFrom, coolTo] = [before.heat.steadyOilC, after.heat.steadyOilC]
  const speedKmh = to - from
  return {
    speedKmh,
    speedRatio: from > 0 ? to / from : null,
    minutesPerTrip,
    hoursPerYear,
    steadyOilC: coolFrom === null || coolTo === null ? null : coolTo - coolFrom,
    costPerKmh: cost !== null && speedKmh > 1e-9 ? cost.likely / speedKmh : null,
    paybackYears: cost !== null && yearly !== null && yearly > 1e-9 ? cost.likely / yearly : null,
  }
}
