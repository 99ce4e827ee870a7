/**
 * Latin hypercube: every uncertain figure is drawn once from each of n equal slices of its tolerance, in an order of its
 * own, so that few draws cover all of them evenly. Fixed seed: the same input gives the same draws.
 * Source: McKay, Beckman, Conover, Technometrics 21 (1979) 239-245 (from memory).
 */

/** Seed of every range that the tool prints. */
const SEED = 0x5eed1e55

/** FNV-1a, 32 bit: a figure's path decides its order of slices, so that adding a figure leaves the others' draws alone. */
const hashOf = (text: string): number => {
  let hash = 0x811c9dc5
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193)
  return hash >>> 0
}

/** Mulberry32 generator: numbers in [0, 1). */
const generator = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Draws of n samples for any number of figures, each known by its path. */
export class Hypercube {
  readonly #samples: number
  readonly #columns = new Map<string, Float64Array>()

  constructor(samples: number) {
    this.#samples = samples
  }

  #column(path: string): Float64Array {
    const known = this.#columns.get(path)
    if (known !== undefined) return known
    const next = generator(SEED ^ hashOf(path))
    const column = Float64Array.from({ length: this.#samples }, (_, slice) => (slice + next()) / this.#samples)
    for (let i = column.length - 1; i > 0; i--) {
      const j = Math.floor(next() * (i + 1))
      const kept = column[i] as number
      column[i] = column[j] as number
      column[j] = kept
    }
    this.#columns.set(path, column)
    return column
  }

  /**
   * Value of a figure in one sample, evenly spread over its tolerance (assumption: ± means bounds, not a deviation).
   * @param tolerance half width, in the figure's own unit; 0 gives the nominal value
   */
  draw(sample: number, path: string, nominal: number, tolerance: number): number {
    if (tolerance === 0) return nominal
    const place = this.#column(path)[sample] as number
    return nominal + (2 * place - 1) * tolerance
  }
}

/** Percentile by linear interpolation between order statistics. */
export const percentile = (sorted: readonly number[], share: number): number | null => {
  if (sorted.length === 0) return null
  const place = share * (sorted.length - 1)
  const below = Math.floor(place)
  const [low, high] = [sorted[below] as number, sorted[Math.min(sorted.length - 1, below + 1)] as number]
  // Two samples that are infinite have no difference.
  return place === below || low === high ? low : low + (place - below) * (high - low)
}
