/**
 * Tolerances through the whole evaluation: plates, calibration by the readings, travel and heat are worked out again for
 * each draw; p10, p50 and p90 of level speed and settled oil are what the report prints (method: "Ranges").
 */
import { calibrate } from '../calibration/calibrate.ts'
import { type Carried, carry } from '../calibration/carried.ts'
import type { Work } from '../circuit/duty.ts'
import { heatAt, heatOut } from '../circuit/oil-heat.ts'
import { conditionsAt, type Plant, preparePlant } from '../circuit/plant.ts'
import { rootBetween } from '../circuit/root.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel } from '../circuit/travel-point.ts'
import type { Percentiles, Range } from '../evaluation.ts'
import type { Ground, Machine, Site } from '../machine.ts'
import type { Readings } from '../question.ts'
import { noticeable } from '../tables/limits.ts'
import { NO_BALANCE_ABOVE } from '../tables/oil-risk.ts'
import { kmhFromMetresPerSecond } from '../units/shop-units.ts'
import type { Celsius, Share } from '../units/si.ts'
import { Hypercube, percentile } from './hypercube.ts'

export const SAMPLES = 1000

/** Rolling resistance and turning coefficient of a ground are known to this (method). */
const GROUND_TOLERANCE = 0.25

/** Residual [W] at which a sample counts as settled: about a hundredth of a kelvin. */
const SETTLED = 0.3

/** Nodes of the heat table in a draw [K]: the cooling factor moves by less than a thousandth against 8 K. */
export const WIDE_STEP = 16

/** A machine as a function of a draw: the plates, or an option with its consequences. */
export type Resolve = (draw: (path: string, nominal: number, tolerance: number) => number) => Machine

export interface Ranged {
  readonly resolve: Resolve
  /** The estimate of its level speed, which its range has to hold. */
  readonly speedKmh: number
  /** The estimate of its settled oil, where the search for each sample's starts, and which its range has to hold. */
  readonly steady: Celsius | null
  /** Held against the restored machine. */
  readonly restored: boolean
  /** Place in the list of the machine that it starts from; its own place for one that starts from nothing. */
  readonly from: number
}

/** A ground within what is known of it. */
export const drawnGround = (
  ground: Ground,
  draw: (path: string, nominal: number, tolerance: number) => number,
): Ground => ({
  ...ground,
  rollingResistance: draw('site.ground.rolling', ground.rollingResistance, GROUND_TOLERANCE * ground.rollingResistance),
  turning: draw('site.ground.turning', ground.turning, GROUND_TOLERANCE * ground.turning),
})

const drawnReadings = (
  readings: Readings,
  draw: (path: string, nominal: number, tolerance: number) => number,
): Readings => {
  const { travel } = readings
  if (travel === null) return readings
  return {
    ...readings,
    travel: { ...travel, time: draw('measured.travel.time', travel.time, travel.tolerance * travel.time) },
  }
}

/**
 * Settled oil of one sample: a bracket around the nominal answer, widened until the balance changes sign.
 * @returns null where nothing settles below 150 degC
 */
export const settledNear = (plant: Plant, work: Work, near: Celsius | null): Celsius | null => {
  const { machine, site } = plant
  const surplus = (oil: Celsius) => {
    const at = heatAt(plant, work, oil)
    return at.heat - heatOut(machine, site.ambient, oil, at.coolerShare)
  }
  const centre = near ?? NO_BALANCE_ABOVE
  let low = Math.max(site.ambient, centre - 4)
  let atLow = surplus(low)
  let step = 8
  while (atLow < 0 && low > site.ambient) {
    low = Math.max(site.ambient, low - step)
    atLow = surplus(low)
    step *= 2
  }
  if (atLow <= 0) return low
  let high = Math.min(NO_BALANCE_ABOVE, Math.max(low, centre) + 4)
  let atHigh = surplus(high)
  step = 8
  while (atHigh > 0) {
    if (high >= NO_BALANCE_ABOVE) return null
    high = Math.min(NO_BALANCE_ABOVE, high + step)
    atHigh = surplus(high)
    step *= 2
  }
  return rootBetween(surplus, low, high, atLow, atHigh, SETTLED)
}

