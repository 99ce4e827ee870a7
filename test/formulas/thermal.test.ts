/** Coolers and the life of oil; surfaces and warm-up have their published values elsewhere. */
import { describe, expect, test } from 'vitest'
import { coolerHeat, lifeFactor, throttlingRise } from '../../src/formulas/thermal.ts'

describe('cooler', () => {
  /** 131 W/K at 20 L/min, oil 70 °C, air 30 °C and 5 K warmer at the core: 131 x 35 = 4585 W. */
  test('at its flow', () => {
    expect(coolerHeat(131, 20 / 60_000, 20 / 60_000, 70, 30, 5)).toBeCloseTo(4585, 9)
  })
  test('a quarter of the flow carries half; more flow carries no more; none carries nothing', () => {
    expect(coolerHeat(131, 5 / 60_000, 20 / 60_000, 70, 30, 5)).toBeCloseTo(4585 / 2, 9)
    expect(coolerHeat(131, 40 / 60_000, 20 / 60_000, 70, 30, 5)).toBeCloseTo(4585, 9)
    expect(coolerHeat(131, 0, 20 / 60_000, 70, 30, 5)).toBe(0)
    expect(coolerHeat(131, -1 / 60_000, 20 / 60_000, 70, 30, 5)).toBe(0)
  })
  test('air warmer than the oil warms it', () => {
    expect(coolerHeat(100, 20 / 60_000, 20 / 60_000, 30, 30, 5)).toBe(-500)
  })
})

describe('oil', () => {
  /** Rule of thumb in print: 5.5 to 6.7 K for 100 bar throttled away. */
  test('100 bar throttled away warm it by 5.5 to 6.7 K', () => {
    const rise = throttlingRise(100e5, 850, 2000)
    expect(rise).toBeGreaterThan(5.5)
    expect(rise).toBeLessThan(6.7)
  })
  /** Arrhenius rule: half for 10 K. */
  test('lives half as long 10 K hotter, a quarter 20 K hotter, twice as long 10 K cooler', () => {
    expect([75, 85, 55].map((oil) => lifeFactor(oil, 65))).toEqual([0.5, 0.25, 2])
  })
})
