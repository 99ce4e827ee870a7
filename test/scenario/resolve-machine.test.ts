/** The resolved machine against one built by hand, and each default against the method with its arithmetic. */
import { describe, expect, test } from 'vitest'
import type { Machine } from '../../src/machine.ts'
import type { Assumption } from '../../src/question.ts'
import { type Edit, MACHINE, sample } from '../fixtures/fernhill.ts'
import { wren } from '../fixtures/wren.ts'

const built = (...edits: Edit[]) =>
  sample(...edits)
    .prepare([])
    .resolve()
const machine = (...edits: Edit[]): Machine => built(...edits).machine
const assumed = (path: string, ...edits: Edit[]): Assumption | undefined =>
  built(...edits).assumptions.find((assumption) => assumption.path === path)

/** Same shape and words; numbers to 1e-12. */
const expectAlike = (got: unknown, wanted: unknown, path = ''): void => {
  if (typeof wanted === 'number') {
    expect(typeof got, path).toBe('number')
    expect(Math.abs((got as number) - wanted), `${path}: ${got}`).toBeLessThanOrEqual(1e-12 * Math.abs(wanted))
  } else if (typeof wanted !== 'object' || wanted === null) expect(got, path).toBe(wanted)
  else {
    expect(Object.keys(got as object).sort(), path).toEqual(Object.keys(wanted).sort())
    for (const [key, value] of Object.entries(wanted))
      expectAlike((got as { [key: string]: unknown })[key], value, `${path}.${key}`)
  }
}

test('the sample machine is the one built by hand', () => expectAlike(machine(), wren()))

const NO_PUMP_EFFICIENCY: Edit = [MACHINE, /efficiency:\s*\{ volumetric: 92 %[^\n]*\n/u, '\n']
const pump = (...edits: Edit[]) => {
  const { circuits } = machine(...edits)
  if (circuits[0] === undefined) throw new Error('no circuit')
  return circuits[0].pump
}

describe('pump', () => {
  test('slip of the stated efficiency: (1 - 0.92) V n mu / dp', () => {
    // 0.08 x 7.9e-6 m3 x 50 1/s x 32e-6 x 850 Pa.s / 160e5 Pa = 5.372e-14 m3
    expect(pump().slip).toBeCloseTo(5.372e-14, 20)
    expect(pump().flowOffset).toBe(0)
    expect(pump().efficiencyStated).toBe(true)
  })
  test('torque lost: V dp / 2 pi (1/0.88 - 1)', () => {
    // 7.9e-6 x 160e5 / 6.28319 = 20.117 N.m; x 0.136364 = 2.7433 N.m
    expect(pump().referenceTorqueLoss).toBeCloseTo(2.7433, 4)
  })
  test('nothing stated: e 0.02, k / mu 1.1e-7 V at 30 cSt, 89 % at 200 bar and rated speed', () => {
    const { flowOffset, slip, reference, referenceTorqueLoss, efficiencyStated } = pump(NO_PUMP_EFFICIENCY)
    expect(flowOffset).toBeCloseTo(0.02, 12)
    // 1.1e-7 x 7.9e-6 x 30e-6 x 850
    expect(slip).toBeCloseTo(2.21595e-14, 20)
    expect(reference.pressure).toBeCloseTo(200e5, 3)
    expect(reference.speed).toBeCloseTo(50, 12)
    expect(reference.viscosity).toBeCloseTo(0.0255, 12)
    // 7.9e-6 x 200e5 / 6.28319 = 25.146; x (1/0.89 - 1) = 3.1080 N.m
    expect(referenceTorqueLoss).toBeCloseTo(3.108, 3)
    expect(efficiencyStated).toBe(false)
  })
  test('the default pump has the efficiencies of its source, 0.966 to 0.925 at 2600 rpm, to half a point', () => {
    const { displacement, flowOffset, slip, reference } = pump(NO_PUMP_EFFICIENCY)
    const at = (bar: number) => 1 - flowOffset - (slip * bar * 1e5) / (reference.viscosity * displacement * (2600 / 60))
    const published = [0.966, 0.952, 0.938, 0.925]
    for (const [i, bar] of [50, 100, 150, 200].entries())
      expect(Math.abs(at(bar) - (published[i] ?? 0))).toBeLessThan(0.005)
  })
  test('stated without its point: 160 bar, rated speed and 32 cSt, each an assumption', () => {
    const edit: Edit = [MACHINE, /, at: \{ pressure: 160 bar, speed: 3000 rpm, viscosity: 32 cSt \}/u, '']
    expect(pump(edit).slip).toBeCloseTo(5.372e-14, 20)
    const at = 'circuits.main.pump.efficiency.at'
    expect(assumed(`${at}.pressure`, edit)).toMatchObject({ value: 160, unit: 'bar', from: 'default' })
    expect(assumed(`${at}.speed`, edit)).toMatchObject({ value: 3000, unit: 'rpm' })
    expect(assumed(`${at}.viscosity`, edit)).toMatchObject({ value: 32, unit: 'cSt' })
  })
  test('only the hydromechanical one stated: the volumetric one by default', () => {
    const { flowOffset, slip, efficiencyStated, reference } = pump([MACHINE, 'volumetric: 92 %, ', ''])
    expect([flowOffset, efficiencyStated]).toEqual([0.02, false])
    expect(slip).toBeCloseTo(2.21595e-14, 20)
    expect(reference.pressure).toBeCloseTo(160e5, 3)
  })
  test('no inlet limit stated: 0.7 bar absolute, an assumption', () => {
    const edit: Edit = [MACHINE, /\n\s*min-inlet-pressure:[^\n]*/u, '']
    expect(pump(edit).minInletPressure).toBeCloseTo(70_000, 6)
    expect(assumed('circuits.main.pump.min-inlet-pressure', edit)).toMatchObject({ value: 0.7, unit: 'bar' })
  })
})

const NO_MOTOR_EFFICIENCY: Edit = [MACHINE, /efficiency:\s*\{[^{}]*volumetric: 93 %[^{}]*\{[^}]*\},?\s*\}/u, '']

