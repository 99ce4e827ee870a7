/** Searches made by hand for the tests of what is shown of them: plausible, invented, no output of any search. */
import type { Cost, OptionResult } from '../../src/evaluation.ts'
import { toldOf } from '../../src/reach.ts'
import type { FoundBySearch, FoundWay, Search } from '../../src/search.ts'
import { biggerPump, consequence, coolerAndFilter, cost, evaluation, finding, twoSpeed } from '../fixtures/result.ts'

const asItIs: OptionResult = {
  ...coolerAndFilter,
  name: 'As it is',
  changes: [],
  consequences: [],
  evaluation: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 66 }),
  cost: cost({ low: 0, likely: 0, high: 0, lines: [], labour: [] }),
  answer: { answer: 'recommend', reasons: [], conditions: [] },
}

/** Warmer than any speed in km/h: so it is told what a story means. */
const WARM = 30

/** What a way gives that reaches so much of what is measured. */
const gives = (reached: number | null) => ({
  speedKmh: reached === null || reached > WARM ? 2.31 : reached,
  attachmentLpm: null,
  oilC: reached !== null && reached > WARM ? reached : 66,
})

export const way = (over: Partial<FoundWay> & { readonly option: OptionResult }): FoundWay => {
  const { reached = over.option.evaluation.travel.level.speedKmh, meets = false } = over
  return {
    changes: { made: JSON.stringify(over.option.changes) },
    reached,
    gives: gives(reached),
    reaches: meets,
    meets,
    specialOrder: false,
    ...over,
  }
}

/** A way that was written by hand. */
export const byHandWay = (
  name: string,
  price: Cost,
  reached: number,
  meets: boolean,
  reaches = meets,
): Search['byHand'][number] => ({ name, cost: price, reached, gives: gives(reached), reaches, meets })

/** A way that changes one part, at a price and a speed. */
export const step = (to: string, likely: number, reached: number, over: Partial<FoundWay> = {}): FoundWay =>
  way({
    option: {
      ...twoSpeed,
      changes: [{ component: 'travel.motor', from: '310 cm3/rev', to }],
      consequences: [],
      cost: cost({ low: likely - 100, likely, high: likely + 200 }),
    },
    reached,
    ...over,
  })

/** The same with something that has no price. */
export const withoutPrice = (way: FoundWay, item: string): FoundWay => ({
  ...way,
  meets: true,
  option: { ...way.option, cost: { ...way.option.cost, unpriced: [item] } },
})

const smaller = step('Orbital motor 250 cm3, 32 mm shaft', 1500, 2.84)
const cheapest = step('Orbital motor 200 cm3, 32 mm shaft', 1900, 3.52, {
  meets: true,
  option: {
    ...twoSpeed,
    name: 'Orbital motor 200 cm3',
    changes: [{ component: 'travel.motor', from: '310 cm3/rev', to: 'Orbital motor 200 cm3, 32 mm shaft' }],
    consequences: [
      consequence({ component: 'travel.lines.swivel-to-motor', quantity: 4 }),
      consequence({ component: 'travel.swivel', kind: 'swivel', part: null, available: false, specialOrder: true }),
      consequence({ component: 'cooler', kind: 'cooler', part: 'cooler-s', action: 'add', connections: [] }),
    ],
    cost: cost({ low: 1800, likely: 1900, high: 2100 }),
    answer: {
      answer: 'conditions',
      reasons: [{ code: 'speed-class', text: 'At 3.5 km/h it would be faster than its maker built it for.' }],
      conditions: ['The maker’s written consent is needed before the work begins.'],
    },
  },
  specialOrder: true,
})
const inStock = step('Two-speed orbital motor 310/155 cm3', 2600, 4.1, { meets: true })

/** Found: the cheapest needs a special order, another does not. */
export const found: Search = {
  format: 1,
  goal: { travelSpeedKmh: 3.5, attachment: null, oilBelowC: null },
  measure: 'travel-speed',
  reachedToday: 2.31,
  today: gives(2.31),
  disagreements: [],
  faults: [],
  cheapest,
  cheapestInStock: inStock,
  cheapestUnpriced: null,
  withinBudget: { budget: 1700, way: smaller },
  curve: [
    way({ option: asItIs }),
    smaller,
    inStock,
    step('Two-speed orbital motor 250/125 cm3', 3900, 4.9, { meets: true }),
  ],
  nearest: null,
  nearestIsExact: true,
  stops: [],
  pastLimits: null,
  wouldTake: [],
  moves: [
    {
      path: 'travel.motor.efficiency',
      label: 'Motor efficiency',
      tolerance: '± 3 %',
      reachedLow: 3.4,
      reachedHigh: 3.6,
      holds: false,
    },
    { path: 'site.ground', label: 'Ground', tolerance: '± 25 %', reachedLow: 3.51, reachedHigh: 3.53, holds: true },
    { path: 'travel.sprocket', label: 'Sprocket', tolerance: null, reachedLow: null, reachedHigh: null, holds: true },
  ],
  counts: { combinations: 155_520_000, evaluated: 212, cutByPrice: 155_000_000, cutByReach: 519_788, cutByLimit: 0 },
  evaluatedBesides: 0,
  isExact: true,
  byHand: [
    byHandWay('Two-speed travel motors', twoSpeed.cost, 4.16, true),
    byHandWay('Bigger pump', biggerPump.cost, 3.62, false),
  ],
}

