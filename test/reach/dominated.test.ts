/** Hoses that another hose stands for, by hand: the reasons stand in src/reach/dominated.ts. */
import { describe, expect, test } from 'vitest'
import type { LinePlace } from '../../src/consequences/line-places.ts'
import { dominatedIn } from '../../src/reach/dominated.ts'
import type { Place } from '../../src/reach/places.ts'
import type { Part, Shop } from '../../src/shop.ts'

const hose = (id: string, dash: number, bar: number, price: number | null): Part =>
  ({
    id,
    kind: 'hose',
    name: id,
    figures: { hose: -dash, kind: '2-wire hose', 'max-pressure': `${bar} bar` },
    price,
    cost: null,
    holds: [],
  }) as unknown as Part

const dominated = (parts: readonly Part[], bar: number | null, kits: readonly Part[] = []) => {
  const shop = { parts: [...parts, ...kits] } as unknown as Shop
  const place = {
    kind: 'hose',
    lines: [{ workingPressure: bar === null ? null : bar * 1e5 } as LinePlace],
    options: parts.map((part) => ({ part, patch: {}, newCircuit: null })),
  } as unknown as Place
  return [...dominatedIn(place, shop)].map((i) => parts[i]?.id)
}

describe('of two hoses of one size', () => {
  test('the dearer goes', () => expect(dominated([hose('a', 6, 275, 9), hose('b', 6, 400, 14)], 160)).toEqual(['b']))
  test('at one price the one that sorts later goes', () =>
    expect(dominated([hose('a', 6, 275, 9), hose('b', 6, 400, 9)], 160)).toEqual(['b']))
  test('both stay where the cheaper does not bear the line', () =>
    expect(dominated([hose('a', 6, 120, 9), hose('b', 6, 400, 14)], 160)).toEqual([]))
  test('where nothing must be borne, the cheaper does', () =>
    expect(dominated([hose('a', 6, 30, 9), hose('b', 6, 400, 14)], null)).toEqual(['b']))
  test('another size stands for nothing', () =>
    expect(dominated([hose('a', 8, 275, 9), hose('b', 6, 275, 14)], 160)).toEqual([]))
  test('nor does one without a price, or one of a kit', () => {
    expect(dominated([hose('a', 6, 275, null), hose('b', 6, 400, 14)], 160)).toEqual([])
    const kit = { id: 'kit', kind: 'kit', name: 'Kit', figures: {}, holds: [{ part: 'a', quantity: 1 }] }
    expect(dominated([hose('a', 6, 275, 9), hose('b', 6, 400, 14)], 160, [kit as unknown as Part])).toEqual([])
  })
})
