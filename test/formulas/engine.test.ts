/** Governor line, full-load line, site derate. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fullLoadTorque, governedSpeed, governedTorque, siteDerate } from '../../src/formulas/engine.ts'

describe('site', () => {
  /** Published rule and example: 3 % per 1000 ft above 500 ft, 225 hp at 4500 ft leave 198 hp. */
  test('225 hp at 4500 ft are 198 hp', () => {
    expect(Math.abs(225 * siteDerate(4500 * 0.3048, 20) - 198)).toBeLessThan(0.7)
  })
  /** 1 % per 10 °F above 85 °F: 40 °C is 2 x 5.5 K above 29 °C. */
  test('40 °C takes two per cent', () => {
    expect(siteDerate(0, 40)).toBeCloseTo(0.98, 12)
  })
  test('low and cool gives no more than the plate; far too high gives nothing, not less', () => {
    expect(siteDerate(-100, -20)).toBe(1)
    expect(siteDerate(20_000, 20)).toBe(0)
  })
})

/** 60 rev/s rated, 50 N.m, droop 8 %, torque rise 10 %. */
const torqueAt = (speed: number) => governedTorque(speed, 60, 50, 0.08, 0.1)
const speedAt = (torque: number) => governedSpeed(torque, 60, 50, 0.08, 0.1)

describe('governed engine', () => {
  /** High idle 64.8; half load 62.4; rated 60; half the rise at 60 (1 - 0.15) = 51; peak 55 at 42. */
  for (const [torque, speed] of [
    [0, 64.8],
    [25, 62.4],
    [50, 60],
    [52.5, 51],
    [55, 42],
  ] as const)
    test(`${torque} N.m at ${speed} rev/s`, () => {
      expect(speedAt(torque)).toBeCloseTo(speed, 9)
      expect(torqueAt(speed)).toBeCloseTo(torque, 9)
    })

  test('more than the peak stalls it', () => {
    expect(speedAt(55.01)).toBeNull()
    expect(governedSpeed(50.01, 60, 50, 0.08, 0)).toBeNull()
  })
  test('full load is flat below 70 % and at rated torque above rated speed', () => {
    expect(fullLoadTorque(20, 60, 50, 0.1)).toBeCloseTo(55, 12)
    expect(fullLoadTorque(63, 60, 50, 0.1)).toBe(50)
  })
  test('past high idle there is no torque, without droop none past rated speed', () => {
    expect(torqueAt(70)).toBe(0)
    expect(governedTorque(60.1, 60, 50, 0, 0.1)).toBe(0)
    expect(governedTorque(60, 60, 50, 0, 0.1)).toBe(50)
  })
  test('speed and torque are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 54.99, noNaN: true }), (torque) => {
        expect(torqueAt(speedAt(torque) ?? Number.NaN)).toBeCloseTo(torque, 8)
      }),
      { seed: 7 },
    )
  })
})
