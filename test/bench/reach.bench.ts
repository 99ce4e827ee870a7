/**
 * The search on a list of the size that a big shop has, and against looking at every combination on a list small enough for
 * that, in the same run. Prints counts, times and ratios; asserts nothing about time, only that both find the same.
 */
import { expect, test } from 'vitest'
import { type Assessed, questionOf } from '../../src/reach/assess.ts'
import { Best } from '../../src/reach/best.ts'
import { search } from '../../src/reach/branch.ts'
import { combinations } from '../../src/reach/candidate.ts'
import { placesFor } from '../../src/reach/places.ts'
import { reach } from '../../src/reach.ts'
import { begin } from '../../src/start.ts'
import { assessAll } from '../reach/brute-force.ts'
import { type ListOn, loadedWith, type Sizes, SLOW, TWO_TRACKS } from './big-list.ts'

const BIG: Sizes = { pumps: 40, motors: 40, hoses: 12, coolers: 12, swivels: 8, sprockets: 6, oils: 5 }
const SMALL: Sizes = { pumps: 4, motors: 1, hoses: 1, coolers: 1, swivels: 1, sprockets: 1, oils: 0 }

/** Wall clock and this process's own share of a core, in seconds: other work on the machine counts only in the first. */
const timed = <T>(call: () => T): { readonly value: T; readonly wall: number; readonly core: number } => {
  const [began, used] = [performance.now(), process.cpuUsage()]
  const value = call()
  const { user, system } = process.cpuUsage(used)
  return { value, wall: (performance.now() - began) / 1000, core: (user + system) / 1e6 }
}

const questionFor = (sizes: Sizes, speed: string) => {
  const loaded = loadedWith(sizes, speed)
  const { start } = begin(loaded)
  const { wants } = loaded.scenario
  return questionOf(loaded, start, wants, placesFor(start.before.machine, wants, loaded))
}

const searched = (sizes: Sizes, speed: string) => {
  const question = questionFor(sizes, speed)
  return timed(() => {
    const best = new Best(question, null, 'goal')
    return { best, question, result: search(question, best) }
  })
}

/** Lists that nobody looked at while the bounds were made: on each machine some that are scattered, from easy to out of reach. */
const SEEDS = [11, 12, 13, 14]
const SPEEDS = ['2.5 km/h', '3.5 km/h', '4.5 km/h', '5.5 km/h', '6.5 km/h', '9 km/h']

const onOtherLists = (machines: readonly ListOn[]) =>
  machines.flatMap((on) =>
    SEEDS.flatMap((seed) =>
      SPEEDS.map((speed) => {
        const loaded = loadedWith(BIG, speed, on, seed)
        const { value, core } = timed(() => reach(loaded, { budget: null }))
        return { core, isExact: value.isExact && value.nearestIsExact, isReached: value.cheapest !== null }
      }),
    ),
  )

const median = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0

const priceOf = (found: Assessed | null): number | null => found?.price ?? null

test('bench', () => {
  searched(SMALL, '2.2 km/h')
  const rows: { [what: string]: number | boolean | null } = {}
  // Easy ones, some that are just reached or just missed, and one that nothing reaches.
  for (const speed of [
    '2.2 km/h',
    '2.6 km/h',
    '2.8 km/h',
    '3 km/h',
    '3.2 km/h',
    '4.5 km/h',
    '5.8 km/h',
    '6 km/h',
    '8 km/h',
  ]) {
    const { value, wall, core } = searched(BIG, speed)
    const { best, question, result } = value
    rows[`${speed}: combinations`] = combinations(question.places)
    rows[`${speed}: evaluated`] = result.counts.evaluated
    rows[`${speed}: cut by price`] = result.counts.cutByPrice
    rows[`${speed}: cut by reach`] = result.counts.cutByReach
    rows[`${speed}: cut by limit`] = result.counts.cutByLimit
    rows[`${speed}: exact`] = result.isExact
    rows[`${speed}: cheapest`] = priceOf(best.cheapest)
    rows[`${speed}: wall clock, s`] = wall
    rows[`${speed}: one core, s`] = core
    // What a customer waits for: where nothing reaches it, the nearest and the curve are searched for as well.
    const whole = timed(() => reach(loadedWith(BIG, speed), { budget: null }))
    rows[`${speed}: all that reach tells, exact`] = whole.value.isExact
    rows[`${speed}: all that reach tells, one core, s`] = whole.core
  }
  for (const [name, machines] of [
    ['other lists, one pump', [SLOW]],
    ['other lists, two tracks', TWO_TRACKS],
  ] as const) {
    const all = onOtherLists(machines)
    const times = all.map(({ core }) => core)
    rows[`${name}: searches`] = all.length
    rows[`${name}: reached`] = all.filter(({ isReached }) => isReached).length
    rows[`${name}: given up`] = all.filter(({ isExact }) => !isExact).length
    rows[`${name}: median, one core, s`] = median(times)
    rows[`${name}: slowest, one core, s`] = Math.max(...times)
  }
  const ours = searched(SMALL, '2.2 km/h')
  const { question, best } = ours.value
  const brute = timed(() => {
    const all = new Best(question, null, 'goal')
    for (const one of assessAll(question)) all.offer(one)
    return all
  })
  expect(priceOf(best.cheapest)).toBe(priceOf(brute.value.cheapest))
  expect(best.ofStep.map(priceOf)).toEqual(brute.value.ofStep.map(priceOf))
  rows['small list: combinations'] = combinations(question.places)
  rows['small list: evaluated'] = ours.value.result.counts.evaluated
  rows['small list: every combination, one core, s'] = brute.core
  rows['small list: searched, one core, s'] = ours.core
  rows['small list: ratio of time'] = brute.core / ours.core
  rows['small list: ratio of evaluations'] = combinations(question.places) / ours.value.result.counts.evaluated
  for (const [what, value] of Object.entries(rows))
    console.log(`${what.padEnd(48)} ${typeof value === 'number' ? value.toPrecision(4) : value}`)
  console.log(JSON.stringify(rows))
})