/**
 * Percentiles of the samples, with ends that hold the estimate. It can lie outside by a hair: where a reading of the tank pins
 * the oil, all samples fall within hundredths of a kelvin, less than the coarser table of heat that they are calibrated with
 * (and the balance itself in place of a table) moves them. And where the machine works at a kink (a relief that just opens,
 * an engine that just lugs) every departure goes one way, and the estimate is the end of what there is. Nobody promises
 * 67 °C and a range that ends below it: the nearer end moves out to the estimate, so that the range still holds eight samples
 * in ten, and no fewer.
 * @param values null: a sample that does not settle, hotter than any that does
 * @param estimate infinite where the machine itself does not settle; null where there is none
 */
export const percentilesAround = (values: readonly (number | null)[], estimate: number | null): Percentiles => {
  const sorted = values.map((value) => value ?? Number.POSITIVE_INFINITY).sort((a, b) => a - b)
  const told = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null)
  const [p10, p50, p90] = [percentile(sorted, 0.1), percentile(sorted, 0.5), percentile(sorted, 0.9)]
  const end = (value: number | null, further: (one: number, other: number) => number) =>
    told(value === null || estimate === null ? value : further(value, estimate))
  return { p10: end(p10, Math.min), p50: told(p50), p90: end(p90, Math.max) }
}

/** A machine that stands gives no ratio. */
const ratioOf = (speed: number, before: number): number | null => (before > 0 ? speed / before : null)

/**
 * Ranges of several machines under the same draws.
 * @param plates the machine as its file says, which the readings calibrate in every draw
 * @param leastGain share of speed below which a gain cannot be shown
 */
export const rangesOf = (
  plates: Resolve,
  machines: readonly Ranged[],
  site: Site,
  work: Work,
  readings: Readings,
  leastGain: Share,
): readonly Range[] => {
  const cube = new Hypercube(SAMPLES)
  const speeds: number[][] = machines.map(() => [])
  const oils: (number | null)[][] = machines.map(() => [])
  for (let sample = 0; sample < SAMPLES; sample++) {
    // A figure that an option changes is another part's: it errs by itself, not along with the old one.
    const draw = (path: string, nominal: number, tolerance: number) =>
      cube.draw(sample, `${path}=${nominal}`, nominal, tolerance)
    const there: Site = { ...site, ground: drawnGround(site.ground, draw) }
    const carried: Carried = calibrate(plates(draw), there, work, drawnReadings(readings, draw), WIDE_STEP).carried
    machines.forEach(({ resolve, steady, restored }, i) => {
      const plant = preparePlant(carry(resolve(draw), carried, restored), there)
      speeds[i]?.push(kmhFromMetresPerSecond(solveLevel(plant, conditionsAt(plant, REFERENCE_OIL)).speed))
      oils[i]?.push(settledNear(plant, work, steady))
    })
  }
  return machines.map(({ from, speedKmh, steady }, i) => {
    const own = speeds[i] ?? []
    const before = speeds[from] ?? own
    const speedRatio = percentilesAround(
      own.map((speed, k) => ratioOf(speed, before[k] ?? 0)),
      ratioOf(speedKmh, machines[from]?.speedKmh ?? 0),
    )
    const gains = from !== i && speedRatio.p50 !== null && speedRatio.p50 > 1 + noticeable.value
    return {
      speedKmh: percentilesAround(own, speedKmh),
      steadyOilC: percentilesAround(oils[i] ?? [], steady ?? Number.POSITIVE_INFINITY),
      speedRatio,
      gainWithinError: gains && (speedRatio.p10 ?? 0) < 1 + leastGain,
    }
  })
}
