import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-shaft.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const fitted = (shaft: string | null) => ({
  circuit: { pump: { part: 'pump-x', mount: { shaft } } },
  before: { circuit: { pump: { mount: { shaft: '9T 16/32 DP' } } } },
})

describe('pump-shaft', () => {
  it('lets the same shaft pass, however it is written', () => {
    expect(severity(check, fitted('9T 16/32 DP'))).toBe('ok')
    expect(severity(check, fitted('9t 16/32 dp'))).toBe('ok')
  })

  it('asks for a change where the shaft is another', () => {
    expect(judged(check, fitted('11T 16/32 DP'))).toMatchObject({
      severity: 'change',
      component: 'circuits.main.pump.mount',
      value: '11T 16/32 DP',
      limit: '9T 16/32 DP',
    })
  })

  it('judges neither an unknown shaft, nor a pump that stays, nor a machine alone', () => {
    expect(judgements(check, fitted(null))).toBe(0)
    expect(judgements(check, { before: {} })).toBe(0)
    expect(judgements(check)).toBe(0)
  })
})
