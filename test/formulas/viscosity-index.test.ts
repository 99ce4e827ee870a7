/** ASTM D2270 from the other side: an index given with the viscosity at 40 °C leads back to that at 100 °C. */
import { describe, expect, test } from 'vitest'
import { viscosityAt100FromIndex, viscosityIndex } from '../../src/formulas/fluid.ts'

describe('viscosity index', () => {
  /** ASTM D2270 examples as published: (73.30, 8.86) 92; (22.83, 5.05) 156; (53.47, 7.80) 111. */
  const published = [
    [73.3, 8.86, 92],
    [22.83, 5.05, 156],
    [53.47, 7.8, 111],
  ] as const
  for (const [at40, at100, index] of published)
    test(`${at40} and ${at100} mm2/s are ${index}, and back`, () => {
      expect(Math.abs((viscosityIndex(at40 * 1e-6, at100 * 1e-6) ?? 0) - index)).toBeLessThan(0.6)
      expect(Math.abs((viscosityAt100FromIndex(at40 * 1e-6, index) ?? 0) * 1e6 - at100)).toBeLessThan(0.02)
    })

  test('outside its range it says so', () => {
    expect(viscosityIndex(5e-6, 1.5e-6)).toBeNull()
  })
  /**
   * 5 mm2/s at 40 °C and 2 at 100 °C, with H = 6.394 of the table: N = log10(6.394/5)/log10 2 = 0.3548, VI = (10^N - 1)/0.00715
   * + 100 = 276.7. A lower index has less than 2 mm2/s at 100 °C, for which the standard has no index.
   */
  test('a thin oil of a low index has no viscosity at 100 °C that the standard knows', () => {
    expect(viscosityAt100FromIndex(5e-6, 100)).toBeNull()
    expect(viscosityAt100FromIndex(5e-6, 276)).toBeNull()
    expect((viscosityAt100FromIndex(5e-6, 278) ?? 0) * 1e6).toBeCloseTo(2, 2)
    expect(viscosityAt100FromIndex(1.9e-6, 400)).toBeNull()
  })
  /** The oil of index 0 is L itself, that of index 100 is H: rows of table 1 of the standard. */
  test('index 0 and 100 lead back to the rows of the table', () => {
    expect((viscosityAt100FromIndex(123.3e-6, 0) ?? 0) * 1e6).toBeCloseTo(9, 2)
    expect((viscosityAt100FromIndex(71.1e-6, 100) ?? 0) * 1e6).toBeCloseTo(9, 2)
  })
})
