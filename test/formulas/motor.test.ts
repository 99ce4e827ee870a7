/** Motors: stated efficiencies led back to, and the defaults against published loaded speeds. */
import { describe, expect, test } from 'vitest'
import {
  leakFromEfficiency,
  motorDifferential,
  motorIntake,
  motorLeak,
  motorSpeed,
  motorTorque,
  motorVolumetricEfficiency,
} from '../../src/formulas/motor.ts'
import { MOTOR_DEFAULTS } from '../../src/scenario/resolve-motor.ts'

const V = 310e-6
const MU = 0.0366

describe('from a stated volumetric efficiency', () => {
  test('intake at the reference point', () => {
    const { offset, leak } = leakFromEfficiency(V, 1.5, 0.9, 160e5)
    expect(offset).toBe(0.014)
    expect(motorVolumetricEfficiency(V, 1.5, motorIntake(V, 1.5, offset, leak, 160e5, MU, MU))).toBeCloseTo(0.9, 12)
  })
  /** 1/0.99 - 1 = 0.0101 is less than the usual offset of 0.014. */
  test('a motor better than the usual offset has no leak', () => {
    const { offset, leak } = leakFromEfficiency(V, 1, 0.99, 100e5)
    expect(leak).toBe(0)
    expect(offset).toBeCloseTo(0.0101, 4)
  })
})

describe('leak', () => {
  test('goes with the square of the pressure and against viscosity', () => {
    const once = motorLeak(3.4e-12, 100e5, MU, MU)
    expect(once).toBeCloseTo(3.4e-5, 12)
    expect(motorLeak(3.4e-12, 200e5, MU, MU) / once).toBeCloseTo(4, 12)
    expect(motorLeak(3.4e-12, 100e5, MU, MU / 2) / once).toBeCloseTo(2, 12)
    expect(motorLeak(3.4e-12, -100e5, MU, MU)).toBeCloseTo(-3.4e-5, 12)
  })
  test('that takes more than comes makes the speed negative, for the caller to see', () => {
    expect(motorSpeed(1e-5, V, 0.014, 3.4e-12, 150e5, MU, MU)).toBeLessThan(0)
  })
  test('speed is the inverse of intake', () => {
    const flow = motorIntake(V, 1.4, 0.014, 3.4e-12, 120e5, MU, MU / 1.5)
    expect(motorSpeed(flow, V, 0.014, 3.4e-12, 120e5, MU, MU / 1.5)).toBeCloseTo(1.4, 12)
  })
})

/**
 * A 310 cm3/rev motor on 4 and 8 US gpm, p10 and p90 of the fits to 25 published tables (dp in bar, rpm):
 * 70: 41.6 to 45.6 and 90.5 to 94.7; 100: 39.0 to 44.4 and 86.9 to 93.2; 140: 34.8 to 43.0 and 83.1 to 91.2.
 */
describe('the defaults under load', () => {
  for (const [gpm, bar, low, high] of [
    [4, 70, 41.6, 45.6],
    [8, 70, 90.5, 94.7],
    [4, 100, 39.0, 44.4],
    [8, 100, 86.9, 93.2],
    [4, 140, 34.8, 43.0],
    [8, 140, 83.1, 91.2],
  ] as const)
    test(`${gpm} US gpm at ${bar} bar: ${low} to ${high} rpm`, () => {
      const leak = MOTOR_DEFAULTS.leakOverDisplacement * V
      const flow = (gpm * 3.785411784) / 60_000
      const rpm = 60 * motorSpeed(flow, V, MOTOR_DEFAULTS.offset, leak, bar * 1e5, MU, MU)
      expect(rpm).toBeGreaterThan(low)
      expect(rpm).toBeLessThan(high)
    })
})

describe('torque', () => {
  /** 310e-6 x 100e5 x 0.84/2pi = 414.4 N.m. */
  test('by hand, and back', () => {
    expect(motorTorque(V, 100e5, 0.84)).toBeCloseTo(414.4, 1)
    expect(motorDifferential(V, motorTorque(V, 100e5, 0.84), 0.84)).toBeCloseTo(100e5, 3)
  })
})
