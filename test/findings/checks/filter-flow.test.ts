import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/filter-flow.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

const filter = {
  part: null,
  ratedFlow: 40 / 60_000,
  drop: 0.3e5,
  reference: { flow: 40 / 60_000, viscosity: 32e-6 },
  fineness: 10e-6,
  beta: 200,
  bypass: 1.7e5,
}

describe('filter-flow', () => {
  // area ratio 1.6: 25 L/min come back as 40 L/min
  it.each([
    [24.9, 'ok'],
    [25, 'ok'],
    [25.1, 'change'],
  ])('%f L/min of the pumps through a filter of 40 L/min is %s', (returnFlowLpm, expected) => {
    expect(severity(check, { machine: { filter }, more: { returnFlowLpm } })).toBe(expected)
  })

  it('judges neither a missing filter nor one without a rated flow', () => {
    expect(judgements(check)).toBe(0)
    expect(judgements(check, { machine: { filter: { ...filter, ratedFlow: null } } })).toBe(0)
  })
})