describe('motor', () => {
  test('leak of the stated efficiency: V n / 0.93 - 1.014 V n over 100 bar', () => {
    // V n = 235e-6 m3/s; /0.93 = 252.688e-6; less 238.290e-6 = 14.398e-6; over 1e7 Pa = 1.43982e-12
    const { leak, flowOffset } = machine().travel.motor
    expect(flowOffset).toBe(0.014)
    expect(leak).toBeCloseTo(1.43982e-12, 16)
  })
  test('an efficiency that leaves no leak: k 0 and e what is stated', () => {
    const { leak, flowOffset } = machine([MACHINE, 'volumetric: 93 %', 'volumetric: 99 %']).travel.motor
    expect(leak).toBe(0)
    expect(flowOffset).toBeCloseTo(1 / 0.99 - 1, 12)
  })
  test('nothing stated: the defaults of published tables', () => {
    const { leak, flowOffset, hydromechanical, starting, referenceViscosity } =
      machine(NO_MOTOR_EFFICIENCY).travel.motor
    expect(flowOffset).toBeCloseTo(0.014, 12)
    // 1.1e-8 x 235e-6
    expect(leak).toBeCloseTo(2.585e-12, 18)
    expect([hydromechanical, starting]).toEqual([0.84, 0.68])
    // 43e-6 x 850
    expect(referenceViscosity).toBeCloseTo(0.03655, 12)
  })
  test('a second displacement is the smaller one', () => {
    const { displacement, secondDisplacement } = machine([
      MACHINE,
      'second-displacement: null',
      'second-displacement: 130 cm3/rev',
    ]).travel.motor
    expect(displacement).toBeCloseTo(235e-6, 12)
    expect(secondDisplacement).toBeCloseTo(130e-6, 12)
  })
})

