import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/strainer-flow.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('strainer-flow', () => {
  it.each([
    [39.9, 'ok'],
    [40, 'ok'],
    [40.1, 'watch'],
  ])('%f L/min through a strainer of 40 L/min is %s', (returnFlowLpm, expected) => {
    expect(severity(check, { more: { returnFlowLpm } })).toBe(expected)
  })

  it('is silent without a strainer', () => {
    expect(judgements(check, { machine: { strainer: null } })).toBe(0)
  })
})
