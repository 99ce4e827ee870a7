/** What a second pump takes, by hand from the figures of the machine and of the list. */
import { describe, expect, test } from 'vitest'
import { evaluateOption } from '../../src/option.ts'
import { placesFor } from '../../src/reach/places.ts'
import { begin } from '../../src/start.ts'
import { BASES, type Base, loadedWith, type RandomList, type RandomPart } from './random-lists.ts'

const section = (displacement: string) => ({
  displacement,
  'max-pressure': '240 bar',
  'max-speed': '4000 rpm',
  'min-inlet-pressure': '0.7 bar',
  efficiency: {
    volumetric: '93 %',
    hydromechanical: '88 %',
    at: { pressure: '160 bar', speed: '3000 rpm', viscosity: '32 cSt' },
  },
  ports: { inlet: 'G 3/4', outlet: 'G 1/2' },
})

const tandem = (sizes: readonly string[], rotation = 'clockwise'): RandomPart => ({
  kind: 'tandem pump',
  figures: {
    sections: sizes.map(section),
    mount: { flange: 'SAE A 2-bolt', shaft: '9T 16/32 DP', rotation, length: '210 mm' },
  },
  price: 400,
})
const valve: RandomPart = {
  kind: 'valve',
  figures: { 'rated-flow': '40 L/min', 'drop-at-rated-flow': '8 bar', 'max-pressure': '250 bar' },
  price: 350,
}
const relief: RandomPart = { kind: 'relief', figures: { 'rated-flow': '40 L/min' }, price: 60 }

const listOf = (...parts: readonly RandomPart[]): RandomList => ({
  parts,
  orders: [],
  more: 1,
  budget: 1000,
  kit: null,
  withoutHours: null,
})

const baseWith = (attachment: Base['attachment']): Base => BASES.find((base) => base.attachment === attachment) as Base
const none = baseWith('no circuit')
const shared = baseWith('driving circuit')
const broom = BASES.find(({ scenario }) => scenario.startsWith('broom')) as Base

const begun = (base: Base, list: RandomList) => {
  const loaded = loadedWith(base, list)
  return { loaded, start: begin(loaded).start }
}

/** What a second pump takes, for 20 L/min at 100 bar. */
const seconds = (base: Base, ...parts: readonly RandomPart[]) => {
  const { loaded, start } = begun(base, listOf(...parts))
  const wants = { ...loaded.scenario.wants, travelSpeed: null, attachment: { flow: 20 / 60_000, pressure: 100e5 } }
  return placesFor(start.before.machine, wants, loaded)
    .filter(({ kind }) => kind === 'pump')
    .flatMap(({ options }) => options.filter(({ newCircuit }) => newCircuit !== null))
}

const circuitsOf = ({ patch }: { readonly patch: object }) =>
  (patch as { readonly circuits: { readonly [name: string]: { readonly [key: string]: unknown } } }).circuits

describe('a second pump for an attachment', () => {
  test('one section drives on, the other has a circuit of its own', () => {
    const [option, ...others] = seconds(none, tandem(['6 cm3/rev', '6 cm3/rev']), valve, relief)
    expect(others).toEqual([])
    const { main, attachment } = circuitsOf(option as never)
    expect(main).toEqual({ pump: { part: 'part-00-tandem-pump', section: 1 } })
    expect(attachment).toMatchObject({
      pump: { part: 'part-00-tandem-pump', section: 2 },
      // 1.2 x 100 bar.
      relief: { part: 'part-02-relief', setting: '120 bar' },
      valve: { part: 'part-01-valve' },
      drives: 'no track',
      works: ['attachment'],
    })
    // The machine has no lines to an attachment: as long as those to a motor, 1.1 m and 1.2 m, and marked as assumed.
    expect(attachment).toHaveProperty('auxiliary.lines.out.length', '2300 mm (assumed)')
  })

  test('lines and couplers that are there change over', () => {
    const [option] = seconds(shared, tandem(['6 cm3/rev', '6 cm3/rev']), valve, relief)
    const { main, attachment } = circuitsOf(option as never)
    expect(main).toMatchObject({ works: ['implements'], auxiliary: null })
    expect(attachment).toHaveProperty('auxiliary.lines.out.length', '2100 mm')
    expect(attachment).toHaveProperty('auxiliary.coupler', { flow: '30 L/min', drop: '4 bar' })
  })

  test('of sections that differ either may drive', () => {
    const both = seconds(none, tandem(['6 cm3/rev', '8 cm3/rev']), valve, relief)
    expect(both.map((one) => circuitsOf(one).attachment?.pump)).toEqual([
      { part: 'part-00-tandem-pump', section: 1 },
      { part: 'part-00-tandem-pump', section: 2 },
    ])
  })

  test.each([
    ['no valve of the list passes the flow', none, [tandem(['6 cm3/rev', '12 cm3/rev']), relief]],
    ['the tandem has a section too many', none, [tandem(['6 cm3/rev', '6 cm3/rev', '6 cm3/rev']), valve, relief]],
    ['the attachment has a pump of its own', broom, [tandem(['6 cm3/rev', '6 cm3/rev']), valve, relief]],
    ['there is no tandem', none, [valve, relief]],
  ] as const)('none where %s', (_, base, parts) => {
    expect(seconds(base, ...parts)).toEqual([])
  })

  test('a tandem that turns the wrong way is changed for one that turns right, and comes to rest', () => {
    const wrong = tandem(['6 cm3/rev', '6 cm3/rev'], 'counterclockwise')
    const right = tandem(['6 cm3/rev', '6 cm3/rev'])
    const [option] = seconds(none, wrong, valve, relief, right)
    const { loaded, start } = begun(none, listOf(wrong, valve, relief, right))
    const { result } = evaluateOption(loaded, start, {
      name: 'Second pump',
      why: null,
      changes: (option as { readonly patch: object }).patch as never,
      reach: null,
    })
    expect(result.consequences.find(({ component }) => component === 'circuits.main.pump')).toMatchObject({
      part: 'part-03-tandem-pump',
      action: 'replace',
    })
    expect(result.evaluation.findings.map(({ check }) => check)).not.toContain('consequences-unsettled')
  })
})
