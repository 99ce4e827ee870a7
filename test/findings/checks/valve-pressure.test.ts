import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/valve-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('valve-pressure', () => {
  // 155 bar and 10 % override: 170.5 bar
  it.each([
    [171e5, 'ok'],
    [170.5e5, 'ok'],
    [170e5, 'change'],
  ])('a valve of %d Pa under 170.5 bar is %s', (maxPressure, expected) => {
    expect(severity(check, { circuit: { valve: { maxPressure } } })).toBe(expected)
  })

  it('does not judge a valve without a stated pressure', () => {
    expect(judgements(check, { circuit: { valve: { maxPressure: null } } })).toBe(0)
  })
})
