/** What adds up to a whole, step by step: one bar a share, each beginning where the one above it ends, and the whole below. */
import { scaleLinear } from 'd3-scale'
import { at, clearTicks, label, picture, rule, wrapped } from './svg.ts'

export interface Share {
  readonly name: string
  readonly amount: number
  /** Ready text of the amount. */
  readonly text: string
  /** `kept`: the share that the rest is there for; `plain`: every other. */
  readonly look: 'kept' | 'plain'
}

export interface BuildUpChart {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  /** Under the axis. */
  readonly axis: string
  readonly shares: readonly Share[]
  readonly whole: { readonly name: string; readonly amount: number; readonly text: string }
  /** Both charts of a pair end at the same figure; 0: at the whole. */
  readonly most: number
}

const WIDTH = 340
const NAMES = 132
const VALUES = 62
const ROW = 27
const TOP = 6
const SIZE = 10.5
const LEFT = NAMES + 8
const RIGHT = WIDTH - VALUES

/** @returns the chart as one SVG element; names and amounts stand in columns of their own, so that no label meets a bar */
export const buildUpChart = (chart: BuildUpChart): string => {
  const { shares, whole } = chart
  const sums = shares.map((_, index) => shares.slice(0, index + 1).reduce((sum, { amount }) => sum + amount, 0))
  const x = scaleLinear()
    .domain([0, Math.max(chart.most, whole.amount, ...sums, 0.1)])
    .nice(4)
    .range([LEFT, RIGHT])
  const bottom = TOP + (shares.length + 1) * ROW
  const row = (name: string, text: string, from: number, to: number, index: number, look: string) => {
    const middle = TOP + (index + 0.5) * ROW
    const lines = wrapped(name, SIZE, NAMES - 4, 2)
    const names = lines.map((line, number) =>
      label(line, NAMES, middle + 4 + (number - (lines.length - 1) / 2) * 12, 'end', `name ${look}`),
    )
    const [low, high] = [Math.min(from, to), Math.max(from, to)]
    const box = `<rect class="bar ${look}" x="${at(x(low))}" y="${at(middle - 7)}" width="${at(x(high) - x(low))}" height="14"/>`
    return names.join('') + box + label(text, WIDTH, middle + 4, 'end', 'value')
  }
  const grid = clearTicks(x, 4, 10)
    .map(
      ({ place, text }) => rule(place, TOP, place, bottom, 'grid') + label(text, place, bottom + 14, 'middle', 'small'),
    )
    .join('')
  const steps = sums
    .map((sum, index) => rule(x(sum), TOP + (index + 0.5) * ROW + 7, x(sum), TOP + (index + 1.5) * ROW - 7, 'step'))
    .join('')
  const rows = shares
    .map((share, index) =>
      row(
        share.name,
        share.text,
        sums[index - 1] ?? 0,
        sums[index] ?? 0,
        index,
        share.look === 'kept' ? 'best' : 'way',
      ),
    )
    .join('')
  const total = row(whole.name, whole.text, 0, whole.amount, shares.length, 'now')
  return picture({
    id: chart.id,
    width: WIDTH,
    height: bottom + 36,
    title: chart.title,
    description: chart.description,
    body:
      grid +
      steps +
      rows +
      total +
      rule(LEFT, TOP, LEFT, bottom, 'base') +
      label(chart.axis, LEFT, bottom + 29, 'start', 'small'),
  })
}
