/** What a cooler must carry away, in watts for each kelvin between oil and air. */
import type { Machine } from '../machine.ts'
import type { Celsius, CubicMetresPerSecond, Kelvins, Watts, WattsPerKelvin } from '../units/si.ts'

/** Half again for dirt and age: common practice, no source. */
export const COOLER_RESERVE = 1.5

/** What tank and the other surface give off [W/K]: U A of both, times the calibrated factor. */
export const surfaceLoss = (machine: Machine): WattsPerKelvin =>
  machine.coolingFactor *
  (machine.reservoir.heatTransfer * machine.reservoir.coolingSurface +
    machine.otherHeatTransfer * machine.otherCoolingSurface)

/**
 * Capacity that a cooler needs so that the oil settles at the target:
 * `G = 1.5 max(0, P - UA (T - Ta)) / (T - Ta - rise)`.
 * @param heat that enters the oil at the target temperature, mean over the duty [W]
 * @param surface what the machine gives off without a cooler [W/K]
 * @param target oil temperature [degC]
 * @param ambient [degC]
 * @param airRise how much warmer than ambient the cooler's air is [K]
 * @returns [W/K] at the flow that the cooler sees; null where the air is not colder than the target
 * Source: service-sheet method (heat at the steady temperature against heat given off at the target).
 */
export const coolerNeed = (
  heat: Watts,
  surface: WattsPerKelvin,
  target: Celsius,
  ambient: Celsius,
  airRise: Kelvins,
): WattsPerKelvin | null => {
  const difference = target - ambient
  const left = difference - airRise
  if (left <= 0) return null
  return (COOLER_RESERVE * Math.max(0, heat - surface * difference)) / left
}

/**
 * Capacity of a cooler at the flow that it sees: `G min(1, sqrt(Q/Q_ref))` [W/K].
 * @param capacity at its reference flow [W/K]
 */
export const capacityAt = (
  capacity: WattsPerKelvin,
  atFlow: CubicMetresPerSecond,
  flow: CubicMetresPerSecond,
): WattsPerKelvin => capacity * Math.min(1, Math.sqrt(flow / atFlow))
