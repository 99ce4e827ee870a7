/**
 * Heat: what surfaces and coolers carry away, how fast oil and steel warm up as one lump, what a throttled pressure does
 * to the oil, what heat does to its life.
 */
import type {
  Celsius,
  CubicMetresPerSecond,
  JoulesPerKelvin,
  JoulesPerKilogramKelvin,
  Kelvins,
  KilogramsPerCubicMetre,
  Pascals,
  Seconds,
  Share,
  SquareMetres,
  Watts,
  WattsPerKelvin,
  WattsPerSquareMetreKelvin,
} from '../units/si.ts'

/**
 * Heat that a surface gives to the air.
 * P = U A dT
 * @param coefficient [W/(m2.K)] heat transfer coefficient U: 6 boxed in, 12 exposed, 24 in fan wash
 * @param area [m2] surface A
 * @param difference [K] oil less air dT
 * @returns [W] heat flow
 * Valid: differences of 25 K and more; published coefficients span 2.5 times.
 * Source: Newton's law of cooling; coefficients of a trade article on tank heat rejection.
 */
export const surfaceHeat = (coefficient: WattsPerSquareMetreKelvin, area: SquareMetres, difference: Kelvins): Watts =>
  coefficient * area * difference

/**
 * Heat that an air cooler carries away.
 * P = G (T - Ta - r) min(1, sqrt(Q/Q_ref))
 * @param capacity [W/K] stated capacity G per kelvin between oil in and air in
 * @param flow [m3/s] oil flow Q; 0 and less give 0
 * @param atFlow [m3/s] flow Q_ref at which the capacity is stated, above 0
 * @param oil [degC] oil temperature T at the inlet
 * @param ambient [degC] air temperature Ta
 * @param airRise [K] warmth r of the air at the cooler above ambient
 * @returns [W] heat flow, negative where the air is warmer than the oil
 * Valid: clean core, stated fan running; above its flow no gain is counted.
 * Source: definition of the capacity; fall with the root of the flow by common practice, no source.
 */
export const coolerHeat = (
  capacity: WattsPerKelvin,
  flow: CubicMetresPerSecond,
  atFlow: CubicMetresPerSecond,
  oil: Celsius,
  ambient: Celsius,
  airRise: Kelvins,
): Watts => (flow > 0 ? capacity * (oil - ambient - airRise) * Math.min(1, Math.sqrt(flow / atFlow)) : 0)

/**
 * Capacity of a cooler from one measured point.
 * G = P/(T - Ta)
 * @param heat [W] heat carried away
 * @param oil [degC] oil temperature at the inlet
 * @param air [degC] air temperature at the inlet
 * @returns [W/K] capacity
 * Valid: oil warmer than air.
 * Source: definition by the entering temperature difference.
 */
export const coolerCapacity = (heat: Watts, oil: Celsius, air: Celsius): WattsPerKelvin => heat / (oil - air)

/**
 * Effectiveness of a cooler: its heat over the most that its oil could give, the air being the stronger stream.
 * eps = G/(rho c Q)
 * @param capacity [W/K] capacity G
 * @param rho [kg/m3] oil density
 * @param specificHeat [J/(kg.K)] heat capacity of the oil c
 * @param flow [m3/s] oil flow, above 0
 * @returns [1] effectiveness, below 1 for a real cooler
 * Valid: oil the weaker stream.
 * Source: definition.
 */
export const coolerEffectiveness = (
  capacity: WattsPerKelvin,
  rho: KilogramsPerCubicMetre,
  specificHeat: JoulesPerKilogramKelvin,
  flow: CubicMetresPerSecond,
): Share => capacity / (rho * specificHeat * flow)

/**
 * Effectiveness of a cross-flow exchanger, both streams unmixed.
 * eps = 1 - exp(NTU^0.22/Cr (exp(-Cr NTU^0.78) - 1))
 * @param ntu [-] number of transfer units
 * @param ratio [-] smaller over larger heat capacity rate, above 0
 * @returns [1] effectiveness
 * Valid: ratio above 0 to 1.
 * Source: Incropera et al., Fundamentals of Heat and Mass Transfer, eq. 11.32 (from memory).
 */
