/** Air at the heights where these machines work. */
import { expect, test } from 'vitest'
import { columnPressure, standardAtmosphere } from '../../src/formulas/atmosphere.ts'

/** ISO 2533 standard atmosphere, table values. */
test('84.56 kPa at 1500 m, 79.50 at 2000', () => {
  expect(standardAtmosphere(1500) / 1000).toBeCloseTo(84.56, 1)
  expect(standardAtmosphere(2000) / 1000).toBeCloseTo(79.5, 1)
})

/** 870 kg/m3 x 9.80665 x 0.3 m = 2560 Pa. */
test('a foot of oil over the inlet is 26 mbar, under it as much less', () => {
  expect(columnPressure(870, 0.3)).toBeCloseTo(2560, 0)
  expect(columnPressure(870, -0.3)).toBeCloseTo(-2560, 0)
})
