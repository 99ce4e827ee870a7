import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('pump-pressure', () => {
  // 155 bar and 10 % override: 170.5 bar
  it.each([
    [171e5, 'ok'],
    [170.5e5, 'ok'],
    [170e5, 'change'],
  ])('a pump of %d Pa under 170.5 bar is %s', (maxPressure, expected) => {
    expect(severity(check, { circuit: { pump: { maxPressure } } })).toBe(expected)
  })

  it('does not judge a pump without a stated pressure', () => {
    expect(judgements(check, { circuit: { pump: { maxPressure: null } } })).toBe(0)
  })
})
