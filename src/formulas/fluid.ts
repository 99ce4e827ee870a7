/**
 * Mineral hydraulic oil: viscosity and its index, density, heat capacity, each at a temperature. The oil is straight
 * mineral oil of an ISO VG grade; multigrade and water-containing fluids follow the same forms only roughly.
 */
import type {
  Celsius,
  JoulesPerKilogramKelvin,
  KilogramsPerCubicMetre,
  PascalSeconds,
  SquareMetresPerSecond,
} from '../units/si.ts'

/** Constants A and B of log10 log10(nu + 0.7) = A - B log10 T; T in kelvins, nu in mm2/s. */
export interface WaltherConstants {
  readonly a: number
  readonly b: number
}

const ZERO_CELSIUS = 273.15
const MM2 = 1e6

/**
 * Viscosity constants of an oil from its two data-sheet viscosities, at 40 and 100 °C.
 * log10 log10(nu + 0.7) = A - B log10 T
 * @param at40 [m2/s] kinematic viscosity at 40 °C
 * @param at100 [m2/s] kinematic viscosity at 100 °C, below `at40`
 * @returns [-] A and B
 * Valid: nu above 2 mm2/s, above the pour point.
 * Source: ASTM D341, short form (equation from memory).
 */
export const waltherConstants = (at40: SquareMetresPerSecond, at100: SquareMetresPerSecond): WaltherConstants =>
  waltherConstantsFrom(at40, 40, at100, 100)

/**
 * Viscosity constants of an oil from its viscosities at any two temperatures.
 * B = (W1 - W2)/(log10 T2 - log10 T1), A = W1 + B log10 T1, W = log10 log10(nu + 0.7)
 * @param nu1 [m2/s] kinematic viscosity at t1
 * @param t1 [degC] first temperature
 * @param nu2 [m2/s] kinematic viscosity at t2
 * @param t2 [degC] second temperature, other than t1
 * @returns [-] A and B
 * Valid: nu above 2 mm2/s; best between t1 and t2.
 * Source: ASTM D341, short form (equation from memory).
 */
export const waltherConstantsFrom = (
  nu1: SquareMetresPerSecond,
  t1: Celsius,
  nu2: SquareMetresPerSecond,
  t2: Celsius,
): WaltherConstants => {
  const w1 = Math.log10(Math.log10(nu1 * MM2 + 0.7))
  const w2 = Math.log10(Math.log10(nu2 * MM2 + 0.7))
  const log1 = Math.log10(t1 + ZERO_CELSIUS)
  const b = (w1 - w2) / (Math.log10(t2 + ZERO_CELSIUS) - log1)
  return { a: w1 + b * log1, b }
}

/**
 * Kinematic viscosity at a temperature.
 * nu = 10^(10^(A - B log10 T)) - 0.7
 * @param constants [-] A and B of the oil
 * @param oil [degC] oil temperature
 * @returns [m2/s] kinematic viscosity
 * Valid: pour point to 150 °C, result above 2 mm2/s.
 * Source: ASTM D341, short form (equation from memory).
 */
export const viscosityAt = (constants: WaltherConstants, oil: Celsius): SquareMetresPerSecond =>
  (10 ** (10 ** (constants.a - constants.b * Math.log10(oil + ZERO_CELSIUS))) - 0.7) / MM2

/**
 * Temperature at which an oil has a given viscosity.
 * T = 10^((A - log10 log10(nu + 0.7))/B)
 * @param constants [-] A and B of the oil
 * @param nu [m2/s] kinematic viscosity
 * @returns [degC] oil temperature
 * Valid: nu above 2 mm2/s.
 * Source: ASTM D341, short form, solved for T.
 */
export const temperatureAtViscosity = (constants: WaltherConstants, nu: SquareMetresPerSecond): Celsius =>
  10 ** ((constants.a - Math.log10(Math.log10(nu * MM2 + 0.7))) / constants.b) - ZERO_CELSIUS

/**
 * Dynamic viscosity.
 * mu = nu rho
 * @param nu [m2/s] kinematic viscosity
 * @param rho [kg/m3] density
 * @returns [Pa.s] dynamic viscosity
 * Valid: always.
 * Source: definition.
 */
export const dynamicViscosity = (nu: SquareMetresPerSecond, rho: KilogramsPerCubicMetre): PascalSeconds => nu * rho

/**
 * Density of mineral oil at no pressure.
 * rho = 870 (1 - 0.7e-3 (T - 15))
 * @param oil [degC] oil temperature
 * @returns [kg/m3] density
 * Valid: -30 to 150 °C.
 * Source: linear form of ASTM D1250 (API MPMS 11.1) for lubricating oil of 870 kg/m3 at 15 °C (from memory).
 */
