import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-mount.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const fitted = (flange: string | null) => ({
  circuit: { pump: { part: 'pump-x', mount: { flange } } },
  before: { circuit: { pump: { mount: { flange: 'SAE A 2-bolt' } } } },
})

describe('pump-mount', () => {
  it('lets the same flange pass, however it is written', () => {
    expect(severity(check, fitted('SAE A 2-bolt'))).toBe('ok')
    expect(severity(check, fitted('sae a  2-bolt'))).toBe('ok')
  })

  it('asks for a change where the flange is another', () => {
    expect(judged(check, fitted('SAE B 2-bolt'))).toMatchObject({
      severity: 'change',
      component: 'circuits.main.pump.mount',
      value: 'SAE B 2-bolt',
      limit: 'SAE A 2-bolt',
    })
  })

  it('judges neither an unknown flange, nor a pump that stays, nor a machine alone', () => {
    expect(judgements(check, fitted(null))).toBe(0)
    expect(judgements(check, { before: {} })).toBe(0)
    expect(judgements(check)).toBe(0)
  })
})
