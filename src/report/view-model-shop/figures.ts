/** How the machine was matched to its readings, and the range of every way. */
import type { Percentiles, Range, ResultDocument } from '../../evaluation.ts'
import { decimal, quantity, typeset, type Units } from '../format.ts'
import { en } from '../wording.ts'
import { shop } from '../wording-shop.ts'

export interface FiguresView {
  readonly words: typeof shop.figures
  readonly calibration: readonly { readonly what: string; readonly value: string }[]
  readonly notes: readonly string[]
  readonly hasNotes: boolean
  readonly ranges: readonly { readonly way: string; readonly cells: readonly string[]; readonly note: string }[]
}

const words = shop.figures

const three = ({ p10, p50, p90 }: Percentiles, text: (value: number | null) => string): string =>
  [p10, p50, p90].map(text).join(' / ')

const rangeRow = (way: string, range: Range | null, units: Units): FiguresView['ranges'][number] => {
  if (range === null) return { way, cells: [words.noRange, words.noRange, words.noRange], note: '' }
  const one: Units = units === 'us' ? 'us' : 'metric'
  const oil = (value: number | null) => (value === null ? en.ways.notSettled : quantity(value, '°C', one))
  return {
    way,
    cells: [
      three(range.speedKmh, (value) => quantity(value, 'km/h', one)),
      three(range.speedRatio, (value) => (value === null ? en.dash : decimal(value, 2))),
      three(range.steadyOilC, oil),
    ],
    note: range.gainWithinError ? words.within : '',
  }
}

export const figuresView = (result: ResultDocument, units: Units): FiguresView => {
  const { calibration, baselineRange, options } = result
  const { pumpSlipFactor, impliedVolumetricEfficiency, speedFactor, coolingFactor } = calibration
  const speed = (value: number | null) => (value === null ? en.notRead : quantity(value, 'km/h', units))
  return {
    words,
    calibration: [
      { what: words.measured, value: speed(calibration.measuredSpeedKmh) },
      { what: words.predicted, value: speed(calibration.predictedSpeedKmh) },
      { what: words.slip, value: decimal(pumpSlipFactor, 2) },
      { what: words.efficiency, value: `${decimal(100 * impliedVolumetricEfficiency, 0)}\u00a0%` },
      { what: words.speed, value: decimal(speedFactor, 2) },
      { what: words.cooling, value: decimal(coolingFactor, 2) },
    ],
    notes: calibration.notes.map(typeset),
    hasNotes: calibration.notes.length > 0,
    ranges: [
      rangeRow(shop.findings.now, baselineRange, units),
      ...options.map(({ name, range }) => rangeRow(name, range, units)),
    ],
  }
}
