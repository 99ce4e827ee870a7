/** Roots known from elsewhere, and how many steps they may take: halving alone takes 52 to the last bit of a double. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fallingFixedPoint, findRoot, rootBetween } from '../../src/circuit/root.ts'

/** Counts how often it is asked. */
const counted = (f: (x: number) => number) => {
  let count = 0
  const asked = (x: number) => {
    count++
    return f(x)
  }
  return { asked, count: () => count }
}

/** Published roots: Dottie's number; Wallis' equation, on which Newton showed his method; Lambert's omega. */
const known = [
  ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  ['x3 - 2x = 5', (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
  ['x e^x = 1', (x: number) => x * Math.exp(x) - 1, 0, 1, 0.5671432904097838],
  ['x9 = 0.5', (x: number) => x ** 9 - 0.5, 0, 1, 0.5 ** (1 / 9)],
  ['tan x = 100', (x: number) => Math.tan(x) - 100, 0, 1.57, Math.atan(100)],
  ['a straight line', (x: number) => 3 - 2 * x, 0, 10, 1.5],
] as const

describe('root in a bracket', () => {
  for (const [what, f, lo, hi, root] of known) {
    test(`${what} to the last bits, from either end, in less than half of the steps of halving`, () => {
      const { asked, count } = counted(f)
      expect(Math.abs(findRoot(asked, lo, hi) - root)).toBeLessThan(2e-15 * Math.max(1, root))
      expect(count()).toBeLessThan(26)
      expect(Math.abs(findRoot(f, hi, lo) - root)).toBeLessThan(2e-15 * Math.max(1, root))
    })
    test(`${what}, falling instead of rising`, () => {
      expect(Math.abs(findRoot((x) => -f(x), lo, hi) - root)).toBeLessThan(2e-15 * Math.max(1, root))
    })
  }

  test('a straight line is met in one step', () => {
    const { asked, count } = counted((x) => 3 - 2 * x)
    expect(rootBetween(asked, 0, 10, 3, -17)).toBeCloseTo(1.5, 14)
    expect(count()).toBeLessThanOrEqual(2)
  })

  test('a step and a flat curve are halved down to, and it comes to an end', () => {
    const { asked, count } = counted((x) => (x < 0.3 ? -1 : 1))
    expect(findRoot(asked, 0, 1)).toBeCloseTo(0.3, 14)
    expect(count()).toBeLessThan(122)
    const flat = counted((x) => (x - 0.3) ** 15)
    expect(findRoot(flat.asked, 0, 1)).toBeCloseTo(0.3, 1)
    expect(flat.count()).toBeLessThan(122)
  })

  test('of the two sides of a step the one with the smaller residual', () => {
    const step = (at: number, below: number, above: number) => (x: number) => (x > at ? above : below)
    for (const [below, above, best] of [
      [-2, 1, 1],
      [-1, 2, -1],
      [2, -1, -1],
      [1, -2, 1],
    ] as const) {
      expect(step(0.3, below, above)(findRoot(step(0.3, below, above), 0, 1))).toBe(best)
      // At nothing no share of x is small enough: it ends after the 120 steps that the last bit of 1 takes.
      const { asked, count } = counted(step(0, below, above))
      const x = findRoot(asked, -1, 2)
      expect(step(0, below, above)(x)).toBe(best)
      expect(Math.abs(x)).toBeLessThan(1e-30)
      expect(count()).toBeLessThanOrEqual(122)
    }
  })

  test('an end that is the root is returned, without another look', () => {
    const { asked, count } = counted((x) => x)
    expect(rootBetween(asked, 0, 1, 0, 1)).toBe(0)
    expect(rootBetween(asked, -1, 0, -1, 0)).toBe(0)
    expect(rootBetween(asked, 2, 5, 1e-3, 5, 1e-3)).toBe(2)
    expect(rootBetween(asked, 5, 2, 5, -1e-3, 1e-3)).toBe(2)
    expect(count()).toBe(0)
  })

  test('ends of the same sign, or that are no number, have no root', () => {
    expect(rootBetween((x) => x, 1, 2, 1, 2)).toBeNaN()
    expect(rootBetween((x) => x, -2, -1, -2, -1)).toBeNaN()
    expect(rootBetween((x) => x, -1, 1, Number.NaN, 1)).toBeNaN()
    expect(rootBetween((x) => x, -1, 1, -1, Number.NaN)).toBeNaN()
  })

  test('a residual that is enough ends it sooner', () => {
    const rough = counted((x) => Math.cos(x) - x)
    const x = findRoot(rough.asked, 0, 1, 1e-3)
    expect(Math.abs(Math.cos(x) - x)).toBeLessThanOrEqual(1e-3)
    const fine = counted((x) => Math.cos(x) - x)
    findRoot(fine.asked, 0, 1)
    expect(rough.count()).toBeLessThan(fine.count())
  })

  test('any cubic with one root in the bracket', () => {
    const place = fc.double({ min: 0.01, max: 50, noNaN: true })
    fc.assert(
      fc.property(place, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (root, steep) => {
        const { asked, count } = counted((x) => steep * ((x - root) ** 3 + (x - root)))
        expect(Math.abs(findRoot(asked, -1, 60) / root - 1)).toBeLessThan(2e-15)
        expect(count()).toBeLessThan(26)
      }),
      { seed: 7 },
    )
  })
})

describe('fixed point of a falling function', () => {
  test('of the cosine it is Dottie’s number, of 1/(1 + x) the golden section', () => {
    expect(Math.abs(fallingFixedPoint(Math.cos) - 0.7390851332151607)).toBeLessThan(2e-15)
    expect(Math.abs(fallingFixedPoint((x) => 1 / (1 + x)) - (Math.sqrt(5) - 1) / 2)).toBeLessThan(2e-15)
  })
  test('of a constant it is the constant, found at once', () => {
    const { asked, count } = counted(() => 4)
    expect(fallingFixedPoint(asked)).toBe(4)
    expect(count()).toBe(2)
  })
  test('of one that falls below nothing it lies above nothing: x = 2 - 3x at 0.5', () => {
    expect(fallingFixedPoint((x) => 2 - 3 * x)).toBeCloseTo(0.5, 14)
  })
  // s2 + 3s - 2 = 0 with s the root of x: s = (sqrt 17 - 3)/2 = 0.56155, x = 0.31534. No root of less than nothing is asked for.
  test('of one that is not there below nothing it is found above: x = 2 - 3 sqrt x', () => {
    expect(fallingFixedPoint((x) => 2 - 3 * Math.sqrt(x))).toBeCloseTo(((Math.sqrt(17) - 3) / 2) ** 2, 14)
  })
  test('of one that gives nothing at nothing it is nothing', () => {
    expect(fallingFixedPoint(() => 0)).toBe(0)
    expect(fallingFixedPoint((x) => -1 - x)).toBe(0)
  })
})
