import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/line-pressure.ts'
import type { Given } from '../../fixtures/check-input.ts'
import { given } from '../../fixtures/check-input.ts'
import { cone, g, hose } from '../../fixtures/machine.ts'

const PRESSURE = 'circuits.main.lines.pressure'
const at = (id: string, change: Given) => check.judge(given(change)).find(({ component }) => component === id)

describe('line-pressure', () => {
  // relief 155 bar and 10 %: 170.5 bar
  it.each([
    [171e5, 'ok'],
    [170.5e5, 'ok'],
    [170e5, 'change'],
  ])('a hose of %d Pa under 170.5 bar is %s', (maxPressure, expected) => {
    expect(at(PRESSURE, { circuit: { lines: { pressure: { maxPressure } } } })?.severity).toBe(expected)
  })

  it('goes by the weakest of hose and ends', () => {
    // ISO 8434-1: 22L is rated 160 bar, in old and new editions
    const ends = [g('1/2'), cone(22, 'L')] as const
    expect(at(PRESSURE, { circuit: { lines: { pressure: { ends } } } })).toMatchObject({
      severity: 'change',
      limit: 160,
    })
  })

  it('takes the older rating for an end of unknown age and the current one for a new hose', () => {
    // 18L: 160 bar in the older edition, 315 now; the hose itself 275
    const ends = [cone(18, 'L'), cone(18, 'L')] as const
    const old = { circuit: { lines: { pressure: { ends } } } }
    expect(at(PRESSURE, old)?.limit).toBe(160)
    expect(at(PRESSURE, { circuit: { lines: { pressure: { ends, part: 'hose-x' } } } })?.limit).toBe(275)
    expect(at(PRESSURE, { circuit: { lines: { pressure: { ends, bore: 0.0159 } } }, before: old })?.limit).toBe(275)
  })

  it('spares suction and return lines, and lines that nobody rates', () => {
    const none = { circuit: { lines: { pressure: { maxPressure: null } } } }
    expect(at(PRESSURE, none)).toBeUndefined()
    expect(at('circuits.main.lines.suction', {})).toBeUndefined()
    expect(at('circuits.main.lines.return', {})).toBeUndefined()
  })

  it('holds work lines against the highest relief that drives, auxiliary lines against their own', () => {
    const auxiliary = { out: hose({ id: 'circuits.main.auxiliary.lines.out', bore: 0.0127, maxPressure: 165e5 }) }
    expect(at('circuits.main.auxiliary.lines.out', { circuit: { auxiliary } })?.severity).toBe('change')
    expect(at('travel.lines.swivel-to-motor', {})).toMatchObject({ value: 170.5, limit: 400, severity: 'ok' })
  })
})
