import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/kinetic-energy.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const speeds = (now: number, was: number) => ({
  figures: { travel: { level: { speedKmh: now } } },
  before: { figures: { travel: { level: { speedKmh: was } } } },
})

describe('kinetic-energy', () => {
  // 1.1 squared is 1.21
  it.each([
    [2.19, 'ok'],
    [2.2, 'ok'],
    [2.21, 'watch'],
    [1.5, 'ok'],
  ])('%f km/h where it was 2 km/h is %s', (now, expected) => {
    expect(severity(check, speeds(now, 2))).toBe(expected)
  })

  it('is four at twice the speed', () => {
    expect(judged(check, speeds(4, 2)).value).toBeCloseTo(4, 9)
  })

  it('is silent without a machine before, or where that one stood', () => {
    expect(judgements(check)).toBe(0)
    expect(judgements(check, speeds(2, 0))).toBe(0)
  })
})
