import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-speed.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

describe('pump-speed', () => {
  it.each([
    [3499, 'ok'],
    [3500, 'ok'],
    [3501, 'change'],
  ])('a high idle of %d rpm for a pump of 3500 rpm is %s', (highIdleRpm, expected) => {
    expect(severity(check, { more: { highIdleRpm } })).toBe(expected)
  })

  it('names the pump and does not judge one without a stated speed', () => {
    expect(judged(check).component).toBe('circuits.main.pump')
    expect(judgements(check, { circuit: { pump: { maxSpeed: null } } })).toBe(0)
  })
})
