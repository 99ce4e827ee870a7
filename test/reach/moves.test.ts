/** What moves the answer most: hand calculations on the demo machines. */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { reach } from '../../src/reach.ts'
import type { Moves, Search } from '../../src/search.ts'
import { load } from '../../src/shell/load.ts'

const ROOT = join(import.meta.dirname, '../..')
const found = (file: string): Search => {
  const read = load(join('scenarios', file), ROOT)
  if ('problems' in read) throw new Error(JSON.stringify(read.problems))
  return reach(read.loaded, { budget: null })
}

const files = ['twice-as-fast.yaml', 'two-speed-travel.yaml', 'too-hot-to-touch.yaml', 'broom-for-the-loader.yaml']
const searches = new Map(files.map((file) => [file, found(file)]))
const of = (file: string): Search => searches.get(file) as Search
const byPath = (search: Search, path: string) => search.moves.find((one) => one.path === path) as Moves
const swing = ({ reachedLow, reachedHigh }: Moves): number => Math.abs((reachedHigh ?? 0) - (reachedLow ?? 0))

test('a run that took less time was faster by as much: speed is way over time', () => {
  const search = of('twice-as-fast.yaml')
  const { reachedLow, reachedHigh } = byPath(search, 'measured.travel.time')
  const reached = search.cheapest?.reached ?? 0
  // Timed to 1.5 %: the calibrated factor goes with 1 / time.
  expect((reachedLow ?? 0) / reached).toBeCloseTo(1 / (1 - 0.015), 4)
  expect((reachedHigh ?? 0) / reached).toBeCloseTo(1 / (1 + 0.015), 4)
})

test('ground that rolls heavier slows the machine', () => {
  const { reachedLow, reachedHigh, tolerance } = byPath(of('twice-as-fast.yaml'), 'site.ground.rolling-resistance')
  expect(reachedHigh ?? 0).toBeLessThan(reachedLow ?? 0)
  expect(tolerance).toBe('± 25 %')
})

describe.each(files)('%s', (file) => {
  const { moves, goal, cheapest } = of(file)
  test('three at most, the one that moves it most first, and none that nobody could tell', () => {
    expect(moves.length).toBeGreaterThan(0)
    expect(moves.length).toBeLessThanOrEqual(3)
    const swings = moves.map(swing)
    expect(swings).toEqual(swings.toSorted((a, b) => b - a))
    // 0.05 % of what is reached.
    for (const one of swings) expect(one).toBeGreaterThan(5e-4 * (cheapest?.reached ?? 0))
  })
  test('it holds where both ends give what is wanted', () => {
    const wanted = goal.travelSpeedKmh ?? goal.attachment?.flowLpm ?? null
    for (const { reachedLow, reachedHigh, holds } of moves) {
      const ends = [reachedLow ?? 0, reachedHigh ?? 0]
      const both =
        wanted === null ? Math.max(...ends) <= (goal.oilBelowC ?? 0) : Math.min(...ends) >= wanted * (1 - 1e-9)
      expect(holds).toBe(both)
    }
  })
  test('each in words', () => {
    for (const { label, path } of moves) expect(label === path && path !== 'site.ground.rolling-resistance').toBe(false)
  })
})
