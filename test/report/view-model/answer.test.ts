import { describe, expect, it } from 'vitest'
import type { RecommendationKind, ResultDocument } from '../../../src/evaluation.ts'
import { type CustomerView, customerView } from '../../../src/report/customer-view.ts'
import type { Units } from '../../../src/report/format.ts'
import {
  biggerPump,
  consequence,
  coolerAndFilter,
  evaluation,
  finding,
  resultOf,
  twoSpeed,
} from '../../fixtures/result.ts'
import { nothingThere, searched } from '../search-stories.ts'

const answerOf = (result: ResultDocument, units: Units = 'metric'): CustomerView['answer'] =>
  customerView(result, { units, paper: 'a4' }).answer
const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const headline = (kind: RecommendationKind, over: Partial<ResultDocument> = {}, units: Units = 'metric') =>
  plain(answerOf(resultOf(kind, over), units).headline)

describe('a search that found nothing', () => {
  const { option } = searched(nothingThere)
  const inVain = { ...option, answer: { answer: 'decline', reasons: [], conditions: [] } } as const
  const result = (over: Partial<ResultDocument> = {}) => resultOf('decline', { options: [inVain], ...over })
  it('is no way to advise against: it is said that nothing was found, and what was looked for', () => {
    const { headline: says, lead } = answerOf(result())
    expect(plain(says)).toBe('No: we found nothing that we would sell you to make your Wren 09 faster.')
    // The story wants 6 km/h and oil of 75 °C at most.
    expect(plain(lead[0] ?? '')).toContain(
      'None of them gives 6.0 km/h on the level and oil that settles at 75 °C or less',
    )
  })
  it('where no speed is wanted, nobody is told of a faster machine', () => {
    const { sheet } = resultOf('decline')
    const slow = { ...sheet, wants: { ...sheet.wants, speedKmh: null } }
    expect(plain(answerOf(result({ sheet: slow })).headline)).toBe(
      'No: we found nothing that we would sell you to do that on your Wren 09.',
    )
  })
  it('costs nothing among the ways, and there is nothing to tick', () => {
    const { ways, cost } = customerView(result(), { units: 'metric', paper: 'a4' })
    expect(ways.rows.find(({ name }) => name === option.name)).toMatchObject({
      price: 'nothing',
      verdict: 'nothing found',
    })
    expect(JSON.stringify(cost)).not.toContain(option.name)
  })
})

