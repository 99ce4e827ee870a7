/** Work orders of the sample machine: lengths, ends, ratings and settings against what its file says. */
import { describe, expect, test } from 'vitest'
import type { PartUse } from '../../src/consequences/uses.ts'
import type { Consequence, Cost } from '../../src/evaluation.ts'
import type { Machine } from '../../src/machine.ts'
import type { WorkOrder } from '../../src/work-order.ts'
import { workOrderOf } from '../../src/work-orders/work-order-of.ts'
import { part, shopWith } from '../consequences/list.ts'
import { wren } from '../fixtures/wren.ts'

const HOSE = 'circuits.main.lines.pressure'
const parts = [
  part('hose-2w-8', 'hose', { hose: -8, kind: '2-wire hose', 'max-pressure': '275 bar' }, 12),
  part('end-8-g12', 'fitting', { hose: -8, end: 'G 1/2' }, 6),
  part('ad-g12-o8', 'adapter', { from: 'G 1/2', to: 'ORB -8', bore: '10 mm' }, 8),
  part('filter-a', 'filter', {}, 100),
  part('kit-a', 'kit', {}, 90, { name: 'Filter kit', holds: [{ part: 'filter-a', quantity: 1 }] }),
  part('motor-a', 'motor', {}, 500, { coreDeposit: 80, stock: 0, leadDays: 12 }),
]
const cost = (sold: readonly string[] = []): Cost => ({
  currency: 'USD',
  low: 0,
  likely: 0,
  high: 0,
  lines: sold.map((id) => ({
    what: id,
    part: id,
    quantity: 1,
    unitPrice: null,
    amount: null,
    leadDays: null,
    stock: null,
    unitCost: null,
  })),
  labour: [],
  parts: 0,
  labourTotal: 0,
  supplies: 0,
  freight: 0,
  contingency: 0,
  tax: 0,
  deposits: [],
  unpriced: [],
})

const use = (component: string, kind: PartUse['kind'], id: string | null, quantity: number, what = ''): PartUse => ({
  component,
  kind,
  part: id,
  what,
  quantity,
})

interface Asked {
  readonly uses?: readonly PartUse[]
  readonly jobs?: Parameters<typeof workOrderOf>[0]['jobs']
  readonly connections?: Consequence['connections']
  readonly after?: Machine
  readonly sold?: readonly string[]
}

const order = ({ uses = [], jobs = [], connections = [], after = wren(), sold = [] }: Asked): WorkOrder =>
  workOrderOf({
    option: 'Way',
    uses,
    jobs,
    consequences: [
      {
        component: HOSE,
        kind: 'hose',
        action: 'replace',
        part: 'hose-2w-8',
        quantity: 1,
        because: [],
        connections,
        available: true,
        specialOrder: false,
        chain: [],
      },
    ],
    before: wren(),
    after,
    cost: cost(sold),
    shop: shopWith(parts),
  })

describe('a hose', () => {
  const uses = [
    use(HOSE, 'hose', 'hose-2w-8', 0.9),
    use(HOSE, 'fitting', 'end-8-g12', 1, 'Hose end -8, G 1/2'),
    use(HOSE, 'fitting', 'end-8-g12', 1, 'Hose end -8, G 1/2'),
  ]
  const { pulls } = order({ uses })
  // 0.9 m between pump (G 1/2) and valve (G 1/2); -8 is 12.7 mm; relief 155 bar and 10 % is 170.5 bar.
  test('has its length, bore, rating and what is asked of it', () => {
    expect(pulls[0]).toMatchObject({ pieces: 1, lengthM: 0.9, unit: 'm', maxPressureBar: 275 })
    expect(pulls[0]?.boreMm).toBeCloseTo(12.7, 9)
    expect(pulls[0]?.workingPressureBar).toBeCloseTo(170.5, 9)
  })
  test('says what both ends go into', () =>
    expect(pulls[0]?.joints.map(({ place, into, connection }) => [place, into, connection])).toEqual([
      ['first', 'circuits.main.pump', 'G 1/2'],
      ['second', 'circuits.main.valve', 'G 1/2'],
    ]))
  test('has its two like ends on one line', () => {
    expect(pulls).toHaveLength(2)
    expect(pulls[1]).toMatchObject({ part: 'end-8-g12', quantity: 2, unit: 'piece', joints: [] })
  })
  test('names the adapter at the end that needs it', () => {
    const machine = wren()
    const [main] = machine.circuits
    if (main === undefined || main.valve === null) throw new Error('no circuit')
    const ports = { ...main.valve.ports, inlet: { family: 'ORB', size: '-8', text: 'ORB -8' } as const }
    const after = { ...machine, circuits: [{ ...main, valve: { ...main.valve, ports } }] }
    const connections = [
      { from: 'G 1/2', to: 'G 1/2', adapter: null },
      { from: 'G 1/2', to: 'ORB -8', adapter: 'ad-g12-o8' },
    ]
    const [hose] = order({ uses, connections, after }).pulls
    expect(hose?.joints.map(({ adapter }) => adapter)).toEqual([null, 'ad-g12-o8'])
  })
  test('of something new is cut to fit: pieces from its ends, no length', () => {
    const [hose] = order({
      uses: [
        use('cooler', 'hose', 'hose-2w-8', 2),
        use('cooler', 'fitting', 'end-8-g12', 4, 'Hose end -8'),
        use('cooler', 'fitting', null, 1, 'Valve or lever'),
      ],
    }).pulls
    expect(hose).toMatchObject({ pieces: 2, lengthM: null, quantity: 2 })
    expect(hose?.joints.map(({ connection, into }) => [connection, into])).toEqual([
      ['G 1/2', null],
      ['G 1/2', null],
    ])
  })
})

