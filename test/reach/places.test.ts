/** Which components are a place: every circuit that works the attachment, and none of them twice. */
import { describe, expect, test } from 'vitest'
import type { Circuit, Machine } from '../../src/machine.ts'
import { type Place, placesFor } from '../../src/reach/places.ts'
import { begin } from '../../src/start.ts'
import { BASES, type Base, loadedWith, type RandomPart } from './random-lists.ts'

const parts: readonly RandomPart[] = [
  { kind: 'pump', figures: { displacement: '9 cm3/rev' }, price: 200 },
  { kind: 'tandem pump', figures: { sections: [1, 2].map(() => ({ displacement: '9 cm3/rev' })) }, price: 400 },
  { kind: 'tandem pump', figures: { sections: [1, 2, 3].map(() => ({ displacement: '9 cm3/rev' })) }, price: 500 },
  {
    kind: 'valve',
    figures: { 'rated-flow': '80 L/min', 'drop-at-rated-flow': '8 bar', 'max-pressure': '250 bar' },
    price: 350,
  },
  { kind: 'hose', figures: { hose: -10, kind: '2-wire hose', 'max-pressure': '275 bar' }, price: 12 },
]

const loadedFor = (attachment: Base['attachment']) =>
  loadedWith(BASES.find((base) => base.attachment === attachment) as Base, {
    parts,
    orders: [],
    more: 1,
    budget: 1,
    kit: null,
    withoutHours: null,
  })

type Turned = (circuit: Circuit, i: number) => Circuit

const placesOf = (attachment: Base['attachment'], isFaster: boolean, turned: Turned = (circuit) => circuit) => {
  const loaded = loadedFor(attachment)
  const before = begin(loaded).start.before.machine
  const machine: Machine = { ...before, circuits: before.circuits.map(turned) }
  const attached = { flow: 30 / 60_000, pressure: 70e5 }
  const wants = { travelSpeed: isFaster ? 1 : null, attachment: attached, oilBelow: null }
  return placesFor(machine, wants, loaded)
}

/** What every place is about, by kind. */
const about = (places: readonly Place[], kind: Place['kind']) =>
  places
    .filter((place) => place.kind === kind)
    .map(({ circuits, lines }) => (kind === 'hose' ? lines.map(({ line }) => line.id) : circuits))

const single: Turned = (circuit) => ({ ...circuit, pump: { ...circuit.pump, section: null, part: null } })
/** Single pumps, of which the left one alone works the attachment. */
const leftOnly: Turned = (circuit, i) => ({
  ...single(circuit, i),
  works: i === 0 ? circuit.works : ['implements'],
  auxiliary: i === 0 ? circuit.auxiliary : null,
})
const noneWorks: Turned = (circuit, i) => ({ ...single(circuit, i), works: ['implements'], auxiliary: null })

describe('places of an attachment that several circuits work', () => {
  test('one that drives and one of its own: each pump, each valve and each line by itself', () => {
    const places = placesOf('two circuits', false)
    expect(about(places, 'pump')).toEqual([['main'], ['second']])
    expect(about(places, 'valve')).toEqual([['main'], ['second']])
    expect(about(places, 'hose')).toContainEqual(['circuits.second.lines.pressure'])
    expect(about(places, 'hose')).toContainEqual(['circuits.second.auxiliary.lines.out'])
    expect(about(places, 'hose')).toContainEqual(['circuits.main.auxiliary.lines.out'])
  })

  test('two of its own: the one that drives is no place, unless the machine shall be faster too', () => {
    expect(about(placesOf('two of its own', false), 'pump')).toEqual([['second'], ['third']])
    expect(about(placesOf('two of its own', true), 'pump')).toEqual([['main'], ['second'], ['third']])
  })

  test('those of both tracks are changed alike', () => {
    const places = placesOf('both tracks', false)
    expect(about(places, 'pump')).toEqual([['left', 'right']])
    expect(about(places, 'valve')).toEqual([['left', 'right']])
    expect(about(places, 'hose')).toContainEqual([
      'circuits.left.auxiliary.lines.out',
      'circuits.right.auxiliary.lines.out',
    ])
  })

  const machines: readonly (readonly [string, Base['attachment'], Turned])[] = [
    ['one that drives and one of its own', 'two circuits', (circuit) => circuit],
    ['two of its own', 'two of its own', (circuit) => circuit],
    ['both tracks, a tandem', 'both tracks', (circuit) => circuit],
    ['both tracks, single pumps', 'both tracks', single],
    ['the left track alone', 'both tracks', leftOnly],
    ['no circuit', 'both tracks', noneWorks],
  ]
  test.each(machines)('no component belongs to two places: %s', (_, attachment, turned) => {
    for (const isFaster of [false, true]) {
      const places = placesOf(attachment, isFaster, turned)
      for (const kind of ['pump', 'valve', 'hose'] as const) {
        const all = about(places, kind).flat()
        if (kind === 'pump') expect(all.length).toBeGreaterThan(0)
        expect(new Set(all).size).toBe(all.length)
      }
    }
  })
})

describe('a second pump', () => {
  const seconds = (attachment: Base['attachment'], isFaster: boolean, turned?: Turned) =>
    placesOf(attachment, isFaster, turned)
      .filter(({ kind }) => kind === 'pump')
      .flatMap(({ options }) => options.filter(({ newCircuit }) => newCircuit !== null)).length

  test('not where the attachment has one already', () => {
    expect([seconds('two circuits', false), seconds('two of its own', true)]).toEqual([0, 0])
  })

  test('in place of a tandem that works it with both sections', () => {
    // The third section of the three feeds it.
    expect([seconds('both tracks', false), seconds('both tracks', true)]).toEqual([1, 1])
  })

  test('not in place of one of two pumps that work it', () => {
    expect([seconds('both tracks', false, single), seconds('both tracks', true, single)]).toEqual([0, 0])
  })

  test('nor of the pump of one track alone, where both shall be faster', () => {
    // Three of the list have two sections (two are those that the demo names as its own); the last of each feeds it.
    expect([seconds('both tracks', false, leftOnly), seconds('both tracks', true, leftOnly)]).toEqual([3, 0])
  })
})
