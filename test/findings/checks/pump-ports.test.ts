import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-ports.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'
import { g } from '../../fixtures/machine.ts'

const fitted = (inlet: string) => ({
  circuit: { pump: { part: 'pump-x', ports: { inlet: g(inlet) } } },
  before: {},
})

describe('pump-ports', () => {
  it('watches other ports and lets the same ones pass', () => {
    expect(severity(check, fitted('3/4'))).toBe('ok')
    expect(severity(check, fitted('1'))).toBe('watch')
  })

  it('judges neither unknown ports nor a pump that stays', () => {
    const unknown = { pump: { part: 'pump-x', ports: { inlet: null, outlet: null } } }
    expect(judgements(check, { circuit: unknown, before: {} })).toBe(0)
    expect(judgements(check, { before: {} })).toBe(0)
  })
})