describe('the answer as a sentence', () => {
  it('restore: what is wrong, and what a repair brings', () =>
    expect(headline('restore')).toBe(
      'Let us put your Wren 09 right first: the pump is worn. Repaired, it should do about 2.4 km/h on the level; now it does 1.8 km/h.',
    ))
  it('protect: cooler, and not faster where speed was asked', () =>
    expect(headline('protect')).toBe(
      'Not faster, but cooler: with “Cooler and return filter” the oil of your Wren 09 should settle at about 66 °C instead of 86 °C.',
    ))
  it('protect: a yes where speed was not asked', () => {
    const { sheet } = resultOf('protect')
    expect(headline('protect', { sheet: { ...sheet, wants: { ...sheet.wants, speedKmh: null } } })).toMatch(
      /^Yes, it can run cooler: /,
    )
  })
  it('protect: says so where the oil gets no cooler', () => {
    const same = { ...coolerAndFilter, evaluation: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 86 }) }
    expect(headline('protect', { options: [same] })).toContain('will not change how fast')
  })
  it('protect: a temperature that never settles is told in words', () => {
    const baseline = evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: null })
    expect(headline('protect', { baseline })).toContain('instead of a temperature that keeps rising')
  })
  it('upgrade: the speed now and then', () =>
    expect(headline('upgrade')).toBe(
      'Yes: with “Two-speed travel motors” your Wren 09 should do about 4.2 km/h on the level instead of 2.3 km/h.',
    ))
  it('upgrade on conditions: says that there are some', () => {
    expect(headline('upgrade-on-conditions')).toMatch(/^Yes, on conditions: /)
    expect(answerOf(resultOf('upgrade-on-conditions')).conditions).toEqual([
      'The maker agrees in writing.',
      'Brakes and stopping are tested at the new speed.',
    ])
  })
  it('upgrade: a way that leaves the speed alone does not promise any', () => {
    const option = { ...twoSpeed, evaluation: evaluation({ levelKmh: 2.33, gradeKmh: 1.84, settledC: 86 }) }
    expect(headline('upgrade', { options: [option] })).toContain('Its travel speed stays about what it is.')
  })
  it('upgrade: nobody is promised a speed instead of the same speed', () => {
    // 2.31 and 2.34 km/h, by 1.3 %; 1.87 and 1.93 by 3.2 %: all of them 2.3 or 1.9 as they are told.
    const same = (now: number, then: number) => {
      const option = { ...twoSpeed, evaluation: evaluation({ levelKmh: then, gradeKmh: 1.84, settledC: 86 }) }
      const baseline = evaluation({ levelKmh: now, gradeKmh: 1.84, settledC: 86 })
      return headline('upgrade', { options: [option], baseline })
    }
    expect(same(1.87, 1.93)).toContain('Its travel speed stays about what it is.')
    expect(same(1.83, 1.93)).toContain('about 1.9 km/h on the level instead of 1.8 km/h')
  })
  it('upgrade: an attachment is told its flow', () => {
    const { sheet } = resultOf('upgrade')
    const flow = finding({
      id: 'attachment-flow:circuits.main',
      check: 'attachment-flow',
      value: 33.3,
      limit: 31,
      unit: 'L/min',
    })
    const option = {
      ...twoSpeed,
      evaluation: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 70, findings: [flow] }),
    }
    const over = { options: [option], sheet: { ...sheet, wants: { ...sheet.wants, attachmentFlowLpm: 31 } } }
    expect(headline('upgrade', over)).toBe(
      'Yes: with “Two-speed travel motors” your Wren 09 would give the attachment 33.3 L/min of oil; it asks for 31.0 L/min.',
    )
    expect(answerOf(resultOf('upgrade', over)).cards.map((card) => card.label)[0]).toBe('Oil for the attachment')
  })
  it('decline: the reason with its figures, what it would give, and what helps', () => {
    const { headline: first, lead } = answerOf(resultOf('decline'))
    expect(plain(first)).toBe(
      'No: we advise against “Bigger pump”, because the engine cannot drive it. With the levers at the stop the pump would ask 14.6 kW of it, and it has 8.3 kW.',
    )
    expect(lead.map(plain)).toEqual([
      'It would give 3.6 km/h on the level; now it does 2.3 km/h, and you asked for 4.8 km/h.',
      'What helps is “Cooler and return filter”: the oil should settle at about 66 °C instead of 86 °C.',
    ])
  })
  it('decline: a machine that would not move is told so', () => {
    const option = { ...biggerPump, evaluation: evaluation({ levelKmh: 0, gradeKmh: 0, climbs: false, settledC: 104 }) }
    expect(answerOf(resultOf('decline', { options: [option, coolerAndFilter] })).lead.map(plain)[0]).toBe(
      'With it the machine would not move under full lever, let alone at the 4.8 km/h you asked for.',
    )
  })
  it('decline: a machine that stands and would still stand is not told of a stopwatch', () => {
    const still = evaluation({ levelKmh: 0, gradeKmh: 0, climbs: false, settledC: 104 })
    const reasons = [{ code: 'within-error' as const, text: 'No speed is gained.' }]
    const option = { ...biggerPump, evaluation: still, answer: { ...biggerPump.answer, reasons } }
    expect(headline('decline', { options: [option, coolerAndFilter], baseline: still })).toBe(
      'No: we advise against “Bigger pump”, because it would not get it moving.',
    )
    const faster = { ...option, evaluation: evaluation({ levelKmh: 2.4, gradeKmh: 2, settledC: 80 }) }
    expect(headline('decline', { options: [faster, coolerAndFilter] })).toContain('a stopwatch could hardly show it')
  })
  it('measure first: no figure is promised', () => {
    expect(headline('measure-first')).toMatch(/^Not yet: our readings of your Wren 09 do not agree/)
    expect(answerOf(resultOf('measure-first')).cards.every((card) => !card.hasAfter)).toBe(true)
  })
  it('measure first: a missing reading is not called a contradiction', () => {
    const { recommendation } = resultOf('measure-first')
    const reasons = [{ code: 'data-missing' as const, text: 'Nobody has read the relief.' }]
    expect(headline('measure-first', { recommendation: { ...recommendation, reasons } })).toContain('is missing')
  })
  it('speaks the customer’s units throughout', () => {
    expect(headline('upgrade', {}, 'us')).toContain('about 2.6 mph on the level instead of 1.4 mph')
    expect(headline('upgrade', {}, 'both')).toContain('about 4.2 km/h (2.6 mph)')
    expect(plain(answerOf(resultOf('protect'), 'us').reasons.join(' '))).toContain('settles at 187 °F')
  })
})

