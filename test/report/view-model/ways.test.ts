import { describe, expect, it } from 'vitest'
import type { OptionResult, ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { biggerPump, coolerAndFilter, evaluation, finding, resultOf } from '../../fixtures/result.ts'

const waysOf = (result: ResultDocument, units: 'metric' | 'us' | 'both' = 'metric') =>
  customerView(result, { units, paper: 'a4' }).ways
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

/** What the way in place of the first one brings. */
const brought = (option: typeof biggerPump) => {
  const { options, ...rest } = resultOf('decline')
  return waysOf({ ...rest, options: [option, ...options.slice(1)] }).rows[1]?.brings.map(plain)
}

describe('ways', () => {
  it('hold doing nothing, every option and what leaves the machine alone', () =>
    expect(waysOf(resultOf('decline')).rows.map((row) => row.name)).toEqual([
      'Leave it as it is',
      'Bigger pump',
      'Two-speed travel motors',
      'Cooler and return filter',
      'Park the trailer nearer the face',
    ]))
  it('hold the repair where there is a fault', () => {
    expect(waysOf(resultOf('restore')).rows[1]?.name).toBe('Put it right')
    expect(waysOf(resultOf('restore')).rows[1]?.brings.map(plain)).toEqual([
      'saves 22 min a day, 41 h a year',
      'oil 13 °C cooler',
    ])
  })
  it('tell speed, grade, turn, oil and price of each', () => {
    const [now, pump] = waysOf(resultOf('decline')).rows
    expect([now?.level, now?.grade, now?.turn, now?.oil].map((text) => plain(text ?? ''))).toEqual([
      '2.3 km/h',
      '1.8 km/h',
      'yes',
      '86 °C',
    ])
    expect([pump?.grade, pump?.turn, pump?.price]).toEqual(['does not climb it', 'no', 'from $3,120'])
  })
  // 3.3 min a trip, eight trips a day: 26 min.
  it('tell what each brings in minutes and money, and nothing of a way that would not work as it should', () => {
    const calm = {
      ...biggerPump,
      evaluation: { ...biggerPump.evaluation, findings: [] },
      cost: { ...biggerPump.cost, unpriced: [] },
    }
    expect(brought(calm)).toEqual([
      'saves 26 min a day, 48 h a year',
      'oil 18 °C hotter',
      '$2,736 per km/h gained',
      'pays back in 1.6 years',
    ])
    expect(brought(biggerPump)).toEqual(['no gain counted: it would not work as it should'])
  })
  it('call what rests on a price that is not whole the least that it can be, and leave out what would be nothing', () => {
    const calm = { ...biggerPump, evaluation: { ...biggerPump.evaluation, findings: [] } }
    expect(calm.cost.unpriced).toEqual(['swivel'])
    const earned = (gain: Partial<typeof biggerPump.gain>) =>
      brought({ ...calm, gain: { ...biggerPump.gain, ...gain } })?.slice(2)
    expect(earned({})).toEqual(['at least $2,736 per km/h gained', 'pays back in 1.6 years at best'])
    expect(earned({ paybackYears: 0.4 })).toEqual(['at least $2,736 per km/h gained', 'pays back in 0.4 years at best'])
    expect(earned({ costPerKmh: 0, paybackYears: 0 })).toEqual([])
    expect(earned({ costPerKmh: null, paybackYears: null })).toEqual([])
  })
  const bringing = (option: OptionResult, over: Partial<ResultDocument> = {}) =>
    waysOf(resultOf('protect', { options: [option], ...over })).rows[1]
  const noGain = { ...coolerAndFilter.gain, steadyOilC: 0 }
  it('never say that a way we would build brings nothing', () => {
    expect(bringing({ ...coolerAndFilter, gain: noGain })?.brings).toEqual(['protects oil and pump'])
    const plainYes = { ...coolerAndFilter, protecting: false, gain: noGain }
    expect(bringing(plainYes)?.brings).toEqual(['no difference in speed or heat'])
    const no = { ...plainYes, answer: { answer: 'decline' as const, reasons: [], conditions: [] } }
    const { recommendation } = resultOf('protect')
    expect(bringing(no, { recommendation: { ...recommendation, option: null } })?.brings).toEqual(['nothing'])
  })
  it('say that a repair takes the fault away where it saves no time', () => {
    const { restoration } = resultOf('restore')
    const still = restoration && { ...restoration, gain: { ...restoration.gain, minutesPerTrip: 0, steadyOilC: 6 } }
    expect(waysOf(resultOf('restore', { restoration: still })).rows[1]?.brings.map(plain)).toEqual([
      'the fault is gone',
      'oil 6 °C hotter',
    ])
    expect(waysOf(resultOf('restore', { restoration: null })).rows[1]?.brings).toEqual(['the fault is gone'])
  })
  it('tell the oil that an attachment gets, where it is more than today', () => {
    const flow = (value: number) => finding({ check: 'attachment-flow', value, limit: 31, unit: 'L/min' })
    const with_ = (value: number) =>
      evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 70, findings: [flow(value)] })
    const gets = (value: number) =>
      bringing({ ...coolerAndFilter, gain: noGain, evaluation: with_(value) }, { baseline: with_(22.4) })?.brings
    expect(gets(33.3)?.map(plain)).toEqual(['33.3 L/min for the attachment'])
    // 2 % more counts as no more, as for a speed.
    expect(gets(22.8)).toEqual(['protects oil and pump'])
  })
  it('no way is called "nothing" that leaves the machine alone and saves no minutes', () => {
    const { sheet } = resultOf('decline')
    const alternatives = [{ name: 'Another trencher', minutesPerDay: 0, cost: 1450 }]
    expect(waysOf(resultOf('decline', { sheet: { ...sheet, alternatives } })).rows.at(-1)?.brings).toEqual(['–'])
  })
  it('what page one recommends as the best there is carries no “we advise against”', () => {
    const weak = { ...coolerAndFilter, answer: { answer: 'decline' as const, reasons: [], conditions: [] } }
    const view = customerView(resultOf('protect', { options: [biggerPump, weak] }), { units: 'metric', paper: 'a4' })
    expect(view.ways.rows.map(({ name, verdict }) => [name, verdict])).toContainEqual([weak.name, 'the best we have'])
    expect(view.ways.rows[1]?.verdict).toBe('we advise against')
    expect(view.cost.advised.filter((text) => text.includes(weak.name))).toHaveLength(1)
    expect(view.cost.excluded.join()).not.toContain(weak.name)
  })
  it('put conditions before a conditional yes, and leave them out of a no', () => {
    expect(waysOf(resultOf('decline')).rows[2]?.reasons).toContain('To be settled first:')
    const no = { ...biggerPump, answer: { ...biggerPump.answer, conditions: ['the maker agrees'] } }
    expect(waysOf(resultOf('decline', { options: [no] })).rows[1]?.reasons).not.toContain('To be settled first:')
  })
  it('do not call it a turn where the pull from standstill is short of what turning needs', () => {
    const now = evaluation({ levelKmh: 2.4, gradeKmh: 2.3, settledC: 63 })
    const turn = now.travel.turn && { ...now.travel.turn, stalled: false, tractiveForceN: 5310, neededForceN: 5700 }
    const [row] = waysOf(resultOf('decline', { baseline: { ...now, travel: { ...now.travel, turn } } })).rows
    expect(row?.turn).toBe('no')
  })
  it('have no turn on wheels and say when oil does not settle', () => {
    const wheels = evaluation({ levelKmh: 8.9, gradeKmh: 7, settledC: null })
    const [now] = waysOf(
      resultOf('decline', { baseline: { ...wheels, travel: { ...wheels.travel, turn: null } } }),
    ).rows
    expect([now?.turn, now?.oil]).toEqual(['does not apply', 'keeps rising'])
  })
  it.each([
    [86, 'the oil stays too hot'],
    [65, 'runs warm'],
    [50, 'nothing is gained'],
  ])('doing nothing at %s °C', (settledC, words) =>
    expect(
      waysOf(
        resultOf('decline', { baseline: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC }) }),
      ).rows[0]?.reasons.join(),
    ).toContain(words),
  )
})

