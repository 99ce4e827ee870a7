/** The order of the recommendation (methods, "The answer"), and the gains by hand. */
import { describe, expect, test } from 'vitest'
import { gainOver, minutesForTrip } from '../../src/answer/gain.ts'
import { recommend, type Situation } from '../../src/answer/recommend.ts'
import type { Answer, OptionResult } from '../../src/evaluation.ts'
import { wrenSite } from '../fixtures/wren.ts'
import { cost, evaluation, gain, point } from './facts.ts'

const option = (name: string, answer: Answer['answer'], over: Partial<OptionResult> = {}, kmh = 2.6): OptionResult => ({
  name,
  why: null,
  protecting: false,
  found: null,
  sameAs: null,
  changes: [],
  consequences: [],
  evaluation: evaluation({ travel: { level: point({ speedKmh: kmh }) } }),
  asAskedOnly: evaluation(),
  cost: cost(1500),
  gain: gain(),
  range: null,
  answer: { answer, reasons: [], conditions: [] },
  ...over,
})

const situation = (options: readonly OptionResult[], over: Partial<Situation> = {}): Situation => ({
  before: evaluation(),
  options,
  faults: [],
  faultsHangOn: [],
  disagreements: [],
  wants: { travelSpeed: 3 / 3.6, attachment: null, oilBelow: null },
  alternatives: [{ name: 'Walk less', saves: 600, cost: 0 }],
  assumptions: [],
  readings: { travel: null, engineSpeed: null, reliefPressure: [], flows: [], inletPressure: [], oilTemperature: null },
  unread: null,
  ...over,
})

const kind = (options: readonly OptionResult[], over: Partial<Situation> = {}) => {
  const { kind, option } = recommend(situation(options, over))
  return `${kind}: ${option}`
}

const protects = { protecting: true }
const fault = [{ component: 'circuits.main.pump', text: 'worn' }]

describe('oil that is hot for want of a reading', () => {
  const unread = { path: 'other-cooling-surface', cooler: 40, decides: true, text: 'Read the tank first.' }
  const cooler = option('cooler', 'recommend', protects)
  const refused = (code: 'oil-too-hot' | 'engine-power'): OptionResult => ({
    ...option('pump', 'decline'),
    answer: { answer: 'decline', reasons: [{ code, text: code }], conditions: [] },
  })
  const reasons = (options: readonly OptionResult[], over: Partial<Situation> = {}) =>
    recommend(situation(options, { unread, ...over })).reasons.map(({ code }) => code)

  test('a cooler, or nothing at all, waits for it', () => {
    expect(kind([cooler], { unread })).toBe('measure-first: null')
    expect(kind([], { unread })).toBe('measure-first: null')
    expect(kind([refused('oil-too-hot')], { unread })).toBe('measure-first: null')
    expect(reasons([cooler])).toEqual(['data-missing'])
  })
  test('what holds whatever the oil does is answered, and says so', () => {
    expect(kind([refused('engine-power')], { unread })).toBe('decline: null')
    expect(reasons([refused('engine-power')])).toEqual(['engine-power', 'data-missing'])
    expect(kind([option('pump', 'recommend')], { unread })).toBe('upgrade: pump')
    expect(reasons([option('pump', 'recommend')])).toEqual(['data-missing'])
  })
  test('a fault comes before it', () => expect(kind([cooler], { unread, faults: fault })).toBe('restore: cooler'))
  test('where the reading would not change the class, the cooler is offered', () =>
    expect(kind([cooler], { unread: { ...unread, decides: false } })).toBe('protect: cooler'))
  test('the answer is provisional', () => {
    const zero = { path: unread.path, value: 0, unit: 'm2', from: 'default', tolerance: null } as const
    expect(recommend(situation([], { unread, assumptions: [zero] })).provisional).toBe(true)
    expect(recommend(situation([], { unread: null, assumptions: [zero] })).provisional).toBe(false)
  })
})

