/** The two charts of the second page, each with the small table beside it. */
import type { Evaluation, Range, ResultDocument } from '../../evaluation.ts'
import { type OilCurve, oilChart } from '../charts/oil-chart.ts'
import { type SpeedBar, speedChart } from '../charts/speed-chart.ts'
import { bare, bareSpan, drawn, minutes, quantity, span, type Units, unitName } from '../format.ts'
import { en } from '../wording.ts'
import type { Subject } from './subject.ts'

export interface SpeedView {
  readonly words: typeof en.speedChart
  readonly chartSvg: string
  readonly speedHead: string
  readonly rangeHead: string
  readonly rows: readonly { readonly name: string; readonly speed: string; readonly range: string }[]
}

export interface OilView {
  readonly words: typeof en.oilChart
  readonly chartSvg: string
  readonly heads: readonly string[]
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[]
  readonly note: string
}

type Look = SpeedBar['look']

interface Way {
  readonly name: string
  readonly evaluation: Evaluation
  readonly range: Range | null
  readonly look: Look
}

/** Limits of the risk bands [°C]. */
const WARM = 60
const HOT = 70
const SEVERE = 82

/** Signs of a name that fit beside a curve. */
const ROOM = 28

const waysOf = (result: ResultDocument, subject: Subject): readonly Way[] => {
  const best = subject.recommended ?? subject.offered
  return [
    { name: en.speedChart.now, evaluation: result.baseline, range: result.baselineRange, look: 'now' },
    ...(result.restored === null
      ? []
      : [
          {
            name: en.speedChart.restored,
            evaluation: result.restored,
            range: null,
            look: (subject.kind === 'restore' && best === null ? 'best' : 'way') as Look,
          },
        ]),
    ...result.options.map((option) => ({
      name: option.name,
      evaluation: option.evaluation,
      range: option.range,
      look: (option === best ? 'best' : option.answer.answer === 'decline' ? 'against' : 'way') as Look,
    })),
  ]
}

/** Charts and the tables beside them keep to one unit, the customer's first; the ways above have both where both are asked. */
const first = (units: Units): Units => (units === 'us' ? 'us' : 'metric')

const ends = (range: Range | null): readonly [number, number] | null => {
  const { p10, p90 } = range?.speedKmh ?? { p10: null, p90: null }
  return p10 === null || p90 === null ? null : [p10, p90]
}

export const speedView = (result: ResultDocument, subject: Subject, units: Units): SpeedView => {
  const words = en.speedChart
  const one = first(units)
  const ways = waysOf(result, subject)
  const text = (way: Way, shown: Units) =>
    way.evaluation.travel.level.stalled ? en.stalled : quantity(way.evaluation.travel.level.speedKmh, 'km/h', shown)
  const range = (way: Way, shown: Units) => {
    const both = ends(way.range)
    return both === null ? '' : span(both[0], both[1], 'km/h', shown)
  }
  const unit = unitName('km/h', one)
  const bars = ways.map((way): SpeedBar => {
    const both = ends(way.range)
    return {
      name: way.name,
      speed: drawn(way.evaluation.travel.level.speedKmh, 'km/h', one),
      range: both === null ? null : [drawn(both[0], 'km/h', one), drawn(both[1], 'km/h', one)],
      text: text(way, one),
      // A range that rounds to the figure over it says nothing more.
      rangeText: range(way, one) === text(way, one) ? '' : range(way, one),
      look: way.look,
    }
  })
  const wanted = result.sheet.wants.speedKmh
  const chartSvg = speedChart({
    id: 'speed',
    title: words.title,
    description: words.describe([
      ...ways.map((way) => words.bar(way.name, text(way, units), range(way, units))),
      ...(wanted === null ? [] : [words.wanted(quantity(wanted, 'km/h', units))]),
    ]),
    axis: one === 'us' ? words.unitUs(unit) : words.unit(unit),
    bars,
    wanted:
      wanted === null ? null : { speed: drawn(wanted, 'km/h', one), text: words.wanted(quantity(wanted, 'km/h', one)) },
  })
  return {
    words,
    chartSvg,
    speedHead: words.speed(unit),
    rangeHead: words.range(unit),
    rows: ways.map((way) => {
      const both = ends(way.range)
      return {
        name: way.name,
        speed: way.evaluation.travel.level.stalled ? en.dash : bare(way.evaluation.travel.level.speedKmh, 'km/h', one),
        range: both === null ? '' : bareSpan(both[0], both[1], 'km/h', one),
      }
    }),
  }
}

/** Temperature of a curve at a whole hour: the point nearest to it. */
const atHour = (evaluation: Evaluation, hour: number): number | null => {
  const { curve } = evaluation.heat
  const nearest = [...curve].sort((a, b) => Math.abs(a[0] - hour * 60) - Math.abs(b[0] - hour * 60))[0]
  return nearest === undefined ? null : nearest[1]
}

/** Two short lines are all the room beside a curve. */
const shortened = (name: string): string => (name.length > ROOM ? name.replaceAll(en.and, en.plus) : name)

export const oilView = (result: ResultDocument, subject: Subject, units: Units): OilView => {
  const words = en.oilChart
  const one = first(units)
  const ways = waysOf(result, subject).filter((way) => way.evaluation.heat.curve.length > 0)
  const text = (celsius: number | null, shown: Units) => quantity(celsius, '°C', shown)
  const curves = ways.map(
    (way): OilCurve => ({
      name: shortened(way.name),
      points: way.evaluation.heat.curve.map(([minute, celsius]) => [minute, drawn(celsius, '°C', one)] as const),
      end: text(way.evaluation.heat.curve.at(-1)?.[1] ?? null, one),
      look: way.look,
    }),
  )
  const limits = [
    { celsius: WARM, name: words.warm },
    { celsius: HOT, name: words.hot },
    { celsius: SEVERE, name: words.severe },
  ]
  const chartSvg = oilChart({
    id: 'oil',
    title: words.title,
    description: words.describe(
      ways.map((way) =>
        words.curve(way.name, text(atHour(way.evaluation, 1), units), text(atHour(way.evaluation, 8), units)),
      ),
      en.list(limits.map(({ celsius, name }) => `${name} ${text(celsius, units)}`)),
    ),
    axis: words.hours,
    unit: unitName('°C', one),
    curves,
    limits: limits.map(({ celsius, name }) => ({
      temperature: drawn(celsius, '°C', one),
      text: `${name} ${text(celsius, one)}`,
    })),
  })
  return {
    words,
    chartSvg,
    heads: [words.after('1'), words.after('8'), words.reaches(text(HOT, first(units)))],
    rows: ways.map((way) => ({
      name: way.name,
      cells: [
        text(atHour(way.evaluation, 1), one),
        text(atHour(way.evaluation, 8), one),
        way.evaluation.heat.minutesTo['70'] === null ? words.never : minutes(way.evaluation.heat.minutesTo['70']),
      ],
    })),
    note: words.limitsNote(text(WARM, one), text(HOT, one), text(SEVERE, one)),
  }
}
