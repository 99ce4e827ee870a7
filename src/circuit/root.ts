/**
 * Roots by bracket. Every unknown of the circuit is found between two ends where the sign differs, never from a guess,
 * so no result depends on where a search started.
 */

/** A fixed point is found when it repeats itself to this share. */
const FIXED = 1e-15

/** Enough for a bracket to shrink to the last bit by halving alone. */
const MOST_STEPS = 120

/**
 * Root of f between lo and hi by Chandrupatla's method (inverse quadratic steps where they are trustworthy, else halving).
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149 (from memory).
 * @param f continuous function
 * @param lo, hi ends of the bracket, any order
 * @param flo, fhi f at the ends
 * @param enough residual at which it is settled; 0 goes to the last bit
 * @returns x with f(x) = 0 to about 1e-15 of x or a residual of `enough`; NaN where both ends have the same sign
 */
export const rootBetween = (
  f: (x: number) => number,
  lo: number,
  hi: number,
  flo: number,
  fhi: number,
  enough = 0,
): number => {
  if (Math.abs(flo) <= enough) return lo
  if (Math.abs(fhi) <= enough) return hi
  if (flo > 0 === fhi > 0 || Number.isNaN(flo) || Number.isNaN(fhi)) return Number.NaN
  let a = hi
  let b = lo
  let c = hi
  let fa = fhi
  let fb = flo
  let fc = fhi
  // The curves of the circuit are nearly straight inside their brackets: the first step is the straight line's.
  let t = fa / (fa - fb)
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
    if (limit > 0.5 || Math.abs(fbest) <= enough || Math.abs(b - a) <= tolerance) return best
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
export const findRoot = (f: (x: number) => number, lo: number, hi: number, enough = 0): number =>
  rootBetween(f, lo, hi, f(lo), f(hi), enough)

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
  const enough = FIXED * top
  return rootBetween((x) => g(x) - x, low, top, g(low) - low, bottom - top, enough)
}
