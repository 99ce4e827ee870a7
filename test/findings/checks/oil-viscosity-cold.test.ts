import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/oil-viscosity-cold.ts'
import { severity } from '../../fixtures/check-input.ts'

describe('oil-viscosity-cold', () => {
  it.each([
    [999, 'ok'],
    [1000, 'ok'],
    [1001, 'watch'],
  ])('%d cSt at the coldest start is %s', (coldViscosityCst, expected) => {
    expect(severity(check, { more: { coldViscosityCst } })).toBe(expected)
  })
})
