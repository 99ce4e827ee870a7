import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/shaft-torque.ts'
import { circuit, given, judged, judgements, severity } from '../../fixtures/check-input.ts'

const torque = (shaftTorqueNm: number, pump: { shaft?: string | null; maxShaftTorque?: number | null }) => ({
  figures: { circuits: { main: { shaftTorqueNm } } },
  circuit: { pump: { maxShaftTorque: pump.maxShaftTorque ?? null, mount: { shaft: pump.shaft ?? null } } },
})

describe('shaft-torque', () => {
  // 9T 16/32 usually carries 55 to 80 N·m
  it.each([
    [54, 'ok'],
    [55, 'ok'],
    [56, 'watch'],
    [200, 'watch'],
  ])('%d N·m on an unrated 9T 16/32 is %s', (newtonMetres, expected) => {
    expect(severity(check, torque(newtonMetres, { shaft: '9T 16/32 DP' }))).toBe(expected)
  })

  it.each([
    [90, 'ok'],
    [91, 'change'],
  ])('%d N·m on a shaft stated for 90 N·m is %s', (newtonMetres, expected) => {
    expect(severity(check, torque(newtonMetres, { shaft: '9T 16/32 DP', maxShaftTorque: 90 }))).toBe(expected)
  })

  it('adds up the sections of a tandem on the shaft of the first', () => {
    const section = (number: number) => ({ pump: { part: 'tandem-x', section: number, maxShaftTorque: 43 } })
    const input = given({
      machine: { circuits: [circuit('aux', section(2)), circuit('main', section(1))] },
      figures: { circuits: { aux: given().figures.circuits.main ?? {} } },
      more: { circuits: { aux: given().more.circuits.main ?? {} } },
    })
    expect(check.judge(input)).toMatchObject([{ component: 'circuits.main.pump', value: 44, severity: 'change' }])
  })

  it('does not judge a shaft that nobody knows, and names the source of a usual one', () => {
    expect(judgements(check, torque(20, {}))).toBe(0)
    expect(judgements(check, torque(20, { shaft: '10T DIN' }))).toBe(0)
    expect(judged(check, torque(20, { shaft: '3/4 in keyed' })).source).toContain('from memory')
  })
})
