import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inTurn, remedies, settle } from '../../src/consequences/remedy.ts'
import type { Part, Shop, SpecialOrder } from '../../src/shop.ts'
import { connection, wren } from '../fixtures/wren.ts'
import { asking, finding, withCircuit, withPump } from './asking.ts'
import { adapterPart, endPart, hoseList, part, shopWith } from './list.ts'

const PRESSURE = 'circuits.main.lines.pressure'
const WORK = 'travel.lines.valve-to-swivel'
const bar = 1e5

const order = (kind: SpecialOrder['kind']): SpecialOrder => ({
  kind,
  allow: { low: 600, likely: 850, high: 1400 },
  leadDays: 40,
})

const only = (shop: Shop, ...findings: Parameters<typeof asking>[1]) => {
  const [first, ...rest] = remedies(asking(shop, findings))
  if (first === undefined) throw new Error('no remedy')
  return { first, rest }
}

describe('hoses', () => {
  // 12.7 mm at 8.1 m/s: 12.7 x sqrt(8.1/6.1) = 14.6 mm asks for -10 (15.9 mm).
  it('the smallest that brings the oil to its guide velocity, with the ends of its ports', () => {
    const { first } = only(shopWith(hoseList), finding('line-velocity', PRESSURE, 8.1, 6.1))
    expect(first.patch).toEqual({ circuits: { main: { lines: { pressure: { part: 'hose-2-wire-hose-10' } } } } })
    expect(first.uses.map(({ part: id, quantity }) => [id, quantity])).toEqual([
      ['hose-2-wire-hose-10', 0.9],
      ['end-10-G12', 1],
      ['end-10-G12', 1],
    ])
    expect(first.jobs).toEqual([{ component: PRESSURE, job: 'replace hose', quantity: 1 }])
    expect(first.consequence.because).toEqual([`line-velocity:${PRESSURE}`])
    expect(first.consequence.chain).toEqual([
      'Bigger pump',
      'line-velocity is over',
      expect.stringContaining('pressure line'),
    ])
  })

  // Relief 155 bar + 10 % = 170.5 bar: a hose for 130 bar of the right size is passed over.
  it('never one that is rated below the relief with its override', () => {
    const weak = part('weak-10', 'hose', { hose: -10, kind: '1-wire hose', 'max-pressure': '130 bar' }, 1)
    const { first } = only(shopWith([weak, ...hoseList]), finding('line-velocity', PRESSURE, 8.1, 6.1))
    expect(first.consequence.part).toBe('hose-2-wire-hose-10')
  })

  // 7.9 mm at 7.5 m/s: 7.9 x sqrt(7.5/6.1) = 8.76 mm asks for -6. Two motors, out and back: four hoses of 0.8 m.
  // The valve has 24° 8L and no -6 end is made for it: the end for G 1/4 with an adapter is; the swivel has G 1/4.
  it('work lines by four, an end that does not match with an adapter', () => {
    const { first } = only(shopWith(hoseList), finding('line-velocity', WORK, 7.5, 6.1))
    const uses = first.uses.map(({ part: id, quantity }) => [id, quantity])
    expect(uses).toEqual([
      ['hose-1-wire-hose-6', 3.2],
      ['end-6-G14', 4],
      ['end-6-G14', 4],
      ['ad-248L-G14', 4],
    ])
    expect(first.consequence.connections).toEqual([
      { from: 'G 1/4', to: '24° 8L', adapter: 'ad-248L-G14' },
      { from: 'G 1/4', to: 'G 1/4', adapter: null },
    ])
    expect(first.jobs[0]?.quantity).toBe(4)
    expect(first.patch).toEqual({
      travel: { lines: { 'valve-to-swivel': { part: 'hose-1-wire-hose-6', ends: ['G 1/4', 'G 1/4'] } } },
    })
  })

  const noAdapter = hoseList.filter(({ id }) => id !== 'ad-248L-G14')

  it('shows a connection that nobody can make, and stops there', () => {
    const { first } = only(shopWith(noAdapter), finding('line-velocity', WORK, 7.5, 6.1))
    expect(first.consequence.connections[0]?.to).toBe('24° 8L')
    expect(first.consequence).toMatchObject({ part: null, available: false, specialOrder: false })
    expect([first.stop, first.uses, first.jobs, first.patch]).toEqual([true, [], [], null])
  })

  it('orders the end where the shop takes such orders', () => {
    const { first } = only(
      shopWith(noAdapter, { specialOrder: [order('fitting')] }),
      finding('line-velocity', WORK, 7.5, 6.1),
    )
    expect(first.consequence.connections[0]).toEqual({ from: 'hose -6', to: '24° 8L', adapter: null })
    expect(first.consequence).toMatchObject({ available: false, specialOrder: true })
    expect(first.uses).toContainEqual(
      expect.objectContaining({ kind: 'fitting', part: null, what: 'Hose end -6, 24° 8L', quantity: 4 }),
    )
  })

  it('takes the next bigger hose that can be joined', () => {
    const parts = [...noAdapter, endPart(8, '24° 8L', 6), endPart(8, 'G 1/4', 6)]
    const { first } = only(shopWith(parts), finding('line-velocity', WORK, 7.5, 6.1))
    expect(first.consequence).toMatchObject({ part: 'hose-2-wire-hose-8', available: true })
  })

  // G 1/4 under -8 is two steps: 4/8 = 0.5 < 0.6. 6.4 mm at 18 m/s: 6.4 x sqrt(18/6.1) = 11 mm asks for -8.
  it('a port two sizes below brings the component that owns it, where the list has a bigger one', () => {
    const swivel = (id: string, port: string) =>
      part(
        id,
        'swivel',
        { bore: '10 mm', passages: 6, 'spare-passages': 1, 'max-pressure': '250 bar', ports: { work: port } },
        700,
      )
    const findings = [finding('line-velocity', 'travel.lines.swivel-to-motor', 18, 6.1)]
    const shop = shopWith([...hoseList, swivel('swivel-g14', 'G 1/4'), swivel('swivel-g12', 'G 1/2')])
    const found = remedies(asking(shop, findings))
    expect(found.map(({ consequence }) => consequence.part)).toContain('swivel-g12')
    const line = found.find(({ consequence }) => consequence.component === 'travel.lines.swivel-to-motor')
    expect(line?.consequence.connections.map(({ to }) => to)).toEqual(['G 1/2', 'G 1/2'])
    const without = remedies(asking(shopWith([...hoseList, swivel('swivel-g14', 'G 1/4')]), findings))
    expect(without.map(({ consequence }) => consequence.kind)).toEqual(['hose'])
  })

  it('a suction hose grows a size a pass where only the inlet asks', () => {
    const suction = 'circuits.main.lines.suction'
    const drops = {
      lines: [
        {
          id: suction,
          dropBar: 0.1,
          velocityMps: 1.3,
          limitMps: 1.2,
          reynolds: 900,
          boreMm: 19,
          flowLpm: 22,
          workingPressureBar: null,
        },
      ],
    }
    const found = remedies(
      asking(shopWith(hoseList), [finding('inlet-pressure', suction, 0.65, 0.7)], {
        figures: { ...asking(shopWith([]), []).figures, ...drops },
      }),
    )
    expect(found.map(({ consequence }) => consequence.part)).toEqual(['hose-suction-hose-16'])
    // The pump's G 3/4 takes the -16 hose by its G 1 end and an adapter.
    expect(found[0]?.consequence.connections[1]).toEqual({ from: 'G 1', to: 'G 3/4', adapter: 'ad-G34-G1' })
  })

  it('where the strainer takes more than the hose, the strainer', () => {
    const strainer = part('strainer-60', 'strainer', { 'rated-flow': '60 L/min', 'drop-at-rated-flow': '0.02 bar' }, 26)
    const base = asking(shopWith([...hoseList, strainer]), [
      finding('inlet-pressure', 'circuits.main.lines.suction', 0.65, 0.7),
    ])
    const found = remedies({
      ...base,
      figures: { ...base.figures, lines: [], drops: [{ id: 'strainer', flowLpm: 22, dropBar: 0.2 }] },
    })
    expect(found.map(({ consequence }) => consequence.component)).toEqual(['strainer'])
    expect(found[0]?.patch).toEqual({ strainer: { part: 'strainer-60' } })
  })
})

