/** Hours of the invented shop's list, by hand: hose 0.5 / 0.75 / 1 h, motor 1.5 / 2 / 3 h, test 1.5 / 2 / 3 h, at 100 an hour. */
import { describe, expect, it } from 'vitest'
import { labourOf } from '../../src/costing/labour.ts'
import type { Part } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'
import { job, use } from './pricing.ts'

const hours = (of: ReturnType<typeof labourOf>) =>
  of.lines.map((line) => [line.job, line.hoursLow, line.hoursLikely, line.hoursHigh])

const TEST = ['test and record', 1.5, 2, 3]
const route = (likely: number) => [{ job: 'route along the boom', hours: { low: 1, likely, high: 3 } }]
const withParts = (...parts: readonly Part[]) => shopWith(parts)

describe('hours', () => {
  // 300.00 / 425.00 / 600.00 in all.
  it('of a job go with how often it is done, low, likely and high', () => {
    const labour = labourOf([job('replace hose', 3)], [], shopWith([]))
    expect(hours(labour)).toEqual([['replace hose', 1.5, 2.25, 3], TEST])
    expect([labour.low, labour.likely, labour.high]).toEqual([30_000, 42_500, 60_000])
  })

  it('that a hose or an oil brings count once, however many metres or litres; of a cooler each', () => {
    const shop = withParts(
      part('h', 'hose', {}, 1, { labour: route(2) }),
      part('o', 'oil', {}, 1, { labour: route(2) }),
      part('c', 'cooler', {}, 1, { labour: route(2) }),
    )
    expect(hours(labourOf([], [use('h', 2.5, 'hose')], shop))).toEqual([['route along the boom', 1, 2, 3], TEST])
    expect(hours(labourOf([], [use('o', 13, 'oil')], shop))).toEqual([['route along the boom', 1, 2, 3], TEST])
    expect(hours(labourOf([], [use('c', 2, 'cooler')], shop))).toEqual([['route along the boom', 2, 4, 6], TEST])
  })

  it('of one job that several parts bring are one line', () => {
    const shop = withParts(
      part('c', 'cooler', {}, 1, { labour: route(2) }),
      part('f', 'filter', {}, 1, { labour: route(1.1) }),
    )
    const labour = labourOf([], [use('c', 1, 'cooler'), use('f', 1, 'filter')], shop)
    expect(hours(labour)).toEqual([['route along the boom', 2, 3.1, 6], TEST])
    // (3.1 + 2) h x 100.
    expect(labour.likely).toBe(51_000)
  })

  it('that a part brings for a job of the list join it', () => {
    const own = [{ job: 'replace motor', hours: { low: 0.5, likely: 0.5, high: 1 } }]
    const labour = labourOf(
      [job('replace motor')],
      [use('m', 1, 'motor')],
      withParts(part('m', 'motor', {}, 1, { labour: own })),
    )
    expect(hours(labour)).toEqual([['replace motor', 2, 2.5, 4], TEST])
  })
})

it('the test comes last, after what parts bring', () => {
  const shop = withParts(part('c', 'cooler', {}, 1, { labour: route(2) }))
  const labour = labourOf([job('test and record'), job('replace motor')], [use('c', 1, 'cooler')], shop)
  expect(labour.lines.map((line) => line.job)).toEqual(['replace motor', 'route along the boom', 'test and record'])
})
