import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { biggerPump, evaluation, resultOf } from '../../fixtures/result.ts'

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
      'Put right it takes up more power again, so the oil settles hotter: at 71 °C instead of 61 °C.',
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