describe('components', () => {
  const relief = (lpm: number) => part(`relief-${lpm}`, 'relief', { 'rated-flow': `${lpm} L/min` }, lpm)
  const coupling = (nm: number, type = 'jaw') =>
    part(`${type}-${nm}`, 'coupling', { type, 'rated-torque': `${nm} N·m` }, nm)

  it('relief: passes the flow, the setting stays with the patch', () => {
    const { first } = only(
      shopWith([40, 60, 80].map(relief)),
      finding('relief-capacity', 'circuits.main.relief', 47, 40),
    )
    expect(first.patch).toEqual({ circuits: { main: { relief: { part: 'relief-60' } } } })
    expect(first.jobs[0]?.job).toBe('replace relief')
  })

  it('coupling: carries the torque with its factor, of the type that is there', () => {
    const shop = shopWith([coupling(60), coupling(95), coupling(95, 'gear')].reverse())
    const { first } = only(shop, finding('coupling-torque', 'circuits.main.coupling', 88, 40))
    expect(first.consequence.part).toBe('jaw-95')
  })

  const valve = (id: string, lpm: number, limit: number, inlet = 'G 1/2') =>
    part(
      id,
      'valve',
      {
        'rated-flow': `${lpm} L/min`,
        'max-pressure': `${limit} bar`,
        ports: { inlet, outlet: 'G 3/4', work: '24° 8L' },
      },
      lpm,
    )

  it('valve: flow and pressure; the hose on its new port gets an adapter', () => {
    const shop = shopWith([...hoseList, valve('v-60-weak', 60, 160), valve('v-70', 70, 250), valve('v-90', 90, 250)])
    const { first, rest } = only(shop, finding('valve-flow', 'circuits.main.valve', 45, 38))
    expect(first.consequence.part).toBe('v-70')
    // Outlet G 1/2 becomes G 3/4; the return hose ends in G 1/2.
    expect(rest.map(({ consequence }) => [consequence.component, consequence.action, consequence.part])).toEqual([
      ['circuits.main.lines.return', 'adapt', 'ad-G12-G34'],
    ])
    expect(rest[0]?.patch).toBeNull()
    expect(rest[0]?.consequence.chain.length).toBeGreaterThan(first.consequence.chain.length)
  })

  it('valve: one with the ports of the machine before a smaller one that asks for adapters all round', () => {
    const other = part(
      'v-50-orb',
      'valve',
      {
        'rated-flow': '50 L/min',
        'max-pressure': '250 bar',
        ports: { inlet: 'ORB -8', outlet: 'ORB -10', work: 'ORB -8' },
      },
      50,
    )
    const { first } = only(
      shopWith([...hoseList, other, valve('v-70', 70, 250)]),
      finding('valve-flow', 'circuits.main.valve', 45, 38),
    )
    expect(first.consequence.part).toBe('v-70')
    const alone = only(shopWith([...hoseList, other]), finding('valve-flow', 'circuits.main.valve', 45, 38))
    expect(alone.first.consequence.part).toBe('v-50-orb')
  })

  it('a hose that is made new in the same pass is made for the new port, without an adapter', () => {
    const shop = shopWith([...hoseList, endPart(12, 'G 3/4', 10), valve('v-70', 70, 250)])
    const found = remedies(
      asking(shop, [
        finding('valve-flow', 'circuits.main.valve', 45, 38),
        finding('line-velocity', 'circuits.main.lines.return', 3.1, 3),
      ]),
    )
    const line = found.find(({ consequence }) => consequence.component === 'circuits.main.lines.return')
    expect(line?.consequence.connections[0]).toEqual({ from: 'G 3/4', to: 'G 3/4', adapter: null })
  })

  const motor = (id: string, cm3: number, lpm: number, over: Partial<Part> = {}) =>
    part(
      id,
      'motor',
      {
        displacement: `${cm3} cm3/rev`,
        'max-pressure': '200 bar',
        'max-flow': `${lpm} L/min`,
        'max-speed': '300 rpm',
        'max-return-pressure': '70 bar',
        mount: { flange: '4-bolt 82.5 mm', shaft: '1 in keyed' },
        ports: { work: 'G 1/2' },
      },
      300,
      over,
    )

  it('motors: in pairs, of the same displacement within 3 %', () => {
    const shop = shopWith([motor('m-250', 250, 80), motor('m-240', 240, 80), motor('m-235-small', 235, 40)])
    const { first } = only(shop, finding('motor-flow', 'travel.motor', 60, 55))
    expect(first.consequence.part).toBe('m-240')
    expect([first.uses[0]?.quantity, first.jobs[0]?.quantity]).toEqual([2, 2])
  })

  const cooler = (id: string, wattsPerKelvin: number, price: number, fan = 7) =>
    part(
      id,
      'cooler',
      { capacity: `${wattsPerKelvin / 1000} kW/K`, 'at-flow': '22 L/min', 'fan-current': `${fan} A` },
      price,
    )

  // 1.2 kW into the oil, 16.8 W/K off the machine, 65 °C at 31 °C: 1200 - 16.8 x 34 = 629 W; / 34 = 18.5; x 1.5 = 27.7 W/K.
  it('cooler: sized for the target, with bypass, harness and two hoses of a metre', () => {
    const bypass = part('bypass', 'oil cooler bypass', {}, 72)
    const shop = shopWith([cooler('c-27', 27, 100), cooler('c-28', 28, 200), cooler('c-45', 45, 150), bypass])
    const { first, rest } = only(shop, finding('oil-temperature', 'cooler', 90, 82))
    expect(first.consequence.part).toBe('c-28')
    expect(first.uses).toContainEqual(expect.objectContaining({ kind: 'hose', quantity: 2 }))
    expect(rest.map(({ consequence }) => [consequence.kind, consequence.part])).toEqual([
      ['oil cooler bypass', 'bypass'],
      ['harness', null],
    ])
  })

  it('cooler: the next one is bigger where the oil is still hot with the first', () => {
    const shop = shopWith([cooler('c-28', 28, 200), cooler('c-30', 30, 210), cooler('c-45', 45, 300)])
    const own = {
      part: 'c-28',
      capacity: 28,
      atFlow: 22 / 60_000,
      drop: null,
      maxPressure: null,
      bypass: 4.5 * bar,
      airRise: 0,
      fanCurrent: 7,
    }
    const found = remedies(
      asking(shop, [finding('oil-temperature', 'cooler', 84, 82)], { machine: { ...wren(), cooler: own } }),
    )
    expect(found.map(({ consequence }) => consequence.part)).toEqual(['c-45'])
  })

  it('cooler: none helps where the air is no colder than the oil is to be', () => {
    const found = remedies(
      asking(shopWith([cooler('c', 500, 9)]), [finding('oil-temperature', 'cooler', 84, 82)], { targetOilC: 31 }),
    )
    expect(found[0]?.stop).toBe(true)
  })

  it('fan: lamps or an alternator, the cheaper that gives enough', () => {
    const lamps = part('led', 'lamp set', { current: '7 A' }, 74)
    const weak = part('led-one', 'lamp set', { current: '2 A' }, 20)
    const alternator = part('alternator', 'alternator', { current: '20 A' }, 250)
    // 12 A of fan against 9 A that are left: 3 A short.
    const machine = {
      ...wren(),
      cooler: {
        part: null,
        capacity: 45,
        atFlow: 1,
        drop: null,
        maxPressure: null,
        bypass: 1,
        airRise: 0,
        fanCurrent: 12,
      },
    }
    const ask = [finding('fan-current', 'alternator', 12, 9)]
    const chosen = (parts: readonly Part[]) => remedies(asking(shopWith(parts), ask, { machine }))[0]
    expect(chosen([weak, alternator, lamps])?.patch).toEqual({ 'lamp-set': { part: 'led' } })
    expect(chosen([weak, alternator])?.patch).toEqual({ alternator: { part: 'alternator' } })
  })

  it('pump mount: a plate from the list makes the flange match, else it ends there', () => {
    const mount = { flange: 'SAE B 2-bolt', shaft: '9T 16/32 DP', rotation: 'clockwise', length: null } as const
    const machine = withPump(wren(), { part: 'p', mount })
    const ask = [finding('pump-mount', 'circuits.main.pump.mount', 'SAE B 2-bolt', 'SAE A 2-bolt')]
    const plate = part('plate', 'adapter', { from: 'SAE A 2-bolt', to: 'SAE B 2-bolt' }, 120)
    const [joined] = remedies(asking(shopWith([plate]), ask, { machine }))
    expect(joined?.patch).toEqual({ circuits: { main: { pump: { mount: { flange: 'SAE A 2-bolt' } } } } })
    expect(joined?.uses.map(({ part: id }) => id)).toEqual(['plate'])
    const [none] = remedies(asking(shopWith([]), ask, { machine }))
    expect([none?.stop, none?.patch, none?.consequence.available]).toEqual([true, null, false])
  })
})

