/** The charts of the shop's copy: pressure and oil speed now and with the way that is offered, and what its price is made of. */
import type { Cost, Evaluation, ResultDocument } from '../../evaluation.ts'
import { buildUpChart, type Share } from '../charts/build-up-chart.ts'
import { type LineBar, lineSpeedChart } from '../charts/line-speed-chart.ts'
import { drawn, quantity, type Units, unitName } from '../format.ts'
import { componentName } from '../names.ts'
import { roundMoney } from '../prices.ts'
import { subjectOf } from '../view-model/subject.ts'
import { en } from '../wording.ts'
import { charts as words } from '../wording-charts.ts'

export interface DrawnWay {
  readonly name: string
  readonly chartSvg: string
}

export interface ChartsView {
  readonly words: typeof words
  readonly pressure: readonly DrawnWay[]
  readonly hasPressure: boolean
  /** Of the ways that do not move on the level. */
  readonly still: readonly string[]
  readonly lineSpeed: readonly DrawnWay[]
  readonly price: readonly DrawnWay[]
  readonly hasPrice: boolean
}

interface Way {
  readonly name: string
  readonly evaluation: Evaluation
}

export interface Pressure {
  /** '' for what no component accounts for. */
  readonly id: string
  readonly bar: number
}

/** Less than this is the rounding of the printed figures. */
const NOTHING_LEFT_BAR = 0.05

const sum = (amounts: readonly number[]): number => amounts.reduce((all, amount) => all + amount, 0)

/** Pump, hose, valve and return of one circuit, in the order that the oil meets them; a `travel.` id is passed there and back. */
const wayOf = ({ travel, lines, drops }: Evaluation, circuit: string): readonly Pressure[] => {
  const own = `circuits.${circuit}.`
  const line = (id: string) => lines.filter((one) => one.id === id).map(({ dropBar }) => ({ id, bar: dropBar }))
  const drop = (id: string, ways = 1) =>
    drops.filter((one) => one.id === id).map(({ dropBar }) => ({ id, bar: ways * dropBar }))
  return [
    ...line(`${own}lines.pressure`),
    ...drop(`${own}valve`),
    ...lines.filter(({ id }) => id.startsWith('travel.')).map(({ id, dropBar }) => ({ id, bar: 2 * dropBar })),
    ...drop('travel.swivel', 2),
    ...drop('travel.motor.block'),
    { id: 'travel.motor', bar: travel.level.motorDifferentialBar },
    ...line(`${own}lines.return`),
    ...drop('filter'),
    ...drop('cooler'),
  ]
}

/**
 * What each component takes of the pump's pressure on the level, by the drops of the result document: valve and block are
 * there for both ways, swivel and travel hoses for one. Of several circuits it is the one whose pump pressure is told, the
 * highest of those that drive.
 * @param driving names of the circuits that drive
 */
export const pressureShares = (evaluation: Evaluation, driving: readonly string[]): readonly Pressure[] => {
  const { pumpPressureBar } = evaluation.travel.level
  const ways = driving.map((name) => wayOf(evaluation, name))
  const left = (way: readonly Pressure[]) => pumpPressureBar - sum(way.map(({ bar }) => bar))
  const [best = []] = [...ways].sort((a, b) => Math.abs(left(a)) - Math.abs(left(b)))
  return Math.abs(left(best)) > NOTHING_LEFT_BAR ? [...best, { id: '', bar: left(best) }] : best
}

const THERE_AND_BACK = /^travel\.(?:lines\.|swivel$)/u

const shareName = (id: string): string => {
  if (id === '') return words.pressure.rest
  if (id === 'travel.motor') return words.pressure.load
  return THERE_AND_BACK.test(id) ? words.pressure.bothWays(componentName(id)) : componentName(id)
}

const pressureChart = (way: Way, index: number, driving: readonly string[], units: Units, most: number): DrawnWay => {
  const shares = pressureShares(way.evaluation, driving).map(
    ({ id, bar }): Share => ({
      name: shareName(id),
      amount: drawn(bar, 'bar', units),
      text: quantity(bar, 'bar', units),
      look: id === 'travel.motor' ? 'kept' : 'plain',
    }),
  )
  const pump = way.evaluation.travel.level.pumpPressureBar
  const whole = { name: words.pressure.pump, amount: drawn(pump, 'bar', units), text: quantity(pump, 'bar', units) }
  return {
    name: way.name,
    chartSvg: buildUpChart({
      id: `pressure-${index}`,
      title: words.pressure.title(way.name),
      description: words.pressure.describe(
        shares.map(({ name, text }) => words.entry(name, text)),
        whole.text,
      ),
      axis: words.pressure.axis(unitName('bar', units)),
      shares,
      whole,
      most,
    }),
  }
}

