import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/relief-capacity.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('relief-capacity', () => {
  it.each([
    [39.9, 'ok'],
    [40, 'ok'],
    [40.1, 'change'],
  ])('%f L/min over a relief rated for 40 L/min is %s', (flowAtReliefLpm, expected) => {
    expect(severity(check, { more: { circuits: { main: { flowAtReliefLpm } } } })).toBe(expected)
  })

  it('does not judge a relief without a rated flow', () => {
    expect(judgements(check, { circuit: { relief: { ratedFlow: null } } })).toBe(0)
  })
})