describe('nothing on the list', () => {
  const ask = [finding('swivel-velocity', 'travel.swivel', 12, 6.1)]

  // 6 mm at 12 m/s: 6 x sqrt(12/6.1) = 8.42 mm, written up to the next tenth.
  it('special order: the needed bore goes into the machine, and the old drop figure out', () => {
    const [first] = remedies(asking(shopWith([], { specialOrder: [order('swivel')] }), ask))
    expect(first?.consequence).toMatchObject({ available: false, specialOrder: true, part: null })
    expect(first?.patch).toEqual({
      travel: { swivel: { part: null, bore: '8.5 mm', 'drop-at': null, 'max-pressure': '210 bar' } },
    })
    expect(first?.uses).toEqual([expect.objectContaining({ kind: 'swivel', part: null, quantity: 1 })])
    expect(first?.stop).toBe(false)
  })

  it('else a stop that says what failed, and buys nothing', () => {
    const small = part('swivel-7', 'swivel', { bore: '7 mm', passages: 6, 'max-pressure': '250 bar' }, 500)
    const [first] = remedies(asking(shopWith([small]), ask))
    expect(first?.consequence).toMatchObject({ available: false, specialOrder: false, part: null })
    expect(first?.consequence.chain.at(-1)).toContain('bore of 8.5 mm')
    expect([first?.stop, first?.patch, first?.uses, first?.jobs]).toEqual([true, null, [], []])
  })

  it('a component that no part cures is a stop', () => {
    const [first] = remedies(asking(shopWith([]), [finding('something', 'somewhere', 1, 0)]))
    expect(first?.stop).toBe(true)
  })

  it('what was answered before is not answered again', () => {
    expect(remedies(asking(shopWith([]), ask, { done: new Set(['swivel-velocity:travel.swivel']) }))).toEqual([])
  })
})

