/** The merge patch by the test cases of RFC 7396, appendix A; parts and lines by the rules of the format. */
import { describe, expect, test } from 'vitest'
import type { Json } from '../../src/question.ts'
import { applyPatch, kindsFor } from '../../src/scenario/patch.ts'
import { type Edit, MACHINE, PARTS, problemsOf, SCENARIO, sample } from '../fixtures/fernhill.ts'

const apply = (target: Json, patch: Json): Json => applyPatch(target, patch, { parts: [], flaws: [] })

describe('RFC 7396, appendix A', () => {
  test.each<[Json, Json, Json]>([
    [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
    [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
    [{ a: 'b' }, { a: null }, {}],
    [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
    [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
    [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
    [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
    [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
    [
      ['a', 'b'],
      ['c', 'd'],
      ['c', 'd'],
    ],
    [{ a: 'b' }, ['c'], ['c']],
    [{ a: 'foo' }, null, null],
    [{ a: 'foo' }, 'bar', 'bar'],
    [{ e: null }, { a: 1 }, { e: null, a: 1 }],
    [[1, 2], { a: 'b', c: null }, { a: 'b' }],
    [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
  ])('%j with %j', (target, patch, result) => expect(apply(target, patch)).toEqual(result))

  test('neither the machine nor the patch is touched', () => {
    const target = { a: { b: 1 } }
    const patch = { a: { c: 2 } }
    apply(target, patch)
    expect([target, patch]).toEqual([{ a: { b: 1 } }, { a: { c: 2 } }])
  })
  test('no key reaches the prototype', () => {
    const result = apply({}, JSON.parse('{"__proto__": {"polluted": 1}}') as Json)
    expect((result as { polluted?: unknown }).polluted).toBeUndefined()
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })
})

describe('which parts go where', () => {
  test.each([
    ['circuits.main.pump', ['pump', 'tandem pump']],
    ['circuits.main.lines.return', ['hose']],
    ['circuits.arms.auxiliary.lines.out', ['hose']],
    ['travel.motor', ['motor']],
    ['travel.lines.swivel-to-motor', ['hose']],
    ['fluid', ['oil']],
    ['cooler', ['cooler']],
    ['engine', null],
    ['circuits.main.room', null],
    ['travel.track', null],
  ])('%s', (path, kinds) => expect(kindsFor(path.split('.'))).toEqual(kinds))
})

const machine = (patch: Json, ...edits: Edit[]) =>
  sample(...edits)
    .prepare([patch])
    .resolve().machine
const main = (patch: Json, ...edits: Edit[]) => {
  const circuit = machine(patch, ...edits).circuits[0]
  if (circuit === undefined) throw new Error('no circuit')
  return circuit
}

describe('a part in place of figures', () => {
  test('replaces the component whole', () => {
    const { pump } = main({ circuits: { main: { pump: { part: 'pump-a-158' } } } })
    expect(pump.part).toBe('pump-a-158')
    expect(pump.displacement).toBeCloseTo(15.8e-6, 12)
    expect(pump.maxSpeed).toBeCloseTo(55, 9)
    expect(pump.mount.length).toBeCloseTo(0.12, 12)
  })
  test('what the part does not state is not taken from the old one', () => {
    const edit: Edit = [PARTS, /max-pressure: 230 bar,\s*max-speed: 3300 rpm,/u, '']
    const { pump } = main({ circuits: { main: { pump: { part: 'pump-a-158' } } } }, edit)
    expect([pump.maxPressure, pump.maxSpeed]).toEqual([null, null])
  })
  test('figures beside it win over its own', () => {
    const { pump } = main({ circuits: { main: { pump: { part: 'pump-a-158', displacement: '15 cm3/rev' } } } })
    expect(pump.part).toBe('pump-a-158')
    expect(pump.displacement).toBeCloseTo(15e-6, 12)
  })
  test('a section of a tandem has the mount and the shaft of the whole', () => {
    const { pump } = main({ circuits: { main: { pump: { part: 'tandem-x', section: 2 } } } })
    expect([pump.part, pump.section, pump.maxShaftTorque]).toEqual(['tandem-x', 2, 75])
    expect(pump.displacement).toBeCloseTo(5e-6, 12)
    expect(pump.mount.shaft).toBe('9T 16/32 DP')
    expect(pump.ports.outlet?.text).toBe('G 3/8')
  })
  test('another section of the tandem that is there', () => {
    const { machine: two } = sample()
      .prepare([
        { circuits: { main: { pump: { part: 'tandem-x', section: 1 } } } },
        { circuits: { main: { pump: { section: 2 } } } },
      ])
      .resolve()
    expect(two.circuits[0]?.pump.displacement).toBeCloseTo(5e-6, 12)
    expect(two.circuits[0]?.pump.section).toBe(2)
  })
  test('a relief keeps its setting, which is no property of the cartridge', () => {
    const { relief } = main({ circuits: { main: { relief: { part: 'relief-40' } } } })
    expect([relief.part, relief.setting]).toEqual(['relief-40', 155e5])
  })
  test('cooler and filter where there were none', () => {
    const { cooler, filter } = machine({ cooler: { part: 'cooler-s' }, filter: { part: 'return-filter-s' } })
    expect([cooler?.part, cooler?.capacity]).toEqual(['cooler-s', 45])
    expect(cooler?.bypass).toBeCloseTo(4.5e5, 6)
    expect(filter?.beta).toBe(200)
    expect(filter?.fineness).toBeCloseTo(10e-6, 15)
  })
  test('null takes a component out', () => expect(machine({ strainer: null }).strainer).toBeNull())
})

describe('hoses', () => {
  const line = (change: Json) => main({ circuits: { main: { lines: { pressure: change } } } }).lines.pressure
  test('a part changes the hose; length, elbows and ends stay', () =>
    expect(line({ part: 'hose-1w-10' })).toMatchObject({
      part: 'hose-1w-10',
      dash: 10,
      kind: '1-wire hose',
      maxPressure: 130e5,
      length: 0.9,
      elbows: 2,
    }))
  test('its ends are those that were there', () =>
    expect(line({ part: 'hose-1w-10' })?.ends?.map(({ text }) => text)).toEqual(['G 1/2', 'G 1/2']))
  test('another size has its own bore and rating, not those of the hose that was there', () => {
    // EN 853 2SN: -8 275 bar, -12 215 bar
    const { machine: changed } = sample()
      .prepare([
        { circuits: { main: { lines: { pressure: { part: 'hose-2w-8' } } } } },
        { circuits: { main: { lines: { pressure: { hose: -12 } } } } },
      ])
      .resolve()
    expect(changed.circuits[0]?.lines.pressure).toMatchObject({
      part: null,
      dash: 12,
      kind: '2-wire hose',
      bore: 0.019,
    })
    expect(changed.circuits[0]?.lines.pressure?.maxPressure).toBeCloseTo(215e5, 3)
  })
  test('another kind has its own rating', () =>
    // EN 853 1SN -8: 160 bar
    expect(line({ kind: '1-wire hose' })?.maxPressure).toBeCloseTo(160e5, 3))
  test('a longer one is otherwise the same', () =>
    expect(line({ length: '1.4 m' })).toMatchObject({ length: 1.4, dash: 8, maxPressure: 275e5 }))
})

const SECOND = {
  pump: { displacement: '5 cm3/rev' },
  relief: { setting: '140 bar' },
  lines: { suction: { 'same-as': 'main' } },
  drives: 'no track',
  works: ['attachment'],
}

describe('circuits', () => {
  test('a whole one can be added, on the suction line of another', () => {
    const { circuits } = machine({ circuits: { arms: SECOND } })
    expect(circuits.map(({ name }) => name)).toEqual(['main', 'arms'])
    expect(circuits[1]?.suctionSharedWith).toBe('main')
    expect(circuits[1]?.lines.suction).toBe(circuits[0]?.lines.suction)
    expect(circuits[1]?.lines.suction?.id).toBe('circuits.main.lines.suction')
  })
  test('a change to a shared line is refused', () => {
    expect(() =>
      sample()
        .prepare([{ circuits: { arms: SECOND } }, { circuits: { arms: { lines: { suction: { hose: -16 } } } } }])
        .resolve(),
    ).toThrow('this line is one with that of "main"')
  })
  test('a line that becomes one with that of another leaves its own figures behind', () => {
    const arms = { ...SECOND, lines: { suction: { hose: -16, length: '2 m' } } }
    const { circuits } = sample()
      .prepare([{ circuits: { arms } }, { circuits: { arms: { lines: { suction: { 'same-as': 'main' } } } } }])
      .resolve().machine
    expect(circuits[1]?.lines.suction).toBe(circuits[0]?.lines.suction)
  })
  test('two that share with each other own no line', () => {
    const edit: Edit = [
      SCENARIO,
      'cooler: { part: cooler-s }',
      'circuits: { main: { lines: { suction: { same-as: main } } } }',
    ]
    expect(problemsOf(edit).map(({ code, file }) => [code, file])).toEqual([['circuit-unknown', SCENARIO]])
  })
})

describe('what can be stated in two ways', () => {
  // Grades and their usual viscosities at 100 °C: ISO 3448, and the table of the method.
  test('another grade is another oil, whatever viscosities were stated', () => {
    const { oil } = machine({ fluid: { grade: 'ISO VG 68' } })
    expect(oil.viscosityAt40 * 1e6).toBeCloseTo(68, 9)
    expect(oil.viscosityAt100 * 1e6).toBeCloseTo(8.7, 9)
  })
  test('viscosities beside the grade are those of the data sheet', () => {
    const { oil } = machine({ fluid: { grade: 'ISO VG 68', 'viscosity-at-40C': '66 cSt' } })
    expect(oil.viscosityAt40 * 1e6).toBeCloseTo(66, 9)
  })
  // 6, 12 and 24 W/m2K: the method's settings of a reservoir.
  test('a setting takes the place of a stated heat transfer, and the other way round', () => {
    const stated: Edit = [MACHINE, 'setting: exposed', 'heat-transfer: 9 W/m2K']
    expect(machine({ reservoir: { setting: 'in fan wash' } }, stated).reservoir.heatTransfer).toBe(24)
    expect(machine({ reservoir: { 'heat-transfer': '9 W/m2K' } }).reservoir.heatTransfer).toBe(9)
  })
  test('teeth and pitch take the place of a pitch diameter, and the other way round', () => {
    const byTeeth: Edit = [MACHINE, '{ pitch-diameter: 262 mm }', '{ teeth: 9, pitch: 90 mm }']
    // pi x 0.4 m; 14 x 0.09 m
    expect(machine({ travel: { sprocket: { 'pitch-diameter': '400 mm' } } }, byTeeth).travel.wayPerTurn).toBeCloseTo(
      1.256637,
      6,
    )
    expect(machine({ travel: { sprocket: { teeth: 14, pitch: '90 mm' } } }).travel.wayPerTurn).toBeCloseTo(1.26, 9)
  })
})
