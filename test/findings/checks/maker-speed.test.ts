import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/maker-speed.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('maker-speed', () => {
  // 2.4 km/h and 10 %: 2.64 km/h
  it.each([
    [2.63, 'ok'],
    [2.64, 'ok'],
    [2.65, 'watch'],
  ])('%f km/h where the maker says 2.4 is %s', (speedKmh, expected) => {
    expect(severity(check, { figures: { travel: { level: { speedKmh } } } })).toBe(expected)
  })

  it("does not judge where the maker's figure is unknown", () => {
    expect(judgements(check, { machine: { designTravelSpeed: null } })).toBe(0)
  })
})