describe('the figures now and then', () => {
  it('speed with its range, the trip, the oil with how soon it gets hot', () => {
    const [speed, trip, oil] = answerOf(resultOf('upgrade')).cards
    expect([speed?.now.value, speed?.after.value].map((value) => value)).toEqual(['2.3', '4.2'])
    expect(speed?.after.notes.map(plain)).toEqual(['eight times in ten: 3.8–4.5 km/h'])
    // 350 m at 2.31 and at 4.16 km/h: 9.09 and 5.05 min
    expect([trip?.now.value, trip?.after.value]).toEqual(['9.1', '5.0'])
    expect(oil?.now.notes.map(plain)[0]).toMatch(/^passes 70 °C after \d+ min$/)
  })
  it('do not repeat the speed as its own range', () => {
    const range = (p10: number, p90: number) => ({ ...twoSpeed.range, speedKmh: { p10, p50: 4.16, p90 } }) as never
    const notes = (p10: number, p90: number) =>
      answerOf(resultOf('upgrade', { options: [{ ...twoSpeed, range: range(p10, p90) }] })).cards[0]?.after.notes
    // 4.16 km/h is told as 4.2, and so are both ends.
    expect(notes(4.16, 4.24)).toEqual(['eight times in ten: the same'])
    expect(notes(4.1, 4.24)?.map(plain)).toEqual(['eight times in ten: 4.1–4.2 km/h'])
  })
  it('say what is not known in words', () => {
    const { sheet } = resultOf('upgrade')
    const [, trip] = answerOf(resultOf('upgrade', { sheet: { ...sheet, site: { ...sheet.site, tripM: null } } })).cards
    expect([trip?.now.value, trip?.now.words]).toEqual(['no trip stated', true])
  })
  it('say that oil keeps rising where it does', () => {
    const baseline = evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: null })
    expect(answerOf(resultOf('protect', { baseline })).cards[2]?.now.notes).toContain(
      'and still rising after eight hours',
    )
  })
  it('show what a way advised against would do, where nothing else is offered, and name it so', () => {
    const { recommendation } = resultOf('decline')
    const view = answerOf(resultOf('decline', { recommendation: { ...recommendation, offerInstead: null } }))
    expect(view.compare).toBe('Now, and with “Bigger pump”, which we advise against')
    expect(view.cards[0]?.after.value).toBe('3.6')
  })
})

