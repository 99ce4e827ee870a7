import { describe, expect, it } from 'vitest'
import { toldOf } from '../../../src/reach.ts'
import { foundView } from '../../../src/report/view-model/found.ts'
import { searchView } from '../../../src/report/view-model-shop/search.ts'
import type { Gives, Measure, Search } from '../../../src/search.ts'
import { resultOf, twoSpeed } from '../../fixtures/result.ts'
import { collisions, outside, textBoxes } from '../charts/text-boxes.ts'
import {
  already,
  cooler,
  found,
  notFound,
  nothingThere,
  SEARCHES,
  searched,
  step,
  withoutPrice,
} from '../search-stories.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const told = (search: Search, units: 'metric' | 'us' | 'both' = 'metric') =>
  foundView(searched(search), 'found-0', units).sentences.map(plain)
const texts = (svg: string) => textBoxes(svg).map(({ text }) => plain(text))

describe('why it is the cheapest', () => {
  it('names how many ways there were, what was found, what costs less and what comes next', () => {
    expect(told(found)).toEqual([
      'We went through every way that our parts list allows, 156 million. This is the cheapest that gives 3.5 km/h on the level, counted with everything that has to change along with it. It passes no limit that would rule it out.',
      'What was found: Orbital motor 200 cm³. It costs $1,800–$2,100, work and tax included, and gives 3.5 km/h. Part of it has to be ordered specially.',
      'Why nothing cheaper does it: whatever costs less gives at most 2.8 km/h (Orbital motor 250 cm³, about $1,500).',
      'The next that does it with other parts costs about $2,600 and gives 4.1 km/h (Two-speed orbital motor 310/155 cm³).',
      'What may be off by a little and moves this most: Motor efficiency (± 3 %), 3.4–3.6 km/h, so that it may fall short; Ground (± 25 %), 3.51–3.53 km/h.',
    ])
  })
  it('names one that seems cheaper and has no price for something, and claims no more than is known', () => {
    const cheapestUnpriced = withoutPrice(step('Two-speed orbital motor 250/125 cm3', 1700, 4.9), 'Shift valve')
    const sentences = told({ ...found, cheapestUnpriced })
    expect(sentences[2]).toContain('Why nothing cheaper does it, as far as every price is known: whatever costs less')
    expect(sentences[3]).toBe(
      'One way may cost less (Two-speed orbital motor 250/125 cm³): what has a price of it comes to about $1,700. Not priced yet: Shift valve.',
    )
  })
  it('a price that is open is told as a person would, with what it leaves out', () => {
    const open = withoutPrice(step('Orbital motor 200 cm3', 4626, 3.52), 'Shift valve')
    expect(told({ ...found, cheapest: open })[1]).toBe(
      'What was found: Orbital motor 200 cm³. It costs at least $4,526, work and tax included, and gives 3.5 km/h. Not priced yet, and on top of that: Shift valve.',
    )
  })
  it('where nothing cheaper does anything, says so; where there is no other, names none', () => {
    const only = found.curve.filter(({ option, meets }) => option.changes.length === 0 || meets).slice(0, 2)
    const sentences = told({ ...found, curve: only, cheapest: only[1] ?? null, moves: [] })
    expect(sentences[2]).toContain('brings you hardly any further than you are today')
    expect(sentences).toHaveLength(3)
  })
  it('of two wishes, what costs less need not fall short of the one that is drawn', () => {
    const both = { ...found, goal: { ...found.goal, oilBelowC: 70 } }
    expect(told(both)[2]).toBe(
      'Why nothing cheaper does it: whatever on our list costs less and keeps to the limits misses at least one of these wishes.',
    )
    expect(told(both)[1]).toContain('and gives 3.5 km/h and oil that settles at 66 °C.')
  })
  it('of two wishes, the nearest that costs less is named with the wish that it misses', () => {
    const both = { ...found, goal: { ...found.goal, oilBelowC: 60 } }
    const says = (over: Partial<Gives>, misses: readonly Measure[], units: 'metric' | 'us' = 'metric') => {
      const told = toldOf(step('Orbital motor 250 cm3, 32 mm shaft', 1500, 3.6))
      const less = { ...told, gives: { speedKmh: 3.6, attachmentLpm: null, oilC: 74, ...over }, misses }
      return plain(foundView(searched(both, less), 'f', units).sentences[2] ?? '').split(' wishes. ')[1]
    }
    expect(says({}, ['oil-temperature'])).toBe(
      'The nearest that costs less (Orbital motor 250 cm³, about $1,500) gives 3.6 km/h, but leaves the oil at 74 °C (you want 60 °C or less).',
    )
    // 3.4 km/h is 2.11 mph, 3.5 km/h is 2.17 mph: one decimal would tell 2.1 and 2.2; 59 °C is 138 °F.
    expect(says({ speedKmh: 3.4, oilC: 59 }, ['travel-speed'], 'us')).toBe(
      'The nearest that costs less (Orbital motor 250 cm³, about $1,500) gives oil that settles at 138 °F, but does only 2.1 mph (you want 2.2 mph).',
    )
    expect(says({ speedKmh: 3, oilC: null }, ['travel-speed', 'oil-temperature'])).toBe(
      'The nearest that costs less (Orbital motor 250 cm³, about $1,500) does only 3.0 km/h (you want 3.5 km/h) and leaves the oil so hot that it never settles (you want 60 °C or less).',
    )
  })
  it('what is wanted of the oil is a ceiling: what costs less leaves it no cooler than that', () => {
    expect(told(cooler)).toContain(
      'Why nothing cheaper does it: whatever costs less leaves the oil at 74 °C or more (Oil cooler, about $600).',
    )
  })
  it('a machine that does it as it is gets no offer', () =>
    expect(told(already)).toEqual(['You want 2.0 km/h on the level: your machine does that as it is.']))
  it('a search that was cut short does not claim all of them', () => {
    const counts = { ...found.counts, cutByPrice: 0 }
    expect(told({ ...found, counts, isExact: false })[0]).toMatch(
      /^Our parts list allows 156 million ways, too many to look at every one\. .* this is the cheapest/u,
    )
    expect(told({ ...notFound, counts, isExact: false })[0]).toMatch(
      /^Our parts list allows 156 million ways, .*\. We found none/u,
    )
  })
  it('more ways than a thousand million are told as such: a customer counts no further', () => {
    const counts = { ...found.counts, combinations: 2.5e17 }
    expect(told({ ...found, counts })[0]).toContain('every way that our parts list allows, more than a billion.')
  })
  it('what moves too little to be seen is not named; one that falls short shows by how much', () => {
    const move = (label: string, reachedLow: number, reachedHigh: number, holds: boolean) => ({
      path: label,
      label,
      tolerance: '± 1.5 %',
      reachedLow,
      reachedHigh,
      holds,
    })
    const moves = [move('Time', 3.48, 3.53, false), move('Ground', 3.521, 3.523, true), move('Tank', 3.4, 3.6, true)]
    // 3.48 would be 3.5 with one decimal, which is what is wanted.
    expect(told({ ...found, moves }).at(-1)).toBe(
      'What may be off by a little and moves this most: Time (± 1.5 %), 3.48–3.53 km/h, so that it may fall short; Tank (± 1.5 %), 3.4–3.6 km/h.',
    )
    expect(told({ ...found, moves: moves.slice(1, 2) }).join(' ')).not.toContain('off by a little')
  })
  it('a list with a single way is not called a choice', () =>
    expect(told({ ...found, counts: { ...found.counts, combinations: 1 } })[0]).toContain('It has one way that gives'))
})

