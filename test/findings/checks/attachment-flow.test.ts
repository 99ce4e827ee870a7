import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/attachment-flow.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

/** An invented grinder that asks for 30 L/min at 120 bar. */
const attachment = { name: 'grinder', flow: 30 / 60_000, pressure: 120e5 }
const worked = { flowLpm: 30, pumpPressureBar: 140, toolFlowLpm: 30, auxiliaryLines: [] }

describe('attachment-flow', () => {
  it.each([
    [30.1, 'ok'],
    [30, 'ok'],
    [29.9, 'watch'],
    [10, 'watch'],
  ])('%f L/min at a tool that asks for 30 is %s', (toolFlowLpm, expected) => {
    expect(severity(check, { attachment, more: { attachment: { ...worked, toolFlowLpm } } })).toBe(expected)
  })

  it('says so where no circuit works the attachment, and is silent without one', () => {
    const idle = { attachment, circuit: { works: ['implements'] as const } }
    expect(judged(check, idle)).toMatchObject({ value: null, severity: 'watch', component: 'attachment' })
    expect(judgements(check)).toBe(0)
  })
})
