/** Limits of the oil's settled temperature and viscosity, and the risk class they make (method: "Heat"). */
import type { Risk } from '../evaluation.ts'
import type { Celsius } from '../units/si.ts'

/**
 * Up to these temperatures [degC] the risk is low, moderate, high; above, severe. 82: elastomers and hoses degrade quickly
 * above it (two published texts, physics reference section 7); 60 and 70: common practice, no source.
 */
export const OIL_TEMPERATURE_LIMITS = { low: 60, moderate: 70, high: 82 } as const

/** Viscosity [cSt] below which the film of gear pumps and orbital motors gets thin. From memory; a published gear-pump manual gives 12 cSt as its least. */
export const OIL_VISCOSITY_LIMITS = { thin: 12, tooThin: 10 } as const

/** A settled temperature above this is not an answer: the oil does not settle (method). */
export const NO_BALANCE_ABOVE: Celsius = 150

const ORDER: readonly Risk[] = ['low', 'moderate', 'high', 'severe']

/** Class by temperature alone. */
const byTemperature = (oil: Celsius): Risk => {
  if (oil <= OIL_TEMPERATURE_LIMITS.low) return 'low'
  if (oil <= OIL_TEMPERATURE_LIMITS.moderate) return 'moderate'
  return oil <= OIL_TEMPERATURE_LIMITS.high ? 'high' : 'severe'
}

/**
 * Risk class of a settled oil: by temperature, but never better than high where it settles below 12 cSt, severe below 10.
 * @param steady settled temperature [degC], null where nothing settles: severe
 * @param viscosity at that temperature [cSt]
 */
export const oilRisk = (steady: Celsius | null, viscosity: number | null): Risk => {
  if (steady === null || viscosity === null) return 'severe'
  const floor: Risk =
    viscosity < OIL_VISCOSITY_LIMITS.tooThin ? 'severe' : viscosity < OIL_VISCOSITY_LIMITS.thin ? 'high' : 'low'
  const temperature = byTemperature(steady)
  return ORDER.indexOf(floor) > ORDER.indexOf(temperature) ? floor : temperature
}

/** How many classes the second risk is better than the first; below zero where it is worse. */
export const classesBetter = (from: Risk, to: Risk): number => ORDER.indexOf(from) - ORDER.indexOf(to)
