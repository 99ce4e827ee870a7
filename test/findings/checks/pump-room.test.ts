import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-room.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('pump-room', () => {
  it.each([
    [0.159, 'ok'],
    [0.16, 'ok'],
    [0.161, 'stop'],
  ])('a pump of %f m in 160 mm is %s', (length, expected) => {
    expect(severity(check, { circuit: { pump: { mount: { length } } } })).toBe(expected)
  })

  it('does not judge where length or room is unknown', () => {
    expect(judgements(check, { circuit: { pump: { mount: { length: null } } } })).toBe(0)
    expect(judgements(check, { circuit: { room: null } })).toBe(0)
  })
})
