/** The range that is told holds the estimate that is told beside it. */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import type { Evaluation, Range } from '../../src/evaluation.ts'
import { percentilesAround } from '../../src/ranges/ranges.ts'
import { loadQuestions } from '../../src/shell/load.ts'

/** Hyndman and Fan (1996), definition 7, on 1..10: p10 = 1.9, p50 = 5.5, p90 = 9.1 (by hand: 1 + 9 x share). */
const TEN = Array.from({ length: 10 }, (_, i) => 10 - i)

const around = (values: readonly (number | null)[], estimate: number | null) => {
  const { p10, p50, p90 } = percentilesAround(values, estimate)
  return [p10, p50, p90].map((value) => (value === null ? null : Number(value.toFixed(12))))
}

describe('percentiles around an estimate', () => {
  test('stay what they are where they hold it, or where there is none', () => {
    expect(around(TEN, 4)).toEqual([1.9, 5.5, 9.1])
    expect(around(TEN, null)).toEqual([1.9, 5.5, 9.1])
  })

  test('the nearer end moves out to it, and nothing else', () => {
    expect(around(TEN, 1)).toEqual([1, 5.5, 9.1])
    expect(around(TEN, 9.4)).toEqual([1.9, 5.5, 9.4])
    expect(around(TEN, 12)).toEqual([1.9, 5.5, 12])
  })

  test('oil that does not settle is hotter than any that does', () => {
    const unsettled = TEN.map(() => null)
    expect(around(TEN, Number.POSITIVE_INFINITY)).toEqual([1.9, 5.5, null])
    expect(around(unsettled, 149)).toEqual([149, null, null])
    expect(around(unsettled, Number.POSITIVE_INFINITY)).toEqual([null, null, null])
  })

  test('no samples, no range', () => expect(around([], 5)).toEqual([null, null, null]))
})

/**
 * A tank that was read pins the oil: its samples lay between 61.053 and 61.056 °C beside an estimate of 61.004 °C, because
 * they are calibrated with a coarser table of heat.
 */
test('of a machine whose tank was read, and of what is proposed for it', () => {
  const folder = join(import.meta.dirname, '../../scenarios')
  const unit = loadQuestions('rental-yard.yaml', folder).find(({ unit }) => unit === 'Unit D')
  if (unit === undefined || 'problems' in unit.read) throw new Error('Unit D is not read')
  const { baseline, baselineRange, options } = evaluate(unit.read.loaded)
  const told: readonly (readonly [Evaluation, Range | null])[] = [
    [baseline, baselineRange],
    ...options.map(({ evaluation, range }) => [evaluation, range] as const),
  ]
  for (const [{ travel, heat }, range] of told) {
    const { speedKmh, steadyOilC } = range ?? {}
    expect(speedKmh?.p10).toBeLessThanOrEqual(travel.level.speedKmh)
    expect(speedKmh?.p90).toBeGreaterThanOrEqual(travel.level.speedKmh)
    expect(steadyOilC?.p10).toBeLessThanOrEqual(heat.steadyOilC ?? 0)
    expect(steadyOilC?.p90).toBeGreaterThanOrEqual(heat.steadyOilC ?? 0)
  }
})
