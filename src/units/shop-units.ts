/**
 * The shop's units and SI, both ways. One pair of functions per unit, named for what they do. Constants are exact by
 * definition (25.4 mm, US gallon = 231 in³, lb = 0.45359237 kg, standard gravity) unless a comment says otherwise.
 */
import type {
  Celsius,
  CubicMetres,
  CubicMetresPerRev,
  CubicMetresPerSecond,
  Kelvins,
  Kilograms,
  Metres,
  MetresPerSecond,
  NewtonMetres,
  Pascals,
  RevsPerSecond,
  Seconds,
  Share,
  SquareMetres,
  SquareMetresPerSecond,
  Watts,
  WattsPerKelvin,
  WattsPerSquareMetreKelvin,
} from './si.ts'
import { GRAVITY } from './si.ts'

/** One inch [m]. */
export const INCH = 0.0254
/** One foot [m]. */
export const FOOT = 0.3048
/** One statute mile [m]. */
export const MILE = 1609.344
/** One US gallon of 231 cubic inches [m3]. */
export const US_GALLON = 231 * INCH ** 3
/** One avoirdupois pound [kg]. */
export const POUND = 0.45359237
/** One pound-force [N]. */
export const POUND_FORCE = POUND * GRAVITY
/** One pound-force per square inch [Pa]. */
export const PSI = POUND_FORCE / INCH ** 2
/** Conventional inch of mercury [Pa], 25.4 mm at 13595.1 kg/m3 and standard gravity. */
export const INCH_OF_MERCURY = 13595.1 * GRAVITY * INCH
/** Mechanical horsepower, 550 ft·lbf/s [W]. */
export const HORSEPOWER = 550 * FOOT * POUND_FORCE
/** Metric horsepower (PS), 75 kgf·m/s [W]. */
export const METRIC_HORSEPOWER = 75 * GRAVITY
/** International-table British thermal unit [J]. */
export const BTU = 1055.05585262
/** Standard atmosphere [Pa] (ISO 2533). */
export const STANDARD_ATMOSPHERE = 101_325

/** Pressure, bar -> Pa. */
export const pascalsFromBar = (bar: number): Pascals => bar * 1e5
/** Pressure, Pa -> bar. */
export const barFromPascals = (pressure: Pascals): number => pressure / 1e5
/** Pressure, psi -> Pa. */
export const pascalsFromPsi = (psi: number): Pascals => psi * PSI
/** Pressure, Pa -> psi. */
export const psiFromPascals = (pressure: Pascals): number => pressure / PSI
/** Pressure, bar -> psi. */
export const psiFromBar = (bar: number): number => (bar * 1e5) / PSI

/** Flow, L/min -> m3/s. */
export const cubicMetresPerSecondFromLpm = (lpm: number): CubicMetresPerSecond => lpm / 60_000
/** Flow, m3/s -> L/min. */
export const lpmFromCubicMetresPerSecond = (flow: CubicMetresPerSecond): number => flow * 60_000
/** Flow, US gallon a minute -> m3/s. */
export const cubicMetresPerSecondFromGpm = (gpm: number): CubicMetresPerSecond => (gpm * US_GALLON) / 60
/** Flow, m3/s -> US gallon a minute. */
export const gpmFromCubicMetresPerSecond = (flow: CubicMetresPerSecond): number => (flow * 60) / US_GALLON
/** Flow, L/min -> US gallon a minute. */
export const gpmFromLpm = (lpm: number): number => lpm / (US_GALLON * 1000)

/** Displacement, cm3/rev -> m3/rev. */
export const cubicMetresPerRevFromCm3 = (cm3: number): CubicMetresPerRev => cm3 * 1e-6
/** Displacement, m3/rev -> cm3/rev. */
export const cm3FromCubicMetresPerRev = (displacement: CubicMetresPerRev): number => displacement * 1e6
/** Displacement, in3/rev -> m3/rev. */
export const cubicMetresPerRevFromIn3 = (in3: number): CubicMetresPerRev => in3 * INCH ** 3
/** Displacement, m3/rev -> in3/rev. */
export const in3FromCubicMetresPerRev = (displacement: CubicMetresPerRev): number => displacement / INCH ** 3
/** Displacement, cm3/rev -> in3/rev. */
export const in3FromCm3 = (cm3: number): number => cm3 / 16.387064

/** Shaft speed, rpm -> rev/s. */
export const revsPerSecondFromRpm = (rpm: number): RevsPerSecond => rpm / 60
/** Shaft speed, rev/s -> rpm. */
export const rpmFromRevsPerSecond = (speed: RevsPerSecond): number => speed * 60

/** Travel speed, km/h -> m/s. */
export const metresPerSecondFromKmh = (kmh: number): MetresPerSecond => kmh / 3.6
/** Travel speed, m/s -> km/h. */
export const kmhFromMetresPerSecond = (speed: MetresPerSecond): number => speed * 3.6
/** Travel speed, mph -> m/s. */
export const metresPerSecondFromMph = (mph: number): MetresPerSecond => (mph * MILE) / 3600
/** Travel speed, m/s -> mph. */
export const mphFromMetresPerSecond = (speed: MetresPerSecond): number => (speed * 3600) / MILE
/** Travel speed, km/h -> mph. */
export const mphFromKmh = (kmh: number): number => (kmh * 1000) / MILE

