/** Lines: published losses, and the whole line against its parts added up by hand. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { elbowLoss, hoseFrictionFactor, lineCoefficients, lineDrop, straightDrop } from '../../src/formulas/line.ts'

/** Relative difference. */
const off = (got: number, wanted: number): number => Math.abs(got / wanted - 1)

describe('friction', () => {
  /** Crossing of 64/Re and 0.3164 Re^-0.25: Re^0.75 = 64/0.3164 = 202.28, Re = 1187. */
  test('the two laws cross at Re 1187', () => {
    expect(off(hoseFrictionFactor(1187), 64 / 1187)).toBeLessThan(1e-3)
    expect(hoseFrictionFactor(1100)).toBe(64 / 1100)
    expect(hoseFrictionFactor(1300)).toBeGreaterThan(64 / 1300)
  })

  /** Hooper two-K, 1/2 in bore at Re 500: 800/500 + 0.4 (1 + 2) = 2.8. */
  test('elbow at Re 500 in a 1/2 in bore is 2.8', () => {
    expect(elbowLoss(500, 0.0127)).toBeCloseTo(2.8, 12)
  })
})

describe('line', () => {
  /** VG 46 at -10 °C (1474 mm2/s, 885 kg/m3), 1 m, 20 L/min: 128 mu L Q/(pi D4) = 136, 45, 17 kPa by hand. */
  for (const [bore, kPa] of [
    [0.019, 136],
    [0.025, 45],
    [0.032, 17],
  ] as const)
    test(`a cold suction line of ${bore * 1000} mm drops ${kPa} kPa`, () => {
      const flow = 20 / 60_000
      const velocity = flow / ((Math.PI / 4) * bore * bore)
      const friction = hoseFrictionFactor((velocity * bore) / 1474e-6)
      expect(Math.abs(straightDrop(friction, 1, bore, velocity, 885) / 1000 - kPa)).toBeLessThan(0.6)
    })

  /**
   * 30 L/min in 12.7 mm, 2 m, two elbows, 30 mm2/s, 850 kg/m3, by hand: v = 3.947 m/s, Re = 1671, f = 0.3164 Re^-0.25 =
   * 0.04949, f L/D = 7.793, elbow 800/1671 + 0.4 x 3 = 1.679, sum 7.793 + 3.358 + 1.5 = 12.65, x 6621 Pa = 83.8 kPa.
   */
  test('straight, elbows, entrance and exit add up', () => {
    expect(off(lineDrop(30 / 60_000, 0.0127, 2, 2, 30e-6, 850), 83.8e3)).toBeLessThan(2e-3)
  })

  test('nothing flows, nothing drops; the smallest flow drops a finite little', () => {
    expect(lineDrop(0, 0.0127, 2, 2, 30e-6, 850)).toBe(0)
    expect(lineDrop(-1e-4, 0.0127, 2, 2, 30e-6, 850)).toBe(0)
    const least = lineDrop(1e-300, 0.0127, 2, 2, 30e-6, 850)
    expect(least).toBeGreaterThan(0)
    expect(least).toBeLessThan(1e-280)
  })

  test('the powers of the flow give the same drop', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 2e-3, noNaN: true }),
        fc.double({ min: 0.005, max: 0.05, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        fc.double({ min: 5e-6, max: 5e-3, noNaN: true }),
        (flow, bore, length, elbows, nu) => {
          const { laminar, turbulent, linear, square } = lineCoefficients(bore, length, elbows, nu, 860)
          const drop = Math.max(laminar * flow, turbulent * flow ** 1.75) + linear * flow + square * flow * flow
          expect(off(drop, lineDrop(flow, bore, length, elbows, nu, 860))).toBeLessThan(1e-9)
        },
      ),
      { seed: 7, numRuns: 300 },
    )
  })
})
