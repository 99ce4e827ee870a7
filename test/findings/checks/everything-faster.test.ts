import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/everything-faster.ts'
import { judged, judgements, severity } from '../../fixtures/check-input.ts'

const flows = (now: number, was: number) => ({
  more: { circuits: { main: { neutralFlowLpm: now } } },
  before: { more: { circuits: { main: { neutralFlowLpm: was } } } },
})

describe('everything-faster', () => {
  it.each([
    [20, 'ok'],
    [20.4, 'ok'],
    [20.5, 'watch'],
  ])('%f L/min where it was 20 L/min is %s', (now, expected) => {
    expect(severity(check, flows(now, 20))).toBe(expected)
  })

  it('names the circuit, and spares one that works nothing or was not there', () => {
    expect(judged(check, flows(30, 20)).component).toBe('circuits.main')
    expect(judgements(check, { ...flows(30, 20), circuit: { works: [] } })).toBe(0)
    expect(judgements(check)).toBe(0)
  })
})
