import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/swivel-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('swivel-pressure', () => {
  // 155 bar and 10 % override: 170.5 bar
  it.each([
    [171e5, 'ok'],
    [170.5e5, 'ok'],
    [170e5, 'change'],
  ])('swivel of %d Pa under 170.5 bar is %s', (maxPressure, expected) => {
    expect(severity(check, { machine: { travel: { swivel: { maxPressure } } } })).toBe(expected)
  })

  it('ignores the pressure of a circuit that drives nothing, and an unknown rating', () => {
    expect(judgements(check, { circuit: { drives: 'no track' } })).toBe(0)
    expect(judgements(check, { machine: { travel: { swivel: { maxPressure: null } } } })).toBe(0)
  })
})
