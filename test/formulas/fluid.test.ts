/** Oil: viscosity grades over temperature, density, heat capacity, and the index against the table of the standard. */
import { describe, expect, test } from 'vitest'
import {
  densityAt,
  indexReferences,
  specificHeatAt,
  temperatureAtViscosity,
  viscosityAt,
  waltherConstants,
} from '../../src/formulas/fluid.ts'
import { viscositiesOf } from '../../src/tables/oil-grades.ts'

const gradeConstants = (grade: number) => {
  const viscosities = viscositiesOf(grade)
  if (viscosities === null) throw new Error(`no grade ${grade}`)
  return waltherConstants(viscosities.at40, viscosities.at100)
}

/** ASTM D341 by hand, four figures, for each grade with its usual viscosity at 100 °C; temperatures at 12 and 10 mm2/s. */
describe('viscosity', () => {
  const temperatures = [-20, -10, 0, 20, 40, 60, 80, 100]
  for (const [grade, row, at12, at10] of [
    [32, [2291, 805, 336, 86, 32, 15.2, 8.5, 5.4], 68, 74],
    [46, [4518, 1474, 577, 134, 46, 20.6, 11.1, 6.8], 77, 84],
    [68, [9354, 2823, 1033, 215, 68, 28.7, 14.7, 8.7], 87, 94],
  ] as const)
    test(`VG ${grade}`, () => {
      const constants = gradeConstants(grade)
      for (const [i, nu] of row.entries()) {
        const got = viscosityAt(constants, temperatures[i] ?? Number.NaN) * 1e6
        expect(Math.abs(got / nu - 1), `${temperatures[i]} °C`).toBeLessThan(0.007)
      }
      expect(Math.abs(temperatureAtViscosity(constants, 12e-6) - at12)).toBeLessThan(0.6)
      expect(Math.abs(temperatureAtViscosity(constants, 10e-6) - at10)).toBeLessThan(0.6)
    })

  test('temperature at a viscosity is the inverse', () => {
    const constants = gradeConstants(46)
    expect(temperatureAtViscosity(constants, viscosityAt(constants, -17.3))).toBeCloseTo(-17.3, 9)
  })
})

describe('density and heat capacity', () => {
  /** 870 (1 - 0.0007 x 45) = 842.6; the exponential form of ASTM D1250 gives 841.5. */
  test('870 kg/m3 at 15 °C, 842.6 at 60', () => {
    expect(densityAt(15)).toBe(870)
    expect(densityAt(60)).toBeCloseTo(842.6, 1)
  })
  /** Cragoe at 50 °C and 0.87: (1.685 + 0.17)/0.93274 = 1.989 kJ/(kg.K). */
  test('1989 J/(kg.K) at 50 °C', () => {
    expect(specificHeatAt(50)).toBeCloseTo(1989, 0)
  })
})

/** Rows of table 1 of ASTM D2270, as an open library prints them: Y at 100 °C, L and H at 40 °C [mm2/s]. */
const tableRows = [
  [2.0, 7.994, 6.394],
  [3.0, 15.49, 12.15],
  [4.0, 25.32, 19.56],
  [4.7, 35.13, 25.63],
  [5.0, 40.23, 28.49],
  [6.0, 57.97, 38.19],
  [6.7, 71.29, 45.33],
  [7.4, 86.66, 52.88],
  [8.0, 100.0, 59.6],
  [9.0, 123.3, 71.1],
  [10, 147.7, 82.87],
  [14, 263.3, 135.4],
  [17, 369.4, 180.2],
  [20, 493.2, 229.5],
  [25, 736.5, 320.9],
  [35, 1356, 532.5],
  [50, 2618, 919.6],
  [60, 3676, 1222],
  [70, 4905, 1558],
] as const

describe('reference oils of the viscosity index, a row of the table for each equation', () => {
  for (const [y, low, high] of tableRows)
    test(`${y} mm2/s: L ${low}, H ${high}`, () => {
      const references = indexReferences(y * 1e-6)
      expect(Math.abs(((references?.low ?? Number.NaN) * 1e6) / low - 1)).toBeLessThan(1e-3)
      expect(Math.abs(((references?.high ?? Number.NaN) * 1e6) / high - 1)).toBeLessThan(1e-3)
    })
  /** Between the rows of 9 and 15 mm2/s the equations of the neighbours are only 0.1 % off: the last digit of the table tells. */
  test('13.5 mm2/s: L 247.4, H 128.4 to the last digit', () => {
    expect((indexReferences(13.5e-6)?.low ?? 0) * 1e6).toBeCloseTo(247.4, 1)
    expect((indexReferences(13.5e-6)?.high ?? 0) * 1e6).toBeCloseTo(128.4, 1)
  })
  /** ASTM D2270 for more than 70 mm2/s, as printed: L = 0.8353 Y2 + 14.67 Y - 216, H = 0.1684 Y2 + 11.85 Y - 97 (from memory). */
  test('beyond the table the equations of the standard hold: 9604 and 2772 at 100 mm2/s', () => {
    expect(Math.abs(((indexReferences(100e-6)?.low ?? 0) * 1e6) / 9604 - 1)).toBeLessThan(2e-4)
    expect(Math.abs(((indexReferences(100e-6)?.high ?? 0) * 1e6) / 2772 - 1)).toBeLessThan(2e-4)
  })
  test('below 2 mm2/s there are none', () => {
    expect(indexReferences(1.99e-6)).toBeNull()
  })
})
