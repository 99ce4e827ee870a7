/**
 * The engine at its governor: the governor line from rated speed to high idle, the full-load line below rated speed,
 * and what altitude and warm air take away.
 */
import type { Celsius, Metres, NewtonMetres, RevsPerSecond, Share } from '../units/si.ts'

/** Torque peaks here and stays: share of rated speed. */
const PEAK_AT = 0.7

/**
 * Share of the net torque that is left at a site, of a naturally aspirated engine.
 * d = (1 - 0.03 (h - 150)/300)(1 - 0.01 (T - 29)/5.5), each factor from 0 to 1
 * @param altitude [m] height above sea level
 * @param ambient [degC] air temperature
 * @returns [1] share of the torque that is left
 * Valid: to 4000 m and 50 °C, no turbocharger.
 * Source: site derate rule of a small-engine maker, 3 % per 1000 ft above 500 ft and 1 % per 10 °F above 85 °F.
 */
export const siteDerate = (altitude: Metres, ambient: Celsius): Share => {
  const height = 1 - (0.03 * (altitude - 150)) / 300
  const warmth = 1 - (0.01 * (ambient - 29)) / 5.5
  return Math.max(0, Math.min(1, height)) * Math.max(0, Math.min(1, warmth))
}

/**
 * Full-load torque at a speed: linear from rated speed to its peak at 70 % of it, flat below.
 * T = T_rated (1 + r min(1, (1 - n/n_rated)/0.3)), T_rated from rated speed up
 * @param speed [rev/s] engine speed
 * @param ratedSpeed [rev/s] rated speed, above 0
 * @param ratedTorque [N.m] torque at rated speed
 * @param rise [1] torque rise to the peak
 * @returns [N.m] full-load torque
 * Valid: half to full rated speed.
 * Source: common practice, no source.
 */
export const fullLoadTorque = (
  speed: RevsPerSecond,
  ratedSpeed: RevsPerSecond,
  ratedTorque: NewtonMetres,
  rise: Share,
): NewtonMetres => ratedTorque * (1 + rise * Math.max(0, Math.min(1, (1 - speed / ratedSpeed) / (1 - PEAK_AT))))

/**
 * Torque that the governed engine gives at a speed: the governor line above rated speed, full load below.
 * T = T_rated (1 + d - n/n_rated)/d above rated speed, else fullLoadTorque
 * @param speed [rev/s] engine speed
 * @param ratedSpeed [rev/s] rated speed, above 0
 * @param ratedTorque [N.m] torque at rated speed
 * @param droop [1] governor droop d
 * @param rise [1] torque rise to the peak
 * @returns [N.m] torque, 0 from high idle up
 * Valid: mechanical governors, droop 4 to 10 %.
 * Source: linear governor line, common practice; droop by US Army TM 5-3895-355.
 */
export const governedTorque = (
  speed: RevsPerSecond,
  ratedSpeed: RevsPerSecond,
  ratedTorque: NewtonMetres,
  droop: Share,
  rise: Share,
): NewtonMetres => {
  if (speed <= ratedSpeed) return fullLoadTorque(speed, ratedSpeed, ratedTorque, rise)
  return droop > 0 ? ratedTorque * Math.max(0, (1 + droop - speed / ratedSpeed) / droop) : 0
}

/**
 * Speed at which the governed engine carries a torque: the inverse of governedTorque.
 * n = n_rated (1 + d (1 - T/T_rated)) to rated torque, n = n_rated (1 - 0.3 (T/T_rated - 1)/r) above it
 * @param torque [N.m] torque asked for, 0 and more
 * @param ratedSpeed [rev/s] rated speed
 * @param ratedTorque [N.m] torque at rated speed, above 0
 * @param droop [1] governor droop d
 * @param rise [1] torque rise r to the peak
 * @returns [rev/s] engine speed, null where the torque is above the peak
 * Valid: as governedTorque.
 * Source: governedTorque solved for the speed.
 */
export const governedSpeed = (
  torque: NewtonMetres,
  ratedSpeed: RevsPerSecond,
  ratedTorque: NewtonMetres,
  droop: Share,
  rise: Share,
): RevsPerSecond | null => {
  const load = torque / ratedTorque
  if (load <= 1) return ratedSpeed * (1 + droop * (1 - load))
  if (!(load <= 1 + rise)) return null
  return ratedSpeed * (1 - ((1 - PEAK_AT) * (load - 1)) / rise)
}

/**
 * Governor droop from the speeds without load and at full load.
 * d = (n_0 - n_1)/n_1
 * @param noLoadSpeed [rev/s] high idle
 * @param ratedSpeed [rev/s] speed at full load, above 0
 * @returns [1] droop
 * Valid: always.
 * Source: definition, US Army TM 5-3895-355.
 */
export const governorDroop = (noLoadSpeed: RevsPerSecond, ratedSpeed: RevsPerSecond): Share =>
  (noLoadSpeed - ratedSpeed) / ratedSpeed