export const densityAt = (oil: Celsius): KilogramsPerCubicMetre => 870 * (1 - 0.7e-3 * (oil - 15))

/**
 * Heat capacity of mineral oil of specific gravity 0.87.
 * c = 1000 (1.685 + 0.0034 T)/sqrt(0.87)
 * @param oil [degC] oil temperature
 * @returns [J/(kg.K)] heat capacity
 * Valid: 0 to 200 °C; published values differ by 7 %.
 * Source: Cragoe 1929, US Bureau of Standards (from memory).
 */
export const specificHeatAt = (oil: Celsius): JoulesPerKilogramKelvin =>
  (1000 * (1.685 + 0.0034 * oil)) / Math.sqrt(0.87)

/** L = a Y2 + b Y + c and H = d Y2 + e Y + f, from `from` mm2/s at 100 °C up to the next row. */
const INDEX_ROWS: readonly (readonly [
  from: number,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
])[] = [
  [2, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [3.8, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [4.4, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [5, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [6.4, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [7.7, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [9, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [12, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [15, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [18, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [22, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [28, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [40, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [55, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
  [70, 0.83531, 14.6731, -216.246, 0.16841, 11.8493, -96.947],
]

/**
 * Viscosities at 40 °C of the two reference oils of the viscosity index that have the same viscosity at 100 °C.
 * L = a Y2 + b Y + c, H = d Y2 + e Y + f
 * @param nu100 [m2/s] kinematic viscosity at 100 °C
 * @returns [m2/s] L of the oil of index 0 and H of the oil of index 100
 * Valid: 2 mm2/s and more; null below.
 * Source: ASTM D2270 / ISO 2909, equations that stand for its table 1 (coefficients from memory; within 0.1 % of all 311
 * rows of an open copy of the table).
 */
export const indexReferences = (
  nu100: SquareMetresPerSecond,
): { readonly low: SquareMetresPerSecond; readonly high: SquareMetresPerSecond } | null => {
  const y = nu100 * MM2
  let row: (typeof INDEX_ROWS)[number] | undefined
  for (const next of INDEX_ROWS) if (y >= next[0]) row = next
  if (row === undefined) return null
  const [, a, b, c, d, e, f] = row
  return { low: ((a * y + b) * y + c) / MM2, high: ((d * y + e) * y + f) / MM2 }
}

/**
 * Viscosity index of an oil.
 * VI = 100 (L - U)/(L - H) to 100; above: VI = (10^N - 1)/0.00715 + 100, N = log10(H/U)/log10 Y
 * @param nu40 [m2/s] kinematic viscosity at 40 °C (U)
 * @param nu100 [m2/s] kinematic viscosity at 100 °C (Y)
 * @returns [-] viscosity index, null where it is not defined
 * Valid: nu100 of 2 mm2/s and more.
 * Source: ASTM D2270 / ISO 2909.
 */
export const viscosityIndex = (nu40: SquareMetresPerSecond, nu100: SquareMetresPerSecond): number | null => {
  const references = indexReferences(nu100)
  if (references === null) return null
  const { low, high } = references
  if (nu40 >= high) return (100 * (low - nu40)) / (low - high)
  return (10 ** (Math.log10(high / nu40) / Math.log10(nu100 * MM2)) - 1) / 0.00715 + 100
}

/**
 * Viscosity at 100 °C of an oil known by its viscosity at 40 °C and its index.
 * nu100 so that VI(nu40, nu100) = vi
 * @param nu40 [m2/s] kinematic viscosity at 40 °C
 * @param vi [-] viscosity index
 * @returns [m2/s] kinematic viscosity at 100 °C, null where no such oil exists
 * Valid: index 0 to 300, result of 2 mm2/s and more.
 * Source: ASTM D2270 / ISO 2909, solved by halving the interval.
 */
export const viscosityAt100FromIndex = (nu40: SquareMetresPerSecond, vi: number): SquareMetresPerSecond | null => {
  let below = 2 / MM2
  let above = nu40
  // Of an oil of 2 mm2/s and less at 40 °C this is above 6500: the bracket is never upside down.
  if ((viscosityIndex(nu40, below) ?? vi) > vi) return null
  for (let pass = 0; pass < 60; pass++) {
    const middle = (below + above) / 2
    if ((viscosityIndex(nu40, middle) ?? vi) < vi) below = middle
    else above = middle
  }
  return (below + above) / 2
}
