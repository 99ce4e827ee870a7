/** Restrictions scaled from their reference point. */
import { describe, expect, test } from 'vitest'
import { laminarDrop, orificeFlow, quadraticDrop, quadraticFlow } from '../../src/formulas/restriction.ts'

describe('turbulent', () => {
  /** A third more flow: (4/3)2 = 1.778. */
  test('a third more flow drops 78 % more', () => {
    expect(quadraticDrop(4e-4, 3e-4, 1e5, 850) / 1e5).toBeCloseTo(16 / 9, 12)
  })
  test('density counts against 850 kg/m3', () => {
    expect(quadraticDrop(3e-4, 3e-4, 1e5, 425)).toBeCloseTo(0.5e5, 6)
  })
  test('the flow at a drop is the inverse', () => {
    expect(quadraticFlow(quadraticDrop(2.2e-4, 3e-4, 1e5, 870), 3e-4, 1e5, 870)).toBeCloseTo(2.2e-4, 15)
    expect(quadraticFlow(-1, 3e-4, 1e5, 870)).toBe(0)
    expect(quadraticDrop(-1e-4, 3e-4, 1e5, 870)).toBe(0)
  })
})

describe('laminar', () => {
  /** 0.25 bar at 30 mm2/s, VG 46 at 0 °C is 577 mm2/s: 0.25 x 577/30 = 4.81 bar. */
  test('a filter element of 0.25 bar asks 4.8 bar of cold oil', () => {
    expect(laminarDrop(5e-4, 5e-4, 0.25e5, 577e-6, 30e-6) / 1e5).toBeCloseTo(4.81, 2)
  })
  test('half the flow, half the drop; none, none', () => {
    expect(laminarDrop(2.5e-4, 5e-4, 0.25e5, 30e-6, 30e-6)).toBeCloseTo(0.125e5, 9)
    expect(laminarDrop(0, 5e-4, 0.25e5, 30e-6, 30e-6)).toBe(0)
    expect(laminarDrop(-1e-4, 5e-4, 0.25e5, 30e-6, 30e-6)).toBe(0)
  })
})

/** 1 mm2, 0.7, 850 kg/m3, 100 bar: sqrt(2 x 1e7/850) = 153.39 m/s, x 0.7e-6 = 1.0738e-4 m3/s = 6.44 L/min. */
test('an orifice of 1 mm2 passes 6.44 L/min at 100 bar, and nothing the wrong way', () => {
  expect(orificeFlow(0.7, 1e-6, 100e5, 850) * 60_000).toBeCloseTo(6.44, 2)
  expect(orificeFlow(0.7, 1e-6, -100e5, 850)).toBe(0)
})
