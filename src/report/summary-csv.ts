/**
 * The overview of a batch for a spreadsheet: RFC 4180 (comma, CRLF, quotes doubled), the unit of every figure in its
 * heading, numbers with a point and unrounded beyond what a float needs.
 */
import { fahrenheitFromCelsius, mphFromKmh } from '../units/shop-units.ts'
import type { Units } from './format.ts'
import type { SummarySide } from './summary-row.ts'
import type { SummaryEntry } from './summary-view.ts'
import { summary } from './wording-summary.ts'

const words = summary.csv

/** A spreadsheet takes a cell that begins with one of these for a formula; behind an apostrophe it is text. */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u

const quoted = (text: string): string => (/[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

const text = (value: string): string => quoted(FORMULA.test(value) ? `'${value}` : value)

const number = (value: number): string => String(Number(value.toFixed(2)))

interface Shown {
  readonly unit: string
  readonly from: (value: number) => number
}

const UNITS: { readonly [what in 'speed' | 'oil']: (us: boolean) => Shown } = {
  speed: (us) => (us ? { unit: 'mph', from: mphFromKmh } : { unit: 'km/h', from: (value) => value }),
  oil: (us) => (us ? { unit: '°F', from: fahrenheitFromCelsius } : { unit: '°C', from: (value) => value }),
}

const speedOf = (side: SummarySide | null, { from }: Shown): string =>
  side === null ? '' : number(from(side.speedKmh))

const oilOf = (side: SummarySide | null, { from }: Shown): string =>
  side === null ? '' : side.oilC === null ? words.unsettled : number(from(side.oilC))

/** @returns the file, with the mark in front by which a spreadsheet knows UTF-8 */
export const summaryCsv = (entries: readonly SummaryEntry[], units: Units): string => {
  const [speed, oil] = [UNITS.speed(units === 'us'), UNITS.oil(units === 'us')]
  const head = [
    words.scenario,
    words.unit,
    words.title,
    words.customer,
    words.machine,
    words.answer,
    words.option,
    words.provisional,
    words.speed(summary.now, speed.unit),
    words.speed(summary.afterwards, speed.unit),
    words.oil(summary.now, oil.unit),
    words.oil(summary.afterwards, oil.unit),
    words.price(words.low),
    words.price(words.high),
    words.currency,
    words.obstacles,
    words.report,
  ]
  const rows = entries.map(({ scenario, unit, outcome, report, row }) => {
    const first = [text(scenario), text(unit ?? '')]
    if (row === null) {
      const why = outcome === 'wrong input' ? summary.wrongInput : summary.failed
      return [
        ...first,
        '',
        '',
        '',
        words.without,
        ...Array.from({ length: 9 }, () => ''),
        text(why),
        text(report ?? ''),
      ]
    }
    const { price } = row
    return [
      ...first,
      text(row.title),
      text(row.customer),
      text(row.machine),
      text(summary.answers[row.answer]),
      text(row.option ?? ''),
      row.provisional ? words.yes : words.no,
      speedOf(row.now, speed),
      speedOf(row.after, speed),
      oilOf(row.now, oil),
      oilOf(row.after, oil),
      price === null ? '' : number(price.low),
      // Something in it has no price yet: there is no upper end.
      price === null || price.open ? '' : number(price.high),
      price?.currency ?? '',
      text(row.inTheWay.join('; ')),
      text(report ?? ''),
    ]
  })
  return `\ufeff${[head.map(quoted), ...rows].map((cells) => cells.join(',')).join('\r\n')}\r\n`
}
