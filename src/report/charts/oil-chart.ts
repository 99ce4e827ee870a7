/** Oil temperature over a working day: one curve as it is and one for each way, with the limits drawn in and labelled. */
import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { at, escapeText, keptApart, label, picture, rule, wrapped } from './svg.ts'

export interface OilCurve {
  readonly name: string
  /** [minutes, temperature in the customer's unit]. */
  readonly points: readonly (readonly [number, number])[]
  /** Ready text of the last temperature. */
  readonly end: string
  readonly look: 'now' | 'way' | 'best' | 'against'
}

export interface OilLimit {
  readonly temperature: number
  /** "too hot above 82 °C". */
  readonly text: string
}

export interface OilChart {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** Under the axis. */
  readonly axis: string
  /** Over the vertical axis: "°C". */
  readonly unit: string
  readonly curves: readonly OilCurve[]
  readonly limits: readonly OilLimit[]
}

const WIDTH = 450
const LEFT = 114
const RIGHT = 330
const TOP = 22
/** Under the axis: hours and what they are. */
const FOOT = 42
/** As high as it is with few curves; more need the room for their names. */
const PLOT = 134
const HOURS = 8
/** Dashes of the ways beside the recommended one, so that they stay apart without colour. */
const DASHES = ['7 4', '2 3', '10 3 2 3', '4 2', '12 4', '1 4']

/** @returns the chart as one SVG element; limits are labelled left of the axis, curves at their right end */
export const oilChart = (chart: OilChart): string => {
  const broken = (most: number) => chart.curves.map((curve) => wrapped(curve.name, 10, WIDTH - RIGHT - 20, most))
  const gapsOf = (names: readonly (readonly string[])[]) => names.map((lines) => 18 + lines.length * 11.5)
  const tall = (names: readonly (readonly string[])[]) => gapsOf(names).reduce((sum, gap) => sum + gap, 0) - 28
  // Three lines where all of them find room one above the other, else two.
  const whole = broken(3)
  const names = tall(whole) <= PLOT ? whole : broken(2)
  const gaps = gapsOf(names)
  const bottom = TOP + Math.max(PLOT, tall(names))
  const temperatures = chart.curves.flatMap((curve) => curve.points.map(([, temperature]) => temperature))
  const marks = chart.limits.map((limit) => limit.temperature)
  const y = scaleLinear()
    .domain([Math.min(...temperatures, ...marks), Math.max(...temperatures, ...marks)])
    .nice(6)
    .range([bottom, TOP])
  const x = scaleLinear()
    .domain([0, HOURS * 60])
    .range([LEFT, RIGHT])
  const path = line<readonly [number, number]>()
    .x(([minute]) => x(minute))
    .y(([, temperature]) => y(temperature))
    .digits(2)

  const hours = Array.from(
    { length: HOURS + 1 },
    (_, hour) =>
      rule(x(hour * 60), bottom, x(hour * 60), bottom + 4, 'tick') +
      label(String(hour), x(hour * 60), bottom + 17, 'middle', 'small'),
  ).join('')

  const limitPlaces = keptApart(
    chart.limits.map((limit) => y(limit.temperature)),
    chart.limits.map(() => 13),
    TOP - 6,
    bottom,
  )
  const limits = chart.limits
    .map(
      (limit, index) =>
        rule(LEFT, y(limit.temperature), RIGHT, y(limit.temperature), 'limit') +
        label(limit.text, LEFT - 8, (limitPlaces[index] ?? 0) + 4, 'end', 'mark'),
    )
    .join('')
  // A tick that would sit on a limit's label gives way to it.
  const ticks = y
    .ticks(6)
    .filter((tick) => limitPlaces.every((place) => Math.abs(place - y(tick)) > 12))
    .map(
      (tick) =>
        rule(LEFT - 4, y(tick), LEFT, y(tick), 'tick') +
        label(y.tickFormat(6)(tick), LEFT - 8, y(tick) + 4, 'end', 'small'),
    )
    .join('')

  const ends = chart.curves.map((curve) => y(curve.points.at(-1)?.[1] ?? y.domain()[0] ?? 0))
  const places = keptApart(ends, gaps, TOP - 14, bottom + 14)
  let way = 0
  const curves = chart.curves
    .map((curve, index) => {
      const dashed = curve.look === 'way' || curve.look === 'against'
      const dash = dashed ? ` stroke-dasharray="${DASHES[way++ % DASHES.length] ?? ''}"` : ''
      const [end, place, lines] = [ends[index] ?? 0, places[index] ?? 0, names[index] ?? []]
      return (
        `<path class="curve ${curve.look}" d="${escapeText(path(curve.points) ?? '')}"${dash}/>` +
        `<polyline class="leader" points="${at(RIGHT + 2)},${at(end)} ${at(RIGHT + 9)},${at(place)} ${at(RIGHT + 14)},${at(place)}"/>` +
        label(curve.end, RIGHT + 18, place + 4 - lines.length * 5.75, 'start', `value ${curve.look}`) +
        lines
          .map((text, row) =>
            label(text, RIGHT + 18, place + 15 - lines.length * 5.75 + row * 11.5, 'start', `small ${curve.look}`),
          )
          .join('')
      )
    })
    .join('')

  const frame = rule(LEFT, TOP, LEFT, bottom, 'base') + rule(LEFT, bottom, RIGHT, bottom, 'base')
  const axis =
    label(chart.axis, LEFT, bottom + 34, 'start', 'small') + label(chart.unit, LEFT - 8, TOP - 10, 'end', 'small')
  return picture({
    id: chart.id,
    width: WIDTH,
    height: bottom + FOOT,
    title: chart.title,
    description: chart.description,
    body: limits + ticks + hours + curves + frame + axis,
  })
}