describe('charts of the ways', () => {
  it('describe themselves with the numbers', () => {
    const { speed, oil } = waysOf(resultOf('decline'))
    const desc = (svg: string) => plain(/<desc[^>]*>([^<]*)</.exec(svg)?.[1] ?? '')
    expect(desc(speed.chartSvg)).toContain('Two-speed travel motors: 4.2 km/h, range 3.8–4.5 km/h')
    expect(desc(speed.chartSvg)).toContain('you want 4.8 km/h')
    expect(desc(oil.chartSvg)).toContain('Cooler and return filter: 54 °C after one hour, 66 °C after eight hours')
  })
  it('have a table each', () => {
    const { speed, oil } = waysOf(resultOf('decline'))
    expect(speed.rows[2]).toEqual({ name: 'Two-speed travel motors', speed: '4.2', range: '3.8–4.5' })
    // 66 − 35 exp(−60/55) = 54.2 °C after one hour
    expect(oil.rows[3]?.cells.map(plain)).toEqual(['54 °C', '66 °C', 'no'])
  })
  it('draw one unit, the customer’s', () => {
    expect(waysOf(resultOf('decline'), 'us').speed.chartSvg).toContain('you want 3.0\u00a0mph')
    expect(waysOf(resultOf('decline'), 'both').speed.speedHead).toBe('Speed, km/h')
  })
  it('do not write a range under a speed that it rounds to', () => {
    const drawn = (p10: number, p90: number) => {
      const { options, baselineRange, ...rest } = resultOf('decline')
      const range = baselineRange && { ...baselineRange, speedKmh: { p10, p50: 2.31, p90 } }
      const { chartSvg } = waysOf({ ...rest, options: [], baselineRange: range }).speed
      return (plain(chartSvg).match(/>[^<]*km\/h</gu) ?? []).filter((label) => label.includes('2.3')).length
    }
    // 2.31 km/h is told as 2.3: both ends too, or from 2.2 on.
    expect(drawn(2.28, 2.34)).toBe(1)
    expect(drawn(2.2, 2.34)).toBe(2)
  })
  it('do without a wanted speed and without ranges', () => {
    const { sheet } = resultOf('decline')
    const view = waysOf(
      resultOf('decline', {
        baselineRange: null,
        options: [],
        sheet: { ...sheet, wants: { ...sheet.wants, speedKmh: null } },
      }),
    )
    expect(view.speed.chartSvg).not.toContain('whisker')
    expect(view.speed.chartSvg).not.toContain('you want')
  })
})

