import { describe, expect, test } from 'vitest'
import { Hypercube, percentile } from '../../src/ranges/hypercube.ts'

describe('Latin hypercube', () => {
  test('draws each figure once from each of n equal slices of its tolerance', () => {
    const cube = new Hypercube(100)
    const slices = Array.from({ length: 100 }, (_, i) => Math.floor(((cube.draw(i, 'a', 10, 1) - 9) / 2) * 100))
    expect([...slices].sort((a, b) => a - b)).toEqual(Array.from({ length: 100 }, (_, i) => i))
  })

  test('gives the same draws again, and different orders to different figures', () => {
    const draws = (path: string) => {
      const cube = new Hypercube(50)
      return Array.from({ length: 50 }, (_, i) => cube.draw(i, path, 0, 1))
    }
    expect(draws('a')).toEqual(draws('a'))
    expect(draws('a')).not.toEqual(draws('b'))
  })

  test('a figure without tolerance stays what it is', () => {
    expect(new Hypercube(10).draw(3, 'a', 7, 0)).toBe(7)
  })
})

/** Hyndman and Fan (1996), definition 7, on 1..10: p10 = 1.9, p50 = 5.5, p90 = 9.1 (by hand: 1 + 9 x share). */
test('percentiles by linear interpolation between order statistics', () => {
  const list = Array.from({ length: 10 }, (_, i) => i + 1)
  expect(percentile(list, 0.1)).toBeCloseTo(1.9, 12)
  expect(percentile(list, 0.5)).toBeCloseTo(5.5, 12)
  expect(percentile(list, 0.9)).toBeCloseTo(9.1, 12)
  expect(percentile([], 0.5)).toBeNull()
  const endless = [1, 2, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  // Places 0.3, 1 (of five) and 2.7: 1.3; the second itself; between two that are infinite.
  expect(percentile(endless, 0.1)).toBeCloseTo(1.3, 12)
  expect(percentile([...endless, Number.POSITIVE_INFINITY], 0.25)).toBe(2)
  expect(percentile(endless, 0.9)).toBe(Number.POSITIVE_INFINITY)
})
