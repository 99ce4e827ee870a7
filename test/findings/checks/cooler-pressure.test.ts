import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/cooler-pressure.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const cooler = {
  part: null,
  capacity: 90,
  atFlow: 25 / 60_000,
  drop: 0.4e5,
  maxPressure: 10e5,
  bypass: 4.5e5,
  airRise: 0,
  fanCurrent: 7,
}
const filter = {
  part: null,
  ratedFlow: 40 / 60_000,
  drop: 0.3e5,
  reference: { flow: 40 / 60_000, viscosity: 32e-6 },
  fineness: 10e-6,
  beta: 200,
  bypass: 1.7e5,
}

describe('cooler-pressure', () => {
  it.each([
    [9.9, 'ok'],
    [10, 'ok'],
    [10.1, 'change'],
  ])('%f bar at a core of 10 bar is %s', (coolerPressureBar, expected) => {
    expect(severity(check, { machine: { cooler }, more: { coolerPressureBar } })).toBe(expected)
  })

  it('counts the cold start, capped by the bypasses of core and filter', () => {
    const more = { coolerPressureBar: 2, coolerColdDropBar: 30, filterColdDropBar: 20 }
    expect(judged(check, { machine: { cooler }, more }).value).toBeCloseTo(4.5, 9)
    expect(judged(check, { machine: { cooler, filter }, more }).value).toBeCloseTo(6.2, 9)
    expect(severity(check, { machine: { cooler: { ...cooler, maxPressure: 6e5 }, filter }, more })).toBe('change')
  })

  it('is silent without a cooler, its rating or its pressure', () => {
    expect(judgements(check, { more: { coolerPressureBar: 20 } })).toBe(0)
    expect(judgements(check, { machine: { cooler } })).toBe(0)
    expect(
      judgements(check, { machine: { cooler: { ...cooler, maxPressure: null } }, more: { coolerPressureBar: 20 } }),
    ).toBe(0)
  })
})
