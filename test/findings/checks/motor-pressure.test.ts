import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/motor-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('motor-pressure', () => {
  // 155 bar and 10 % override: 170.5 bar
  it.each([
    [171e5, 'ok'],
    [170.5e5, 'ok'],
    [170e5, 'change'],
  ])('motors of %d Pa under 170.5 bar is %s', (maxPressure, expected) => {
    expect(severity(check, { machine: { travel: { motor: { maxPressure } } } })).toBe(expected)
  })

  it('ignores the pressure of a circuit that drives nothing, and an unknown rating', () => {
    expect(judgements(check, { circuit: { drives: 'no track' } })).toBe(0)
    expect(judgements(check, { machine: { travel: { motor: { maxPressure: null } } } })).toBe(0)
  })
})
