import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/coupling-torque.ts'
import { circuit, given, judgements, severity } from '../../fixtures/check-input.ts'

const torque = (shaftTorqueNm: number, cylinders = 3) => ({
  figures: { circuits: { main: { shaftTorqueNm } } },
  machine: { engine: { cylinders } },
})

describe('coupling-torque', () => {
  // AGMA 514.02, medium load: 2.8 to three cylinders, 2.3 above; 40 N·m / 2.8 = 14.29, 40 / 2.3 = 17.39
  it.each([
    [14.28, 3, 'ok'],
    [14.29, 3, 'change'],
    [14.29, 4, 'ok'],
    [17.39, 4, 'ok'],
    [17.4, 4, 'change'],
  ])('%f N·m with %d cylinders on a coupling of 40 N·m is %s', (newtonMetres, cylinders, expected) => {
    expect(severity(check, torque(newtonMetres, cylinders))).toBe(expected)
  })

  it('adds up the sections of one tandem pump on the coupling that they share', () => {
    const section = (number: number) => ({ pump: { part: 'tandem-x', section: number } })
    const input = given({
      machine: { circuits: [circuit('aux', { ...section(2), coupling: null }), circuit('main', section(1))] },
      figures: { circuits: { aux: given().figures.circuits.main ?? {} } },
      more: { circuits: { aux: given().more.circuits.main ?? {} } },
    })
    // 2 x 22 N·m x 2.8
    expect(check.judge(input)).toMatchObject([
      { component: 'circuits.main.coupling', value: expect.closeTo(123.2, 6), severity: 'change' },
    ])
  })

  it('keeps pumps on shafts of their own apart, and does not judge a circuit without a coupling', () => {
    const two = given({
      machine: { circuits: [circuit('main'), circuit('aux')] },
      figures: { circuits: { aux: given().figures.circuits.main ?? {} } },
      more: { circuits: { aux: given().more.circuits.main ?? {} } },
    })
    expect(check.judge(two).map(({ value }) => value)).toEqual([expect.closeTo(61.6, 6), expect.closeTo(61.6, 6)])
    expect(judgements(check, { circuit: { coupling: null } })).toBe(0)
  })
})