describe('a component', () => {
  test('a pump has its ports with the hoses on them, its rating and its mount', () => {
    const [pump] = order({ uses: [use('circuits.main.pump', 'pump', 'pump-x', 1)] }).pulls
    expect(pump?.joints.map(({ place, into, connection }) => [place, into, connection])).toEqual([
      ['inlet', 'circuits.main.lines.suction', 'G 3/4'],
      ['outlet', HOSE, 'G 1/2'],
    ])
    expect(pump).toMatchObject({ maxPressureBar: 230, mount: 'SAE A 2-bolt, 9T 16/32 DP, clockwise' })
  })
  test('to order has no rating yet, only what is asked of it', () => {
    const [swivel] = order({ uses: [use('travel.swivel', 'swivel', null, 1, 'Swivel to order')] }).pulls
    expect(swivel).toMatchObject({ what: 'Swivel to order', maxPressureBar: null })
    expect(swivel?.workingPressureBar).toBeCloseTo(170.5, 9)
  })
  test('an adapter has the connection of either side, each with its own tightening', () => {
    const [adapter] = order({ uses: [use(HOSE, 'adapter', 'ad-g12-o8', 1)] }).pulls
    expect(adapter?.joints.map(({ connection, tightening }) => [connection, tightening?.torqueNm ?? null])).toEqual([
      ['G 1/2', null],
      ['ORB -8', [41, 50]],
    ])
    expect(adapter?.boreMm).toBe(10)
  })
  test('says which kit it comes in, only where that kit is sold', () => {
    const uses = [use('filter', 'filter', 'filter-a', 1)]
    expect(order({ uses, sold: ['kit-a'] }).pulls[0]?.kit).toBe('Filter kit')
    expect(order({ uses }).pulls[0]?.kit).toBeNull()
  })
  test('an old part that goes back, stock and lead time', () =>
    expect(order({ uses: [use('travel.motor', 'motor', 'motor-a', 2)] }).pulls[0]).toMatchObject({
      oldPartBack: true,
      stock: 0,
      leadDays: 12,
    }))
})

describe('the rest', () => {
  test('jobs are those that are booked, with what they are for', () => {
    const { jobs } = order({
      jobs: [
        { component: 'circuits.main.pump', job: 'replace pump', quantity: 1 },
        { component: HOSE, job: 'replace hose', quantity: 1 },
        { component: 'circuits.main.lines.return', job: 'replace hose', quantity: 1 },
      ],
    })
    expect(jobs).toEqual([
      { job: 'replace pump', quantity: 1, components: ['circuits.main.pump'] },
      { job: 'replace hose', quantity: 2, components: [HOSE, 'circuits.main.lines.return'] },
      { job: 'test and record', quantity: 1, components: [] },
    ])
  })
  test('a relief tells what it is set to and what it was', () => {
    const machine = wren()
    const [main] = machine.circuits
    if (main === undefined) throw new Error('no circuit')
    const after = { ...machine, circuits: [{ ...main, relief: { ...main.relief, setting: 135e5 } }] }
    expect(order({ after }).reliefs).toEqual([{ circuit: 'main', settingBar: 135, wasBar: 155 }])
  })
  test('a drained tank is filled again: 13 L', () => {
    const { oil, pulls } = order({ jobs: [{ component: 'reservoir', job: 'clean reservoir', quantity: 1 }] })
    expect(oil).toEqual({ grade: 'ISO VG 46', fillL: 13, reservoirL: 13 })
    expect(pulls).toMatchObject([{ component: 'fluid', quantity: 13, unit: 'L' }])
  })
})
