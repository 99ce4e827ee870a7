import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/filter-bypass-cold.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

const filter = {
  part: null,
  ratedFlow: 40 / 60_000,
  drop: 0.3e5,
  reference: { flow: 40 / 60_000, viscosity: 32e-6 },
  fineness: 10e-6,
  beta: 200,
  bypass: 1.7e5,
}

describe('filter-bypass-cold', () => {
  it.each([
    [1.69, 'ok'],
    [1.7, 'ok'],
    [1.71, 'watch'],
  ])('a cold drop of %f bar under a bypass of 1.7 bar is %s', (filterColdDropBar, expected) => {
    expect(severity(check, { machine: { filter }, more: { filterColdDropBar } })).toBe(expected)
  })

  it('is silent without a filter or without its drop', () => {
    expect(judgements(check, { more: { filterColdDropBar: 9 } })).toBe(0)
    expect(judgements(check, { machine: { filter } })).toBe(0)
  })
})
