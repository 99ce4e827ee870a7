import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pull-lost.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const pulls = (now: number, was: number) => ({
  figures: { travel: { grade: { tractiveForceN: now } } },
  before: { figures: { travel: { grade: { tractiveForceN: was } } } },
})

describe('pull-lost', () => {
  // the grade needs 2730 N
  it.each([
    [5000, 5000, 'ok'],
    [4900, 5000, 'ok'],
    [4899, 5000, 'watch'],
    [2730, 5000, 'watch'],
    [2729, 5000, 'stop'],
    [2729, 2730, 'stop'],
    [2600, 2600, 'ok'],
    [2500, 2600, 'stop'],
  ])('%d N where it was %d N is %s', (now, was, expected) => {
    expect(severity(check, pulls(now, was))).toBe(expected)
  })

  it('holds a stop against the grade, the rest against what it was', () => {
    expect(judged(check, pulls(2000, 5000)).limit).toBe(2730)
    expect(judged(check, pulls(4000, 5000)).limit).toBe(5000)
    expect(judgements(check)).toBe(0)
  })
})
