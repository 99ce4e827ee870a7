import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/oil-temperature.ts'
import { judged, severity } from '../../fixtures/check-input.ts'

const settles = (steadyOilC: number | null) => ({ figures: { heat: { steadyOilC } } })

describe('oil-temperature', () => {
  it.each([
    [69.9, 'ok', 70],
    [70, 'ok', 70],
    [70.1, 'watch', 70],
    [82, 'watch', 70],
    [82.1, 'change', 82],
  ])('oil that settles at %f °C is %s', (steady, expected, limit) => {
    expect(judged(check, settles(steady))).toMatchObject({ severity: expected, limit, component: 'cooler' })
  })

  it('asks for a cooler where the oil settles nowhere, and invents no temperature', () => {
    expect(judged(check, settles(null))).toMatchObject({ value: null, measure: 1.2 })
    expect(severity(check, settles(null))).toBe('change')
  })
})