describe('way per turn', () => {
  const sprocket = (figures: string): number =>
    machine([MACHINE, '{ pitch-diameter: 262 mm }', figures]).travel.wayPerTurn
  test('pi times the pitch diameter', () => expect(machine().travel.wayPerTurn).toBeCloseTo(0.8231, 5))
  test('teeth times pitch', () => expect(sprocket('{ teeth: 9, pitch: 90 mm }')).toBeCloseTo(0.81, 12))
  test('a sprocket that engages every second tooth', () =>
    expect(sprocket('{ teeth: 18, pitch: 90 mm, links-per-turn: 9 }')).toBeCloseTo(0.81, 12))
  test('a wheel: 2 pi times the rolling radius, 95 %, two motors unless said', () => {
    const { travel } = machine(
      [MACHINE, 'type: tracked excavator', 'type: wheeled loader'],
      [MACHINE, 'sprocket: { pitch-diameter: 262 mm }', 'wheel: { rolling-radius: 265 mm }'],
    )
    expect(travel.wayPerTurn).toBeCloseTo(1.66504, 5)
    expect([travel.running, travel.motors, travel.efficiency, travel.gauge]).toEqual(['wheels', 2, 0.95, null])
  })
})

describe('defaults are assumptions', () => {
  const without = (line: string): Edit => [MACHINE, new RegExp(`\\n  ${line}:[^\\n]*`, 'u'), '']
  test.each<[string, string, number, string]>([
    ['governor-droop', 'engine.governor-droop', 8, '%'],
    ['torque-rise', 'engine.torque-rise', 10, '%'],
    ['continuous-fraction', 'engine.continuous-fraction', 85, '%'],
    ['cylinders', 'engine.cylinders', 3, ''],
    // 2.5 kg for each of 13 L
    ['steel-mass', 'reservoir.steel-mass', 32.5, 'kg'],
    ['viscosity-at-100C', 'fluid.viscosity-at-100C', 6.8, 'cSt'],
    ['final-drive-ratio', 'travel.final-drive-ratio', 1, ''],
  ])('%s', (line, path, value, unit) =>
    expect(assumed(path, without(line))).toMatchObject({ path, value, unit, from: 'default' }),
  )
  test('what is written is none', () => expect(assumed('engine.governor-droop')).toBeUndefined())
  test.each([
    ['boxed in', 6],
    ['exposed', 12],
    ['in fan wash', 24],
  ])('a reservoir %s gives off %i W/m2K, to within a quarter', (setting, transfer) => {
    const edit: Edit = [MACHINE, 'setting: exposed', `setting: ${setting}`]
    expect(machine(...(setting === 'exposed' ? [] : [edit])).reservoir.heatTransfer).toBe(transfer)
    expect(assumed('reservoir.heat-transfer', ...(setting === 'exposed' ? [] : [edit]))).toMatchObject({
      value: transfer,
      tolerance: '± 25 %',
    })
  })
  test('a stated heat transfer wins', () =>
    expect(machine([MACHINE, 'setting: exposed', 'heat-transfer: 17 W/m2K']).reservoir.heatTransfer).toBe(17))
  test('grade alone gives both viscosities', () => {
    const { oil } = machine([MACHINE, /grade: ISO VG 46[^\n]*\n[^\n]*\n[^\n]*/u, 'grade: ISO VG 68'])
    expect(oil.viscosityAt40).toBeCloseTo(68e-6, 12)
    expect(oil.viscosityAt100).toBeCloseTo(8.7e-6, 12)
  })
  test('what nobody has read is null', () => {
    const bare = machine(
      [MACHINE, /\n {2}market-value[^\n]*/u, ''],
      [MACHINE, /\n {2}design-travel-speed[^\n]*/u, ''],
      [MACHINE, /\n {2}spare-current[^\n]*/u, ''],
      [MACHINE, /\nbrakes[^\n]*/u, ''],
      [MACHINE, /\n {4}room[^\n]*/u, ''],
    )
    expect([bare.marketValue, bare.designTravelSpeed, bare.engine.spareCurrent]).toEqual([null, null, null])
    expect(bare.brakes).toEqual({ holding: null, counterbalance: null })
    expect(bare.circuits[0]?.room).toBeNull()
  })
})

