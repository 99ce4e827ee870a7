import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/cooler-bypass-cold.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

const cooler = {
  part: null,
  capacity: 90,
  atFlow: 25 / 60_000,
  drop: 0.4e5,
  maxPressure: 10e5,
  bypass: 4.5e5,
  airRise: 0,
  fanCurrent: 7,
}

describe('cooler-bypass-cold', () => {
  it.each([
    [4.49, 'ok'],
    [4.5, 'ok'],
    [4.51, 'watch'],
  ])('a cold drop of %f bar under a bypass of 4.5 bar is %s', (coolerColdDropBar, expected) => {
    expect(severity(check, { machine: { cooler }, more: { coolerColdDropBar } })).toBe(expected)
  })

  it('is silent without a cooler or without its drop', () => {
    expect(judgements(check, { more: { coolerColdDropBar: 9 } })).toBe(0)
    expect(judgements(check, { machine: { cooler } })).toBe(0)
  })
})
