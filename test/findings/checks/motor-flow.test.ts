import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/motor-flow.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const at = (level: number, oneTrack: number, stalled = false) => ({
  figures: { travel: { level: { motorFlowLpm: level, stalled }, oneTrack: { motorFlowLpm: oneTrack } } },
})

describe('motor-flow', () => {
  it.each([
    [54, 20, 'ok'],
    [55, 55, 'ok'],
    [56, 20, 'change'],
    [20, 56, 'watch'],
    [56, 64, 'change'],
  ])('%d on the level and %d with one lever against 55 is %s', (level, oneTrack, expected) => {
    expect(severity(check, at(level, oneTrack))).toBe(expected)
  })

  it('shows the figure that is over', () => {
    expect(judged(check, at(20, 60)).value).toBe(60)
    expect(judged(check, at(57, 60)).value).toBe(57)
  })

  it('is silent where nothing moves on the level, or nothing is stated', () => {
    expect(judgements(check, at(0, 20, true))).toBe(0)
    expect(severity(check, at(0, 60, true))).toBe('watch')
    expect(judgements(check, { machine: { travel: { motor: { maxFlow: null } } } })).toBe(0)
  })
})
