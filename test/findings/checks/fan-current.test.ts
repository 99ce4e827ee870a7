import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/fan-current.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

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

describe('fan-current', () => {
  it.each([
    [8.9, 'ok'],
    [9, 'ok'],
    [9.1, 'change'],
  ])('a fan of %f A with 9 A to spare is %s', (fanCurrent, expected) => {
    expect(severity(check, { machine: { cooler: { ...cooler, fanCurrent } } })).toBe(expected)
  })

  it('says so where nobody knows what the alternator has left', () => {
    const machine = { cooler, engine: { spareCurrent: null } }
    expect(judged(check, { machine })).toMatchObject({ severity: 'watch', limit: null, component: 'alternator' })
  })

  it('is silent without a fan', () => {
    expect(judgements(check)).toBe(0)
    expect(judgements(check, { machine: { cooler: { ...cooler, fanCurrent: null } } })).toBe(0)
  })
})
