import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { atLeastStated, choose, type Requirement } from '../../src/consequences/choose.ts'
import { reliefs } from '../../src/consequences/stock.ts'
import { type HoseFigures, hoses } from '../../src/consequences/stock-lines.ts'
import { hoseList, part, shopWith } from './list.ts'

const flow = (lpm: number) => lpm / 60_000
const relief = (id: string, lpm: number | null, price: number | null, leadDays: number | null = 5) =>
  part(id, 'relief', lpm === null ? {} : { 'rated-flow': `${lpm} L/min` }, price, { leadDays })

const pick = (parts: readonly ReturnType<typeof relief>[], lpm: number) => {
  const shop = shopWith(parts)
  const met = ({ ratedFlow }: { readonly ratedFlow: number | null }) => atLeastStated(ratedFlow, flow(lpm))
  return choose(reliefs(shop), [{ what: 'rated flow', met }], ({ ratedFlow }) => ratedFlow, shop)
}

describe('choose', () => {
  it('takes the smallest that meets every requirement, though a bigger one is cheaper', () => {
    expect(pick([relief('a-80', 80, 50), relief('b-60', 60, 90), relief('c-25', 25, 10)], 44).chosen?.part.id).toBe(
      'b-60',
    )
  })

  it('takes a part whose rating stands on the requirement', () => {
    expect(pick([relief('r-44', 44, 50)], 44).chosen?.part.id).toBe('r-44')
  })

  it('of one size takes the cheaper, then the sooner, then the first id', () => {
    expect(pick([relief('a', 60, 90), relief('b', 60, 80)], 44).chosen?.part.id).toBe('b')
    expect(pick([relief('a', 60, 80, 9), relief('b', 60, 80, 2)], 44).chosen?.part.id).toBe('b')
    expect(pick([relief('b', 60, 80), relief('a', 60, 80)], 44).chosen?.part.id).toBe('a')
  })

  it('takes what suits the place before the smallest, never before a requirement', () => {
    const shop = shopWith([relief('a-40', 40, 1), relief('b-60', 60, 9), relief('b-25', 25, 1)])
    const met = ({ ratedFlow }: { readonly ratedFlow: number | null }) => atLeastStated(ratedFlow, flow(30))
    const suits = ({ ratedFlow }: { readonly ratedFlow: number | null }) => (ratedFlow === flow(40) ? 0 : 1)
    const chosen = choose(
      reliefs(shop),
      [{ what: 'rated flow', met }],
      ({ ratedFlow }) => ratedFlow,
      shop,
      suits,
    ).chosen
    expect(chosen?.part.id).toBe('b-60')
  })

  it('takes an unpriced part only where no priced one of its size fits', () => {
    expect(pick([relief('a', 60, null), relief('b', 60, 500)], 44).chosen?.part.id).toBe('b')
    expect(pick([relief('a', 60, null)], 44).chosen?.part.id).toBe('a')
  })

  it('does not take a part that does not state what is asked', () => {
    expect(pick([relief('a', null, 10)], 44)).toEqual({ chosen: null, failed: 'rated flow' })
  })

  it('names the requirement at which the last candidate fell out', () => {
    const shop = shopWith(hoseList)
    const requirements: readonly Requirement<HoseFigures>[] = [
      { what: 'a suction hose', met: ({ kind }) => kind === 'suction hose' },
      { what: '50 bar', met: ({ maxPressure }) => (maxPressure ?? 0) >= 50e5 },
    ]
    expect(choose(hoses(shop), requirements, ({ bore }) => bore, shop)).toEqual({ chosen: null, failed: '50 bar' })
    expect(choose([], requirements, () => 0, shop).failed).toBe('none on the parts list')
  })

  it('does not depend on the order of the list', () => {
    const list = fc.array(
      fc.record({
        lpm: fc.constantFrom(25, 40, 60),
        price: fc.constantFrom(null, 10, 20),
        leadDays: fc.constantFrom(null, 1, 9),
      }),
      { minLength: 1, maxLength: 12 },
    )
    const shuffled = list
      .map((rows) => rows.map(({ lpm, price, leadDays }, i) => relief(`r${i}`, lpm, price, leadDays)))
      .chain((parts) => fc.tuple(fc.constant(parts), fc.shuffledSubarray(parts, { minLength: parts.length })))
    fc.assert(
      fc.property(shuffled, ([one, other]) => {
        expect(pick(one, 30)).toEqual(pick(other, 30))
      }),
    )
  })
})
