/** Small facts for the rules of the answer: a machine and figures that change one thing at a time. */
import type { OptionFacts } from '../../src/answer/facts.ts'
import type { Cost, Evaluation, Finding, Gain, Heat, Point, TravelPoints } from '../../src/evaluation.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

export const point = (over: Partial<Point> = {}): Point => ({
  speedKmh: 2,
  displacementCm3: 235,
  engineSpeedRpm: 3000,
  engineLoad: 0.3,
  shaftPowerKw: 2,
  pumpFlowLpm: 24,
  pumpPressureBar: 40,
  reliefFlowLpm: 0,
  motorFlowLpm: 12,
  motorSpeedRpm: 50,
  motorDifferentialBar: 20,
  motorReturnBar: 9,
  tractiveForceN: 5500,
  neededForceN: 900,
  stalled: false,
  limitedBy: null,
  ...over,
})

export const heat = (over: Partial<Heat> = {}): Heat => ({
  averageInputKw: 1.5,
  averageUsefulKw: 0.5,
  averageHeatKw: 1,
  steadyOilC: 58,
  steadyViscosityCst: 22,
  minutesTo: { '70': null, '82': null },
  risk: 'low',
  curve: [],
  byMode: [],
  ...over,
})

export const finding = (check: string, over: Partial<Finding> = {}): Finding => ({
  id: `${check}:engine`,
  component: 'engine',
  check,
  value: 1,
  limit: 2,
  unit: 'kW',
  severity: 'ok',
  existing: false,
  because: '',
  source: '',
  heading: '',
  ...over,
})

export const evaluation = (
  over: { travel?: Partial<TravelPoints>; heat?: Partial<Heat>; findings?: readonly Finding[] } = {},
): Evaluation => ({
  oilC: 50,
  travel: {
    level: point(),
    levelSlow: null,
    levelHot: null,
    levelCold: point(),
    grade: point({ neededForceN: 2700 }),
    turn: point({ neededForceN: 4400 }),
    oneTrack: point(),
    ...over.travel,
  },
  circuits: {},
  lines: [],
  drops: [],
  heat: heat(over.heat),
  findings: over.findings ?? [],
})

export const cost = (likely: number): Cost => ({
  currency: 'USD',
  low: likely * 0.9,
  likely,
  high: likely * 1.2,
  lines: [],
  labour: [],
  parts: likely,
  labourTotal: 0,
  supplies: 0,
  freight: 0,
  contingency: 0,
  tax: 0,
  deposits: [],
  unpriced: [],
})

export const gain = (over: Partial<Gain> = {}): Gain => ({
  speedKmh: 0.6,
  speedRatio: 1.3,
  minutesPerTrip: 2.4,
  hoursPerYear: 35,
  steadyOilC: 0,
  costPerKmh: null,
  paybackYears: 1,
  ...over,
})

/** An option that is fine: 30 % faster with the maker's consent, within the maker's speed, pays back, brakes there. */
export const facts = (over: Partial<OptionFacts> = {}): OptionFacts => {
  const machine = { ...wren(), designTravelSpeed: 1, brakes: { holding: true, counterbalance: true } }
  return {
    before: { machine, evaluation: evaluation() },
    after: { machine, evaluation: evaluation({ travel: { level: point({ speedKmh: 2.6 }) } }) },
    changes: { travel: { motor: { part: 'x' } } },
    protecting: false,
    missing: [],
    cost: cost(1500),
    gain: gain(),
    site: wrenSite,
    wants: { travelSpeed: 0.8, attachment: null, oilBelow: null },
    status: { warranty: false, leased: false, hiredOut: false, makerConsent: true, openDefects: [] },
    alternatives: [],
    limits: { shareOfValue: 0.4, paybackYears: 2, leastGain: 0.1 },
    faults: [],
    ...over,
  }
}
