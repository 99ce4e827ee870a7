/** What a search found, on the terminal: searches made by hand, each with the text that it must give beside it. */
import { Writable } from 'node:stream'
import { describe, expect, test } from 'vitest'
import type { Search } from '../../src/search.ts'
import { makerHere } from '../../src/shell/making/maker.ts'
import { reachView } from '../../src/shell/reach-view.ts'
import type { World } from '../../src/shell/world.ts'
import { cost, twoSpeed } from '../fixtures/result.ts'
import { already, byHandWay, cooler, found, notFound, SEARCHES, step, withoutPrice } from '../report/search-stories.ts'

const stream = (isTTY: boolean) => Object.assign(new Writable(), { isTTY })
const world = (env: World['env'] = {}, isTTY = false): World => ({
  args: [],
  cwd: '.',
  env,
  stdout: stream(isTTY),
  stderr: stream(isTTY),
  now: () => 0,
  interrupt: new AbortController().signal,
  openMaker: makerHere,
  openPrinter: () => Promise.reject(new Error('not asked for')),
})
const view = (search: Search, units: 'metric' | 'us' | 'both' = 'metric', over: World = world()) =>
  reachView(search, 'Twice as fast (T. Marlowe)', 'USD', units, over)

describe('reachView', () => {
  test.each(SEARCHES)('%s: the whole text', async (name, search) => {
    await expect(view(search)).toMatchFileSnapshot(`./reach/${name.replaceAll(' ', '-')}.txt`)
  })

  test('readings that do not agree and faults are told before what was found', () => {
    const text = view({ ...found, disagreements: ['Run and flow do not agree.'], faults: ['The pump is worn.'] })
    const [doubt, fault, way] = ['Measure first', 'Put right first', 'The cheapest'].map((part) => text.indexOf(part))
    expect(text).toContain('Measure first, before any of this is offered: Run and flow do not agree.')
    expect(text).toContain('all of this holds for the machine after that: The pump is worn.')
    expect(doubt).toBeGreaterThan(0)
    expect(fault).toBeGreaterThan(doubt ?? 0)
    expect(way).toBeGreaterThan(fault ?? 0)
  })

  test('a search that was given up says of special orders what it found, not what there is', () => {
    expect(view({ ...found, cheapestInStock: null, isExact: false })).toContain(
      'Without a special order nothing was found that reaches it.',
    )
  })

  test('a way by hand that has no price for something is not called cheaper', () => {
    const [one] = found.byHand
    if (one === undefined || found.cheapestInStock === null) throw new Error('the story has both')
    const open = { ...one, meets: true, cost: { ...one.cost, likely: 1, unpriced: ['swivel'] } }
    const text = view({ ...found, cheapest: found.cheapestInStock, byHand: [open] })
    expect(text).toContain(`“${one.name}” may be cheaper, but something of it has no price yet.`)
  })

  test('what is wanted and what is reached are told apart where they round alike', () => {
    const near = step('Orbital motor 205 cm3', 1850, 3.46)
    const text = view({ ...found, curve: [...found.curve.slice(0, 2), near] })
    // 3.46 and 3.5 km/h are both 3.5 with one decimal.
    expect(text).toContain('3.46 km/h  falls short  Orbital motor 205 cm³')
  })

  test('US units throughout', () => {
    const text = view(notFound, 'us')
    // 6 km/h / 1.609344 = 3.73 mph; 75 °C · 1.8 + 32 = 167 °F; 9.1 kW / 0.7457 = 12.2 hp.
    expect(text).toContain('Wanted: 3.7 mph on the level and oil that settles at 167 °F or less')
    expect(text).toContain('12.2 hp')
    expect(text).not.toMatch(/km\/h|°C|kW\b(?!\.)/u)
  })

  test('a way that everything depends on is named once: what the budget pays for is the cheapest', () => {
    const text = view({ ...found, withinBudget: { budget: 2500, way: found.cheapest } })
    expect(text).toContain('$2,500 pays for the cheapest way')
    expect(text).not.toContain('What $2,500 pays for\n')
  })

  test('nothing on special order, and nothing without one', () => {
    expect(view({ ...found, cheapest: found.cheapestInStock })).toContain('Nothing of it is on special order.')
    expect(view({ ...found, cheapestInStock: null })).toContain('Without a special order nothing reaches it.')
  })

  test('one that has no price for something is told beside the cheapest', () => {
    const text = view({
      ...found,
      cheapestUnpriced: withoutPrice(step('Two-speed orbital motor', 1500, 4.9), 'Shift valve'),
    })
    expect(text).toContain('May cost less, but something of it has no price yet')
    expect(text).toContain('no price yet: Shift valve')
  })

  test.each([
    // Hand-made at 2,100.50 likely: 1,900 found is 200.50 less; found at 2,100.50 is the same; at 2,400 it is 299.50 more.
    [1900, 'The search is cheaper than “By hand” by $201.'],
    [2100.5, 'Nothing is cheaper than “By hand”.'],
    [2400, '“By hand” is cheaper by $300: it changes something that the search does not vary.'],
  ])('found at %d against a hand-made way', (likely, said) => {
    const byHand = [
      byHandWay('Dearer', cost({ likely: 9000 }), 4, true),
      byHandWay('By hand', cost({ likely: 2100.5 }), 4, true),
      byHandWay('Too slow', cost({ likely: 10 }), 2, false),
    ]
    expect(view({ ...found, cheapest: step('Orbital motor 200 cm3', likely, 3.6, { meets: true }), byHand })).toContain(
      said,
    )
  })

  test('what it would take, and the way that it is said of; a nearest that nobody proved', () => {
    const pastLimits = step('Gear pump 16 cm3', 2400, 6.1, { reaches: true })
    const text = view({ ...notFound, pastLimits, nearestIsExact: false, evaluatedBesides: 24 })
    expect(text).toContain('for Gear pump 16 cm³, which would give 6.1 km/h and 66 °C ($2,300–$2,600)')
    expect(text).toContain('The nearest that was found')
    expect(text).not.toContain('The nearest that can be had')
    expect(text).toContain('24 more worked out in full, for the nearest and for what stands in the way')
  })

  test('a hand-made way that does what the search cannot', () => {
    const byHand = [byHandWay('Own gearbox', twoSpeed.cost, 6.2, true)]
    expect(view({ ...notFound, byHand })).toContain('“Own gearbox” does it: it changes something that the search')
  })

  test('and is not said to be beyond the search, where the search was cut short', () => {
    const byHand = [byHandWay('Own gearbox', twoSpeed.cost, 6.2, true)]
    const text = view({ ...notFound, byHand, isExact: false })
    expect(text).toContain('“Own gearbox” does it: the search was long enough before it came to that.')
  })

  test('a sum with a hole in it is not held against one without', () => {
    const open = step('Orbital motor 200 cm3', 1900, 3.6, { meets: true, specialOrder: true })
    const cheapest = { ...open, option: { ...open.option, cost: cost({ likely: 1900, unpriced: ['Hose end'] }) } }
    const byHand = [byHandWay('By hand', cost({ likely: 2600 }), 4, true)]
    const text = view({ ...found, cheapest, byHand })
    expect(text).toContain('no price yet: Hose end')
    // The cheapest with every price known is 2,600 too.
    expect(text).toContain('Nothing is cheaper than “By hand”.')
    const alone = view({ ...found, cheapest, cheapestInStock: null, byHand })
    expect(alone).toContain('The search is cheaper than “By hand” by $700.')
  })

  test('fast enough and not within every limit is no shortfall', () => {
    const byHand = [byHandWay('Bigger pump', twoSpeed.cost, 3.5, false, true)]
    expect(view({ ...found, byHand })).toContain('3.5 km/h  outside a limit  Bigger pump')
    const warm = [byHandWay('Cooler', twoSpeed.cost, 69, false, true)]
    expect(view({ ...cooler, byHand: warm })).toContain('69 °C  outside a limit  Cooler')
  })

  test('where nothing has to be done, nothing is offered', () => {
    const text = view(already)
    expect(text).toContain('The machine does it as it is.')
    expect(text).not.toContain('The cheapest way there')
  })

  test('a search that was cut short proves nothing and says so', () => {
    const cut = { combinations: 1_000_000, evaluated: 4000, cutByPrice: 600_000, cutByReach: 0, cutByLimit: 0 }
    // 1,000,000 − 4,000 − 600,000 are left.
    expect(view({ ...found, counts: cut, isExact: false })).toContain('396,000 not looked at')
    expect(view({ ...found, counts: cut, isExact: false })).toContain('The cheapest way that was found')
    expect(view({ ...notFound, counts: cut, isExact: false })).toContain('Nothing was found that reaches it')
    expect(view(found)).not.toMatch(/not looked at|that was found\n/u)
  })

  test('colour on a terminal only, and not where NO_COLOR is set', () => {
    const coloured = '\u001b['
    expect(view(found, 'metric', world({}, true))).toContain(coloured)
    expect(view(found, 'metric', world({}, false))).not.toContain(coloured)
    expect(view(found, 'metric', world({ NO_COLOR: '1' }, true))).not.toContain(coloured)
  })

  test('control characters of a file are shown, not obeyed', () => {
    const text = view({
      ...found,
      wouldTake: [],
      byHand: found.byHand.map((one) => ({ ...one, name: 'Pump\u001b[2J\u202e' })),
    })
    expect(text).toContain('Pump\ufffd[2J\ufffd')
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u)
  })
})