describe('order', () => {
  const good = option('pump', 'recommend')
  const cooler = option('cooler', 'recommend', protects)

  test('readings that do not agree come first, then a fault, with a protecting option beside it', () => {
    expect(kind([good], { disagreements: ['no'], faults: fault })).toBe('measure-first: null')
    expect(kind([good, cooler], { faults: fault })).toBe('restore: cooler')
    expect(kind([good], { faults: fault })).toBe('restore: null')
  })

  test('the best answer wins, then what is wanted, then the price', () => {
    expect(kind([option('a', 'conditions'), good])).toBe('upgrade: pump')
    expect(kind([option('a', 'conditions')])).toBe('upgrade-on-conditions: a')
    expect(kind([option('slow', 'recommend', {}, 2.2), option('fast', 'recommend', {}, 2.9)])).toBe('upgrade: fast')
    expect(kind([option('dear', 'recommend', { cost: cost(3000) }, 3.5), option('cheap', 'recommend', {}, 3.1)])).toBe(
      'upgrade: cheap',
    )
    expect(kind([option('pump', 'conditions'), cooler])).toBe('protect: cooler')
  })

  test('of two that protect, the one that cools hot oil, though it is dearer and costs a little speed', () => {
    const hot = evaluation({ heat: { steadyOilC: 84, risk: 'severe' }, travel: { level: point({ speedKmh: 2.01 }) } })
    const filter = option('filter', 'conditions', { ...protects, cost: cost(900), evaluation: hot })
    const dearer = option('cooler', 'conditions', { ...protects, cost: cost(2300) }, 2)
    expect(kind([filter, dearer], { before: hot })).toBe('protect: cooler')
    const warm = evaluation({ heat: { steadyOilC: 68, risk: 'moderate' } })
    expect(kind([{ ...filter, evaluation: warm }, dearer], { before: warm })).toBe('protect: filter')
  })

  test('nothing kept: protect where the oil is hot and a kit is offered, else decline with what is offered instead', () => {
    const declined = option('cooler', 'decline', protects)
    expect(kind([declined], { before: evaluation({ heat: { steadyOilC: 78, risk: 'high' } }) })).toBe('protect: cooler')
    expect(kind([declined])).toBe('decline: null')
    expect(recommend(situation([declined])).offerInstead).toBe('Walk less')
  })
})

test('provisional where it rests on an assumed relief, swivel bore or displacement', () => {
  const assumed = (path: string) => [{ path, value: 1, unit: '', from: 'assumed' as const, tolerance: null }]
  const provisional = (path: string, over: Partial<Situation> = {}) =>
    recommend(situation([option('a', 'recommend')], { assumptions: assumed(path), ...over })).provisional
  expect(provisional('circuits.main.relief.setting')).toBe(true)
  expect(provisional('travel.swivel.bore')).toBe(true)
  expect(provisional('travel.motor.displacement')).toBe(true)
  expect(provisional('reservoir.steel-mass')).toBe(false)
  const read = { readings: { ...situation([]).readings, reliefPressure: [{ circuit: null, pressure: 150e5 }] } }
  expect(provisional('circuits.main.relief.setting', read)).toBe(false)
})

test('provisional where a reading is a fault only by a figure that was assumed', () => {
  const droop = { path: 'engine.governor-droop', value: 8, unit: '%', from: 'default' as const, tolerance: null }
  const provisional = (faultsHangOn: readonly string[]) =>
    recommend(situation([], { assumptions: [droop], faults: fault, faultsHangOn })).provisional
  expect(provisional(['engine.rated-speed', 'engine.governor-droop'])).toBe(true)
  expect(provisional(['engine.rated-speed'])).toBe(false)
  const relief = { ...droop, path: 'circuits.main.relief.setting', from: 'assumed' as const }
  const readings = { ...situation([]).readings, reliefPressure: [{ circuit: null, pressure: 140e5 }] }
  const low = { assumptions: [relief], readings, faults: fault }
  expect(recommend(situation([], { ...low, faultsHangOn: [relief.path] })).provisional).toBe(true)
})

/** By hand: 350 m at 2.0 km/h are 10.5 min, at 2.5 km/h 8.4 min; 2.1 min x 8 x 110 / 60 = 30.8 h; x 48 = 1478.4 a year. */
test('gain', () => {
  const before = evaluation()
  const after = evaluation({ travel: { level: point({ speedKmh: 2.5 }) }, heat: { steadyOilC: 61 } })
  expect(minutesForTrip(wrenSite, 2)).toBeCloseTo(10.5, 10)
  const got = gainOver(before, after, wrenSite, cost(2956.8))
  expect(got.speedRatio).toBeCloseTo(1.25, 12)
  expect(got.minutesPerTrip).toBeCloseTo(2.1, 10)
  expect(got.hoursPerYear).toBeCloseTo(30.8, 10)
  expect(got.paybackYears).toBeCloseTo(2, 10)
  expect(got.costPerKmh).toBeCloseTo(5913.6, 8)
  expect(got.steadyOilC).toBe(3)
  expect(gainOver(before, evaluation({ travel: { level: point({ speedKmh: 0 }) } }), wrenSite, null)).toMatchObject({
    minutesPerTrip: null,
    paybackYears: null,
    costPerKmh: null,
  })
})
