import { describe, expect, it } from 'vitest'
import { adaptersBetween, fits, joinEnd, portTooSmall } from '../../src/consequences/connect.ts'
import { connectionOf } from '../../src/consequences/read-figures.ts'
import type { Connection } from '../../src/machine.ts'
import type { PartKind } from '../../src/shop.ts'
import { adapterPart, endPart, shopWith } from './list.ts'

const at = (text: string): Connection => {
  const connection = connectionOf(text)
  if (connection === null) throw new Error(text)
  return connection
}
const bar = 1e5

describe('fits', () => {
  // Notes to the standards tables: these pairs share a thread or a pitch and do not seal together.
  it.each([
    ['24° 15L', '24° 14S'],
    ['24° 12L', '24° 10S'],
    ['24° 22L', '24° 20S'],
    ['ORB -6', 'JIC -6'],
    ['ORB -8', 'JIC -8'],
    ['NPT 1/2', 'G 1/2'],
    ['NPT 3/4', 'G 3/4'],
    ['BSPT 1/2', 'G 1/2'],
    ['flange 3/4 code 61', 'flange 3/4 code 62'],
    ['M22x1.5', '24° 15L'],
    ['M18x1.5', '24° 12L'],
    ['M18x1.5', '24° 10S'],
  ])('%s is not %s, though the thread goes in', (one, other) => {
    expect(fits(at(one), at(other))).toBe(false)
    expect(fits(at(one), at(one))).toBe(true)
  })
})

describe('adapters', () => {
  it('join either way round, the cheapest first', () => {
    const shop = shopWith([
      adapterPart('G 1/2', '24° 12L', '10 mm', 8.1),
      { ...adapterPart('24° 12L', 'G 1/2', '10 mm', 7), id: 'other-way' },
    ])
    expect(adaptersBetween(at('24° 12L'), at('G 1/2'), 0.0127, null, shop).map(({ id }) => id)).toEqual([
      'other-way',
      'ad-G12-2412L',
    ])
  })

  it('do not join what only shares a thread', () => {
    const shop = shopWith([adapterPart('G 1/2', '24° 14S', '10 mm', 8)])
    expect(adaptersBetween(at('24° 15L'), at('G 1/2'), 0.0127, null, shop)).toEqual([])
  })

  it('are refused with a bore under 0.45 of the hose: 4 mm on a hose of 9.5 mm is 0.42, 4.5 mm is 0.47', () => {
    const narrow = shopWith([adapterPart('G 1/4', 'JIC -6', '4 mm', 5)])
    const enough = shopWith([adapterPart('G 1/4', 'JIC -6', '4.5 mm', 5)])
    expect(adaptersBetween(at('G 1/4'), at('JIC -6'), 0.0095, null, narrow)).toHaveLength(0)
    expect(adaptersBetween(at('G 1/4'), at('JIC -6'), 0.0095, null, enough)).toHaveLength(1)
  })

  it('are refused where a side is not rated for the pressure: JIC -12 bears 241 bar (SAE J514, from memory)', () => {
    const shop = shopWith([adapterPart('G 3/4', 'JIC -12', '15.5 mm', 9)])
    expect(adaptersBetween(at('G 3/4'), at('JIC -12'), 0.019, 240 * bar, shop)).toHaveLength(1)
    expect(adaptersBetween(at('G 3/4'), at('JIC -12'), 0.019, 242 * bar, shop)).toHaveLength(0)
  })
})

describe('joinEnd', () => {
  it('takes an end that fits before an adapter', () => {
    const shop = shopWith([
      endPart(8, 'G 1/2', 60),
      endPart(8, 'JIC -8', 1),
      adapterPart('JIC -8', 'G 1/2', '9.9 mm', 1),
    ])
    const joint = joinEnd(8, 0.0127, [at('G 1/2')], null, shop)
    expect([joint.end?.id, joint.adapter, joint.made]).toEqual(['end-8-G12', null, true])
  })

  it('else the end and adapter that cost least together', () => {
    const shop = shopWith([
      endPart(8, 'JIC -8', 6),
      adapterPart('JIC -8', 'G 1/2', '9.9 mm', 6.4),
      endPart(8, 'ORB -8', 1),
      adapterPart('ORB -8', 'G 1/2', '10 mm', 20),
    ])
    const joint = joinEnd(8, 0.0127, [at('G 1/2')], null, shop)
    expect([joint.end?.id, joint.adapter?.id, joint.connection?.text]).toEqual([
      'end-8-JIC-8',
      'ad-JIC-8-G12',
      'JIC -8',
    ])
  })

  it('never stacks two adapters, and says that the joint cannot be made', () => {
    const shop = shopWith([
      endPart(8, 'JIC -8', 6),
      adapterPart('JIC -8', 'ORB -8', '9.9 mm', 5),
      adapterPart('ORB -8', 'G 1/2', '10 mm', 5),
    ])
    expect(joinEnd(8, 0.0127, [at('G 1/2')], null, shop)).toEqual({
      end: null,
      connection: null,
      adapter: null,
      orders: false,
      made: false,
    })
  })

  it('takes an adapter to order for the cheapest end, where the shop orders adapters and no ends', () => {
    const parts = [endPart(8, 'JIC -8', 6), endPart(8, 'ORB -8', 4)]
    const order = (...kinds: readonly PartKind[]) =>
      shopWith(parts, {
        specialOrder: kinds.map((kind) => ({ kind, allow: { low: 5, likely: 8, high: 12 }, leadDays: 9 })),
      })
    const joint = joinEnd(8, 0.0127, [at('G 1/2')], null, order('adapter'))
    expect([joint.end?.id, joint.adapter, joint.orders, joint.made]).toEqual(['end-8-ORB-8', null, true, false])
    // Where it orders ends, the one for this port is ordered.
    expect(joinEnd(8, 0.0127, [at('G 1/2')], null, order('adapter', 'fitting')).orders).toBe(false)
  })

  it('does not take the end of another size', () => {
    expect(joinEnd(10, 0.0159, [at('G 1/2')], null, shopWith([endPart(8, 'G 1/2', 6)])).made).toBe(false)
  })
})

describe('portTooSmall', () => {
  // One step of 1/4, 3/8, 1/2, 3/4, 1, 1-1/4 passes; two do not.
  it.each([
    ['G 1/4', 6, false],
    ['G 1/4', 8, true],
    ['G 3/8', 8, false],
    ['G 3/8', 12, true],
    ['G 1/2', 12, false],
    ['G 1/2', 16, true],
    ['24° 8L', 6, false],
    ['24° 8L', 8, true],
    ['ORB -12', 20, false],
    ['ORB -12', 24, true],
    ['G 1', 12, false],
  ])('%s under a -%i hose: %s', (port, dash, small) => {
    expect(portTooSmall(at(port), dash)).toBe(small)
  })
})
