import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cents, money, total } from '../../src/costing/money.ts'

describe('cents', () => {
  it.each([
    [1.005, 101], // a half cent, though the nearest double is a little less
    [2.675, 268],
    [0.004, 0],
    [0.005, 1],
    [17.36, 1736],
    [1e7 + 0.29, 1_000_000_029],
    [-1.005, -101],
    [-0.004, 0], // not minus nothing
  ])('%d is %i', (amount, expected) => {
    expect(cents(amount)).toBe(expected)
  })

  it('gives whole cents and leaves whole cents alone', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), (whole) => {
        expect(cents(money(whole))).toBe(whole)
      }),
    )
  })

  it('adds up exactly: ten times 0.10 is 1.00', () => {
    expect(money(total(Array.from({ length: 10 }, () => cents(0.1))))).toBe(1)
  })
})
