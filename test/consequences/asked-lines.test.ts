import { describe, expect, it } from 'vitest'
import { lineUses } from '../../src/consequences/asked-lines.ts'
import type { Machine } from '../../src/machine.ts'
import type { Part, PartKind, Shop } from '../../src/shop.ts'
import { connection, wren } from '../fixtures/wren.ts'
import { withCircuit, withPump } from './asking.ts'
import { adapterPart, endPart, hosePart, shopWith } from './list.ts'

const PRESSURE = 'circuits.main.lines.pressure'

/** Wren's pressure line (0.9 m) made new, of another size. */
const pressureOf = (dash: number, bore: number): Machine => {
  const [main] = wren().circuits
  const line = main?.lines.pressure
  if (main === undefined || line === null || line === undefined) throw new Error('no pressure line')
  return withCircuit(wren(), {
    lines: { ...main.lines, pressure: { ...line, part: `hose-2-wire-hose-${dash}`, dash, bore } },
  })
}

const shop = (parts: readonly Part[], ...orders: readonly PartKind[]): Shop =>
  shopWith(parts, {
    specialOrder: orders.map((kind) => ({ kind, allow: { low: 10, likely: 20, high: 40 }, leadDays: 12 })),
  })

const told = (after: Machine, of: Shop, isChanged: boolean) => {
  const pairs = isChanged ? [{ component: PRESSURE, inNewCircuit: false }] : []
  const { uses, consequences } = lineUses({ before: wren(), after, shop: of, option: 'As asked' }, pairs)
  const [consequence] = consequences
  return { uses: uses.map(({ kind, part, quantity }) => [kind, part, quantity]), consequences, consequence }
}

// Ports of the pressure line: pump outlet G 1/2, valve inlet G 1/2. 0.9 m of hose is cut as it is.
describe('a hose that the option makes new', () => {
  const made = [hosePart(10, '2-wire hose', 250, 16), endPart(10, 'G 1/2', 8)]

  it('is no consequence of its own where its ends go in', () => {
    const { uses, consequences } = told(pressureOf(10, 0.0159), shop(made), true)
    expect(uses).toEqual([
      ['hose', 'hose-2-wire-hose-10', 0.9],
      ['fitting', 'end-10-G12', 1],
      ['fitting', 'end-10-G12', 1],
    ])
    expect(consequences).toEqual([])
  })

  const noEnd = [hosePart(10, '2-wire hose', 250, 16), endPart(10, 'G 1', 9)]

  it('is not to be had where no end, no adapter and no order joins it: two ends are lacking', () => {
    const { consequence } = told(pressureOf(10, 0.0159), shop(noEnd), true)
    expect(consequence).toMatchObject({
      component: PRESSURE,
      kind: 'fitting',
      action: 'adapt',
      part: null,
      quantity: 2,
    })
    expect([consequence?.available, consequence?.specialOrder]).toEqual([false, false])
    expect(consequence?.chain).toContain('not on the list: Hose end -10, G 1/2')
  })

  it('nor where the shop orders something else', () => {
    const { consequence } = told(pressureOf(10, 0.0159), shop(noEnd, 'swivel', 'hose'), true)
    expect([consequence?.available, consequence?.specialOrder]).toEqual([false, false])
  })

  it('is a special order where the shop orders hose ends', () => {
    const { consequence, uses } = told(pressureOf(10, 0.0159), shop(noEnd, 'fitting'), true)
    expect([consequence?.available, consequence?.specialOrder]).toEqual([false, true])
    expect(uses.filter(([, part]) => part === null)).toEqual([
      ['fitting', null, 1],
      ['fitting', null, 1],
    ])
  })

  it('or adapters: an end of its size that the list has, and an adapter to order for each port', () => {
    const { consequence, uses } = told(pressureOf(10, 0.0159), shop(noEnd, 'adapter'), true)
    expect(consequence).toMatchObject({ kind: 'adapter', quantity: 2, available: false, specialOrder: true })
    expect(uses).toEqual([
      ['hose', 'hose-2-wire-hose-10', 0.9],
      ['fitting', 'end-10-G1', 1],
      ['fitting', 'end-10-G1', 1],
      ['adapter', null, 1],
      ['adapter', null, 1],
    ])
  })

  // 1/2 is -8: 8/16 = 0.5, below the least of 0.6 for a port under its hose. The end of the size goes in all the same.
  it('on ports more than one size below it says so, though it can be made', () => {
    const parts = [hosePart(16, '2-wire hose', 250, 30), endPart(16, 'G 1/2', 15)]
    const { consequence } = told(pressureOf(16, 0.0254), shop(parts), true)
    expect(consequence).toMatchObject({ kind: 'hose', action: 'adapt', part: 'hose-2-wire-hose-16', quantity: 1 })
    expect(consequence?.available).toBe(true)
    expect(consequence?.chain.filter((link) => link.includes('more than one size below'))).toHaveLength(2)
  })

  // 8/12 = 0.67: one size below, as is usual.
  it('says nothing of ports one size below', () => {
    const parts = [hosePart(12, '2-wire hose', 215, 20), endPart(12, 'G 1/2', 12)]
    expect(told(pressureOf(12, 0.019), shop(parts), true).consequences).toEqual([])
  })

  // The valve takes the end, the pump does not: one adapter, though the hose has two joints.
  it('counts the adapters, not the joints', () => {
    const ports = { inlet: connection('G 3/4'), outlet: connection('G 3/4') }
    const after = { ...withPump(pressureOf(10, 0.0159), { ports }) }
    const { consequence } = told(after, shop([...made, adapterPart('G 1/2', 'G 3/4', '12 mm', 7)]), true)
    expect(consequence).toMatchObject({ kind: 'adapter', quantity: 1, part: 'ad-G12-G34', available: true })
    expect(consequence?.connections).toHaveLength(2)
  })
})

// The pump's outlet becomes G 3/4; the -8 hose with its G 1/2 ends stays.
describe('a hose that stays on a port that changed', () => {
  const after = withPump(wren(), { ports: { inlet: connection('G 3/4'), outlet: connection('G 3/4') } })

  it('is not to be had where nothing joins it', () => {
    const { consequence } = told(after, shop([hosePart(8, '2-wire hose', 275, 12), endPart(8, 'G 1/2', 6)]), false)
    expect(consequence).toMatchObject({ kind: 'hose', action: 'replace', available: false, specialOrder: false })
  })

  it('nor where the list has the ends and no hose to put them on', () => {
    const { consequence } = told(after, shop([endPart(8, 'G 1/2', 6), endPart(8, 'G 3/4', 7)]), false)
    expect(consequence).toMatchObject({ kind: 'hose', part: null, available: false, specialOrder: false })
  })

  it('takes an adapter to order where the shop orders those', () => {
    const { consequence, uses } = told(after, shop([endPart(8, 'G 1/2', 6)], 'adapter'), false)
    expect(uses).toEqual([['adapter', null, 1]])
    expect(consequence).toMatchObject({ kind: 'adapter', action: 'adapt', available: false, specialOrder: true })
  })
})
