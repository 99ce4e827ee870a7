import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/motor-return-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

const level = (motorReturnBar: number, stalled = false) => ({
  figures: { travel: { level: { motorReturnBar, stalled } } },
})

describe('motor-return-pressure', () => {
  it.each([
    [49.9, 'ok'],
    [50, 'ok'],
    [50.1, 'change'],
  ])('%f bar behind motors of 50 bar is %s', (bar, expected) => {
    expect(severity(check, level(bar))).toBe(expected)
  })

  it('is silent where nothing moves, or nothing is stated', () => {
    expect(judgements(check, level(60, true))).toBe(0)
    expect(judgements(check, { machine: { travel: { motor: { maxReturnPressure: null } } } })).toBe(0)
  })
})
