/**
 * Roots by bracket. Every unknown of the circuit is found between two ends where the sign differs, never from a guess,
 * so no result depends on where a search started.
 */

/** Enough for a bracket to shrink to the last bit by halving alone. */
const MOST_STEPS = 120

/**
 * Root of f between lo and hi by Chandrupatla's method (inverse quadratic steps where they are trustworthy, else halving).
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (from memory).
 * @param f continuous function
 * @param lo, hi ends of the bracket, any order
 * @param flo, fhi f at the ends
 * @returns x with f(x) = 0 to about 1e-14 of the bracket; NaN where both ends have the same sign (did not settle)
 */
export const rootBetween = (f: (x: number) => number, lo: number, hi: number, flo: number, fhi: number): number => {
  if (flo === 0) return lo
  if (fhi === 0) return hi
  if (flo > 0 === fhi > 0 || Number.isNaN(flo) || Number.isNaN(fhi)) return Number.NaN
  let a = hi
  let b = lo
  let c = hi
  let fa = fhi
  let fb = flo
  let fc = fhi
  let t = 0.5
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + t * (b - a)
    const fx = f(x)
    if (fx > 0 === fa > 0) {
      c = a
      fc = fa
    } else {
      c = b
      b = a
      fc = fb
      fb = fa
    }
    a = x
    fa = fx
    const best = Math.abs(fa) < Math.abs(fb) ? a : b
    const fbest = Math.abs(fa) < Math.abs(fb) ? fa : fb
    const tolerance = 4 * Number.EPSILON * Math.abs(best) + Number.MIN_VALUE
    const limit = tolerance / Math.abs(b - c || Number.MIN_VALUE)
    if (limit > 0.5 || fbest === 0 || Math.abs(b - a) <= tolerance) return best
    const xi = (a - b) / (c - b)
    const phi = (fa - fb) / (fc - fb)
    if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)
      t = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
    else t = 0.5
    t = Math.min(1 - limit, Math.max(limit, t))
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b
}

/** As rootBetween, working out the ends itself. */
export const findRoot = (f: (x: number) => number, lo: number, hi: number): number =>
  rootBetween(f, lo, hi, f(lo), f(hi))

/**
 * Fixed point of a falling function g on [0, top]: x = g(x). Because g falls, the answer lies between g(top) and top,
 * and top = g(0) always serves; the bracket is so tight that few steps are needed.
 * @returns the fixed point; 0 where g(0) is 0 or less
 */
export const fallingFixedPoint = (g: (x: number) => number): number => {
  const top = g(0)
  if (top <= 0) return 0
  const bottom = g(top)
  if (bottom >= top) return top
  const low = Math.max(0, bottom)
  return rootBetween((x) => g(x) - x, low, top, g(low) - low, bottom - top)
}
