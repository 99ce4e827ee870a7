import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/engine-power.ts'
import { judged, severity } from '../../fixtures/check-input.ts'

describe('engine-power', () => {
  // 8 kW after derating, 85 % of it all day: 6.8 kW
  it.each([
    [6.79, 'ok'],
    [6.8, 'ok'],
    [6.81, 'watch'],
    [8, 'watch'],
    [8.01, 'stop'],
  ])('%f kW at the relief of 8 kW is %s', (reliefPowerKw, expected) => {
    expect(severity(check, { more: { reliefPowerKw, deratedPowerKw: 8 } })).toBe(expected)
  })

  it('holds a stop against the power itself, the rest against the all-day share', () => {
    expect(judged(check, { more: { reliefPowerKw: 9, deratedPowerKw: 8 } }).limit).toBe(8)
    expect(judged(check, { more: { reliefPowerKw: 7, deratedPowerKw: 8 } }).limit).toBeCloseTo(6.8, 9)
  })
})