describe('where nothing reaches it', () => {
  it('the nearest, in the customer’s units', () => {
    // 6 km/h is 3.73 mph, 75 °C is 167 °F, 4.1 km/h is 2.55 mph, 66 °C is 150.8 °F.
    expect(told(notFound, 'us')).toEqual([
      'We went through every way that our parts list allows, 156 million. None of them gives 3.7 mph on the level and oil that settles at 167 °F or less within the limits that we check.',
      'The nearest that can be had is 2.5 mph and oil that settles at 151 °F, for $2,500–$2,800 (Two-speed orbital motor 310/155 cm³).',
      'To get there it would take an engine of 17.4 hp and a swivel with 0.35 in drillings.',
    ])
  })
  it('for a price that is open: no “for from”', () => {
    const nearest = withoutPrice(step('Orbital motor 200 cm3', 4626, 3.52), 'Shift valve')
    expect(told({ ...notFound, nearest })[1]).toBe(
      'The nearest that can be had is 3.5 km/h and oil that settles at 66 °C, for at least $4,526 (Orbital motor 200 cm³). Not priced yet, and on top of that: Shift valve.',
    )
  })
  it('what it would take is told with the way that it is said of', () => {
    const pastLimits = step('Gear pump 16 cm3', 2400, 6.1, { reaches: true })
    expect(told({ ...notFound, pastLimits }).at(-1)).toBe(
      'To get there it would take an engine of 13 kW and a swivel with 9 mm drillings: with Gear pump 16 cm³ the machine would then give 6.1 km/h and oil that settles at 66 °C.',
    )
  })
  it('a nearest that nobody proved is the nearest that was found', () =>
    expect(told({ ...notFound, nearestIsExact: false })[1]).toMatch(
      /^The nearest that we found is 4.1 km\/h and oil that settles at 66 °C,/u,
    ))
  it('or that there is none', () =>
    expect(told(nothingThere).at(-1)).toBe('Nothing on our list brings you any further than you are today.'))
  it('nothing is drawn of a machine that cannot be varied', () =>
    expect(foundView(searched(nothingThere), 'f', 'metric')).toMatchObject({ hasChart: false, chartSvg: '' }))
})

