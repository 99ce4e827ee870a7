import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quote } from '../../src/costing/quote.ts'
import type { Part, Shop } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'
import { wren } from '../fixtures/wren.ts'
import { job, priced, use } from './pricing.ts'

describe('a quote by hand', () => {
  // Pump at cost 182 with 35 % mark-up 245.70; hose 1.4 m x 12.40 = 17.36; oil 2.3 L, 3 L x 4.80 = 14.40: parts 277.46.
  // Labour at 100: pump 2 / 3 / 5 h, hose 0.5 / 0.75 / 1 h, test 1.5 / 2 / 3 h: 400.00 / 575.00 / 900.00.
  // Supplies 5 %: 20.00 / 28.75 / 40.00 (the cap). Freight 45.00. Contingency 10 % of 500.00: 50.00.
  // Low  277.46 + 400.00 + 20.00 + 45 + 50 = 792.46, tax 79.25 (79.246): 871.71.
  // Likely 277.46 + 575.00 + 28.75 + 45 + 50 = 976.21, tax 97.62 (97.621): 1073.83.
  // High 277.46 + 900.00 + 40.00 + 45 + 50 = 1312.46, tax 131.25 (131.246): 1443.71.
  const parts = [part('pump', 'pump', {}, null, { cost: 182 }), part('hose', 'hose', {}, 12.4)]
  const byHand = () =>
    priced(parts, [use('pump'), use('hose', 1.4, 'hose')], [job('replace pump'), job('replace hose')])

  it('agrees to the cent', () => {
    const cost = byHand()
    expect(cost.lines.map(({ part: id, quantity, amount }) => [id, quantity, amount])).toEqual([
      ['pump', 1, 245.7],
      ['hose', 1.4, 17.36],
      ['oil-46', 3, 14.4],
    ])
    const { parts: inAll, labourTotal, supplies, freight, contingency, tax, low, likely, high, unpriced } = cost
    expect({ inAll, labourTotal, supplies, freight, contingency, tax, low, likely, high, unpriced }).toEqual({
      inAll: 277.46,
      labourTotal: 575,
      supplies: 28.75,
      freight: 45,
      contingency: 50,
      tax: 97.62,
      low: 871.71,
      likely: 1073.83,
      high: 1443.71,
      unpriced: [],
    })
  })

  it('keeps what a part cost for the shop', () => {
    expect(byHand().lines.map(({ unitCost }) => unitCost)).toEqual([182, null, null])
  })
})

describe('prices', () => {
  const unit = (over: Partial<Shop>, own: Partial<Part>) =>
    priced([part('p', 'pump', {}, null, own)], [use('p')], [], over).lines[0]?.unitPrice

  // 100 at 40 % margin is 166.67, at 40 % mark-up 140: margin and mark-up are not the same.
  it('cost with mark-up, or over one less the margin', () => {
    expect(unit({ markUp: 0.4, marginStated: null }, { cost: 100 })).toBeCloseTo(140, 9)
    expect(unit({ markUp: null, marginStated: 0.4 }, { cost: 100 })).toBeCloseTo(166.6667, 4)
  })

  it('its own price wins', () => {
    expect(unit({}, { cost: 100, price: 99 })).toBe(99)
  })

  it('is rounded once a line: 2 x 246.375 is 492.75, not 2 x 246.38', () => {
    const cost = priced([part('p', 'pump', {}, null, { cost: 182.5 })], [use('p', 2)])
    expect(cost.lines[0]?.amount).toBe(492.75)
  })

  it('neither price nor cost, or a cost without a rule: named, and adds nothing', () => {
    const cost = priced([part('p', 'pump', {}, null), part('q', 'pump', {}, 10)], [use('p'), use('q')])
    expect([cost.unpriced, cost.parts]).toEqual([['p'], 10])
    expect(priced([part('p', 'pump', {}, null, { cost: 5 })], [use('p')], [], { markUp: null }).unpriced).toEqual(['p'])
  })

  it('a job that the shop has no hours for is named', () => {
    const cost = priced([], [], [job('replace swivel')])
    expect(cost.unpriced).toEqual(['labour: replace swivel'])
    expect(cost.labour.map((line) => line.job)).toEqual(['test and record'])
  })
})

