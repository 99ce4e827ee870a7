/** Forces on a grade and in a turn, and the final drive. */
import { describe, expect, test } from 'vitest'
import {
  adhesionLimit,
  forceFromMotorTorque,
  motorTorqueForForce,
  pitchDiameter,
  rollingAndGrade,
  thrustShare,
  travelSpeed,
  turningForcePerTrack,
  turningMoment,
  turningResistanceAtRadius,
  wayFromPitchDiameter,
  wayFromRollingRadius,
  wayFromTeeth,
} from '../../src/formulas/traction.ts'

/** Relative difference. */
const off = (got: number, wanted: number): number => Math.abs(got / wanted - 1)

describe('grade', () => {
  /** sin(atan 0.3) = 0.28735, cos(atan 0.3) = 0.95783; 0.8 x 2000 x 0.95783 = 1532.5. */
  test('30 % holds back 0.2873 of the weight, and rolling less than on the level', () => {
    expect(rollingAndGrade(1, 0, 0.3)).toBeCloseTo(0.2873, 4)
    expect(rollingAndGrade(1, 0.1, 0.3)).toBeCloseTo(0.28735 + 0.095783, 4)
    expect(adhesionLimit(0.8, 2000, 0.3)).toBeCloseTo(1532.5, 1)
  })
  test('downhill pushes', () => {
    expect(rollingAndGrade(1, 0, -0.3)).toBeCloseTo(-0.2873, 4)
  })
})

describe('turn', () => {
  /** Integrated scrub of isotropic friction, counter-rotating: share of mu W per track by L/B. */
  for (const [ratio, share] of [
    [0.8, 0.191],
    [1.0, 0.232],
    [1.2, 0.268],
    [1.4, 0.3],
    [1.6, 0.327],
    [1.8, 0.35],
  ] as const)
    test(`L/B ${ratio}: ${share} of mu W`, () => {
      expect(off(turningForcePerTrack(0, 1, turningMoment(1, 1, ratio, 1), 1, 1), share)).toBeLessThan(0.0125)
    })

  /** 1.7 t, L/B 1.2, f_r 0.08: 4.4 times the straight force at mu 0.5, 7 times at 0.9, by the integrated scrub. */
  test('spinning on the spot takes 4.4 to 7 times the straight force', () => {
    const weight = 1700 * 9.80665
    const times = (mu: number) =>
      turningForcePerTrack(0.08, weight, turningMoment(mu, weight, 1.2, 1), 1, mu) / ((0.08 * weight) / 2)
    expect(off(times(0.5), 4.4)).toBeLessThan(0.015)
    expect(off(times(0.9), 7)).toBeLessThan(0.015)
  })
  /**
   * Gauge other than 1 m, by hand: mu 0.6, W 10 kN, L 1.5 m, B 1.25 m: mu W L/4 = 2250 N.m, bracket 1.108 - 0.18 x 1.2 =
   * 0.892, M = 2007 N.m; over B 1605.6 N, with rolling 0.08 x 10 kN/2 = 400 N 2005.6 N.
   */
  test('on centres of 1.25 m the moment is carried by their whole width', () => {
    expect(turningMoment(0.6, 10_000, 1.5, 1.25)).toBeCloseTo(2007, 9)
    expect(turningForcePerTrack(0.08, 10_000, 2007, 1.25, 0.6)).toBeCloseTo(2005.6, 9)
  })
  test('a track never scrubs with more than the weight on it', () => {
    expect(turningForcePerTrack(0.1, 1000, 1e9, 1, 0.6)).toBeCloseTo(50 + 300, 9)
  })
  test('a wide turn scrubs less, a tight one not more than the most', () => {
    expect(turningResistanceAtRadius(0.8, 0.5, 1)).toBe(0.8)
    expect(turningResistanceAtRadius(0.8, 6, 1)).toBeLessThan(0.8)
    // R/B = 6/1.5 = 4: 0.85 + 0.6 = 1.45; 0.8/1.45 = 0.5517.
    expect(turningResistanceAtRadius(0.8, 6, 1.5)).toBeCloseTo(0.5517, 4)
  })
  test('a track that does not slip pulls nothing on soft soil', () => {
    expect(thrustShare(0.025, 1.2, 0)).toBe(0)
  })
})

describe('final drive', () => {
  /** 8 kN, 0.81 m a turn, 92 %, 1:1, shared by nobody: 8000 x 0.81/(2pi 0.92) = 1121 N.m. */
  test('torque for a force, and back', () => {
    expect(motorTorqueForForce(8000, 0.81, 0.92, 1)).toBeCloseTo(1121, 0)
    expect(forceFromMotorTorque(motorTorqueForForce(8000, 0.81, 0.92, 21), 0.81, 0.92, 21)).toBeCloseTo(8000, 8)
  })
  /** Polygon: pi p/sin(pi/z) over z p is 2.1 % more at 9 teeth, 1.4 % at 11. */
  test('the pitch circle over-states the way by 2.1 % at 9 teeth and 1.4 % at 11', () => {
    const over = (teeth: number) => wayFromPitchDiameter(pitchDiameter(0.09, teeth)) / wayFromTeeth(teeth, 0.09) - 1
    expect(over(9)).toBeCloseTo(0.021, 3)
    expect(over(11)).toBeCloseTo(0.014, 3)
  })
  /** 2 rev/s through 2:1 on 1 m a turn, 3 % slip, factor 0.9: 0.873 m/s. */
  test('speed by ratio, slip and factor', () => {
    expect(travelSpeed(2, 2, wayFromRollingRadius(1 / (2 * Math.PI)), 0.03, 0.9)).toBeCloseTo(0.873, 12)
  })
})