describe('the order of the parts list', () => {
  // Every part twice, under another id and at the same price: ties everywhere.
  const whole = [...hoseList, endPart(12, 'G 1/2', 10), endPart(12, 'G 3/4', 11)]
  const twice = [...whole, ...whole.map((one) => ({ ...one, id: `z-${one.id}` }))]
  const findings = [
    finding('line-velocity', PRESSURE, 8.1, 6.1),
    finding('line-velocity', WORK, 7.5, 6.1),
    finding('line-velocity', 'circuits.main.lines.return', 4.2, 3),
  ]
  const found = remedies(asking(shopWith(twice), findings))

  it('changes nothing', () => {
    expect(found.flatMap(({ uses }) => uses).length).toBeGreaterThan(8)
    fc.assert(
      fc.property(fc.shuffledSubarray(twice, { minLength: twice.length }), (parts) => {
        expect(remedies(asking(shopWith(parts), findings))).toEqual(found)
      }),
    )
  })
})

describe('inTurn', () => {
  const line = finding('line-velocity', PRESSURE, 8, 6.1)
  const hot = finding('oil-temperature', 'cooler', 90, 82)
  const fan = finding('fan-current', 'alternator', 12, 9)

  it('lines before the cooler, the cooler before its current', () => {
    expect(inTurn([fan, hot, line])).toEqual([line])
    expect(inTurn([fan, hot])).toEqual([hot])
    expect(inTurn([fan])).toEqual([fan])
    expect(inTurn([])).toEqual([])
  })
})