describe('core deposits', () => {
  // 60.00 a piece: two pumps 120.00. The total is that of the same quote without a deposit.
  const own = { coreDeposit: 60 }
  it('stand beside the total, a line that comes back', () => {
    const cost = priced([part('p', 'pump', {}, 200, own)], [use('p', 2)])
    expect(cost.deposits).toEqual([{ what: 'p', part: 'p', quantity: 2, amount: 120 }])
    expect(cost.likely).toBe(priced([part('p', 'pump', {}, 200)], [use('p', 2)]).likely)
  })

  it('of what a kit holds are asked with the kit', () => {
    const kit = part('kit', 'kit', {}, 150, { holds: [{ part: 'p', quantity: 1 }] })
    const cost = priced([part('p', 'pump', {}, 200, own), kit], [use('p')])
    expect(cost.lines.map(({ part: id }) => id)).toEqual(['kit'])
    expect(cost.deposits.map(({ part: id, amount }) => [id, amount])).toEqual([['p', 60]])
  })

  // A kit of two such pumps, sold twice: 4 x 60.00.
  it('of all that all kits hold', () => {
    const kit = part('kit', 'kit', {}, 300, { holds: [{ part: 'p', quantity: 2 }] })
    const cost = priced([part('p', 'pump', {}, 200, own), kit], [use('p', 4)])
    expect(cost.deposits).toEqual([{ what: 'p', part: 'p', quantity: 4, amount: 240 }])
  })

  it('none of what is not on the list', () => {
    expect(priced([part('p', 'pump', {}, 200, own)], [use(null), use('p')]).deposits).toHaveLength(1)
  })

  it('none where none is asked', () => expect(priced([part('p', 'pump', {}, 200)], [use('p')]).deposits).toEqual([]))
})

describe('special orders', () => {
  const specialOrder = [{ kind: 'swivel' as const, allow: { low: 600, likely: 850, high: 1400 }, leadDays: 40 }]
  // 850.00 and freight 45.00, test 1.5 / 2 / 3 h; contingency 10 % of (800.00 + 150.00) = 95.00.
  it('count with their allowance, and its spread with the contingency', () => {
    const cost = priced([], [use(null, 1, 'swivel', 'Swivel to order')], [], { specialOrder })
    expect(cost.lines[0]).toMatchObject({
      what: 'Swivel to order',
      part: null,
      unitPrice: 850,
      amount: 850,
      leadDays: 40,
    })
    expect([cost.parts, cost.contingency, cost.unpriced]).toEqual([850, 95, []])
    // High: 1400 + 300 + 15 + 45 + 95 = 1855.00, tax 185.50.
    expect(cost.high).toBe(2040.5)
  })

  // Two swivels: 1200 / 1700 / 2800; contingency 10 % of (1600.00 + 150.00) = 175.00; freight 45.00; test 150 / 200 / 300,
  // supplies 7.50 / 10.00 / 15.00. Low 1577.50, likely 2130.00, high 3335.00; tax 10 %.
  it('count by the piece, in each of the three totals', () => {
    const cost = priced([], [use(null, 1, 'swivel', 'Swivel'), use(null, 1, 'swivel', 'Swivel')], [], { specialOrder })
    expect(cost.lines.map(({ what, quantity, amount }) => [what, quantity, amount])).toEqual([['Swivel', 2, 1700]])
    expect([cost.contingency, cost.low, cost.likely, cost.high]).toEqual([175, 1735.25, 2343, 3668.5])
  })

  it('of two names are two lines', () => {
    const cost = priced([], [use(null, 1, 'swivel', 'Swivel'), use(null, 1, 'swivel', 'Swivel seal')], [], {
      specialOrder,
    })
    expect(cost.lines.map(({ what }) => what)).toEqual(['Swivel', 'Swivel seal'])
  })

  it('of another kind price nothing', () => {
    expect(priced([], [use(null, 1, 'valve', 'Valve')], [], { specialOrder }).unpriced).toEqual(['Valve'])
  })
})

describe('kits', () => {
  const holds = [
    { part: 'cooler', quantity: 1 },
    { part: 'hose', quantity: 2 },
  ]
  const parts = (price: number) => [
    part('cooler', 'cooler', {}, 372),
    part('hose', 'hose', {}, 11.6),
    part('kit', 'kit', {}, price, { holds }),
  ]
  const lines = (price: number, metres: number) =>
    priced(parts(price), [use('cooler'), use('hose', metres, 'hose')]).lines.map(({ part: id, quantity }) => [
      id,
      quantity,
    ])

  // 372 + 2 x 11.60 = 395.20.
  it('take the place of the parts they hold where they cost less', () => {
    expect(lines(395.1, 2)).toEqual([['kit', 1]])
    expect(lines(395.3, 2)).toEqual([
      ['cooler', 1],
      ['hose', 2],
    ])
  })

  it('leave what they do not hold', () => {
    expect(lines(390, 3.2)).toEqual([
      ['hose', 1.2],
      ['kit', 1],
    ])
  })

  it('are not sold where one of their parts is not used', () => {
    expect(lines(1, 1.9)).toEqual([
      ['cooler', 1],
      ['hose', 1.9],
    ])
  })
})

