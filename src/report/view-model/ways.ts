/** Second page: every way side by side, doing nothing and the ways that leave the machine alone included, and two charts. */
import type { Answer, Evaluation, OptionResult, Point, Range, ResultDocument } from '../../evaluation.ts'
import { quantity, span, type Units } from '../format.ts'
import { moneySpan, roundMoney } from '../prices.ts'
import { en } from '../wording.ts'
import { alternativeBrings, isOpen, optionBrings, repairBrings } from './brings.ts'
import { type OilView, oilView, type SpeedView, speedView } from './chart-views.ts'
import { type FoundView, foundViews } from './found.ts'
import { stillShort } from './still-short.ts'
import { changesNothing, isInRepair, type Subject } from './subject.ts'

export type Verdict = 'recommend' | 'conditions' | 'decline' | 'open' | 'first'

export interface WayRow {
  readonly name: string
  readonly level: string
  readonly grade: string
  readonly turn: string
  readonly oil: string
  /** Range of the settled oil; '' where none was worked out, or where its ends round alike. */
  readonly oilRange: string
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

/** "58–62 °C" under the settled temperature; small print keeps to one unit. */
const oilRange = (range: Range | null, units: Units): string => {
  const { p10, p90 } = range?.steadyOilC ?? { p10: null, p90: null }
  return p10 === null || p90 === null || Math.round(p10) === Math.round(p90)
    ? ''
    : span(p10, p90, '°C', units === 'both' ? 'metric' : units)
}

const answerText = ({ answer, reasons, conditions }: Answer): readonly string[] => {
  // A no names everything that stands against it, the maker's consent too; a yes has it among its conditions.
  if (answer === 'decline') return [...new Set(reasons.map((reason) => en.sentence(reason.text)))]
  const first = conditions.map(en.sentence)
  const why = reasons.map((reason) => en.sentence(reason.text)).filter((text) => !first.includes(text))
  return first.length === 0 ? why : [...why, en.ways.conditionsFirst, ...first]
}

/** Its reasons; where a recommended way has none, why the shop proposes it. */
const wayReasons = (option: OptionResult): readonly string[] => {
  const own = answerText(option.answer)
  return own.length > 0 || option.why === null ? own : [en.sentence(option.why)]
}

/** The oil is cool only because a cooler followed. */
export const isCooledByConsequence = ({ consequences, evaluation, asAskedOnly }: OptionResult): boolean => {
  const [settles, without] = [evaluation.heat.steadyOilC, asAskedOnly.heat.steadyOilC]
  const brought = consequences.some(({ kind, action }) => kind === 'cooler' && action !== 'adapt')
  return brought && settles !== null && (without === null || without - settles >= 2)
}

/** What the oil would be as asked, where a cooler followed. */
const coolerNote = (option: OptionResult, units: Units): readonly string[] => {
  const [settles, without] = [option.evaluation.heat.steadyOilC, option.asAskedOnly.heat.steadyOilC]
  if (settles === null || !isCooledByConsequence(option)) return []
  const text = (celsius: number) => quantity(celsius, '°C', units)
  return [en.ways.withCooler(text(settles), without === null ? '' : text(without))]
}

/** Said before anything else, so that nobody looks for the difference. */
const sameNote = ({ sameAs }: OptionResult): readonly string[] =>
  sameAs === null ? [] : [en.ways.sameAs(en.quoted(sameAs))]

/** What page one recommends is not advised against here, even where it falls short of what it is for. */
const verdictOf = (option: OptionResult, subject: Subject): { verdict: string; mark: Verdict } => {
  const { answer } = option.answer
  const { nothingFound, nothingNeeded } = en.ways.verdict
  if (changesNothing(option))
    return { verdict: option.found?.meets === false ? nothingFound : nothingNeeded, mark: 'open' }
  return answer === 'decline' && option === subject.recommended
    ? { verdict: en.ways.verdict.best, mark: 'conditions' }
    : { verdict: en.ways.verdict[answer], mark: answer }
}

const optionRow = (option: OptionResult, result: ResultDocument, subject: Subject, units: Units): WayRow => ({
  name: option.name,
  ...figures(option.evaluation, units),
  oilRange: oilRange(option.range, units),
  price: isInRepair(result, option.name)
    ? en.ways.inRepair
    : changesNothing(option)
      ? en.ways.free
      : moneySpan(option.cost.low, option.cost.high, option.cost.currency, isOpen(option.cost)),
  brings: optionBrings(option, result, option === subject.recommended, units),
  ...verdictOf(option, subject),
  reasons: [
    ...sameNote(option),
    ...wayReasons(option),
    ...coolerNote(option, units),
    ...stillShort(result, option.evaluation, units),
  ],
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
    oilRange: oilRange(result.baselineRange, units),
    price: words.free,
    brings: [words.nothing],
    verdict: words.verdict.asItIs,
    mark: 'open',
    reasons: [note],
    bare: false,
  }
}

/** A repair may make the oil hotter: the relief holds its pressure again. Said from two degrees up. */
export const hotterNote = ({ baseline, restored }: ResultDocument, units: Units): readonly string[] => {
  const [now, then] = [baseline.heat.steadyOilC, restored?.heat.steadyOilC ?? null]
  return now === null || then === null || then - now <= 2
    ? []
    : [en.ways.restoredHotter(quantity(then, '°C', units), quantity(now, '°C', units))]
}

const restored = (result: ResultDocument, units: Units, currency: string): readonly WayRow[] => {
  const words = en.ways
  if (result.restored === null) return []
  const { restoration } = result
  return [
    {
      name: words.restored,
      ...figures(result.restored, units),
      oilRange: '',
      price:
        restoration === null
          ? en.noPrice
          : moneySpan(restoration.cost.low, restoration.cost.high, currency, isOpen(restoration.cost)),
      brings: restoration === null ? [en.ways.faultGone] : repairBrings(restoration, result, units),
      verdict: words.verdict.first,
      mark: 'first',
      reasons: [words.restoredNote, ...hotterNote(result, units)],
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
    oilRange: '',
    price: cost === 0 ? en.ways.free : roundMoney(cost, currency),
    brings: [alternativeBrings(minutesPerDay, result.sheet.site.daysPerYear)],
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
      ...result.options.map((option) => optionRow(option, result, subject, units)),
      ...alternatives(result, currency),
    ],
    speed: speedView(result, subject, units),
    oil: oilView(result, subject, units),
    found: foundViews(result, units),
  }
}