describe('figures marked (assumed)', () => {
  test('one that the model draws', () =>
    expect(assumed('travel.swivel.bore', [MACHINE, 'bore: 6 mm', 'bore: 6 mm (assumed)'])).toEqual({
      path: 'travel.swivel.bore',
      value: 6,
      unit: 'mm',
      from: 'assumed',
      tolerance: null,
    }))
  test('one that is only held against a limit', () =>
    expect(
      assumed('circuits.main.valve.rated-flow', [MACHINE, 'rated-flow: 38 L/min', 'rated-flow: 38 L/min (assumed)']),
    ).toMatchObject({ value: 38, unit: 'L/min', from: 'assumed' }))
  test('each once', () => {
    const { assumptions } = built([MACHINE, 'displacement: 7.9 cm3/rev', 'displacement: 7.9 cm3/rev ± 2 % (assumed)'])
    const paths = assumptions.map(({ path }) => path)
    expect(new Set(paths).size).toBe(paths.length)
    expect(assumptions).toContainEqual({
      path: 'circuits.main.pump.displacement',
      value: 7.9,
      unit: 'cm3/rev',
      from: 'assumed',
      tolerance: '± 2 %',
    })
  })
})

describe('drawing within tolerances', () => {
  const draws = (...edits: Edit[]) => {
    const seen = new Map<string, readonly [nominal: number, tolerance: number]>()
    sample(...edits)
      .prepare([])
      .resolve((path, nominal, tolerance) => {
        seen.set(path, [nominal, tolerance])
        return nominal
      })
    return seen
  }
  test.each<[string, number, number]>([
    ['circuits.main.pump.displacement', 7.9e-6, 0.03 * 7.9e-6],
    ['travel.motor.displacement', 235e-6, 0.03 * 235e-6],
    ['circuits.main.pump.efficiency.volumetric', 0.92, 0.03],
    ['travel.motor.efficiency.hydromechanical', 0.85, 0.03],
    ['circuits.main.lines.pressure.length', 0.9, 0.045],
    ['reservoir.cooling-surface', 0.5, 0.075],
    ['reservoir.heat-transfer', 12, 3],
    ['other-heat-transfer', 12, 3],
  ])('%s by the default of the method', (path, nominal, tolerance) => {
    const drawn = draws().get(path)
    expect(drawn?.[0]).toBeCloseTo(nominal, 12)
    expect(drawn?.[1]).toBeCloseTo(tolerance, 12)
  })
  test('a written tolerance wins', () =>
    expect(
      draws([MACHINE, 'displacement: 7.9 cm3/rev', 'displacement: 7.9 cm3/rev ± 1 %']).get(
        'circuits.main.pump.displacement',
      )?.[1],
    ).toBeCloseTo(7.9e-8, 14))
  test('a draw of the nominal values is the nominal machine', () =>
    expectAlike(
      sample(NO_PUMP_EFFICIENCY, NO_MOTOR_EFFICIENCY)
        .prepare([])
        .resolve((_, nominal) => nominal).machine,
      machine(NO_PUMP_EFFICIENCY, NO_MOTOR_EFFICIENCY),
    ))
  test('a worse drawn efficiency of a default pump and motor costs flow', () => {
    const worse = sample(NO_PUMP_EFFICIENCY, NO_MOTOR_EFFICIENCY)
      .prepare([])
      .resolve((path, nominal) => (path.endsWith('efficiency.volumetric') ? nominal - 0.03 : nominal)).machine
    expect(worse.circuits[0]?.pump.flowOffset).toBeCloseTo(0.05, 12)
    expect(worse.travel.motor.flowOffset).toBeGreaterThan(0.04)
  })
  test('no drawn efficiency passes 100 %', () => {
    const high = sample()
      .prepare([])
      .resolve((path, nominal) => (path.includes('efficiency') ? nominal + 0.5 : nominal)).machine
    expect(high.travel.motor.hydromechanical).toBe(1)
    expect(high.circuits[0]?.pump.slip).toBe(0)
    expect(high.circuits[0]?.pump.referenceTorqueLoss).toBe(0)
  })
})
