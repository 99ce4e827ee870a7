/** The stories of the report with work orders and build-ups made by hand: plausible, invented, no output of ours. */
import type { BuildUp, ResultDocument } from '../../src/evaluation.ts'
import type { Joint, Pull, WorkOrder } from '../../src/work-order.ts'
import { STORIES } from './stories.ts'

const joint = (over: Partial<Joint> = {}): Joint => ({
  place: 'first',
  into: 'circuits.main.pump',
  connection: 'ORB -10',
  standard: 'SAE J1926-1, ISO 11926-1',
  thread: '7/8-14 UNF',
  seal: 'O-ring in the port’s chamfer',
  mistakenFor: 'JIC of the same dash, same thread',
  adapter: null,
  tightening: { torqueNm: [61, 82], turns: null, source: 'two manuals and a reference page' },
  ...over,
})

export const pull = (over: Partial<Pull> = {}): Pull => ({
  component: 'circuits.main.lines.pressure',
  kind: 'hose',
  part: 'hose-2w-10',
  what: '2-wire hose -10, metre',
  quantity: 2.8,
  unit: 'm',
  pieces: 2,
  lengthM: 1.4,
  boreMm: 15.9,
  maxPressureBar: 250,
  workingPressureBar: 170.5,
  mount: null,
  joints: [
    joint(),
    joint({
      place: 'second',
      into: 'circuits.main.valve',
      connection: '24° 12L',
      standard: 'ISO 8434-1, light series',
      thread: 'M18x1.5',
      mistakenFor: 'heavy series with the same thread',
      adapter: 'Adapter 24° 12L to 15L',
      tightening: { torqueNm: null, turns: '1/4 to 1/3 turn from hand tight', source: 'from memory' },
    }),
  ],
  kit: null,
  stock: 12,
  leadDays: 2,
  oldPartBack: false,
  ...over,
})

const PULLS: readonly Pull[] = [
  pull(),
  pull({
    component: 'travel.motor',
    kind: 'motor',
    part: 'motor-2s',
    what: 'Two-speed motor',
    quantity: 2,
    unit: 'piece',
    pieces: null,
    lengthM: null,
    boreMm: null,
    mount: 'wheel mount 125 mm',
    joints: [
      joint({
        place: 'work',
        into: null,
        connection: null,
        standard: null,
        thread: null,
        seal: null,
        mistakenFor: null,
        tightening: null,
      }),
    ],
    stock: 0,
    leadDays: 35,
    oldPartBack: true,
  }),
  pull({
    component: 'cooler',
    part: null,
    what: 'Hoses for the cooler',
    quantity: 2,
    pieces: 2,
    lengthM: null,
    maxPressureBar: null,
    kit: 'Cooler kit',
    joints: [
      joint({ into: null, connection: 'G 1/2', tightening: { torqueNm: null, turns: null, source: 'no table' } }),
      joint({
        place: 'second',
        into: null,
        connection: 'G 1/2',
        tightening: { torqueNm: null, turns: null, source: 'no table' },
      }),
    ],
    stock: null,
    leadDays: null,
  }),
  pull({
    component: 'fluid',
    kind: 'oil',
    part: 'oil-46',
    what: 'Mineral oil VG 46, litre',
    quantity: 13,
    unit: 'L',
    pieces: null,
    lengthM: null,
    boreMm: null,
    maxPressureBar: null,
    workingPressureBar: null,
    joints: [],
  }),
]

export const order = (option: string | null, over: Partial<WorkOrder> = {}): WorkOrder => ({
  option,
  pulls: PULLS,
  jobs: [
    { job: 'replace hose', quantity: 2, components: ['circuits.main.lines.pressure'] },
    { job: 'replace motor', quantity: 2, components: ['travel.motor'] },
    { job: 'paint the boom', quantity: 1, components: [] },
    { job: 'test and record', quantity: 1, components: [] },
  ],
  reliefs: [{ circuit: 'main', settingBar: 155, wasBar: 140 }],
  oil: { grade: 'ISO VG 46', fillL: 13, reservoirL: 13 },
  ratedEngineRpm: 2930,
  ...over,
})

/** Figures that stand nowhere else, so that one on the customer's copy is found. */
export const COST_FIGURES = ['171.31', '85.65', '137.13'] as const

const buildUp = (option: string | null): BuildUp => ({
  option,
  lines: [
    {
      what: 'Two-speed motor',
      part: 'motor-2s',
      quantity: 2,
      unitCost: 85.65,
      cost: 171.31,
      unitPrice: 154.22,
      price: 308.44,
      profit: 137.13,
      margin: 0.4446,
      markUp: 0.8005,
      stock: 0,
      leadDays: 35,
    },
    {
      what: 'Quick couplers',
      part: null,
      quantity: 2,
      unitCost: null,
      cost: null,
      unitPrice: null,
      price: null,
      profit: null,
      margin: null,
      markUp: null,
      stock: null,
      leadDays: null,
    },
  ],
  known: { price: 308.44, cost: 171.31, profit: 137.13, margin: 0.4446, markUp: 0.8005 },
  open: ['Quick couplers'],
})

/** Every option and the restoration with a work order and a build-up; the last option's has nothing to pull. */
export const withWork = (result: ResultDocument): ResultDocument => {
  const names = [...(result.restoration === null ? [] : [null]), ...result.options.map(({ name }) => name)]
  return {
    ...result,
    workOrders: names.map((name, index) =>
      order(name, index > 0 && index === names.length - 1 ? { pulls: [], jobs: [] } : {}),
    ),
    pricing: { ...result.pricing, buildUps: names.map(buildUp) },
  }
}

export const WORK_STORIES: readonly (readonly [name: string, result: ResultDocument])[] = STORIES.map(
  ([name, result]) => [name, withWork(result)] as const,
)
