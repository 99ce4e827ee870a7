/** What moves the answer most: hand calculations on the demo machines. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { reach } from '../../src/reach.ts'
import { moveText } from '../../src/report/search-texts.ts'
import { readAll } from '../../src/scenario/read.ts'
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

test('of a machine that nobody has read, more than three move it: the three that move it most are told', () => {
  const text = (file: string) => ({ file, text: readFileSync(join(ROOT, 'scenarios', file), 'utf8') })
  const scenario = text('too-hot-to-touch.yaml')
  const unread = { ...scenario, text: scenario.text.replace(/^measured:\n(?: .*\n)+/mu, '') }
  const files = readdirSync(join(ROOT, 'scenarios/shop')).filter((name) => name.endsWith('.yaml'))
  const shop = files.map((name) => text(`shop/${name}`))
  const whole = readAll(unread, text('machines/alder-10.yaml'), shop, 'shop')
  if ('problems' in whole) throw new Error(JSON.stringify(whole.problems))
  const { moves } = reach(whole.loaded, { budget: null })
  expect(moves).toHaveLength(3)
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
    for (const one of moves) expect(moveText(one)).not.toContain(one.path)
  })
})
