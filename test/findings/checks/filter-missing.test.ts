import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/filter-missing.ts'
import { judged, severity } from '../../fixtures/check-input.ts'

const filter = {
  part: null,
  ratedFlow: 40 / 60_000,
  drop: 0.3e5,
  reference: { flow: 40 / 60_000, viscosity: 32e-6 },
  fineness: 10e-6,
  beta: 200,
  bypass: 1.7e5,
}

describe('filter-missing', () => {
  it('watches a machine without a return filter', () => {
    expect(judged(check)).toMatchObject({ severity: 'watch', component: 'filter', value: 'none' })
    expect(severity(check, { machine: { filter } })).toBe('ok')
  })
})