describe('oil', () => {
  it('the reservoir is filled where it is drained, and disposal is charged once', () => {
    const cost = priced([], [], [job('change oil'), job('clean reservoir')], { disposal: 25 })
    expect(cost.lines.map(({ what, quantity, amount }) => [what, quantity, amount])).toEqual([
      ['oil-46', 13, 62.4],
      ['Disposal of used oil', 1, 25],
    ])
    expect(cost.labour.map((line) => line.job)).toEqual(['clean reservoir', 'test and record'])
  })

  it('the oil nearest to that of the machine goes in, never one of another grade', () => {
    const thin = part('oil-32', 'oil', { grade: 'ISO VG 32' }, 1)
    const high = part('oil-hv', 'oil', { 'viscosity-at-40C': '46 cSt', 'viscosity-at-100C': '8.2 cSt' }, 1)
    expect(priced([thin, high], [], [job('change oil')]).lines[0]?.part).toBe('oil-46')
    const cost = quote({
      uses: [],
      jobs: [job('change oil')],
      shop: shopWith([thin]),
      reservoirLitres: 13,
      oil: wren().oil,
    })
    expect(cost.unpriced).toEqual(['Hydraulic oil ISO VG 46, litre'])
  })
})

describe('supplies and disposal', () => {
  // Labour 1 h x 100 (change oil) + 2 h x 100 (test): 300.00; 5 % of it is 15.00; 40 % 120.00, the cap 40.00.
  const supplies = (shareOfLabour: number, atMost: number | null) =>
    priced([], [], [job('change oil')], { supplies: { shareOfLabour, atMost } }).supplies
  it('supplies are a share of labour up to the cap, without a cap all of it', () => {
    expect([supplies(0.05, 40), supplies(0.4, 40), supplies(0.4, null)]).toEqual([15, 40, 120])
  })

  it('no oil is let out, none is disposed of', () => {
    expect(priced([], [], [job('set relief')], { disposal: 25 }).lines).toEqual([])
  })
})

describe('always', () => {
  it('nothing costs nothing', () => {
    const cost = priced([], [])
    expect([cost.low, cost.likely, cost.high, cost.freight, cost.lines, cost.labour]).toEqual([0, 0, 0, 0, [], []])
  })

  it('a part brings its own job with each piece', () => {
    const labour = [{ job: 'weld a bracket', hours: { low: 1, likely: 2, high: 3 } }]
    const cost = priced([part('p', 'cooler', {}, 10, { labour })], [use('p', 2)])
    expect(cost.labour.find((line) => line.job === 'weld a bracket')?.hoursLikely).toBe(4)
  })

  it('totals are whole cents, their parts add up to them, and low <= likely <= high', () => {
    const rows = fc.array(
      fc.record({ price: fc.double({ min: 0, max: 5000, noNaN: true }), quantity: fc.integer({ min: 1, max: 40 }) }),
      {
        minLength: 1,
        maxLength: 8,
      },
    )
    fc.assert(
      fc.property(rows, fc.integer({ min: 0, max: 6 }), (list, hoses) => {
        const parts = list.map(({ price }, i) => part(`p${i}`, 'hose', {}, price))
        const uses = list.map(({ quantity }, i) => use(`p${i}`, quantity / 10, 'hose'))
        const cost = priced(parts, uses, hoses === 0 ? [] : [job('replace hose', hoses)])
        const whole = (amount: number) => Math.abs(amount * 100 - Math.round(amount * 100)) < 1e-6
        expect([cost.low, cost.likely, cost.high, cost.tax, cost.contingency].every(whole)).toBe(true)
        const sum = cost.parts + cost.labourTotal + cost.supplies + cost.freight + cost.contingency + cost.tax
        expect(cost.likely).toBeCloseTo(sum, 6)
        expect(cost.low).toBeLessThanOrEqual(cost.likely)
        expect(cost.likely).toBeLessThanOrEqual(cost.high)
      }),
    )
  })
})
