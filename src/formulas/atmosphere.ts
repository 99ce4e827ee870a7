/** Air pressure at a height, and what is left of it at a pump's inlet. */
import type { KilogramsPerCubicMetre, Metres, Pascals } from '../units/si.ts'
import { GRAVITY } from '../units/si.ts'

/**
 * Pressure of the standard atmosphere.
 * p = 101325 (1 - 2.25577e-5 h)^5.2559
 * @param altitude [m] height above sea level
 * @returns [Pa] absolute pressure
 * Valid: -500 to 11000 m; weather moves it by 3 %.
 * Source: ISO 2533 (ICAO) troposphere, in the ASHRAE form.
 */
export const standardAtmosphere = (altitude: Metres): Pascals => 101325 * (1 - 2.25577e-5 * altitude) ** 5.2559

/**
 * Pressure of a column of oil.
 * dp = rho g z
 * @param rho [kg/m3] density
 * @param height [m] oil level above the point; negative below it
 * @returns [Pa] pressure
 * Valid: oil at rest.
 * Source: hydrostatics.
 */
export const columnPressure = (rho: KilogramsPerCubicMetre, height: Metres): Pascals => rho * GRAVITY * height

/**
 * Head available at an inlet above the vapour pressure (net positive suction head).
 * h = (p - p_v)/(rho g) + z - h_loss
 * @param surface [Pa] absolute pressure on the oil level p
 * @param vapour [Pa] absolute vapour pressure p_v
 * @param rho [kg/m3] density
 * @param height [m] oil level above the inlet z; negative for a lift
 * @param loss [m] head lost in the suction line
 * @returns [m] head available
 * Valid: mineral oil releases air long before it boils; the inlet limit of the pump decides.
 * Source: Crane TP-410.
 */
export const suctionHead = (
  surface: Pascals,
  vapour: Pascals,
  rho: KilogramsPerCubicMetre,
  height: Metres,
  loss: Metres,
): Metres => (surface - vapour) / (rho * GRAVITY) + height - loss
