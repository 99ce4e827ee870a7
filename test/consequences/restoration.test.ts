import { describe, expect, it } from 'vitest'
import { restorationNeeds } from '../../src/consequences/restoration.ts'
import type { Machine } from '../../src/machine.ts'
import type { Part } from '../../src/shop.ts'
import { wren } from '../fixtures/wren.ts'
import { hoseList, part, shopWith } from './list.ts'

const pump = (
  id: string,
  cm3: number,
  price: number,
  over: { rotation?: string; flange?: string; outlet?: string } = {},
) =>
  part(
    id,
    'pump',
    {
      displacement: `${cm3} cm3/rev`,
      'max-pressure': '230 bar',
      'max-speed': '3500 rpm',
      mount: { flange: over.flange ?? 'SAE A 2-bolt', shaft: '9T 16/32 DP', rotation: over.rotation ?? 'clockwise' },
      ports: { inlet: 'G 3/4', outlet: over.outlet ?? 'G 1/2' },
    },
    price,
  )

const worn = { component: 'circuits.main.pump', text: 'The pump is worn.' }
const needs = (parts: readonly Part[], faults = [worn], machine: Machine = wren()) =>
  restorationNeeds(faults, machine, shopWith(parts))

describe('a worn pump', () => {
  it('is replaced by the nearest of its size, mount, rotation and ports', () => {
    const parts = [
      pump('p-79', 7.9, 300),
      pump('p-80-cheap', 8, 100),
      pump('p-79-left', 7.9, 10, { rotation: 'counterclockwise' }),
      pump('p-79-b', 7.9, 10, { flange: 'SAE B 2-bolt' }),
      pump('p-79-orb', 7.9, 10, { outlet: 'ORB -8' }),
      pump('p-112', 11.2, 10),
    ]
    expect(needs(parts).uses[0]?.part).toBe('p-79')
    expect(needs(parts.toReversed()).uses[0]?.part).toBe('p-79')
  })

  it('is named and unpriced where the list has none', () => {
    const { uses, consequences } = needs([pump('p-112', 11.2, 10)])
    expect(uses[0]).toMatchObject({ kind: 'pump', part: null })
    expect(consequences[0]).toMatchObject({ available: false, part: null })
  })

  it('brings a clean tank, and a filter where there was none', () => {
    // 7.9 cm3 x 3000 rpm x 1.6 = 37.9 L/min.
    const filters = [40, 60].map((lpm) => part(`filter-${lpm}`, 'filter', { 'rated-flow': `${lpm} L/min` }, lpm))
    const { jobs, uses } = needs([
      pump('p-79', 7.9, 300),
      ...filters,
      part('breather', 'breather', {}, 34),
      ...hoseList,
    ])
    expect(jobs.map(({ job }) => job)).toEqual(['replace pump', 'clean reservoir', 'fit filter'])
    expect(uses.map(({ part: id }) => id)).toEqual(expect.arrayContaining(['p-79', 'filter-40', 'breather']))
  })

  it('brings elements, not a filter, where one is there', () => {
    const filter = {
      part: 'filter-40',
      ratedFlow: 0.001,
      drop: null,
      reference: null,
      fineness: null,
      beta: null,
      bypass: 170_000,
    }
    const { jobs, uses } = needs([pump('p-79', 7.9, 300)], [worn], { ...wren(), filter })
    expect(jobs.map(({ job }) => job)).toEqual(['replace pump', 'clean reservoir'])
    expect(uses.map(({ what }) => what)).toContain('Filter element')
  })
})

describe('other faults', () => {
  it('a low relief is set, and nothing is bought', () => {
    const { uses, jobs } = needs([], [{ component: 'circuits.main.relief', text: 'low' }])
    expect([uses, jobs.map(({ job }) => job)]).toEqual([[], ['set relief']])
  })

  it('a hose that is made new has two ends, though they are alike', () => {
    // The sample's suction hose: -12, G 3/4 at both ends.
    const own = part('suction-12', 'hose', { hose: -12, kind: 'suction hose', 'max-pressure': '21 bar' }, 18)
    const end = part('end-12', 'fitting', { hose: -12, end: 'G 3/4' }, 9)
    const fault = { component: 'circuits.main.lines.suction', text: 'starved' }
    const ends = (faults: (typeof fault)[]) => needs([own, end], faults).uses.filter(({ part: id }) => id === 'end-12')
    expect(ends([fault])).toHaveLength(2)
    expect(ends([fault, { ...fault, text: 'starved again' }])).toHaveLength(2)
  })
  it('a starved inlet gets a suction hose of its own size and a strainer', () => {
    const own = part('suction-12', 'hose', { hose: -12, kind: 'suction hose', 'max-pressure': '21 bar' }, 18)
    const strainer = part('strainer-40', 'strainer', { 'rated-flow': '40 L/min', 'drop-at-rated-flow': '0.02 bar' }, 26)
    const { uses, jobs } = needs([own, strainer], [{ component: 'circuits.main.lines.suction', text: 'starved' }])
    expect(uses.map(({ part: id, quantity }) => [id, quantity])).toEqual(
      expect.arrayContaining([
        ['suction-12', 0.6],
        ['strainer-40', 1],
      ]),
    )
    expect(jobs.map(({ job }) => job)).toEqual(['replace hose', 'change oil'])
  })

  it('what drags behind the pump gets motors of the same size, all of them', () => {
    const motor = (id: string, cm3: number) =>
      part(
        id,
        'motor',
        {
          displacement: `${cm3} cm3/rev`,
          'max-pressure': '175 bar',
          mount: { flange: '4-bolt 82.5 mm', shaft: '1 in keyed' },
        },
        300,
      )
    const { uses, jobs } = needs(
      [motor('m-235', 235), motor('m-200', 200)],
      [{ component: 'travel.motor', text: 'slow' }],
    )
    expect(uses.map(({ part: id, quantity }) => [id, quantity])).toEqual([['m-235', 2]])
    expect(jobs).toEqual([{ component: 'travel.motor', job: 'replace motor', quantity: 2 }])
  })

  it('an engine is named without a price', () => {
    const { uses } = needs([], [{ component: 'engine', text: 'slow' }])
    expect(uses).toEqual([expect.objectContaining({ part: null, what: 'Repair of the engine, on sight' })])
  })

  it('what two faults both ask for is done once', () => {
    const { jobs } = needs([pump('p-79', 7.9, 300)], [worn, worn])
    expect(jobs.filter(({ job }) => job === 'replace pump')).toHaveLength(1)
  })
})
