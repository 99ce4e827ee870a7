import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/swivel-passages.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const twoSpeed = (sparePassages: number | null) => ({
  machine: { travel: { motor: { secondDisplacement: 120e-6 }, swivel: { sparePassages } } },
  before: {},
})

describe('swivel-passages', () => {
  it.each([
    [2, 'ok'],
    [1, 'ok'],
    [0, 'change'],
  ])('%d spare passages for a shift line are %s', (spare, expected) => {
    expect(severity(check, twoSpeed(spare))).toBe(expected)
  })

  it('says so where nobody has counted them', () => {
    expect(judged(check, twoSpeed(null))).toMatchObject({ severity: 'watch', value: 'not read' })
  })

  it('is silent where no motor gets a second displacement or nothing slews', () => {
    expect(judgements(check, { before: {} })).toBe(0)
    expect(judgements(check, { ...twoSpeed(0), before: twoSpeed(0) })).toBe(0)
    expect(judgements(check, { machine: { travel: { motor: { secondDisplacement: 120e-6 } } } })).toBe(0)
    expect(
      judgements(check, { machine: { travel: { motor: { secondDisplacement: 120e-6 }, swivel: null } }, before: {} }),
    ).toBe(0)
  })
})
