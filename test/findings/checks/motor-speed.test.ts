import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/motor-speed.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const at = (level: number, oneTrack: number, stalled = false) => ({
  figures: { travel: { level: { motorSpeedRpm: level, stalled }, oneTrack: { motorSpeedRpm: oneTrack } } },
})

describe('motor-speed', () => {
  it.each([
    [229, 20, 'ok'],
    [230, 230, 'ok'],
    [231, 20, 'change'],
    [20, 231, 'watch'],
    [231, 239, 'change'],
  ])('%d on the level and %d with one lever against 230 is %s', (level, oneTrack, expected) => {
    expect(severity(check, at(level, oneTrack))).toBe(expected)
  })

  it('shows the figure that is over', () => {
    expect(judged(check, at(20, 235)).value).toBe(235)
    expect(judged(check, at(232, 235)).value).toBe(232)
  })

  it('is silent where nothing moves on the level, or nothing is stated', () => {
    expect(judgements(check, at(0, 20, true))).toBe(0)
    expect(severity(check, at(0, 235, true))).toBe('watch')
    expect(judgements(check, { machine: { travel: { motor: { maxSpeed: null } } } })).toBe(0)
  })
})
