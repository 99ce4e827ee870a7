/** Oil speed line by line: a bar each, on the band that its guide value leaves it. */
import { scaleLinear } from 'd3-scale'
import { at, clearTicks, label, picture, rule, wrapped } from './svg.ts'

export interface LineBar {
  readonly name: string
  readonly speed: number
  /** Its guide value: the band reaches from nothing to here. */
  readonly guide: number
  /** Ready texts. */
  readonly text: string
  readonly guideText: string
}

export interface LineSpeedChart {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** Under the axis: unit, and what the band is. */
  readonly axis: string
  readonly bars: readonly LineBar[]
  /** Both charts of a pair end at the same figure; 0: at the fastest of these. */
  readonly most: number
}

const WIDTH = 340
const NAMES = 132
const VALUES = 62
const ROW = 29
const TOP = 6
const SIZE = 10.5
const LEFT = NAMES + 8
const RIGHT = WIDTH - VALUES

/** @returns the chart as one SVG element; a bar that leaves its band is filled, one that stays in it is not */
export const lineSpeedChart = (chart: LineSpeedChart): string => {
  const x = scaleLinear()
    .domain([0, Math.max(chart.most, ...chart.bars.flatMap(({ speed, guide }) => [speed, guide]), 0.1)])
    .nice(4)
    .range([LEFT, RIGHT])
  const bottom = TOP + chart.bars.length * ROW
  const ticks = clearTicks(x, 4, 10)
    .map(
      ({ place, text }) =>
        rule(place, bottom, place, bottom + 4, 'tick') + label(text, place, bottom + 16, 'middle', 'small'),
    )
    .join('')
  const bars = chart.bars
    .map((bar, index) => {
      const middle = TOP + (index + 0.5) * ROW
      const lines = wrapped(bar.name, SIZE, NAMES - 4, 2)
      const over = bar.speed > bar.guide
      return (
        lines
          .map((line, row) =>
            label(line, NAMES, middle + 4 + (row - (lines.length - 1) / 2) * 12, 'end', over ? 'name best' : 'name'),
          )
          .join('') +
        `<rect class="band" x="${at(LEFT)}" y="${at(middle - 10)}" width="${at(x(bar.guide) - LEFT)}" height="20"/>` +
        `<rect class="bar ${over ? 'best' : 'way'}" x="${at(LEFT)}" y="${at(middle - 5)}" width="${at(x(bar.speed) - LEFT)}" height="10"/>` +
        rule(x(bar.guide), middle - 10, x(bar.guide), middle + 10, 'guide') +
        label(bar.text, WIDTH, middle - 2, 'end', 'value') +
        label(bar.guideText, WIDTH, middle + 10.5, 'end', 'small')
      )
    })
    .join('')
  const axis = wrapped(chart.axis, 10, WIDTH, 2)
    .map((text, row) => label(text, WIDTH, bottom + 31 + row * 12.5, 'end', 'small'))
    .join('')
  return picture({
    id: chart.id,
    width: WIDTH,
    height: bottom + 50,
    title: chart.title,
    description: chart.description,
    body: bars + ticks + rule(LEFT, TOP, LEFT, bottom, 'base') + rule(LEFT, bottom, RIGHT, bottom, 'base') + axis,
  })
}