export const crossFlowEffectiveness = (ntu: number, ratio: number): Share =>
  1 - Math.exp((ntu ** 0.22 / ratio) * (Math.exp(-ratio * ntu ** 0.78) - 1))

/**
 * Warming of oil whose pressure is throttled away without work.
 * dT = dp/(rho c)
 * @param drop [Pa] pressure throttled
 * @param rho [kg/m3] density
 * @param specificHeat [J/(kg.K)] heat capacity
 * @returns [K] temperature rise
 * Valid: no heat lost on the way; 5.5 to 6.7 K per 100 bar.
 * Source: energy balance; Esposito, Fluid Power with Applications, ch. 11.
 */
export const throttlingRise = (
  drop: Pascals,
  rho: KilogramsPerCubicMetre,
  specificHeat: JoulesPerKilogramKelvin,
): Kelvins => drop / (rho * specificHeat)

/**
 * Time constant of a lump that loses heat in proportion.
 * tau = C/UA
 * @param capacity [J/K] heat capacity C of oil and steel together
 * @param conductance [W/K] heat lost per kelvin UA, above 0
 * @returns [s] time constant
 * Valid: one temperature throughout.
 * Source: lumped capacitance method.
 */
export const timeConstant = (capacity: JoulesPerKelvin, conductance: WattsPerKelvin): Seconds => capacity / conductance

/**
 * Temperature that a steady heat input settles at.
 * T = Ta + P/UA
 * @param ambient [degC] air temperature Ta
 * @param heat [W] heat input P
 * @param conductance [W/K] heat lost per kelvin UA, above 0
 * @returns [degC] settled temperature
 * Valid: constant input and conductance.
 * Source: lumped capacitance method.
 */
export const settledTemperature = (ambient: Celsius, heat: Watts, conductance: WattsPerKelvin): Celsius =>
  ambient + heat / conductance

/**
 * Temperature of a lump after a time.
 * T = T_end + (T_0 - T_end) exp(-t/tau)
 * @param start [degC] temperature T_0 at the start
 * @param end [degC] temperature T_end that it settles at
 * @param tau [s] time constant, above 0
 * @param time [s] time t since the start
 * @returns [degC] temperature
 * Valid: constant heat input and conductance.
 * Source: lumped capacitance method; Incropera et al., ch. 5.
 */
export const lumpedTemperature = (start: Celsius, end: Celsius, tau: Seconds, time: Seconds): Celsius =>
  end + (start - end) * Math.exp(-time / tau)

/**
 * Time until a lump reaches a temperature on its way to the settled one.
 * t = tau ln((T_end - T_0)/(T_end - T))
 * @param start [degC] temperature T_0 at the start
 * @param end [degC] temperature T_end that it settles at
 * @param tau [s] time constant
 * @param temperature [degC] temperature T to be reached
 * @returns [s] time, null where it is never reached
 * Valid: constant heat input and conductance.
 * Source: lumpedTemperature solved for the time.
 */
export const timeToTemperature = (start: Celsius, end: Celsius, tau: Seconds, temperature: Celsius): Seconds | null => {
  const ratio = (end - start) / (end - temperature)
  return ratio >= 1 && Number.isFinite(ratio) ? tau * Math.log(ratio) : null
}

/**
 * Life of oil and seals at a temperature against that at a reference temperature.
 * f = 2^-((T - T_ref)/10)
 * @param oil [degC] temperature T
 * @param reference [degC] reference temperature T_ref, 60 to 65 °C
 * @returns [1] life factor, 0.5 for 10 K above
 * Valid: a rule of thumb, 40 to 100 °C.
 * Source: Arrhenius rule, reaction rate doubles per 10 K; common practice.
 */
export const lifeFactor = (oil: Celsius, reference: Celsius): number => 2 ** (-(oil - reference) / 10)
