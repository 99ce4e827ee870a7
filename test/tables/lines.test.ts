/** Dash sizes and hose ratings: the rule behind the numbers, and single values of the standards. */
import { describe, expect, test } from 'vitest'
import { hoseKinds, hoseRating, hoseRatings } from '../../src/tables/hose-ratings.ts'
import { boreOfDash, lineSizes } from '../../src/tables/line-sizes.ts'
import { pascalsFromPsi } from '../../src/units/shop-units.ts'

describe('dash sizes', () => {
  // SAE J517: the dash is the bore in sixteenths of an inch; the nominal millimetres are rounded from it.
  test.each(lineSizes)('-$dash is $dash/16 in to within 0.1 mm', ({ dash, boreMm }) =>
    expect(Math.abs(boreMm - (dash / 16) * 25.4)).toBeLessThanOrEqual(0.1),
  )
  test('sizes rise', () => {
    const sizes = lineSizes.map(({ dash }) => dash)
    expect(sizes).toEqual([...new Set(sizes)].sort((a, b) => a - b))
  })
  test('a size that nobody makes has no bore', () => expect(boreOfDash(7)).toBeNull())
  test('-8 is half an inch', () => expect(boreOfDash(8)).toBeCloseTo(0.0127, 12))
})

describe('hose ratings', () => {
  test.each(hoseKinds)('%s: bigger hoses never carry more', (kind) => {
    const bars = hoseRatings.filter((row) => row.kind === kind).map(({ bar }) => bar)
    expect(bars).toEqual([...bars].sort((a, b) => b - a))
    expect(bars.every((bar) => bar > 0)).toBe(true)
  })
  test('two wires carry more than one', () => {
    for (const { dash, bar } of hoseRatings.filter((row) => row.kind === '1-wire hose'))
      expect(hoseRating('2-wire hose', dash)).toBeGreaterThan(bar * 1e5)
  })
  // SAE J517 100R2AT type S prints the same hose in psi: -4 5800, -8 4000, -16 2400.
  test.each([
    [4, 5800],
    [8, 4000],
    [16, 2400],
  ])('2-wire -%i is about %i psi', (dash, psi) =>
    expect(Math.abs((hoseRating('2-wire hose', dash) ?? 0) / pascalsFromPsi(psi) - 1)).toBeLessThan(0.01),
  )
  // SAE J517 100R4: 300, 250, 200, 150, 100 psi from -12 on.
  test.each([
    [12, 300],
    [16, 250],
    [20, 200],
    [24, 150],
    [32, 100],
  ])('suction -%i is about %i psi', (dash, psi) =>
    expect(Math.abs((hoseRating('suction hose', dash) ?? 0) / pascalsFromPsi(psi) - 1)).toBeLessThan(0.04),
  )
  test('what the tables do not have is not known', () => {
    expect(hoseRating('suction hose', 8)).toBeNull()
    expect(hoseRating('garden hose', 8)).toBeNull()
    expect(hoseRating(null, 8)).toBeNull()
    expect(hoseRating('2-wire hose', null)).toBeNull()
  })
  test('every row says where it comes from, and every size has a bore', () => {
    for (const { source, dash } of hoseRatings) {
      expect(source).toMatch(/EN 85|SAE J517/u)
      expect(boreOfDash(dash)).not.toBeNull()
    }
  })
})
