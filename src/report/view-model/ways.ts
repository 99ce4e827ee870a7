/** Second page: every way side by side, doing nothing and the ways that leave the machine alone included, and two charts. */
import type { Answer, Evaluation, Gain, OptionResult, Point, ResultDocument } from '../../evaluation.ts'
import { decimal, minutes, moneyPerSpeed, moneySpan, quantity, roundMoney, type Units, wholeHours } from '../format.ts'
import { en } from '../wording.ts'
import { type OilView, oilView, type SpeedView, speedView } from './chart-views.ts'
import { type FoundView, foundViews } from './found.ts'
import type { Subject } from './subject.ts'

export type Verdict = 'recommend' | 'conditions' | 'decline' | 'open' | 'first'

export interface WayRow {
  readonly name: string
  readonly level: string
  readonly grade: string
  readonly turn: string
  readonly oil: string
  readonly price: string
  readonly brings: readonly string[]
  readonly verdict: string
  /** Class of the verdict's mark. */
  readonly mark: Verdict
  readonly reasons: readonly string[]
  /** A way that leaves the machine alone: it has no figures of its own. */
  readonly bare: boolean
}

export interface WaysView {
  readonly words: typeof en.ways
  readonly gradeHead: string
  readonly rows: readonly WayRow[]
  readonly speed: SpeedView
  readonly oil: OilView
  readonly found: readonly FoundView[]
}

const speedText = (point: Point, units: Units, stalled: string) =>
  point.stalled ? stalled : quantity(point.speedKmh, 'km/h', units)

const figures = (evaluation: Evaluation, units: Units) => {
  const { level, grade, turn } = evaluation.travel
  return {
    level: speedText(level, units, en.stalled),
    grade: speedText(grade, units, en.cannotClimb),
    turn: turn === null ? en.onWheels : turn.stalled || turn.tractiveForceN < turn.neededForceN ? en.no : en.yes,
    oil: evaluation.heat.steadyOilC === null ? en.ways.notSettled : quantity(evaluation.heat.steadyOilC, '°C', units),
  }
}

/** Saved or lost, from a difference: positive saves. */
const timeText = (text: string, gained: boolean) => (gained ? en.ways.saves(text) : en.ways.costs(text))

/** Hours a year, whole. */
const year = (hoursPerYear: number | null): readonly string[] =>
  hoursPerYear === null || Math.abs(hoursPerYear) < 0.5 ? [] : [en.ways.perYear(wholeHours(Math.abs(hoursPerYear)))]

const brings = (gain: Gain, units: Units, currency: string): readonly string[] => {
  const words = en.ways
  const trip = gain.minutesPerTrip
  const cooler = gain.steadyOilC
  const time =
    trip === null || Math.abs(trip) < 0.05
      ? []
      : [timeText([words.perTrip(minutes(Math.abs(trip))), ...year(gain.hoursPerYear)].join(', '), trip > 0)]
  const degrees =
    cooler === null || Math.abs(cooler) < 2.5
      ? []
      : [cooler < 0 ? words.cooler(quantity(-cooler, 'K', units)) : words.hotter(quantity(cooler, 'K', units))]
  const per =
    gain.costPerKmh === null || gain.speedKmh === null || gain.speedKmh <= 0
      ? []
      : [moneyPerSpeed(gain.costPerKmh, currency, units)]
  const pays =
    gain.paybackYears === null
      ? []
      : [gain.paybackYears < 1 ? words.paysSoon : words.pays(decimal(gain.paybackYears, 1))]
  const all = [...time, ...degrees, ...per, ...pays]
  return all.length === 0 ? [words.nothing] : all
}

const answerText = ({ answer, reasons, conditions }: Answer): readonly string[] => {
  const first = conditions.map(en.sentence)
  const why = reasons.map((reason) => en.sentence(reason.text)).filter((text) => !first.includes(text))
  return answer === 'decline' || first.length === 0 ? why : [...why, en.ways.conditionsFirst, ...first]
}

/** Its reasons; where a recommended way has none, why the shop proposes it. */
const wayReasons = (option: OptionResult): readonly string[] => {
  const own = answerText(option.answer)
  return own.length > 0 || option.why === null ? own : [en.sentence(option.why)]
}

const optionRow = (option: OptionResult, units: Units, currency: string): WayRow => ({
  name: option.name,
  ...figures(option.evaluation, units),
  price: moneySpan(option.cost.low, option.cost.high, currency, option.cost.unpriced.length > 0),
  brings: brings(option.gain, units, currency),
  verdict: en.ways.verdict[option.answer.answer],
  mark: option.answer.answer,
  reasons: wayReasons(option),
  bare: false,
})

const asItIs = (result: ResultDocument, units: Units): WayRow => {
  const words = en.ways
  const { risk } = result.baseline.heat
  const fault = result.recommendation.faults.length > 0
  const note = fault
    ? words.asItIsFault
    : risk === 'high' || risk === 'severe'
      ? words.asItIsHot
      : risk === 'moderate'
        ? words.asItIsWarm
        : words.asItIsFine
  return {
    name: words.asItIs,
    ...figures(result.baseline, units),
    price: words.free,
    brings: [words.nothing],
    verdict: words.verdict.open,
    mark: 'open',
    reasons: [note],
    bare: false,
  }
}

const restored = (result: ResultDocument, units: Units, currency: string): readonly WayRow[] => {
  const words = en.ways
  if (result.restored === null) return []
  const { restoration } = result
  return [
    {
      name: words.restored,
      ...figures(result.restored, units),
      price:
        restoration === null
          ? en.noPrice
          : moneySpan(restoration.cost.low, restoration.cost.high, currency, restoration.cost.unpriced.length > 0),
      // What a speed costs by the piece is for ways of going faster, not for a repair.
      brings:
        restoration === null
          ? []
          : brings({ ...restoration.gain, costPerKmh: null, paybackYears: null }, units, currency),
      verdict: words.verdict.first,
      mark: 'first',
      reasons: [words.restoredNote],
      bare: false,
    },
  ]
}

const alternatives = (result: ResultDocument, currency: string): readonly WayRow[] =>
  result.sheet.alternatives.map(({ name, minutesPerDay, cost }) => ({
    name,
    level: '',
    grade: '',
    turn: '',
    oil: '',
    price: cost === 0 ? en.ways.free : roundMoney(cost, currency),
    brings: [minutesPerDay > 0 ? en.ways.saves(en.ways.perDay(minutes(minutesPerDay))) : en.ways.nothing],
    verdict: en.ways.verdict.open,
    mark: 'open',
    reasons: [en.ways.alternativeNote],
    bare: true,
  }))

export const waysView = (result: ResultDocument, subject: Subject, units: Units): WaysView => {
  const { currency } = result.sheet.shop
  return {
    words: en.ways,
    gradeHead: en.ways.grade(quantity(result.sheet.site.steepestGradePercent, '%', units)),
    rows: [
      asItIs(result, units),
      ...restored(result, units, currency),
      ...result.options.map((option) => optionRow(option, units, currency)),
      ...alternatives(result, currency),
    ],
    speed: speedView(result, subject, units),
    oil: oilView(result, subject, units),
    found: foundViews(result, units),
  }
}