describe('what is offered', () => {
  const offers = (kind: RecommendationKind, over: Partial<ResultDocument> = {}) => answerOf(resultOf(kind, over)).offers
  it('a decline offers the option, with its price', () => {
    const view = answerOf(resultOf('decline'))
    expect([view.offerTitle, view.offers[0]?.name, view.offers[0]?.price]).toEqual([
      'What we offer instead',
      'Cooler and return filter',
      '$1,184–$1,504',
    ])
  })
  it('a decline with no option offers the ways that leave the machine alone', () => {
    const { recommendation } = resultOf('decline')
    const [first] = offers('decline', { recommendation: { ...recommendation, offerInstead: null } })
    expect([first?.name, first?.text.map(plain).join()]).toEqual([
      'Park the trailer nearer the face',
      'Saves about 40 min a day and costs nothing.',
    ])
  })
  it('a decline offers something even where the scenario names nothing', () => {
    const { recommendation, sheet } = resultOf('decline')
    expect(
      offers('decline', {
        recommendation: { ...recommendation, offerInstead: null },
        sheet: { ...sheet, alternatives: [] },
      }).length,
    ).toBeGreaterThan(0)
  })
  it('a repair comes first, the protecting option beside it', () =>
    expect(offers('restore').map((offer) => offer.name)).toEqual([
      'Put the machine right',
      'and beside it: Cooler and return filter',
    ]))
  it('beside a yes, what leaves the machine alone is an “or instead”', () =>
    expect(offers('upgrade').map(({ name }) => name)).toEqual([
      'Two-speed travel motors',
      'or instead: Park the trailer nearer the face',
    ]))
  it('unpriced things make the price a "from" and are named', () => {
    const open = { ...twoSpeed, cost: { ...twoSpeed.cost, unpriced: ['swivel'] } }
    const [first] = offers('upgrade', { options: [open] })
    expect(first?.price).toBe('from $4,380')
    expect(first?.text).toContain('Not priced yet: swivel.')
  })
})

describe('cautions on the first page', () => {
  const cautions = (result: ResultDocument) => answerOf(result).cautions.join('\n')
  it('a faster machine brings those of speed', () => {
    expect(cautions(resultOf('upgrade'))).toContain('longer to stop')
    expect(cautions(resultOf('protect'))).not.toContain('longer to stop')
  })
  it('hot oil brings that of burns, cool oil not', () => {
    expect(plain(cautions(resultOf('protect')))).toContain('Oil at 86 °C burns skin')
    expect(
      cautions(resultOf('protect', { baseline: evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 51 }) })),
    ).not.toContain('burns')
  })
  it('brakes that nobody has looked at are named', () => {
    const looked = finding({ check: 'holding-brake', severity: 'watch', value: null })
    const baseline = evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 51, findings: [looked] })
    expect(cautions(resultOf('upgrade', { baseline }))).toContain('Its brakes')
    expect(cautions(resultOf('upgrade'))).not.toContain('Its brakes')
  })
  it.each(['restore', 'protect', 'upgrade', 'upgrade-on-conditions', 'decline', 'measure-first'] as const)(
    '%s: an estimate, the maker’s limits and injection always',
    (kind) => {
      expect(cautions(resultOf(kind))).toMatch(/estimate/i)
      expect(cautions(resultOf(kind))).toContain('maker’s limits')
      expect(cautions(resultOf(kind))).toContain('through skin')
    },
  )
})

