/** ISO 4406: the upper limit of each scale number belongs to it, the next count does not. */
import { expect, test } from 'vitest'
import { scaleNumber } from '../../src/formulas/filtration.ts'

const limits = [
  [6, 0.64],
  [7, 1.3],
  [8, 2.5],
  [9, 5],
  [10, 10],
  [11, 20],
  [12, 40],
  [13, 80],
  [14, 160],
  [15, 320],
  [16, 640],
  [17, 1300],
  [18, 2500],
  [19, 5000],
  [20, 10_000],
  [21, 20_000],
  [22, 40_000],
  [23, 80_000],
  [24, 160_000],
] as const

for (const [number, limit] of limits)
  test(`up to ${limit} a millilitre is ${number}`, () => {
    expect(scaleNumber(limit)).toBe(number)
    expect(scaleNumber(limit * 1.001)).toBe(number + 1)
  })

test('0.01 and less is number 0, up to 0.02 number 1; beyond the table there is no number', () => {
  expect([0, 0.01, 0.011, 0.02].map(scaleNumber)).toEqual([0, 0, 1, 1])
  expect(scaleNumber(2_500_001)).toBeNull()
})
