/** Filter ratings and cleanliness codes. */
import type { Share } from '../units/si.ts'

/**
 * Filtration ratio of a multi-pass test.
 * beta = N_up/N_down
 * @param upstream [1/mL] particles of the size and larger before the filter
 * @param downstream [1/mL] the same behind it, above 0
 * @returns [-] filtration ratio
 * Valid: steady test conditions.
 * Source: ISO 16889.
 */
export const filtrationRatio = (upstream: number, downstream: number): number => upstream / downstream

/**
 * Share of the particles of a size that a filter holds back in one pass.
 * E = 1 - 1/beta
 * @param beta [-] filtration ratio at that size, 1 and more
 * @returns [1] share held back
 * Valid: as the multi-pass test; a bypass that opens lets all through.
 * Source: ISO 16889.
 */
export const filtrationEfficiency = (beta: number): Share => 1 - 1 / beta

/** Upper limits [1/mL], inclusive, of the scale numbers 1 to 28. */
const SCALE_LIMITS: readonly number[] = [
  0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.3, 2.5, 5, 10, 20, 40, 80, 160, 320, 640, 1300, 2500, 5000, 10_000, 20_000,
  40_000, 80_000, 160_000, 320_000, 640_000, 1_300_000, 2_500_000,
]

/**
 * Scale number of a particle count.
 * R = smallest number whose upper limit >= N; limits double from one to the next
 * @param count [1/mL] particles of the size and larger N
 * @returns [-] scale number, null above 2 500 000 per mL
 * Valid: counts of 0 and more; 0.01 and less is number 0.
 * Source: ISO 4406, table of scale numbers.
 */
export const scaleNumber = (count: number): number | null => {
  if (count <= 0.01) return 0
  const at = SCALE_LIMITS.findIndex((limit) => count <= limit)
  return at < 0 ? null : at + 1
}