describe('notes of the cards', () => {
  /** A repair first, then the options held against the repaired machine; the speed that is wanted in km/h. */
  const notes = (kind: RecommendationKind, wanted: number, options = [biggerPump, twoSpeed, coolerAndFilter]) => {
    const { sheet } = resultOf(kind)
    const over = { options, sheet: { ...sheet, wants: { ...sheet.wants, speedKmh: wanted } } }
    return answerOf(resultOf(kind, over)).cards[0]?.notes.map(plain)
  }
  it('beside a repair, the way that gives the speed wanted is named, not the one advised against', () =>
    // 4.16 km/h, on conditions; the bigger pump gives 3.62 and is declined.
    expect(notes('restore', 4)).toEqual([
      'you asked for 4.0 km/h',
      'once put right, “Two-speed travel motors” would give 4.2 km/h, on conditions',
    ]))
  it('where none gives it, or only one advised against, that one is named with what we think of it', () => {
    const against = '“Bigger pump” would give 3.6 km/h; we advise against it'
    expect(notes('restore', 4.8)?.at(-1)).toBe(against)
    expect(notes('restore', 3.5, [biggerPump, coolerAndFilter])?.at(-1)).toBe(against)
  })
  it('of two ways the better answer is named, then the cheaper one', () => {
    const plainYes = {
      ...twoSpeed,
      name: 'Dear',
      answer: { answer: 'recommend' as const, reasons: [], conditions: [] },
    }
    const cheap = { ...plainYes, name: 'Cheap', cost: { ...twoSpeed.cost, likely: twoSpeed.cost.likely - 1000 } }
    expect(notes('restore', 4, [twoSpeed, plainYes])?.at(-1)).toContain('“Dear” would give 4.2 km/h')
    expect(notes('restore', 4, [plainYes, cheap])?.at(-1)).toContain('“Cheap”')
  })
  it('where the recommended way gives the speed, it is held against the one that was asked for', () => {
    const { recommendation, sheet } = resultOf('upgrade')
    const over = {
      options: [biggerPump, twoSpeed],
      recommendation: { ...recommendation, option: twoSpeed.name },
      sheet: { ...sheet, wants: { ...sheet.wants, speedKmh: 4 } },
    }
    expect(answerOf(resultOf('upgrade', over)).cards[0]?.notes.at(-1)).toContain('“Bigger pump”')
  })
  it('tell what the timed run gave where the figures do not follow it', () => {
    const { recommendation } = resultOf('measure-first')
    const reasons = [{ code: 'readings-disagree' as const, text: 'The readings disagree' }]
    const [speed] = answerOf(resultOf('measure-first', { recommendation: { ...recommendation, reasons } })).cards
    expect(speed?.notes.map(plain)).toContain('the timed run gave 2.3 km/h')
    expect(answerOf(resultOf('upgrade')).cards[0]?.notes.join()).not.toContain('timed run')
  })
  it('say where the oil is cool only because a cooler followed', () => {
    const cooled = (steady: number): ResultDocument =>
      resultOf('upgrade', {
        options: [
          {
            ...twoSpeed,
            consequences: [consequence({ component: 'cooler', kind: 'cooler', action: 'add' })],
            evaluation: evaluation({ levelKmh: 4.16, gradeKmh: 1.84, settledC: 60 }),
            asAskedOnly: evaluation({ levelKmh: 4.16, gradeKmh: 1.84, settledC: steady }),
          },
        ],
      })
    expect(answerOf(cooled(113)).cards[2]?.notes).toEqual(['only with the cooler that it needs'])
    expect(answerOf(cooled(61)).cards[2]?.notes).toEqual([])
  })
})

describe('reasons', () => {
  it('do not repeat what the headline says in figures', () =>
    expect(answerOf(resultOf('decline')).reasons.map(plain)).toEqual([
      'The oil would settle at 104 °C, hotter than now.',
    ]))
  it('of a way that protects: what it is for, and why not what was asked for', () => {
    const { recommendation } = resultOf('protect')
    const { reasons } = answerOf(resultOf('protect', { recommendation: { ...recommendation, reasons: [] } }))
    expect(reasons.map(plain)).toEqual([
      'It boils in August.',
      '“Bigger pump”: The engine has 8.3 kW to give and the pump would ask 14.6 kW at full pressure.',
    ])
  })
  it('are taken from the checks that carry a yes, where none were given', () => {
    const { recommendation } = resultOf('upgrade')
    const { reasons } = answerOf(resultOf('upgrade', { recommendation: { ...recommendation, reasons: [] } }))
    expect(reasons.map(plain)).toContain(
      'The engine can drive the pump at full pressure: 7.2 kW; limit 8.3 kW, what the engine may give all day.',
    )
  })
})