/** Nothing on the list reaches it. */
export const notFound: Search = {
  ...found,
  goal: { travelSpeedKmh: 6, attachment: null, oilBelowC: 75 },
  cheapest: null,
  cheapestInStock: null,
  withinBudget: { budget: 300, way: null },
  curve: found.curve.map((one) => ({ ...one, meets: false })),
  nearest: inStock,
  stops: [
    finding({
      id: 'engine-power:engine',
      component: 'engine',
      check: 'engine-power',
      value: 12.94,
      limit: 9.1,
      unit: 'kW',
      severity: 'stop',
      heading: 'The engine cannot drive the pump at full pressure',
    }),
  ],
  wouldTake: ['an engine of 13 kW', 'a swivel with 9 mm drillings'],
  byHand: [byHandWay('Bigger pump', biggerPump.cost, 3.62, false)],
}

/** Nothing has to be done. */
export const already: Search = {
  ...found,
  goal: { ...found.goal, travelSpeedKmh: 2 },
  cheapest: way({ option: asItIs, meets: true }),
  cheapestInStock: way({ option: asItIs, meets: true }),
  withinBudget: null,
  curve: [way({ option: asItIs, meets: true })],
  moves: [],
  byHand: [byHandWay('Cooler and return filter', coolerAndFilter.cost, 2.31, true)],
}

/** Nothing can be varied: no curve to draw, nothing nearer. */
export const nothingThere: Search = {
  ...notFound,
  reachedToday: null,
  today: { speedKmh: 0, attachmentLpm: null, oilC: null },
  withinBudget: null,
  curve: [way({ option: asItIs, reached: null })],
  nearest: null,
  stops: [],
  wouldTake: [],
  moves: [],
  byHand: [],
  counts: { combinations: 1, evaluated: 1, cutByPrice: 0, cutByReach: 0, cutByLimit: 0 },
}

/** By oil temperature: less is better. */
export const cooler: Search = {
  ...found,
  goal: { travelSpeedKmh: null, attachment: null, oilBelowC: 70 },
  measure: 'oil-temperature',
  reachedToday: 86,
  today: gives(86),
  cheapest: way({ option: coolerAndFilter, reached: 66, meets: true }),
  cheapestInStock: way({ option: coolerAndFilter, reached: 66, meets: true }),
  withinBudget: null,
  curve: [
    way({ option: asItIs, reached: 86 }),
    way({
      option: {
        ...coolerAndFilter,
        changes: coolerAndFilter.changes.slice(0, 1),
        cost: cost({ low: 500, likely: 600, high: 700 }),
      },
      reached: 74,
    }),
    way({ option: coolerAndFilter, reached: 66, meets: true }),
  ],
  moves: [
    { path: 'site.ambient', label: 'Air temperature', tolerance: null, reachedLow: 63, reachedHigh: 69.6, holds: true },
    {
      path: 'reservoir.heat-transfer',
      label: 'Heat that the tank gives off',
      tolerance: '± 25 %',
      reachedLow: 61,
      reachedHigh: 71,
      holds: false,
    },
  ],
  byHand: [byHandWay('Cooler and return filter', coolerAndFilter.cost, 66, true)],
}

export const SEARCHES: readonly (readonly [name: string, search: Search])[] = [
  ['found', found],
  ['not found', notFound],
  ['already there', already],
  ['nothing there', nothingThere],
  ['cooler', cooler],
]

/** An option that was searched for, as the result document has it. */
export const searched = (search: Search, less: FoundBySearch['cheaper'] = null, name = 'As fast as you asked') => {
  const way = search.cheapest ?? search.nearest
  const next = search.curve.find((one) => one.meets && one !== way && one.changes !== way?.changes)
  const { goal, measure, counts, isExact, reachedToday, nearestIsExact, pastLimits, cheapestUnpriced: open } = search
  const bySearch: FoundBySearch = {
    goal,
    measure,
    reachedToday,
    reached: way?.reached ?? reachedToday,
    gives: way?.gives ?? search.today,
    meets: search.cheapest !== null,
    counts,
    isExact,
    price: way?.option.cost.likely ?? null,
    next: next === undefined ? null : toldOf(next),
    cheaper: less,
    unpriced: open === null ? null : { ...toldOf(open), items: open.option.cost.unpriced },
    nearestIsExact,
    pastLimits: pastLimits === null ? null : toldOf(pastLimits),
    wouldTake: search.wouldTake,
    moves: search.moves,
    curve: search.curve.map(toldOf),
  }
  const option: OptionResult = { ...(way?.option ?? asItIs), name, found: bySearch }
  return { option, found: bySearch }
}
