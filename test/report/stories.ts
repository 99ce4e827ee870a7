/** The six stories, and those at the edges: nothing known, nothing settles, everything open. */
import type { ResultDocument } from '../../src/evaluation.ts'
import {
  biggerPump,
  consequence,
  coolerAndFilter,
  cost,
  evaluation,
  finding,
  resultOf,
  twoSpeed,
} from '../fixtures/result.ts'
import { SEARCHES, searched } from './search-stories.ts'

const bare = resultOf('decline')

/** Everything that may be null is. */
const nothingKnown: ResultDocument = resultOf('decline', {
  options: [],
  baselineRange: null,
  assumptions: [],
  readings: [],
  calibration: { ...bare.calibration, measuredSpeedKmh: null, predictedSpeedKmh: null, notes: [] },
  baseline: { ...evaluation({ levelKmh: 0, gradeKmh: 0, climbs: false, settledC: null }), findings: [] },
  recommendation: { ...bare.recommendation, reasons: [], offerInstead: null, provisional: false },
  sheet: {
    ...bare.sheet,
    shop: { ...bare.sheet.shop, address: [], phone: null, email: null, accent: null, terms: [] },
    customer: { name: 'T. Marlowe', place: null },
    quote: { number: null, date: null, validUntil: null },
    machine: { ...bare.sheet.machine, designSpeedKmh: null },
    site: { ...bare.sheet.site, tripM: null, tripsPerDay: null, daysPerYear: null, hourIsWorth: null },
    wants: { speedKmh: null, oilBelowC: null, attachmentFlowLpm: null, attachmentPressureBar: null },
    alternatives: [],
    rows: [],
  },
})

/** Nothing has a price, a stock or a lead time. */
const nothingPriced: ResultDocument = resultOf('upgrade', {
  options: [
    {
      ...twoSpeed,
      changes: [],
      consequences: [],
      evaluation: evaluation({
        levelKmh: 4.16,
        gradeKmh: 1.84,
        settledC: null,
        findings: [finding({ check: 'everything-faster', severity: 'watch' })],
      }),
      cost: cost({
        unpriced: ['swivel', 'motors'],
        labour: [],
        lines: [
          {
            what: 'Two-speed motor',
            part: 'motor-x',
            quantity: 2,
            unitPrice: null,
            amount: null,
            leadDays: null,
            stock: null,
            unitCost: null,
          },
        ],
      }),
      answer: { answer: 'recommend', reasons: [], conditions: [] },
    },
  ],
  restored: null,
})

/** A repair that nobody could price, with nothing beside it. */
const repairUnpriced: ResultDocument = resultOf('restore', {
  restoration: null,
  recommendation: { ...resultOf('restore').recommendation, option: null },
})

const plainYes: ResultDocument = resultOf('upgrade', {
  baseline: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 58 }),
  options: [
    {
      ...twoSpeed,
      cost: cost({ lines: [], deposits: [{ what: 'Gear pump', part: 'pump-x', quantity: 1, amount: 70 }] }),
      answer: { answer: 'recommend', reasons: [], conditions: [] },
    },
    coolerAndFilter,
  ],
})

/** What was asked for would stall the engine, and nothing is offered in its place. */
const wouldNotMove: ResultDocument = resultOf('decline', {
  options: [{ ...biggerPump, evaluation: evaluation({ levelKmh: 0, gradeKmh: 0, climbs: false, settledC: null }) }],
  recommendation: { ...bare.recommendation, offerInstead: null },
})

/** What follows is no part of the oil circuit. */
const besideTheCircuit: ResultDocument = resultOf('upgrade', {
  options: [{ ...twoSpeed, consequences: [consequence({ component: 'lamp-set', kind: 'lamp set' })] }],
})

/** The work is done: one figure kept, one not, one that cannot be held against a promise. */
const afterTheWork: ResultDocument = resultOf('upgrade-on-conditions', {
  acceptance: {
    date: '2026-04-20',
    option: 'Two-speed motors',
    runs: [
      { direction: 'forward', distanceM: 20, timeS: 19, speedKmh: 3.79 },
      { direction: 'back', distanceM: 20, timeS: 20, speedKmh: 3.6 },
    ],
    oilC: 52,
    rows: [
      {
        what: 'speed',
        component: 'travel',
        promisedLow: 3.9,
        promisedHigh: 4.4,
        measured: 3.695,
        unit: 'km/h',
        bound: 'at least',
        kept: false,
        note: null,
        source: 'range worked out before the work',
      },
      {
        what: 'relief-pressure',
        component: 'circuits.left.relief',
        promisedLow: 150.35,
        promisedHigh: 159.65,
        measured: 154,
        unit: 'bar',
        bound: 'between',
        kept: true,
        note: null,
        source: 'common practice, no source',
      },
      {
        what: 'oil-temperature',
        component: 'reservoir',
        promisedLow: null,
        promisedHigh: null,
        measured: 71,
        unit: '°C',
        bound: 'at most',
        kept: null,
        note: 'No temperature was promised: the oil was not worked out to settle.',
        source: 'range worked out before the work',
      },
    ],
    kept: false,
  },
})

/** All of it kept, nothing but a gauge was read. */
const afterTheRepair: ResultDocument = resultOf('restore', {
  acceptance: {
    date: null,
    option: null,
    runs: [],
    oilC: null,
    rows: (afterTheWork.acceptance?.rows ?? []).filter(({ kept }) => kept === true),
    kept: true,
  },
})

/** Six checks that take their limit from one source. */
const manyLimits: ResultDocument = resultOf('upgrade', {
  baseline: {
    ...resultOf('upgrade').baseline,
    findings: ['valve-flow', 'filter-flow', 'motor-flow', 'pump-speed', 'motor-speed', 'swivel-pressure'].map((check) =>
      finding({ id: `${check}:machine`, check, limit: 40, value: 20, source: 'rating stated for this component' }),
    ),
  },
})

/** Ways that were searched for: found, not found, nothing to do, nothing to draw. */
const searchedFor: ResultDocument = resultOf('upgrade-on-conditions', {
  options: SEARCHES.map(([name, search]) => searched(search, null, `By search: ${name}`).option),
})

export const STORIES: readonly (readonly [name: string, result: ResultDocument])[] = [
  ...(['restore', 'protect', 'upgrade', 'upgrade-on-conditions', 'decline', 'measure-first'] as const).map(
    (kind) => [kind, resultOf(kind)] as const,
  ),
  ['nothing known', nothingKnown],
  ['nothing priced', nothingPriced],
  ['repair unpriced', repairUnpriced],
  ['plain yes', plainYes],
  ['would not move', wouldNotMove],
  ['after the work', afterTheWork],
  ['after the repair', afterTheRepair],
  ['beside the circuit', besideTheCircuit],
  ['many limits', manyLimits],
  ['searched for', searchedFor],
]