describe('what a way does to the oil', () => {
  const hot = evaluation({ levelKmh: 2.4, gradeKmh: 2.3, settledC: 61 })
  const warmer = evaluation({ levelKmh: 2.5, gradeKmh: 2.4, settledC: 71 })
  it('a repair that makes it hotter says so', () => {
    const result = resultOf('restore', { baseline: hot, restored: warmer })
    expect(waysOf(result).rows[1]?.reasons.map(plain)).toContain(
      'Put right, it takes up more power again, so the oil settles hotter: at 71 °C instead of 61 °C.',
    )
  })
  it('a cooler that followed is named where the oil is cool only with it', () => {
    const cooled = {
      ...biggerPump,
      consequences: [{ ...(biggerPump.consequences[0] as (typeof biggerPump.consequences)[0]), kind: 'cooler' }],
      evaluation: hot,
      asAskedOnly: evaluation({ levelKmh: 2.4, gradeKmh: 2.3, settledC: null }),
    }
    expect(
      waysOf(resultOf('decline', { options: [cooled] }))
        .rows[1]?.reasons.map(plain)
        .at(-1),
    ).toBe(
      'The oil stays at 61 °C only with the cooler that it needs; as asked, with nothing added, it would never settle.',
    )
  })
  it('shows its range', () => expect(plain(waysOf(resultOf('decline')).rows[1]?.oilRange ?? '')).toBe('96–113 °C'))
})