/** Length, mm -> m. */
export const metresFromMm = (mm: number): Metres => mm / 1000
/** Length, m -> mm. */
export const mmFromMetres = (length: Metres): number => length * 1000
/** Length, in -> m. */
export const metresFromInches = (inches: number): Metres => inches * INCH
/** Length, m -> in. */
export const inchesFromMetres = (length: Metres): number => length / INCH
/** Length, mm -> in. */
export const inchesFromMm = (mm: number): number => mm / 25.4
/** Length, ft -> m. */
export const metresFromFeet = (feet: number): Metres => feet * FOOT
/** Length, m -> ft. */
export const feetFromMetres = (length: Metres): number => length / FOOT
/** Length, µm -> m. */
export const metresFromMicrometres = (um: number): Metres => um * 1e-6
/** Length, m -> µm. */
export const micrometresFromMetres = (length: Metres): number => length * 1e6

/** Volume, L -> m3. */
export const cubicMetresFromLitres = (litres: number): CubicMetres => litres / 1000
/** Volume, m3 -> L. */
export const litresFromCubicMetres = (volume: CubicMetres): number => volume * 1000
/** Volume, US gallon -> m3. */
export const cubicMetresFromGallons = (gallons: number): CubicMetres => gallons * US_GALLON
/** Volume, m3 -> US gallon. */
export const gallonsFromCubicMetres = (volume: CubicMetres): number => volume / US_GALLON
/** Volume, L -> US gallon. */
export const gallonsFromLitres = (litres: number): number => litres / (US_GALLON * 1000)

/** Area, ft2 -> m2. */
export const squareMetresFromSquareFeet = (squareFeet: number): SquareMetres => squareFeet * FOOT ** 2
/** Area, m2 -> ft2. */
export const squareFeetFromSquareMetres = (area: SquareMetres): number => area / FOOT ** 2

/** Mass, lb -> kg. */
export const kilogramsFromPounds = (pounds: number): Kilograms => pounds * POUND
/** Mass, kg -> lb. */
export const poundsFromKilograms = (mass: Kilograms): number => mass / POUND

/** Force, N -> lbf. */
export const poundsForceFromNewtons = (force: number): number => force / POUND_FORCE

/** Torque, lb·ft -> N·m. */
export const newtonMetresFromPoundFeet = (poundFeet: number): NewtonMetres => poundFeet * POUND_FORCE * FOOT
/** Torque, N·m -> lb·ft. */
export const poundFeetFromNewtonMetres = (torque: NewtonMetres): number => torque / (POUND_FORCE * FOOT)

/** Power, kW -> W. */
export const wattsFromKw = (kw: number): Watts => kw * 1000
/** Power, W -> kW. */
export const kwFromWatts = (power: Watts): number => power / 1000
/** Power, hp -> W. */
export const wattsFromHp = (hp: number): Watts => hp * HORSEPOWER
/** Power, W -> hp. */
export const hpFromWatts = (power: Watts): number => power / HORSEPOWER
/** Power, kW -> hp. */
export const hpFromKw = (kw: number): number => (kw * 1000) / HORSEPOWER

/** Heat capacity rate, kW/K -> W/K. */
export const wattsPerKelvinFromKw = (kwPerKelvin: number): WattsPerKelvin => kwPerKelvin * 1000
/** Heat capacity rate, W/K -> kW/K. */
export const kwPerKelvinFromWatts = (wattsPerKelvin: WattsPerKelvin): number => wattsPerKelvin / 1000

/** Heat transfer, Btu/(h·ft2·°F) -> W/(m2.K). */
export const wattsPerSquareMetreKelvinFromBtu = (btu: number): WattsPerSquareMetreKelvin =>
  (btu * BTU * 1.8) / (3600 * FOOT ** 2)

/** Kinematic viscosity, cSt (mm2/s) -> m2/s. */
export const squareMetresPerSecondFromCst = (cst: number): SquareMetresPerSecond => cst * 1e-6
/** Kinematic viscosity, m2/s -> cSt (mm2/s). */
export const cstFromSquareMetresPerSecond = (viscosity: SquareMetresPerSecond): number => viscosity * 1e6

/** Temperature, °F -> °C. */
export const celsiusFromFahrenheit = (fahrenheit: number): Celsius => (fahrenheit - 32) / 1.8
/** Temperature, °C -> °F. */
export const fahrenheitFromCelsius = (celsius: Celsius): number => celsius * 1.8 + 32
/** Temperature difference, °F -> K. */
export const kelvinsFromFahrenheitDegrees = (degrees: number): Kelvins => degrees / 1.8
/** Temperature difference, K -> °F. */
export const fahrenheitDegreesFromKelvins = (difference: Kelvins): number => difference * 1.8

/** Share, % -> fraction. */
export const shareFromPercent = (percent: number): Share => percent / 100
/** Share, fraction -> %. */
export const percentFromShare = (share: Share): number => share * 100

/** Time, min -> s. */
export const secondsFromMinutes = (minutes: number): Seconds => minutes * 60
/** Time, s -> min. */
export const minutesFromSeconds = (time: Seconds): number => time / 60
/** Time, h -> s. */
export const secondsFromHours = (hours: number): Seconds => hours * 3600
/** Time, s -> h. */
export const hoursFromSeconds = (time: Seconds): number => time / 3600
