/** Which kits are sold, by hand: cooler 372, hose 11.60 a metre, filter 60. */
import { describe, expect, it } from 'vitest'
import { withKits } from '../../src/costing/kits.ts'
import type { Part } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'

type Holds = readonly (readonly [string, number])[]

const kit = (id: string, price: number | null, holds: Holds, over: Partial<Part> = {}): Part =>
  part(id, 'kit', {}, price, { holds: holds.map(([held, quantity]) => ({ part: held, quantity })), ...over })

const single = [part('cooler', 'cooler', {}, 372), part('hose', 'hose', {}, 11.6), part('filter', 'filter', {}, 60)]

const sold = (kits: readonly Part[], basket: Holds) => [...withKits(new Map(basket), shopWith([...single, ...kits]))]

describe('of several kits', () => {
  // 372 and 60 by themselves: the one saves 20, the other 2, and comes first by its id.
  const a = kit('single', 352, [['cooler', 1]])
  const b = kit('both', 430, [
    ['cooler', 1],
    ['filter', 1],
  ])
  const all: Holds = [
    ['cooler', 1],
    ['filter', 1],
  ]
  it('the one that saves most is sold, in whatever order they are listed', () => {
    const expected = [
      ['filter', 1],
      ['single', 1],
    ]
    expect(sold([a, b], all)).toEqual(expected)
    expect(sold([b, a], all)).toEqual(expected)
  })
  it('that save the same the first by id', () => {
    const same = [kit('same-b', 350, [['cooler', 1]]), kit('same-a', 350, [['cooler', 1]])]
    expect(sold(same, [['cooler', 1]])).toEqual([['same-a', 1]])
    expect(sold(same.toReversed(), [['cooler', 1]])).toEqual([['same-a', 1]])
  })
  it('as many as the parts suffice for', () => {
    expect(sold([a], [['cooler', 3]])).toEqual([['single', 3]])
    expect(sold([kit('pair', 700, [['cooler', 2]])], [['cooler', 3]])).toEqual([
      ['cooler', 1],
      ['pair', 1],
    ])
  })
  // 0.3 = 3 x 0.1 in the trade, though not in binary arithmetic.
  it('by tenths of a metre as well', () => {
    expect(sold([kit('short', 1, [['hose', 0.1]])], [['hose', 0.3]])).toEqual([['short', 3]])
  })
})

describe('a kit', () => {
  it('without a price is not sold, nor one that costs what its parts cost', () => {
    const basket: Holds = [['cooler', 1]]
    expect(sold([kit('k', null, [['cooler', 1]])], basket)).toEqual(basket)
    expect(sold([kit('k', 372, [['cooler', 1]])], basket)).toEqual(basket)
  })
  it('that holds nothing is not sold', () => {
    expect(sold([kit('k', -1, [])], [['cooler', 1]])).toEqual([['cooler', 1]])
  })
  it('that gives a price to a part without one is sold before all others', () => {
    const unpriced = part('odd', 'cooler', {}, null)
    const basket: Holds = [
      ['odd', 1],
      ['cooler', 1],
    ]
    const both = kit('both', 900, basket)
    const cheap = kit('cheap', 1, [['cooler', 1]])
    expect(sold([unpriced, cheap, both], basket)).toEqual([['both', 1]])
  })
  it('that holds a part that the list has not is priced by nothing else either', () => {
    expect(sold([kit('k', 900, [['gone', 1]])], [['gone', 1]])).toEqual([['k', 1]])
  })
  it('only a kit takes the place of others', () => {
    const pump = { ...kit('p', 1, [['cooler', 1]]), kind: 'pump' as const }
    expect(sold([pump], [['cooler', 1]])).toEqual([['cooler', 1]])
  })
  it('that names one part twice holds it twice', () => {
    const twice = kit('k', 20, [
      ['hose', 1],
      ['hose', 1],
    ])
    expect(sold([twice], [['hose', 1]])).toEqual([['hose', 1]])
    expect(sold([twice], [['hose', 2]])).toEqual([['k', 1]])
  })
  // 5 m hold 12,500 pieces of 0.4 mm; taking them off one by one never came to an end.
  it('of less than the least length that is booked comes to an end', () => {
    expect(sold([kit('crumb', 0.001, [['hose', 0.0004]])], [['hose', 5]])).toEqual([['crumb', 12_500]])
  })
})