describe('the chart', () => {
  it('of two wishes: what is offered stands apart, on no special order, and the note says what is drawn', () => {
    const cheapest = step('Orbital motor 200 cm3 and a cooler', 3100, 3.6, { meets: true })
    const both = { ...found, goal: { ...found.goal, oilBelowC: 70 }, cheapest }
    const { chartSvg, note } = foundView(searched(both), 'f', 'metric')
    expect(chartSvg.match(/class="dot best apart"/gu)).toHaveLength(1)
    expect(texts(chartSvg).join(' ')).not.toContain('special order')
    expect(plain(note)).toBe(
      'Each step is the cheapest that our list has for so much speed on the level, whatever else it gives. Your other wish (oil that settles at 70 °C or less) has no line here; what a step gives of it stands beside the step.',
    )
    expect(texts(chartSvg)).toContain('about $1,500: 2.8 km/h, oil 66 °C')
    expect(foundView(searched(found), 'f', 'metric').note).not.toContain('other wish')
    expect(texts(foundView(searched(found), 'f', 'metric').chartSvg).join(' ')).not.toContain('oil')
  })
  it('has a name for each step, the price beside what it gives, and what is wanted', () => {
    const { chartSvg } = foundView(searched(found), 'f', 'metric')
    for (const text of [
      'about $1,500: 2.8 km/h',
      '$1,800–$2,100: 3.5 km/h',
      'no cost: 2.3 km/h',
      'wanted: 3.5 km/h',
      'Orbital motor 250 cm³',
    ])
      expect(texts(chartSvg)).toContain(text)
    // The cheapest is on special order and stands beside the steps.
    expect(chartSvg.match(/class="dot best apart"/gu)).toHaveLength(1)
    expect(chartSvg.match(/<circle/gu)).toHaveLength(5)
  })
  it('where nothing reaches it, the nearest is drawn though it has to be ordered and is on no step', () => {
    const nearest = withoutPrice(step('Orbital motor 160 cm3', 4626, 4.4), 'Shift valve')
    const { chartSvg } = foundView(searched({ ...notFound, nearest }), 'f', 'metric')
    expect(chartSvg.match(/class="dot best apart"/gu)).toHaveLength(1)
    expect(texts(chartSvg)).toContain('from $4,526: 4.4 km/h, oil 66 °C')
  })
  it('with many steps names at most eight, the ends, the one offered and its neighbours among them', () => {
    const curve = Array.from({ length: 20 }, (_, i) =>
      step(`Orbital motor ${400 - i} cm3`, 1000 + 100 * i, 2 + 0.1 * i, { meets: i >= 9 }),
    )
    const { chartSvg } = foundView(searched({ ...found, curve, cheapest: curve[9] ?? null }), 'f', 'metric')
    const named = texts(chartSvg).filter((text) => text.startsWith('Orbital motor'))
    expect(named).toHaveLength(8)
    for (const i of [0, 8, 9, 10, 19]) expect(named).toContain(`Orbital motor ${400 - i} cm³`)
    expect(chartSvg.match(/<circle/gu)).toHaveLength(20)
    expect(texts(chartSvg).join(' ')).toContain('12 more steps are drawn and not named')
  })
  it.each(SEARCHES)('no two labels meet and none leaves the picture, in any units: %s', (_, search) => {
    for (const units of ['metric', 'us', 'both'] as const) {
      const { chartSvg, hasChart } = foundView(searched(search), 'f', units)
      expect(hasChart).toBe(chartSvg !== '')
      expect(collisions(textBoxes(chartSvg))).toEqual([])
      expect(outside(chartSvg)).toEqual([])
    }
  })
})

describe('the shop’s table', () => {
  const tableOf = (search: Search | null) =>
    searchView({ ...resultOf('upgrade'), options: [search === null ? twoSpeed : searched(search).option] }, 'metric')
  it('has every step of the curve, and what is on special order at its price', () => {
    const [table] = tableOf(found).tables
    expect(table?.rows.map(({ price, verdict }) => `${plain(price)}: ${verdict}`)).toEqual([
      'no cost: falls short',
      'about $1,500: falls short',
      '$1,800–$2,100: offered',
      'about $2,600: does it',
      'about $3,900: does it',
    ])
  })
  it('says what became of the combinations, and leaves out what came to nothing', () => {
    expect(tableOf(found).tables[0]?.counts.map(plain)).toEqual([
      '156 million combinations of the parts on the list',
      '212 worked out in full, with all that must change beside them',
      '155 million passed over: they cannot be cheaper than what was found',
      '519,788 passed over: they cannot reach it',
    ])
  })
  it('is not there where nothing was searched for', () =>
    expect(tableOf(null)).toMatchObject({ tables: [], hasTables: false }))
})
