import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/turn-start.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

describe('turn-start', () => {
  it.each([
    [4391, 'ok'],
    [4390, 'ok'],
    [4389, 'stop'],
  ])('%d N of pull where the turn needs 4390 N is %s', (turnPullN, expected) => {
    expect(severity(check, { more: { start: { turnPullN } } })).toBe(expected)
  })

  it('fails where the turn stalls and is silent on wheels', () => {
    expect(severity(check, { figures: { travel: { turn: { stalled: true } } } })).toBe('stop')
    expect(
      judgements(check, {
        figures: { travel: { turn: null } },
        more: { start: { turnPullN: null, turnNeededN: null } },
      }),
    ).toBe(0)
  })
})
