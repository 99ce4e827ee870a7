/** What more money buys: a step for each way worth its price, named at the right end of its tread. */
import { scaleLinear } from 'd3-scale'
import { curveStepAfter, line } from 'd3-shape'
import { at, clearTicks, clipped, escapeText, keptApart, label, picture, rule, textWidth, wrapped } from './svg.ts'

export interface Step {
  readonly price: number
  /** In the customer's unit. */
  readonly reached: number
  /** Ready text of price and what is reached. */
  readonly text: string
  /** What changes. */
  readonly what: string
  /** `now`: the machine as it is; `best`: the way that is offered. */
  readonly look: 'now' | 'way' | 'best'
  /** One that is not named is drawn all the same. */
  readonly named: boolean
  /** Beside the steps: it is bought under other terms. */
  readonly apart: boolean
}

export interface PriceAndSpeedChart {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** Under the axis. */
  readonly axis: string
  /** Over the vertical axis: "km/h". */
  readonly unit: string
  /** In the order of their price. */
  readonly steps: readonly Step[]
  readonly wanted: { readonly reached: number; readonly text: string } | null
}

const WIDTH = 700
const LEFT = 128
const RIGHT = 370
const NAMES = RIGHT + 26
const TOP = 30
const ROW = 12
const LEAST_HEIGHT = 150
/** Ticks this near to the label of what is wanted give way to it. */
const NEAR = 12

/**
 * A tread reaches to the next step, so that no rise stands between its end and its name: the names keep clear of the steps.
 * @returns the chart as one SVG element
 */
export const priceAndSpeedChart = (chart: PriceAndSpeedChart): string => {
  const { steps, wanted } = chart
  const named = steps.filter((step) => step.named)
  const lines = named.map((step) => wrapped(step.what, 10, WIDTH - NAMES - 4, 2))
  const rooms = lines.map((texts) => 20 + texts.length * ROW)
  const bottom = TOP + Math.max(LEAST_HEIGHT, rooms.reduce((sum, room) => sum + room, 0) - 20)
  const levels = [...steps.map(({ reached }) => reached), ...(wanted === null ? [] : [wanted.reached])]
  const [low, high] = [Math.min(...levels), Math.max(...levels)]
  const y = scaleLinear()
    .domain(low < high ? [low, high] : [low - 1, low + 1])
    .nice(5)
    .range([bottom, TOP])
  const x = scaleLinear()
    .domain([0, 1.06 * Math.max(1, ...steps.map(({ price }) => price))])
    .nice(4)
    .range([LEFT, RIGHT])

  const places = keptApart(
    named.map(({ reached }) => y(reached)),
    rooms,
    TOP - 18,
    bottom + 18,
  )
  const onSteps = steps.filter(({ apart }) => !apart)
  const path = line<readonly [number, number]>()
    .x(([price]) => x(price))
    .y(([, reached]) => y(reached))
    .curve(curveStepAfter)
    .digits(2)
  const last = onSteps.at(-1)
  const points = onSteps.map(({ price, reached }): readonly [number, number] => [price, reached])
  const treads = last === undefined ? [] : [...points, [x.domain()[1] ?? last.price, last.reached] as const]

  const names = named
    .map((step, index) => {
      const [place, texts] = [places[index] ?? 0, lines[index] ?? []]
      const next = step.apart ? step : (onSteps[onSteps.indexOf(step) + 1] ?? null)
      const from = next === null ? RIGHT : x(next.price)
      const first = place + 4 - (texts.length * ROW) / 2
      const kind = step.look === 'way' ? '' : ` ${step.look}`
      return (
        `<polyline class="leader" points="${at(from + (step.apart ? 5 : 0))},${at(y(step.reached))} ${at(RIGHT + 4)},${at(y(step.reached))} ${at(NAMES - 10)},${at(place)} ${at(NAMES - 4)},${at(place)}"/>` +
        label(clipped(step.text, 10.5, WIDTH - NAMES - 4), NAMES, first, 'start', `value${kind}`) +
        texts.map((text, row) => label(text, NAMES, first + ROW * (row + 1), 'start', `small${kind}`)).join('')
      )
    })
    .join('')
  const dots = steps
    .map(
      ({ price, reached, look, apart }) =>
        `<circle class="dot ${look}${apart ? ' apart' : ''}" cx="${at(x(price))}" cy="${at(y(reached))}" r="${look === 'best' ? 5 : 3}"/>`,
    )
    .join('')

  const wish = wanted === null ? [] : wrapped(wanted.text, 10, LEFT - 12, 2)
  const limit =
    wanted === null
      ? ''
      : rule(LEFT, y(wanted.reached), RIGHT, y(wanted.reached), 'wanted') +
        wish
          .map((text, row) =>
            label(text, LEFT - 8, y(wanted.reached) + 4 + (row - (wish.length - 1) / 2) * ROW, 'end', 'mark'),
          )
          .join('')
  const ticks = y
    .ticks(5)
    .filter((tick) => wanted === null || Math.abs(y(tick) - y(wanted.reached)) > NEAR * Math.max(1, wish.length))
    .map(
      (tick) =>
        rule(LEFT - 4, y(tick), LEFT, y(tick), 'tick') +
        label(y.tickFormat(5)(tick), LEFT - 8, y(tick) + 4, 'end', 'small'),
    )
    .join('')
  const prices = clearTicks(x, 4, 10)
    .map(
      ({ place, text }) =>
        rule(place, bottom, place, bottom + 4, 'tick') + label(text, place, bottom + 16, 'middle', 'small'),
    )
    .join('')
  const axes = rule(LEFT, TOP, LEFT, bottom, 'base') + rule(LEFT, bottom, RIGHT, bottom, 'base')
  const unit = label(chart.unit, Math.max(LEFT - 8, textWidth(chart.unit, 10)), TOP - 14, 'end', 'small')
  return picture({
    id: chart.id,
    width: WIDTH,
    height: bottom + 40,
    title: chart.title,
    description: chart.description,
    body:
      ticks +
      prices +
      limit +
      names +
      `<path class="steps" d="${escapeText(path(treads) ?? '')}"/>` +
      dots +
      axes +
      unit +
      label(chart.axis, LEFT, bottom + 32, 'start', 'small'),
  })
}
