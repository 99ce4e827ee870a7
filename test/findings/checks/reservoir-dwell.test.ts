import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/reservoir-dwell.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

describe('reservoir-dwell', () => {
  // 13 L at 13 L/min rest one minute
  it.each([
    [12.9, 'ok'],
    [13, 'ok'],
    [13.1, 'watch'],
  ])('13 L at %f L/min is %s', (returnFlowLpm, expected) => {
    expect(severity(check, { more: { returnFlowLpm } })).toBe(expected)
  })

  it('gives the time in seconds', () => {
    // 18 L at 20 L/min: 54 s
    expect(judged(check, { machine: { reservoir: { volume: 0.018 } }, more: { returnFlowLpm: 20 } }).value).toBeCloseTo(
      54,
      9,
    )
    expect(judgements(check, { more: { returnFlowLpm: 0 } })).toBe(0)
  })
})
