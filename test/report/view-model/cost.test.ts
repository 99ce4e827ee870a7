import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { coolerAndFilter, cost, resultOf, twoSpeed } from '../../fixtures/result.ts'
import { order, pull } from '../work-stories.ts'

const costOf = (result: ResultDocument) => customerView(result, { units: 'metric', paper: 'a4' }).cost
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('a quote', () => {
  const [quote] = costOf(resultOf('protect')).quotes
  it('lists the lines with quantity, price and when they are there', () =>
    expect(quote?.rows.map((row) => [row.quantity, row.unitPrice, row.amount, row.ready])).toEqual([
      ['1', '$412.00', '$412.00', 'on the shelf'],
      ['1', '$148.00', '$148.00', 'on the shelf'],
      ['2.4', '$14.50', '$34.80', 'on the shelf'],
      ['3', '$4.80', '$14.40', '6 days'],
    ]))
  it('lists the work in hours from low to high', () => {
    expect(quote?.labour.map((line) => `${line.job} ${plain(line.hours)}`)).toEqual([
      'Fit cooler 2.5–4 h',
      'Fit filter 1–2 h',
      'Test and record 1–1.5 h',
    ])
    expect(quote?.rate).toBe('at $96.00 an hour')
  })
  it('sums up to a total with its range and a promise to call', () => {
    expect(quote?.sums.map((sum) => sum.amount)).toEqual(['$609.20', '$528.00', '$21.12', '$45.00', '$27.25', '$92.29'])
    expect([quote?.total, quote?.span, quote?.spanNote]).toEqual([
      '$1,322.86',
      '$1,184–$1,504',
      'We call you before it goes beyond $1,504.',
    ])
  })
  it('says how long the longest part takes', () => expect(quote?.wait).toBe('Longest wait for a part: 6 days.'))
  it('is a "from" where something has no price, and names it', () => {
    const lines = [
      {
        what: 'Swivel',
        part: null,
        quantity: 1,
        unitPrice: null,
        amount: null,
        leadDays: null,
        stock: null,
        unitCost: null,
      },
    ]
    const open = { ...coolerAndFilter, cost: cost({ unpriced: ['swivel'], lines }) }
    const [shown] = costOf(resultOf('protect', { options: [open] })).quotes
    expect([shown?.total, shown?.spanLabel, shown?.span, shown?.spanNote, shown?.rows[0]?.amount]).toEqual([
      '$1,322.86',
      'What has a price comes to',
      '$1,184–$1,504',
      '',
      'no price yet',
    ])
  })
  it('shows a deposit beside the total, as something that comes back', () => {
    const deposits = [{ what: 'Gear pump', part: 'p', quantity: 1, amount: 70 }]
    const [shown] = costOf(resultOf('protect', { options: [{ ...coolerAndFilter, cost: cost({ deposits }) }] })).quotes
    expect(shown?.deposits.map(({ label, amount }) => [plain(label), amount])).toEqual([
      ['Deposit on the old part, given back with it: Gear pump', '$70.00'],
    ])
    expect([shown?.total, shown?.hasDeposits, quote?.hasDeposits]).toEqual(['$1,322.86', true, false])
  })
  it('leaves out what costs nothing', () => {
    const [shown] = costOf(
      resultOf('protect', { options: [{ ...coolerAndFilter, cost: cost({ freight: 0 }) }] }),
    ).quotes
    expect(shown?.sums.map((sum) => sum.label)).not.toContain('Freight')
  })
})

describe('which ways are priced', () => {
  const headings = (result: ResultDocument) => costOf(result).quotes.map((quote) => quote.heading)
  it('the repair and what goes beside it', () =>
    expect(headings(resultOf('restore'))).toEqual(['Putting it right', '“Cooler and return filter”']))
  it('the recommended way alone', () => expect(headings(resultOf('upgrade'))).toEqual(['“Two-speed travel motors”']))
  it('the offer after a decline', () =>
    expect(headings(resultOf('decline'))).toEqual(['“Cooler and return filter”, our offer instead']))
  it('nothing before measuring, and it says so', () => {
    const view = costOf(resultOf('measure-first'))
    expect([view.hasQuotes, view.signHead]).toEqual([false, 'Received'])
    expect(view.none).toContain('The measuring comes first')
  })
})

describe('signature and "advised, not authorised"', () => {
  it('authorises up to the upper figure', () =>
    expect(costOf(resultOf('protect')).signTexts[0]).toContain('up to $1,504'))
  it('names what was advised against', () => {
    const view = costOf(resultOf('decline'))
    expect(view.hasAdvised).toBe(true)
    expect(view.advised.some((text) => text.startsWith('“Bigger pump”: we advise against it.'))).toBe(true)
    expect(view.excluded).toContain('“Bigger pump”, which we advise against')
  })
  it('has no box where there is nothing to warn of', () => {
    const result = resultOf('upgrade', {
      options: [{ ...twoSpeed, answer: { answer: 'recommend', reasons: [], conditions: [] } }],
    })
    expect(costOf({ ...result, baseline: { ...result.baseline, findings: [] } }).hasAdvised).toBe(false)
  })
})

describe('what the customer never sees', () => {
  it.each(['restore', 'protect', 'upgrade', 'decline'] as const)('%s: no cost price', (kind) => {
    const marked = JSON.parse(
      JSON.stringify(resultOf(kind)).replace(/"unitCost":[\d.]+/g, '"unitCost":98765.43'),
    ) as ResultDocument
    const { style: _, ...view } = customerView(marked, { units: 'both', paper: 'a4' })
    expect(JSON.stringify(view).match(/98,?765|margin|mark-up/i)).toBeNull()
  })
})

describe('beside a repair', () => {
  const result = resultOf('restore', {
    recommendation: { ...resultOf('restore').recommendation, option: coolerAndFilter.name },
  })
  const withParts = (part: string): ResultDocument => ({
    ...result,
    workOrders: [
      order(null, { pulls: [pull({ part: 'a' })] }),
      order(coolerAndFilter.name, { pulls: [pull({ part })] }),
    ],
  })
  it('what the repair holds already is not priced twice', () =>
    expect(costOf(withParts('a')).quotes.map(({ heading }) => heading)).toEqual(['Putting it right']))
  it('nor is it listed or priced on the pages before', () => {
    const { parts, ways } = customerView(withParts('a'), { units: 'metric', paper: 'a4' })
    expect(parts.groups.map(({ heading }) => heading)).not.toContain(`“${coolerAndFilter.name}”`)
    expect(ways.rows.find(({ name }) => name === coolerAndFilter.name)?.price).toBe('in the repair')
  })
  it('what it does not hold is priced beside it', () => expect(costOf(withParts('b')).quotes).toHaveLength(2))
})
