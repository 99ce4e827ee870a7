import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../src/evaluation.ts'
import { type ShopView, shopView } from '../../src/report/shop-view.ts'
import { biggerPump, coolerAndFilter, finding, resultOf, twoSpeed } from '../fixtures/result.ts'
import { withWork } from './work-stories.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const viewOf = (result: ResultDocument): ShopView => shopView(result, { units: 'metric', paper: 'a4' })
const story = (...of: Parameters<typeof resultOf>) => withWork(resultOf(...of))

describe('cost and margin', () => {
  const view = viewOf(story('decline'))
  const [way] = view.money.ways
  it('by line: cost, price, what is left, margin and mark-up apart', () => {
    // 137.13/308.44 = 44.46 %, 137.13/171.31 = 80.05 %.
    expect(way?.rows[0]?.cells.map(plain)).toEqual([
      '2',
      '$85.65',
      '$154.22',
      '$171.31',
      '$308.44',
      '$137.13',
      '44 %',
      '80 %',
    ])
    expect(way?.rows[0]?.ready).toBe('none in stock, 35 days')
  })
  it('a line without cost or price shows dashes and is named', () => {
    expect(way?.rows[1]?.cells.slice(1)).toEqual(['–', '–', '–', '–', '–', '–', '–'])
    expect(way?.open).toContain('Quick couplers')
  })
  it('names the shop’s rule', () => {
    const rule = (pricing: Partial<ResultDocument['pricing']>) =>
      plain(
        viewOf({ ...story('decline'), pricing: { buildUps: [], markUp: null, margin: null, ...pricing } }).money.rule,
      )
    expect(rule({ markUp: 0.38 })).toContain('mark-up of 38 %')
    expect(rule({ margin: 0.3 })).toContain('margin of 30 % of the price')
    expect(rule({})).toContain('No mark-up and no margin')
  })
  it('hours low, likely and high of every job, and their sum', () => {
    const labour = [
      { job: 'fit cooler', hoursLow: 4, hoursLikely: 5, hoursHigh: 7, rate: 140 },
      { job: 'test and record', hoursLow: 1.5, hoursLikely: 2, hoursHigh: 3, rate: 140 },
    ]
    const option = { ...coolerAndFilter, cost: { ...coolerAndFilter.cost, labour, labourTotal: 980 } }
    const money = viewOf(story('protect', { options: [option] })).money.ways[0]
    expect(money?.labour.map(({ cells }) => cells)).toEqual([
      ['4.0', '5.0', '7.0', '$140.00'],
      ['1.5', '2.0', '3.0', '$140.00'],
      ['5.5', '7.0', '10.0', '$980.00'],
    ])
  })
  it('every way that has a price, the repair first', () => {
    const result = story('restore')
    expect(viewOf(result).money.ways.map(({ heading }) => heading)).toEqual([
      'Putting it right',
      ...result.options.map(({ name }) => `“${name}”`),
    ])
  })
})

