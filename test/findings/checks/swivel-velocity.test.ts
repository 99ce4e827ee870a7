import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/swivel-velocity.ts'
import { given, judged, judgements, severity } from '../../fixtures/check-input.ts'

const level = (motorFlowLpm: number) => ({ figures: { travel: { level: { motorFlowLpm } } } })

describe('swivel-velocity', () => {
  // 6 mm: 28.274 mm2; 6.1 m/s is 10.348 L/min, 7.015 m/s is 11.901 L/min
  it.each([
    [10.34, 'ok'],
    [10.36, 'watch'],
    [11.89, 'watch'],
    [11.91, 'change'],
  ])('%f L/min through 6 mm is %s', (flow, expected) => {
    expect(severity(check, level(flow))).toBe(expected)
  })

  it('gives the velocity', () => {
    expect(judged(check, level(10.348)).value).toBeCloseTo(6.1, 3)
  })

  it('goes by the slow level where the fast one stalls, and is silent where nothing moves', () => {
    const point = given().figures.travel.level
    const stalled = { ...level(0).figures.travel.level, stalled: true }
    const slow = { figures: { travel: { level: stalled, levelSlow: { ...point, motorFlowLpm: 12 } } } }
    expect(severity(check, slow)).toBe('change')
    expect(judgements(check, { figures: { travel: { level: stalled } } })).toBe(0)
  })

  it('does not judge a machine without a swivel or a swivel without a bore', () => {
    expect(judgements(check, { machine: { travel: { swivel: null } } })).toBe(0)
    expect(judgements(check, { machine: { travel: { swivel: { bore: null } } } })).toBe(0)
  })
})
