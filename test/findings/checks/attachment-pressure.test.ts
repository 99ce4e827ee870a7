import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/attachment-pressure.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

/** An invented grinder that asks for 30 L/min at 120 bar. */
const attachment = { name: 'grinder', flow: 30 / 60_000, pressure: 120e5 }
const worked = { flowLpm: 30, pumpPressureBar: 140, toolFlowLpm: 30, auxiliaryLines: [] }

describe('attachment-pressure', () => {
  // relief 155 bar
  it.each([
    [154.9, 'ok'],
    [155, 'watch'],
    [160, 'watch'],
  ])('%f bar at the pump under a relief of 155 bar is %s', (pumpPressureBar, expected) => {
    expect(severity(check, { attachment, more: { attachment: { ...worked, pumpPressureBar } } })).toBe(expected)
  })

  it('is silent without an attachment', () => {
    expect(judgements(check)).toBe(0)
  })
})
