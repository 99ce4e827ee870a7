/** Money as whole cents: each line is rounded once, sums of cents are exact. */

/** Whole hundredths of the shop's currency. */
export type Cents = number & { readonly unit?: 'cents' }

/** Noise of floating-point arithmetic is cut here before halves are rounded: 1.005 is a half cent, not a little less. */
const NOISE_DECIMALS = 6

/**
 * Rounds an amount to whole cents, halves away from zero (common commercial rounding).
 * @param amount in the shop's currency
 */
export const cents = (amount: number): Cents => {
  const scaled = Number((Math.abs(amount) * 100).toFixed(NOISE_DECIMALS))
  const rounded = Math.round(scaled)
  return amount < 0 && rounded !== 0 ? -rounded : rounded
}

/** Exact sum. */
export const total = (amounts: readonly Cents[]): Cents => amounts.reduce((sum, amount) => sum + amount, 0)

/** Amount in the shop's currency, with at most two decimals. */
export const money = (amount: Cents): number => amount / 100
