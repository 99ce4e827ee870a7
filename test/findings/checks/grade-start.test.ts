import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/grade-start.ts'
import { judged, severity } from '../../fixtures/check-input.ts'

describe('grade-start', () => {
  it.each([
    [2731, 'ok'],
    [2730, 'ok'],
    [2729, 'stop'],
  ])('%d N of pull where the grade needs 2730 N is %s', (gradePullN, expected) => {
    expect(severity(check, { more: { start: { gradePullN } } })).toBe(expected)
  })

  it('fails where the grade stalls whatever the pull, and says how', () => {
    const stalls = (limitedBy: 'engine' | 'adhesion') => ({
      figures: { travel: { grade: { stalled: true, limitedBy } } },
    })
    expect(judged(check, stalls('engine'))).toMatchObject({ severity: 'stop', value: 'engine stalls', unit: '' })
    expect(judged(check, stalls('adhesion'))).toMatchObject({ severity: 'stop', value: 'stands still' })
    const short = { ...stalls('engine'), more: { start: { gradePullN: 2000 } } }
    expect(judged(check, short)).toMatchObject({ severity: 'stop', value: 2000, limit: 2730, unit: 'N' })
  })
})
