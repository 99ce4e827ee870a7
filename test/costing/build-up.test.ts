/** Mark-up is on the cost, margin is of the price; worked out by hand. */
import { describe, expect, test } from 'vitest'
import type { PartUse } from '../../src/consequences/uses.ts'
import { buildUpOf } from '../../src/costing/build-up.ts'
import { quote } from '../../src/costing/quote.ts'
import type { Shop } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'

const oil = { grade: 'ISO VG 46', viscosityAt40: 46e-6, viscosityAt100: 6.8e-6 }
const use = (id: string | null, quantity: number, what = id ?? 'something'): PartUse => ({
  component: 'filter',
  kind: 'filter',
  part: id,
  what,
  quantity,
})
const built = (shop: Shop, ...uses: readonly PartUse[]) =>
  buildUpOf('Way', quote({ uses, jobs: [], shop, reservoirLitres: 13, oil }), shop)

describe('a part with cost and price', () => {
  // Two of 100 each sold at 150: cost 200, price 300, left 100; margin 100/300, mark-up 100/200.
  const shop = shopWith([part('filter-a', 'filter', {}, 150, { cost: 100 })])
  test('profit, margin and mark-up', () => {
    const { lines, known, open } = built(shop, use('filter-a', 2))
    expect(lines[0]).toMatchObject({ unitCost: 100, cost: 200, unitPrice: 150, price: 300, profit: 100, markUp: 0.5 })
    expect(lines[0]?.margin).toBeCloseTo(1 / 3, 12)
    expect(known).toMatchObject({ cost: 200, price: 300, profit: 100, markUp: 0.5 })
    expect(open).toEqual([])
  })
})

test('a mark-up of 38 % is a margin of 27.5 %', () => {
  // 100 × 1.38 = 138; 38/138 = 0.275...
  const shop = shopWith([part('filter-a', 'filter', {}, null, { cost: 100 })], { markUp: 0.38 })
  const [line] = built(shop, use('filter-a', 1)).lines
  expect(line?.price).toBe(138)
  expect(line?.markUp).toBeCloseTo(0.38, 12)
  expect(line?.margin).toBeCloseTo(0.27536, 5)
})

describe('a kit', () => {
  const parts = [
    part('filter-a', 'filter', {}, 150, { cost: 80 }),
    part('breather-a', 'breather', {}, 40, { cost: 15 }),
    part('kit-a', 'kit', {}, 160, {
      holds: [
        { part: 'filter-a', quantity: 1 },
        { part: 'breather-a', quantity: 2 },
      ],
    }),
  ]
  const uses = [use('filter-a', 1), { ...use('breather-a', 2), component: 'breather', kind: 'breather' as const }]
  test('without a cost of its own costs what it holds: 80 + 2 × 15 = 110', () =>
    expect(built(shopWith(parts), ...uses).lines).toMatchObject([
      { part: 'kit-a', unitCost: 110, price: 160, profit: 50, margin: 50 / 160 },
    ]))
  test('with a part whose cost nobody knows has none', () => {
    const unknown = parts.map((one) => (one.id === 'breather-a' ? { ...one, cost: null } : one))
    expect(built(shopWith(unknown), ...uses).lines).toMatchObject([{ part: 'kit-a', unitCost: null, profit: null }])
  })
})

test('what has no cost or no price is named and stays out of the sum', () => {
  const shop = shopWith([part('filter-a', 'filter', {}, 150, { cost: 100 }), part('filter-b', 'filter', {}, 70)])
  const { known, open } = built(shop, use('filter-a', 1), use('filter-b', 1), use(null, 1, 'Quick couplers'))
  expect(known).toMatchObject({ cost: 100, price: 150, profit: 50 })
  expect(open).toEqual(['filter-b', 'Quick couplers'])
})

test('sold under cost: a loss, as a loss', () => {
  const shop = shopWith([part('filter-a', 'filter', {}, 80, { cost: 100 })])
  expect(built(shop, use('filter-a', 1)).known).toMatchObject({ profit: -20, margin: -0.25, markUp: -0.2 })
})

test('given away, or got for nothing: no margin of no price, no mark-up on no cost', () => {
  const shop = shopWith([
    part('filter-a', 'filter', {}, 0, { cost: 100 }),
    part('filter-b', 'filter', {}, 70, { cost: 0 }),
  ])
  const { lines } = built(shop, use('filter-a', 1), use('filter-b', 1))
  expect(lines.map(({ profit, margin, markUp }) => [profit, margin, markUp])).toEqual([
    [-100, null, -1],
    [70, 1, null],
  ])
  const { known } = built(shopWith([part('filter-c', 'filter', {}, 70)]), use('filter-c', 1))
  expect(known).toEqual({ price: 0, cost: 0, profit: 0, margin: null, markUp: null })
})

test('half known earns nothing that could be named', () => {
  // A cost without a rule for the price; a price without a cost; a part and a piece of a kit that are not on the list.
  const shop = shopWith(
    [
      part('filter-a', 'filter', {}, null, { cost: 100 }),
      part('filter-b', 'filter', {}, 70),
      part('kit-a', 'kit', {}, 160, { holds: [{ part: 'gone', quantity: 1 }] }),
    ],
    { markUp: null },
  )
  const { lines, open } = built(shop, use('filter-a', 1), use('filter-b', 1), use('lost', 1), use('gone', 1))
  expect(lines.map((line) => [line.part, line.cost, line.price, line.profit, line.margin, line.markUp])).toEqual([
    ['filter-a', 100, null, null, null, null],
    ['filter-b', null, 70, null, null, null],
    [null, null, null, null, null, null],
    ['kit-a', null, 160, null, null, null],
  ])
  expect(open).toEqual(['filter-a', 'filter-b', 'lost', 'kit-a'])
})
