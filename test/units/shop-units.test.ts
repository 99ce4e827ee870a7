/** Against js-quantities, a general library of units. Its constants are rounded, so 1e-6 is what can be asked. */
import fc from 'fast-check'
import Qty from 'js-quantities'
import { describe, expect, test } from 'vitest'
import * as units from '../../src/units/shop-units.ts'

type Convert = (value: number) => number

/** Ours into SI, ours back, the library's name of the unit and of the SI unit. */
const PAIRS: readonly (readonly [string, Convert, Convert, string, string])[] = [
  ['bar', units.pascalsFromBar, units.barFromPascals, 'bar', 'Pa'],
  ['psi', units.pascalsFromPsi, units.psiFromPascals, 'psi', 'Pa'],
  ['L/min', units.cubicMetresPerSecondFromLpm, units.lpmFromCubicMetresPerSecond, 'l/min', 'm3/s'],
  ['gpm', units.cubicMetresPerSecondFromGpm, units.gpmFromCubicMetresPerSecond, 'gal/min', 'm3/s'],
  ['cm3', units.cubicMetresPerRevFromCm3, units.cm3FromCubicMetresPerRev, 'cm3', 'm3'],
  ['in3', units.cubicMetresPerRevFromIn3, units.in3FromCubicMetresPerRev, 'in3', 'm3'],
  ['km/h', units.metresPerSecondFromKmh, units.kmhFromMetresPerSecond, 'km/h', 'm/s'],
  ['mph', units.metresPerSecondFromMph, units.mphFromMetresPerSecond, 'mi/h', 'm/s'],
  ['mm', units.metresFromMm, units.mmFromMetres, 'mm', 'm'],
  ['in', units.metresFromInches, units.inchesFromMetres, 'in', 'm'],
  ['ft', units.metresFromFeet, units.feetFromMetres, 'ft', 'm'],
  ['um', units.metresFromMicrometres, units.micrometresFromMetres, 'um', 'm'],
  ['L', units.cubicMetresFromLitres, units.litresFromCubicMetres, 'l', 'm3'],
  ['gal', units.cubicMetresFromGallons, units.gallonsFromCubicMetres, 'gal', 'm3'],
  ['ft2', units.squareMetresFromSquareFeet, units.squareFeetFromSquareMetres, 'ft2', 'm2'],
  ['lb', units.kilogramsFromPounds, units.poundsFromKilograms, 'lb', 'kg'],
  ['lb.ft', units.newtonMetresFromPoundFeet, units.poundFeetFromNewtonMetres, 'lbf*ft', 'N*m'],
  ['kW', units.wattsFromKw, units.kwFromWatts, 'kW', 'W'],
  ['hp', units.wattsFromHp, units.hpFromWatts, 'hp', 'W'],
  ['cSt', units.squareMetresPerSecondFromCst, units.cstFromSquareMetresPerSecond, 'cSt', 'm2/s'],
  ['degF', units.celsiusFromFahrenheit, units.fahrenheitFromCelsius, 'tempF', 'tempC'],
  ['degF difference', units.kelvinsFromFahrenheitDegrees, units.fahrenheitDegreesFromKelvins, 'degF', 'degK'],
  ['min', units.secondsFromMinutes, units.minutesFromSeconds, 'min', 's'],
  ['h', units.secondsFromHours, units.hoursFromSeconds, 'h', 's'],
]

const near = (got: number, wanted: number) => Math.abs(got - wanted) <= 1e-6 * Math.max(1e-9, Math.abs(wanted))

describe('into SI as a general library has it, and back', () => {
  test.each(PAIRS)('%s', (_, into, back, unit, si) => {
    const convert = Qty.swiftConverter(unit, si)
    for (const value of [0.37, 1, 42, 2300]) expect(near(into(value), convert(value))).toBe(true)
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1e5, noNaN: true }), (value) => {
        expect(Math.abs(back(into(value)) - value)).toBeLessThanOrEqual(1e-9 * value + 1e-9)
      }),
    )
  })
})

describe('straight from one shop unit to the other', () => {
  const known = { psi: Qty.swiftConverter('bar', 'psi'), gpm: Qty.swiftConverter('l/min', 'gal/min') }
  test('bar to psi', () => expect(near(units.psiFromBar(160), known.psi(160))).toBe(true))
  test('L/min to gpm', () => expect(near(units.gpmFromLpm(24.5), known.gpm(24.5))).toBe(true))
  // 1 in3 = 16.387064 cm3, 1 mile = 1.609344 km, 1 hp = 0.74569987 kW, 1 gal = 3.785411784 L
  test('cm3 to in3', () => expect(units.in3FromCm3(163.87064)).toBeCloseTo(10, 9))
  test('km/h to mph', () => expect(units.mphFromKmh(16.09344)).toBeCloseTo(10, 9))
  test('kW to hp', () => expect(units.hpFromKw(7.4569987158)).toBeCloseTo(10, 8))
  test('mm to in', () => expect(units.inchesFromMm(254)).toBeCloseTo(10, 12))
  test('L to gal', () => expect(units.gallonsFromLitres(37.85411784)).toBeCloseTo(10, 9))
})

describe('constants of NIST SP 811', () => {
  test.each([
    ['psi', units.PSI, 6894.757293168],
    ['pound-force', units.POUND_FORCE, 4.4482216152605],
    ['US gallon', units.US_GALLON, 3.785411784e-3],
    ['horsepower', units.HORSEPOWER, 745.69987158],
    ['metric horsepower', units.METRIC_HORSEPOWER, 735.49875],
    ['inch of mercury', units.INCH_OF_MERCURY, 3386.389],
  ])('%s', (_, ours, published) => expect(Math.abs(ours / published - 1)).toBeLessThan(1e-6))
  test('a heat transfer of 1 Btu/h·ft2·°F is 5.678263 W/m2K', () =>
    expect(units.wattsPerSquareMetreKelvinFromBtu(1)).toBeCloseTo(5.678263, 5))
  test('shaft speed counts turns, not radians', () => {
    expect(units.revsPerSecondFromRpm(90)).toBe(1.5)
    expect(units.rpmFromRevsPerSecond(1.5)).toBe(90)
  })
})
