import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/valve-flow.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('valve-flow', () => {
  it.each([
    [37.9, 'ok'],
    [38, 'ok'],
    [38.1, 'change'],
  ])('%f L/min through a valve rated for 38 L/min is %s', (pumpFlowLpm, expected) => {
    expect(severity(check, { figures: { circuits: { main: { pumpFlowLpm } } } })).toBe(expected)
  })

  it('judges neither a circuit without a valve nor a valve without a rated flow', () => {
    expect(judgements(check, { circuit: { valve: null } })).toBe(0)
    expect(judgements(check, { circuit: { valve: { ratedFlow: null } } })).toBe(0)
  })
})
