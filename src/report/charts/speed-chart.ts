/** Travel speed on the level as bars: now and each way, each with its range, and the speed that is wanted as a line. */
import { scaleLinear } from 'd3-scale'
import { at, label, picture, rule, textWidth, wrapped } from './svg.ts'

export interface SpeedBar {
  readonly name: string
  /** In the customer's unit; 0 where the machine does not move. */
  readonly speed: number
  /** p10 and p90; null where no range was worked out. */
  readonly range: readonly [number, number] | null
  /** Ready text of speed and range; '' for no range. */
  readonly text: string
  readonly rangeText: string
  /** How it is filled: as it is now, a way, the way that is recommended, a way advised against. */
  readonly look: 'now' | 'way' | 'best' | 'against'
}

export interface SpeedChart {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** Under the axis: unit and what the thin line is. */
  readonly axis: string
  readonly bars: readonly SpeedBar[]
  readonly wanted: { readonly speed: number; readonly text: string } | null
}

const WIDTH = 450
const NAMES = 116
const VALUES = 74
const ROW = 31
/** With names of three lines. */
const HIGH_ROW = 41
const TOP = 26
const SIZE = 10.5
const LEFT = NAMES + 10
const RIGHT = WIDTH - VALUES

const nameLines = (entry: SpeedBar) => wrapped(entry.name, SIZE, NAMES - 6, 3)

const bar = (entry: SpeedBar, middle: number, x: (speed: number) => number): string => {
  const lines = nameLines(entry)
  const name = lines
    .map((line, index) =>
      label(line, NAMES, middle + 4 + (index - (lines.length - 1) / 2) * 12.5, 'end', `name ${entry.look}`),
    )
    .join('')
  const box = `<rect class="bar ${entry.look}" x="${at(LEFT)}" y="${at(middle - 9)}" width="${at(Math.max(0, x(entry.speed) - LEFT))}" height="18"/>`
  const whisker =
    entry.range === null
      ? ''
      : rule(x(entry.range[0]), middle, x(entry.range[1]), middle, 'whisker') +
        entry.range.map((end) => rule(x(end), middle - 5, x(end), middle + 5, 'whisker')).join('')
  const up = entry.rangeText === '' ? 4 : -2
  const value = label(entry.text, WIDTH, middle + up, 'end', 'value')
  const range = entry.rangeText === '' ? '' : label(entry.rangeText, WIDTH, middle + 11, 'end', 'small')
  return name + box + whisker + value + range
}

/** @returns the chart as one SVG element; names and values stand in columns of their own, so that no label meets a bar */
export const speedChart = (chart: SpeedChart): string => {
  const most = Math.max(
    ...chart.bars.flatMap((entry) => [entry.speed, entry.range?.[1] ?? 0]),
    chart.wanted?.speed ?? 0,
    0.1,
  )
  const x = scaleLinear()
    .domain([0, most])
    .nice(5)
    .range([LEFT, RIGHT - 14])
  const row = chart.bars.some((entry) => nameLines(entry).length > 2) ? HIGH_ROW : ROW
  const bottom = TOP + chart.bars.length * row
  const ticks = x.ticks(5)
  const axis = ticks
    .map(
      (tick) =>
        rule(x(tick), TOP, x(tick), bottom, 'grid') +
        label(x.tickFormat(5)(tick), x(tick), bottom + 15, 'middle', 'small'),
    )
    .join('')
  const half = chart.wanted === null ? 0 : textWidth(chart.wanted.text, 10.5) / 2
  const wanted =
    chart.wanted === null
      ? ''
      : rule(x(chart.wanted.speed), TOP - 6, x(chart.wanted.speed), bottom, 'wanted') +
        label(
          chart.wanted.text,
          Math.max(LEFT + half, Math.min(WIDTH - half, x(chart.wanted.speed))),
          TOP - 11,
          'middle',
          'mark',
        )
  const bars = chart.bars.map((entry, index) => bar(entry, TOP + (index + 0.5) * row, x)).join('')
  const base = rule(LEFT, TOP, LEFT, bottom, 'base')
  const unit = wrapped(chart.axis, 10, RIGHT - LEFT + VALUES, 2)
    .map((text, index) => label(text, LEFT, bottom + 31 + index * 12.5, 'start', 'small'))
    .join('')
  return picture({
    id: chart.id,
    width: WIDTH,
    height: bottom + 48,
    title: chart.title,
    description: chart.description,
    body: axis + bars + wanted + base + unit,
  })
}
