import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/braking-class.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

const at = (speedKmh: number) => ({ figures: { travel: { level: { speedKmh } } } })

describe('braking-class', () => {
  // ISO 10265 covers crawlers up to 20 km/h
  it.each([
    [19.9, 'ok'],
    [20, 'ok'],
    [20.1, 'watch'],
  ])('a crawler at %f km/h is %s', (speed, expected) => {
    expect(severity(check, at(speed))).toBe(expected)
  })

  it('is silent on wheels, and counts against what makes a crawler faster', () => {
    expect(judgements(check, { ...at(25), machine: { travel: { running: 'wheels' } } })).toBe(0)
    expect(check.countsWhenFaster).toBe(true)
  })
})