describe('findings', () => {
  const ok = finding({ id: 'a:pump', check: 'line-velocity', component: 'circuits.main.pump' })
  const over = { ...ok, value: 8.4, severity: 'change' as const }
  const held = { ...ok, id: 'b:pump', value: 5.2, severity: 'watch' as const, existing: true }
  const result = story('decline', {
    baseline: { ...resultOf('decline').baseline, findings: [ok] },
    options: [{ ...biggerPump, evaluation: { ...biggerPump.evaluation, findings: [over, held] } }],
  })
  const { tables, key, sources } = viewOf(result).findings
  it('all of them, those that pass too, one column a way', () => {
    expect(tables).toHaveLength(1)
    expect(tables[0]?.heads).toEqual(['As it is', 'A'])
    expect(tables[0]?.rows.map((row) => [row.id, row.cells.map((cell) => [plain(cell.value), cell.mark])])).toEqual([
      [
        'a:pump',
        [
          ['4.2 m/s', ''],
          ['8.4 m/s', 'change'],
        ],
      ],
      [
        'b:pump',
        [
          ['', ''],
          ['5.2 m/s', 'watch, as before'],
        ],
      ],
    ])
    expect(key).toBe(`A: “${biggerPump.name}”.`)
  })
  it('with limit, and the number of its source', () => {
    expect(plain(tables[0]?.rows[0]?.limit ?? '')).toBe('6.1 m/s')
    expect(tables[0]?.rows[0]?.source).toBe('1')
    expect(sources).toEqual([{ number: '1', source: ok.source }])
  })
  it('ten ways make more tables, none of more than five columns', () => {
    const options = Array.from({ length: 10 }, (_, index) => ({ ...twoSpeed, name: `Way ${index}` }))
    const many = viewOf(story('upgrade', { options })).findings.tables
    expect(many.map(({ heads }) => heads.length)).toEqual([5, 5, 1])
    expect(many[2]?.heads).toEqual(['J'])
  })
})

describe('chains', () => {
  it('tells from the change to the consequence, with the findings that asked', () => {
    const { ways } = viewOf(story('decline')).chains
    const way = ways.find(({ heading }) => heading === `“${biggerPump.name}”`)
    const [first] = biggerPump.consequences
    expect(way?.rows).toHaveLength(biggerPump.consequences.length)
    expect(way?.rows[0]?.chain.split(' › ')).toHaveLength(first?.chain.length ?? -1)
    expect(way?.rows[0]?.because.map(({ check, of }) => check + of)).toEqual(first?.because)
  })
  it('says where nothing else has to change', () => {
    const way = viewOf(story('protect')).chains.ways.find(({ heading }) => heading === `“${coolerAndFilter.name}”`)
    expect(way?.hasRows).toBe(false)
  })
})

describe('what the answer rests on', () => {
  const list = (result: ResultDocument) => viewOf(result).warnings.list.map(plain).join('\n')
  it('names the assumption that carries it', () => expect(list(story('decline'))).toMatch(/Provisional.*Swivel/u))
  it('names the readings that move it most, with how far', () =>
    expect(list(story('decline'))).toContain('Oil temperature at work (oil ± 8 °C)'))
  it('names what has no price, what is on special order, what is not to be had', () => {
    const consequences = biggerPump.consequences.slice(0, 2)
    const [one, other] = consequences
    if (one === undefined || other === undefined) throw new Error('no consequences')
    const option = {
      ...biggerPump,
      consequences: [
        { ...one, available: false, specialOrder: true },
        { ...other, available: false, specialOrder: false },
      ],
      cost: { ...biggerPump.cost, unpriced: ['Quick couplers'] },
    }
    const text = list(story('decline', { options: [option] }))
    expect(text).toContain('no price yet for Quick couplers')
    expect(text).toContain('on special order')
    expect(text).toContain('not to be had')
  })
  it('warns of a gain that a stopwatch cannot show', () => {
    const range = { ...(twoSpeed.range as NonNullable<typeof twoSpeed.range>), gainWithinError: true }
    expect(list(story('upgrade', { options: [{ ...twoSpeed, range }] }))).toContain('do not promise it')
  })
  it('says so where everything was read', () => {
    const quiet = story('upgrade', {
      restsOn: [],
      readings: [],
      assumptions: [],
      options: [
        {
          ...twoSpeed,
          consequences: [],
          cost: { ...twoSpeed.cost, unpriced: [] },
          answer: { answer: 'recommend', reasons: [], conditions: [] },
        },
      ],
    })
    expect(list(quiet)).toContain('was read or measured')
  })
})

it('calibration as figures', () => {
  const { calibration } = viewOf(story('decline')).figures
  expect(calibration.map(({ value }) => plain(value))).toEqual(['2.3 km/h', '2.4 km/h', '1.00', '91 %', '0.98', '1.06'])
})