const speedChart = (way: Way, index: number, units: Units, most: number): DrawnWay => {
  const bars = way.evaluation.lines.map(
    ({ id, velocityMps, limitMps }): LineBar => ({
      name: componentName(id),
      speed: drawn(velocityMps, 'm/s', units),
      guide: drawn(limitMps, 'm/s', units),
      text: quantity(velocityMps, 'm/s', units),
      guideText: words.lineSpeed.guide(quantity(limitMps, 'm/s', units)),
    }),
  )
  return {
    name: way.name,
    chartSvg: lineSpeedChart({
      id: `line-speed-${index}`,
      title: words.lineSpeed.title(way.name),
      description: words.lineSpeed.describe(
        way.evaluation.lines.map(({ id, velocityMps, limitMps }) =>
          words.lineSpeed.bar(componentName(id), quantity(velocityMps, 'm/s', units), quantity(limitMps, 'm/s', units)),
        ),
      ),
      axis: words.lineSpeed.axis(unitName('m/s', units)),
      bars,
      most,
    }),
  }
}

const KINDS = ['parts', 'labour', 'supplies', 'freight', 'contingency', 'tax'] as const

/** The money of one quote by kind; together they are its likely total. */
export const priceShares = (
  cost: Cost,
): readonly { readonly kind: (typeof KINDS)[number]; readonly amount: number }[] =>
  KINDS.map((kind) => ({ kind, amount: kind === 'labour' ? cost.labourTotal : cost[kind] }))

const priceChart = (name: string, cost: Cost, index: number): DrawnWay => {
  const text = (amount: number) => roundMoney(amount, cost.currency)
  const shares = priceShares(cost).map(
    ({ kind, amount }): Share => ({ name: words.price[kind], amount, text: text(amount), look: 'plain' }),
  )
  const whole = {
    name: cost.unpriced.length === 0 ? words.price.whole : words.price.wholeFrom,
    amount: cost.likely,
    text: text(cost.likely),
  }
  return {
    name,
    chartSvg: buildUpChart({
      id: `price-${index}`,
      title: words.price.title(name),
      description: words.price.describe(
        shares.map((share) => words.entry(share.name, share.text)),
        whole.text,
      ),
      axis: words.price.axis(cost.currency),
      shares,
      whole,
      most: 0,
    }),
  }
}

/** Charts keep to one unit, the customer's first. */
export const chartsView = (result: ResultDocument, given: Units): ChartsView => {
  const units: Units = given === 'us' ? 'us' : 'metric'
  const subject = subjectOf(result)
  const option = subject.recommended ?? subject.offered ?? subject.asked
  const ways: readonly Way[] = [
    { name: words.now, evaluation: result.baseline },
    ...(option === null ? [] : [{ name: words.with(option.name), evaluation: option.evaluation }]),
  ]
  const driving = result.diagram.circuits.filter(({ drives }) => drives !== 'no track').map(({ name }) => name)
  const moving = ways.filter(({ evaluation }) => !evaluation.travel.level.stalled)
  const mostBar = Math.max(0, ...moving.map(({ evaluation }) => evaluation.travel.level.pumpPressureBar))
  const mostMps = Math.max(
    0,
    ...ways.flatMap(({ evaluation }) =>
      evaluation.lines.flatMap(({ velocityMps, limitMps }) => [velocityMps, limitMps]),
    ),
  )
  const costs = [
    ...(result.restoration === null ? [] : [{ name: en.speedChart.restored, cost: result.restoration.cost }]),
    ...(option === null ? [] : [{ name: en.quoted(option.name), cost: option.cost }]),
  ]
  return {
    words,
    pressure: moving.map((way, index) => pressureChart(way, index, driving, units, drawn(mostBar, 'bar', units))),
    hasPressure: moving.length > 0,
    still: ways.filter((way) => !moving.includes(way)).map(({ name }) => words.pressure.stalled(name)),
    lineSpeed: ways.map((way, index) => speedChart(way, index, units, drawn(mostMps, 'm/s', units))),
    price: costs.map(({ name, cost }, index) => priceChart(name, cost, index)),
    hasPrice: costs.length > 0,
  }
}