describe('settle', () => {
  const shop = shopWith([...hoseList, endPart(8, 'G 3/4', 7), adapterPart('G 1/2', '24° 12L', '10 mm', 8.1)])
  const first = (velocity: number) => remedies(asking(shop, [finding('line-velocity', PRESSURE, velocity, 6.1)]))

  it('a hose that was made -10 and then -12 is bought once, for the reasons of both', () => {
    const strict = shopWith([...hoseList, endPart(12, 'G 1/2', 11)])
    const second = remedies(
      asking(strict, [finding('line-pressure', PRESSURE, 12, 6.1), finding('line-velocity', PRESSURE, 10, 6.1)]),
    )
    const settled = settle({ uses: [], jobs: [], consequences: [] }, [...first(8.1), ...second])
    expect(settled.uses.filter(({ kind }) => kind === 'hose').map(({ part: id }) => id)).toEqual([
      'hose-2-wire-hose-12',
    ])
    expect(settled.jobs).toHaveLength(1)
    expect(settled.consequences[0]?.because).toEqual([`line-velocity:${PRESSURE}`, `line-pressure:${PRESSURE}`])
  })

  it('a new hose makes the adapter of the asked change superfluous', () => {
    const adapter = { component: PRESSURE, kind: 'adapter', part: 'ad', what: 'ad', quantity: 1 } as const
    const settled = settle({ uses: [adapter], jobs: [], consequences: [] }, first(8.1))
    expect(settled.uses.map(({ kind }) => kind)).not.toContain('adapter')
  })

  it('keeps what no remedy touches', () => {
    const pump = { component: 'circuits.main.pump', kind: 'pump', part: 'p', what: 'p', quantity: 1 } as const
    expect(settle({ uses: [pump], jobs: [], consequences: [] }, first(8.1)).uses).toContainEqual(pump)
  })
})

it('the traps of the port table stay apart: an ORB valve does not take a G hose end', () => {
  const machine = withCircuit(wren(), {
    valve: {
      part: 'v',
      ratedFlow: 38 / 60_000,
      restriction: null,
      maxPressure: 250 * bar,
      ports: { inlet: { family: 'ORB', size: '-8', text: 'ORB -8' }, outlet: connection('G 1/2'), work: null },
    },
  })
  const shop = shopWith(hoseList, { specialOrder: [order('fitting')] })
  const [first] = remedies(asking(shop, [finding('line-velocity', PRESSURE, 8.1, 6.1)], { machine }))
  expect(first?.consequence.connections[1]).toEqual({ from: 'hose -10', to: 'ORB -8', adapter: null })
})
