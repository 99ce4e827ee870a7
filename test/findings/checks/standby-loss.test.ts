import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/standby-loss.ts'
import { circuit, given, severity } from '../../fixtures/check-input.ts'

describe('standby-loss', () => {
  // a tenth of 8 kW
  it.each([
    [0.79, 'ok'],
    [0.8, 'ok'],
    [0.81, 'watch'],
  ])('%f kW in neutral of 8 kW is %s', (neutralPowerKw, expected) => {
    expect(severity(check, { more: { deratedPowerKw: 8, circuits: { main: { neutralPowerKw } } } })).toBe(expected)
  })

  it('adds up the circuits', () => {
    const main = given().more.circuits.main ?? {}
    const input = given({
      machine: { circuits: [circuit('left'), circuit('right')] },
      figures: { circuits: { left: given().figures.circuits.main ?? {}, right: given().figures.circuits.main ?? {} } },
      more: { circuits: { left: main, right: main } },
    })
    // twice 0.6 kW against 0.849 kW
    expect(check.judge(input)).toMatchObject([{ value: 1.2, severity: 'watch', component: 'engine' }])
  })
})
