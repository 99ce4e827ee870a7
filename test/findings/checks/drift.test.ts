import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/drift.ts'
import { circuit, given, judgements } from '../../fixtures/check-input.ts'

const tracks = (left: number, right: number) => {
  const figures = given().figures.circuits.main ?? {}
  const more = given().more.circuits.main
  return check.judge(
    given({
      machine: { circuits: [circuit('left', { drives: 'left track' }), circuit('right', { drives: 'right track' })] },
      figures: { circuits: { left: figures, right: figures } },
      more: { circuits: { left: { ...more, levelSpeedKmh: left }, right: { ...more, levelSpeedKmh: right } } },
    }),
  )
}

describe('drift', () => {
  // mean 2: 1.95 and 2.05 differ by 5 %
  it.each([
    [1.96, 2.04, 'ok'],
    [2.05, 1.95, 'ok'],
    [1.94, 2.06, 'watch'],
  ])('%f and %f km/h are %s', (left, right, expected) => {
    expect(tracks(left, right)).toMatchObject([{ severity: expected, component: 'travel' }])
  })

  it('is silent with one circuit for both tracks, and where both stand', () => {
    expect(judgements(check)).toBe(0)
    expect(tracks(0, 0)).toEqual([])
  })
})
