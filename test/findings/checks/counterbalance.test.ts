import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/counterbalance.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const faster = { travel: { level: { speedKmh: 2.3 } } }

describe('counterbalance', () => {
  it('passes where it is fitted', () => {
    expect(judged(check, { machine: { brakes: { counterbalance: true } } })).toMatchObject({
      severity: 'ok',
      value: 'fitted',
    })
  })

  it('watches a missing one, and stops an option that makes the machine faster by more than 2 %', () => {
    const machine = { brakes: { counterbalance: false } }
    expect(severity(check, { machine })).toBe('watch')
    expect(severity(check, { machine, before: {} })).toBe('watch')
    expect(severity(check, { machine, figures: faster, before: {} })).toBe('stop')
    // 2.2 km/h and 2 %: 2.244
    expect(severity(check, { machine, figures: { travel: { level: { speedKmh: 2.244 } } }, before: {} })).toBe('watch')
    expect(severity(check, { machine, figures: { travel: { turn: { speedKmh: 1.9 } } }, before: {} })).toBe('stop')
    expect(severity(check, { machine, figures: { travel: { grade: { speedKmh: 2 } } }, before: {} })).toBe('stop')
  })

  it('says so where nobody has looked', () => {
    const machine = { brakes: { counterbalance: null } }
    expect(judged(check, { machine, figures: faster, before: {} })).toMatchObject({
      severity: 'watch',
      value: 'not read',
    })
    expect(check.countsWhenFaster).toBe(true)
  })

  it('is judged above 15 % only', () => {
    expect(judgements(check, { site: { steepestGrade: 0.15 } })).toBe(0)
    expect(judgements(check, { site: { steepestGrade: 0.16 } })).toBe(1)
  })
})
