import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/oil-viscosity-hot.ts'
import { judged, severity } from '../../fixtures/check-input.ts'

const settles = (steadyViscosityCst: number | null) => ({ figures: { heat: { steadyViscosityCst } } })

describe('oil-viscosity-hot', () => {
  it.each([
    [12.1, 'ok'],
    [12, 'ok'],
    [11.9, 'watch'],
  ])('%f cSt is %s', (viscosity, expected) => {
    expect(severity(check, settles(viscosity))).toBe(expected)
  })

  it('invents no viscosity where the oil settles nowhere', () => {
    expect(judged(check, settles(null))).toMatchObject({ value: null, severity: 'watch' })
  })
})
