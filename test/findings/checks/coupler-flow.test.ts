import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/coupler-flow.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

/** An invented grinder that asks for 30 L/min at 120 bar. */
const attachment = { name: 'grinder', flow: 30 / 60_000, pressure: 120e5 }
const worked = { flowLpm: 30, pumpPressureBar: 140, toolFlowLpm: 30, auxiliaryLines: [] }

const auxiliary = { out: null, back: null, coupler: { flow: 38 / 60_000, drop: 5e5 } }

describe('coupler-flow', () => {
  it.each([
    [37.9, 'ok'],
    [38, 'ok'],
    [38.1, 'watch'],
  ])('%f L/min through couplers of 38 L/min is %s', (flowLpm, expected) => {
    const more = { attachment: { ...worked, flowLpm } }
    expect(severity(check, { attachment, circuit: { auxiliary }, more })).toBe(expected)
  })

  it('is silent without couplers or without an attachment', () => {
    expect(judgements(check, { attachment, more: { attachment: worked } })).toBe(0)
    expect(judgements(check, { circuit: { auxiliary } })).toBe(0)
  })
})
