import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/port-pressure.ts'
import type { Given } from '../../fixtures/check-input.ts'
import { given } from '../../fixtures/check-input.ts'
import { cone } from '../../fixtures/machine.ts'

const of = (id: string, change: Given) => check.judge(given(change)).find(({ component }) => component === id)

describe('port-pressure', () => {
  // relief 155 bar and 10 %: 170.5 bar; ISO 8434-1: 22L 160 bar, 18L 315 bar now and 160 in the older edition
  it('condemns a port that is rated too low in every edition', () => {
    const valve = { ports: { work: cone(22, 'L') } }
    expect(of('circuits.main.valve', { circuit: { valve } })).toMatchObject({ severity: 'change', limit: 160 })
  })

  it('watches a port that only the older edition rates too low, unless it is new', () => {
    const pump = { ports: { outlet: cone(18, 'L') } }
    expect(of('circuits.main.pump', { circuit: { pump } })).toMatchObject({ severity: 'watch', limit: 160 })
    expect(of('circuits.main.pump', { circuit: { pump: { ...pump, part: 'pump-x' } } })?.severity).toBe('ok')
  })

  it('passes ports that are rated high enough and does not judge ports that nobody rates', () => {
    expect(of('circuits.main.valve', {})).toMatchObject({ severity: 'ok', limit: 250 })
    expect(of('circuits.main.pump', {})).toBeUndefined()
    expect(of('travel.motor', { machine: { travel: { motor: { ports: { work: cone(28, 'L') } } } } })?.severity).toBe(
      'change',
    )
    expect(of('travel.swivel', { machine: { travel: { swivel: { ports: { work: cone(12, 'S') } } } } })?.severity).toBe(
      'ok',
    )
  })
})
