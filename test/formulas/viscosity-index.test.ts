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
})
