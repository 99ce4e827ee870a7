/** The overview of a batch: the row of each answer, and the spreadsheet that carries it. */
import { describe, expect, test } from 'vitest'
import type { RecommendationKind } from '../../src/evaluation.ts'
import { summaryCsv } from '../../src/report/summary-csv.ts'
import { summaryRow } from '../../src/report/summary-row.ts'
import { type SummaryEntry, summaryView } from '../../src/report/summary-view.ts'
import { resultOf } from '../fixtures/result.ts'

const entryOf = (row: SummaryEntry['row'], over: Partial<SummaryEntry> = {}): SummaryEntry => ({
  scenario: 'a.yaml',
  unit: null,
  outcome: row === null ? 'failed' : 'answered',
  report: row === null ? null : 'a/customer.html',
  row,
  ...over,
})

/** RFC 4180, read by its grammar: a field in quotes holds anything, a quote inside it is doubled, records end in CRLF. */
const readCsv = (file: string): string[][] => {
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/uy
  const rows: string[][] = [[]]
  while (field.lastIndex < file.length) {
    const match = field.exec(file)
    if (match === null) throw new Error('no field of RFC 4180 stands here')
    rows.at(-1)?.push(match[1]?.replaceAll('""', '"') ?? match[2] ?? '')
    if (match[3] === '\r\n') rows.push([])
  }
  return rows.slice(0, -1)
}

const columns = (entries: readonly SummaryEntry[], units: 'metric' | 'us' | 'both' = 'metric') => {
  const [head = [], ...rows] = readCsv(summaryCsv(entries, units).slice(1))
  return rows.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i]])))
}

describe('the row', () => {
  test('holds the figures of what is recommended or offered, as the result has them', () => {
    const result = resultOf('upgrade')
    const option = result.options.find(({ name }) => name === result.recommendation.option)
    const row = summaryRow(result)
    expect(row).toMatchObject({
      answer: 'upgrade',
      option: option?.name,
      now: { speedKmh: result.baseline.travel.level.speedKmh, oilC: result.baseline.heat.steadyOilC },
      after: { speedKmh: option?.evaluation.travel.level.speedKmh, oilC: option?.evaluation.heat.steadyOilC },
      price: { low: option?.cost.low, high: option?.cost.high, currency: option?.cost.currency },
    })
    for (const condition of option?.answer.conditions ?? []) expect(row.inTheWay).toContain(condition)
  })

  test('of a machine that is put right first names what is broken, and the price of that', () => {
    const result = resultOf('restore')
    const row = summaryRow(result)
    expect(result.recommendation.faults.length).toBeGreaterThan(0)
    for (const { text } of result.recommendation.faults) expect(row.inTheWay).toContain(text)
    expect(row.price?.low).toBe(result.restoration?.cost.low)
  })

  test('with nothing to offer has no figures for afterwards', () => {
    const { options, recommendation } = resultOf('decline')
    const asked = options.filter(({ answer }) => answer.answer === 'decline')
    const row = summaryRow(
      resultOf('decline', { options: asked, recommendation: { ...recommendation, offerInstead: null } }),
    )
    expect(row.after).toBeNull()
    expect(row.price).toBeNull()
    expect(row.inTheWay.length).toBeGreaterThan(0)
  })
})

describe('the spreadsheet', () => {
  const kinds: readonly RecommendationKind[] = [
    'restore',
    'protect',
    'upgrade',
    'upgrade-on-conditions',
    'decline',
    'measure-first',
  ]
  const entries = [...kinds.map((kind) => entryOf(summaryRow(resultOf(kind)))), entryOf(null)]

  test('is RFC 4180: every row has a cell for every heading', () => {
    const rows = readCsv(summaryCsv(entries, 'metric').slice(1))
    expect(rows).toHaveLength(entries.length + 1)
    for (const row of rows) expect(row).toHaveLength(rows[0]?.length ?? 0)
  })

  test('begins with the mark of UTF-8, which spreadsheets need to see a degree sign', () => {
    expect(summaryCsv(entries, 'metric').codePointAt(0)).toBe(0xfeff)
  })

  test('has the unit of each figure in its heading', () => {
    const [row] = columns([entryOf(summaryRow(resultOf('upgrade')))])
    expect(Object.keys(row ?? {})).toEqual(
      expect.arrayContaining(['speed now [km/h]', 'settled oil then [°C]', 'price from [currency of the row]']),
    )
    const [us] = columns(
      [entryOf({ ...summaryRow(resultOf('upgrade')), now: { speedKmh: 1.609344, oilC: 100 } })],
      'us',
    )
    // 1 mile is 1.609344 km; water boils at 212 °F.
    expect(us?.['speed now [mph]']).toBe('1')
    expect(us?.['settled oil now [°F]']).toBe('212')
  })

  test('a text that a spreadsheet would work out is text; a negative figure stays a figure', () => {
    const row = { ...summaryRow(resultOf('upgrade')), now: { speedKmh: 0, oilC: -5 } }
    for (const title of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '＝1'])
      expect(columns([entryOf({ ...row, title })])[0]?.question).toBe(`'${title}`)
    expect(columns([entryOf(row)])[0]?.['settled oil now [°C]']).toBe('-5')
  })

  test('quotes, commas and line breaks of a text come back as they were', () => {
    const title = 'He said "faster",\r\nand left'
    expect(columns([entryOf({ ...summaryRow(resultOf('upgrade')), title })])[0]?.question).toBe(title)
  })

  test('oil that does not settle is told, and an open price has no upper end', () => {
    const row = summaryRow(resultOf('upgrade'))
    const price = { low: 100, high: 200, currency: 'USD', open: true }
    const [cells] = columns([entryOf({ ...row, now: { speedKmh: 1, oilC: null }, price })])
    expect(cells?.['settled oil now [°C]']).toBe('does not settle')
    expect(cells?.['price from [currency of the row]']).toBe('100')
    expect(cells?.['price to [currency of the row]']).toBe('')
  })
})

describe('the page', () => {
  test('counts the answers, the most frequent first', () => {
    const [upgrade, decline] = [summaryRow(resultOf('upgrade')), summaryRow(resultOf('decline'))]
    expect(summaryView([entryOf(upgrade), entryOf(decline), entryOf(decline)], 'metric').counts).toEqual([
      '2 × decline',
      '1 × do it',
    ])
  })

  test('names a file that could not be read, and says so', () => {
    const [line] = summaryView(
      [entryOf(null, { scenario: 'yard.yaml', unit: 'A', outcome: 'wrong input' })],
      'metric',
    ).lines
    expect(line).toMatchObject({ name: 'yard.yaml: A', hasLink: false, answer: 'no answer' })
    expect(line?.obstacles[0]).toContain('mistakes')
  })
})
