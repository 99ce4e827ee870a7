import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/grade-start.ts'
import { severity } from '../../fixtures/check-input.ts'

describe('grade-start', () => {
  it.each([
    [2731, 'ok'],
    [2730, 'ok'],
    [2729, 'stop'],
  ])('%d N of pull where the grade needs 2730 N is %s', (gradePullN, expected) => {
    expect(severity(check, { more: { start: { gradePullN } } })).toBe(expected)
  })

  it('fails where the grade stalls, whatever the pull', () => {
    expect(severity(check, { figures: { travel: { grade: { stalled: true, limitedBy: 'engine' } } } })).toBe('stop')
  })
})
