/** A solved point in the words and units of the result: conversions and sums by hand, from states that are written down here. */
import { describe, expect, test } from 'vitest'
import type { CircuitState, EngineState } from '../../src/circuit/balance.ts'
import {
  atRelief,
  circuitFigures,
  drivingPressure,
  dropsOf,
  inletAt,
  linesOf,
  neutralState,
  suctionFlow,
  workingPressure,
} from '../../src/circuit/figures.ts'
import { conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import { pointOf } from '../../src/circuit/travel-figures.ts'
import type { TrackState, TravelState } from '../../src/circuit/travel-point.ts'
import { dropOfLine, dropOfRestriction } from '../../src/circuit/way.ts'
import type { Circuit, Machine } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const lpm = 1 / 60_000
const [main] = wren().circuits as [Circuit]

const circuitState = (over: Partial<CircuitState>): CircuitState => ({
  pumpFlow: 20 * lpm,
  wayFlow: 20 * lpm,
  pressure: 80e5,
  torque: 12,
  relieving: false,
  starved: false,
  ...over,
})
const engineState = (circuits: readonly CircuitState[], over: Partial<EngineState> = {}): EngineState => ({
  speed: 48,
  torque: 25,
  circuits,
  sharedReturn: 0.5e5,
  totalFlow: circuits.reduce((sum, c) => sum + c.pumpFlow, 0),
  load: 0.9,
  lugging: false,
  stalled: false,
  ...over,
})
const track = (over: Partial<TrackState>): TrackState => ({
  circuit: 0,
  motors: 1,
  motorFlow: 10 * lpm,
  motorSpeed: 0.7,
  differential: 40e5,
  returnPressure: 3e5,
  speed: 0.5,
  stands: false,
  ...over,
})
const point = (engine: EngineState, tracks: readonly TrackState[], over: Partial<TravelState> = {}): TravelState => ({
  point: 'level',
  displacement: 235e-6,
  demand: { needed: 865, applied: 865, motors: 2, spinning: false },
  engine,
  tracks,
  speed: 0.5,
  pull: 5500,
  stalled: false,
  limitedBy: null,
  useful: 500,
  ...over,
})

describe('a point', () => {
  const two = engineState([
    circuitState({ pumpFlow: 20 * lpm, wayFlow: 18 * lpm, pressure: 80e5, relieving: true }),
    circuitState({ pumpFlow: 24 * lpm, wayFlow: 21 * lpm, pressure: 70e5 }),
  ])
  const tracks = [
    track({ circuit: 0, motorFlow: 18 * lpm, motorSpeed: 1, differential: 40e5, returnPressure: 3e5 }),
    track({ circuit: 1, motorFlow: 21 * lpm, motorSpeed: 2, differential: 42e5, returnPressure: 2e5 }),
  ]
  // 0.5 m/s x 3.6; 48 rev/s x 60; 25 N.m x 2 pi x 48 = 7539.8 W; flows are means, pressures the higher; of the two circuits
  // only the one that relieves loses 2 L/min over it.
  test('flows are means, pressures the higher, what is lost over the relief only where it is open', () => {
    const got = pointOf(point(two, tracks))
    expect(got.speedKmh).toBeCloseTo(1.8, 12)
    expect(got.displacementCm3).toBeCloseTo(235, 9)
    expect(got.engineSpeedRpm).toBeCloseTo(2880, 9)
    expect(got.shaftPowerKw).toBeCloseTo(7.5398, 4)
    expect(got.pumpFlowLpm).toBeCloseTo(22, 9)
    expect(got.pumpPressureBar).toBeCloseTo(80, 9)
    expect(got.reliefFlowLpm).toBeCloseTo(1, 9)
    expect(got.motorFlowLpm).toBeCloseTo(19.5, 9)
    expect(got.motorSpeedRpm).toBeCloseTo(90, 9)
    expect(got.motorDifferentialBar).toBeCloseTo(42, 9)
    expect(got.motorReturnBar).toBeCloseTo(3, 9)
    expect([got.engineLoad, got.tractiveForceN, got.neededForceN]).toEqual([0.9, 5500, 865])
    expect([got.stalled, got.limitedBy]).toEqual([false, null])
  })
  test('of a stalled engine speeds, flows and power are nothing, the pressures are those asked', () => {
    const stalled = { ...two, stalled: true, load: 1.2 }
    const got = pointOf(point(stalled, tracks, { speed: 0, stalled: true, limitedBy: 'engine' }))
    const { speedKmh, engineSpeedRpm, shaftPowerKw, pumpFlowLpm, reliefFlowLpm, motorFlowLpm, motorSpeedRpm } = got
    expect([speedKmh, engineSpeedRpm, shaftPowerKw, pumpFlowLpm, reliefFlowLpm, motorFlowLpm, motorSpeedRpm]).toEqual(
      Array.from({ length: 7 }, () => 0),
    )
    expect([got.pumpPressureBar, got.motorDifferentialBar, got.engineLoad]).toEqual([80, 42, 1.2])
    expect([got.stalled, got.limitedBy]).toEqual([true, 'engine'])
  })
})

/** Main circuit, and one for implements that shares its suction line. */
const shared = (): Machine => ({
  ...wren(),
  circuits: [main, { ...main, name: 'implements', drives: 'no track', suctionSharedWith: 'main' }],
})
const plantOf = (machine: Machine): Plant => preparePlant(machine, { ...wrenSite, altitude: 0 })

describe('pressures', () => {
  // 155 bar x 1.1 = 170.5; a second driving circuit at 180 bar and 5 %: 189.
  test('ratings are held against the setting with its override, the highest that drives', () => {
    expect(workingPressure(main) / 1e5).toBeCloseTo(170.5, 9)
    const other = {
      ...main,
      drives: 'right track' as const,
      relief: { ...main.relief, setting: 180e5, override: 0.05 },
    }
    const idle = { ...main, drives: 'no track' as const, relief: { ...main.relief, setting: 250e5 } }
    const left = { ...main, drives: 'left track' as const }
    expect(drivingPressure(plantOf({ ...wren(), circuits: [left, other, idle] })) / 1e5).toBeCloseTo(189, 9)
  })
})

describe('suction', () => {
  const states = [circuitState({ pumpFlow: 20 * lpm }), circuitState({ pumpFlow: 12 * lpm })]
  test('a shared line carries the sum, one of its own its own', () => {
    expect(suctionFlow(plantOf(shared()), states, 0)).toBeCloseTo(32 * lpm, 15)
    expect(suctionFlow(plantOf(shared()), states, 1)).toBeCloseTo(32 * lpm, 15)
    const own = { ...shared(), circuits: shared().circuits.map((c) => ({ ...c, suctionSharedWith: null })) }
    expect(suctionFlow(plantOf(own), states, 1)).toBeCloseTo(12 * lpm, 15)
  })
  // The same drop by hand as in plant.test.ts: 24 L/min in the line, 30 through the strainer, 30 mm2/s, 845 kg/m3.
  test('the inlet by the line that is shared and the strainer that all share', () => {
    const plant = plantOf(shared())
    const at = { ...conditionsAt(plant, 50), nu: 30e-6, rho: 845 }
    const engine = engineState([circuitState({ pumpFlow: 15 * lpm }), circuitState({ pumpFlow: 9 * lpm })], {
      totalFlow: 30 * lpm,
    })
    expect(inletAt(plant, engine, 1, at)).toBeCloseTo(93_107, -1)
  })
})

describe('figures of a circuit', () => {
  // 7.9 cm3 x 48 rev/s = 22.752 L/min.
  test('flows and pressures in litres and bar, the inlet absolute', () => {
    const plant = plantOf(wren())
    const at = conditionsAt(plant, 50)
    const engine = engineState([circuitState({})])
    const neutral = engineState([circuitState({ pressure: 4e5 })])
    const figures = circuitFigures(plant, engine, neutral, at).main
    expect(figures?.pumpFlowLpm).toBeCloseTo(20, 9)
    expect(figures?.theoreticalFlowLpm).toBeCloseTo(22.752, 9)
    expect(figures?.neutralPressureBar).toBeCloseTo(4, 9)
    expect(figures?.reliefSettingBar).toBeCloseTo(155, 9)
    expect(figures?.inletPressureBarAbs).toBeCloseTo(inletAt(plant, engine, 0, at) / 1e5, 9)
    expect(figures?.shaftTorqueNm).toBe(atRelief(plant, 0, 50, at).torque)
  })

  /**
   * At the relief, at the pump's own viscosity: slip 8 % of V n (7.9e-6 x 50 = 3.95e-4) at 160 bar, 7.75 % at 155: 3.6439e-4
   * m3/s. Torque V p/2 pi = 19.4885 N.m; loss at 160 bar 20.117 (1/0.88 - 1) = 2.7433, x (0.7 x 155/160 + 0.3) = 2.68325.
   */
  test('flow and torque at the relief', () => {
    const plant = plantOf(wren())
    const at = { ...conditionsAt(plant, 50), mu: 32e-6 * 850 }
    const { flow, torque } = atRelief(plant, 0, 50, at)
    expect(flow).toBeCloseTo(3.6439e-4, 8)
    expect(torque).toBeCloseTo(19.4885 + 2.68325, 3)
  })
  // At 4000 bar 8 % of the flow at 160 bar are twice the flow: nothing comes, the torque is the hydraulic one and the loss.
  test('of a pump that delivers nothing at its relief the torque stays', () => {
    const deaf = { ...main, relief: { ...main.relief, setting: 4000e5 } }
    const plant = plantOf({ ...wren(), circuits: [deaf] })
    const { flow, torque } = atRelief(plant, 0, 50, { ...conditionsAt(plant, 50), mu: 32e-6 * 850 })
    expect(flow).toBe(0)
    // 7.9e-6 x 4000e5/2 pi = 502.93; loss 2.7433 (0.7 x 25 + 0.3) = 48.83.
    expect(torque).toBeCloseTo(502.93 + 48.83, 1)
  })
  test('all levers in neutral is every circuit on its neutral way', () => {
    const plant = plantOf(shared())
    const at = conditionsAt(plant, 50)
    const { circuits, lugging, stalled } = neutralState(plant, at)
    expect([circuits.length, lugging, stalled]).toEqual([2, false, false])
    for (const { pressure, pumpFlow } of circuits) {
      const way =
        dropOfLine(main.lines.pressure, pumpFlow, at) +
        0.5 * dropOfRestriction(main.valve?.restriction, pumpFlow, at) +
        dropOfLine(main.lines.return, pumpFlow, at)
      expect(pressure).toBeCloseTo(way, 3)
    }
  })
  // Half the flow: half of the 19.4885 N.m, all of the friction.
  test('of a starved pump half the flow is half the hydraulic torque', () => {
    const plant = plantOf(wren())
    const at = { ...conditionsAt(plant, 50), mu: 32e-6 * 850, intakeLimits: [3.6439e-4 / 2] }
    const { flow, torque } = atRelief(plant, 0, 50, at)
    expect(flow).toBe(3.6439e-4 / 2)
    expect(torque).toBeCloseTo(19.4885 / 2 + 2.68325, 3)
  })
})

describe('lines of a point', () => {
  const at = (plant: Plant) => ({ ...conditionsAt(plant, 50), nu: 30e-6, rho: 845 })
  const engine = engineState([circuitState({ pumpFlow: 24 * lpm, wayFlow: 22 * lpm })])
  const tracks = [track({ motorFlow: 10 * lpm }), track({ motorFlow: 11 * lpm })]
  const lines = () => {
    const plant = plantOf(wren())
    return new Map(linesOf(plant, point(engine, tracks), at(plant)).map((one) => [one.id, one]))
  }

  test('each once, in the order of the oil', () => {
    expect([...lines().keys()]).toEqual([
      'circuits.main.lines.suction',
      'circuits.main.lines.pressure',
      'circuits.main.lines.return',
      'travel.lines.valve-to-swivel',
      'travel.lines.swivel-to-motor',
    ])
  })
  // 24 L/min in 19 mm: 1.4108 m/s, Re 893.5 (plant.test.ts), 4702 Pa; 22 in 12.7: 2.8945 m/s; 24 in 15.9: 2.0145; 11 in 6.4:
  // 5.6989.
  test('suction and return carry the pump flow, the pressure line what goes to the motors, work lines the larger motor flow', () => {
    const suction = lines().get('circuits.main.lines.suction')
    expect(suction?.velocityMps).toBeCloseTo(1.4108, 4)
    expect(suction?.reynolds).toBeCloseTo(893.5, 1)
    expect(suction?.dropBar).toBeCloseTo(0.04702, 4)
    expect([suction?.flowLpm, suction?.boreMm, suction?.limitMps]).toEqual([
      expect.closeTo(24, 9),
      expect.closeTo(19, 9),
      1.2,
    ])
    expect(lines().get('circuits.main.lines.pressure')?.velocityMps).toBeCloseTo(2.8945, 4)
    expect(lines().get('circuits.main.lines.return')?.velocityMps).toBeCloseTo(2.0145, 4)
    expect(lines().get('travel.lines.swivel-to-motor')?.velocityMps).toBeCloseTo(5.6989, 4)
  })
  test('rated by the relief; the suction by nothing; the return by its own drop and what stands behind it', () => {
    const rated = (id: string) => lines().get(id)?.workingPressureBar
    expect(rated('circuits.main.lines.suction')).toBeNull()
    expect(rated('circuits.main.lines.pressure')).toBeCloseTo(170.5, 9)
    expect(rated('travel.lines.valve-to-swivel')).toBeCloseTo(170.5, 9)
    const back = lines().get('circuits.main.lines.return')
    expect(back?.workingPressureBar).toBeCloseTo((back?.dropBar ?? 0) + 0.5, 9)
  })
  test('a shared suction line is named by its owner alone; lines that are not described are not there', () => {
    const bare: Machine = {
      ...wren(),
      circuits: [
        main,
        {
          ...main,
          name: 'implements',
          drives: 'no track',
          suctionSharedWith: 'main',
          lines: { ...main.lines, pressure: null, return: null },
        },
        { ...main, name: 'third', drives: 'no track', lines: { suction: null, pressure: null, return: null } },
      ],
    }
    const plant = plantOf(bare)
    const states = engineState([circuitState({}), circuitState({}), circuitState({})])
    const ids = linesOf(plant, point(states, tracks), at(plant)).map((one) => one.id)
    expect(ids.filter((id) => id.startsWith('circuits'))).toEqual([
      'circuits.main.lines.suction',
      'circuits.main.lines.pressure',
      'circuits.main.lines.return',
    ])
  })
})

describe('drops of a point', () => {
  const tracks = [track({ motorFlow: 10 * lpm }), track({ motorFlow: 12 * lpm })]
  const drops = (machine: Machine, states: readonly CircuitState[]) => {
    const plant = plantOf(machine)
    const at = { ...conditionsAt(plant, 50), nu: 32e-6, rho: 850 }
    return dropsOf(plant, point(engineState(states), tracks), at).map(({ id, flowLpm, dropBar }) => [
      id,
      Number(flowLpm.toFixed(6)),
      Number(dropBar.toFixed(4)),
    ])
  }
  const states = [
    circuitState({ pumpFlow: 24 * lpm, wayFlow: 19 * lpm }),
    circuitState({ pumpFlow: 16 * lpm, wayFlow: 19 * lpm }),
  ]
  const implement: Circuit = { ...main, name: 'implements', drives: 'no track' }

  // Valve 9 bar at 38 L/min: 2.25 at 19, half of it in neutral; swivel 3 bar at 12; block 5 bar at 14: 3.6735 at 12; strainer
  // 0.05 bar at 40; filter 0.3 bar at 60: 0.2 at 40; cooler 0.5 bar at 30: 0.8889 at 40.
  test('valve, swivel, block, strainer', () => {
    expect(drops({ ...wren(), circuits: [main, implement] }, states)).toEqual([
      ['circuits.main.valve', 19, 2.25],
      ['circuits.implements.valve', 19, 1.125],
      ['travel.swivel', 12, 3],
      ['travel.motor.block', 12, 3.6735],
      ['strainer', 40, 0.05],
    ])
  })
  test('filter and cooler with all that returns', () => {
    const filter = {
      part: null,
      ratedFlow: null,
      drop: 0.3e5,
      reference: { flow: 60 * lpm, viscosity: 32e-6 },
      fineness: null,
      beta: null,
      bypass: 1.7e5,
    }
    const cooler = {
      part: null,
      capacity: 100,
      atFlow: 30 * lpm,
      drop: 0.5e5,
      maxPressure: null,
      bypass: 4.5e5,
      airRise: 0,
      fanCurrent: null,
    }
    expect(drops({ ...wren(), circuits: [main, implement], filter, cooler }, states).slice(-3)).toEqual([
      ['filter', 40, 0.2],
      ['cooler', 40, 0.8889],
      ['strainer', 40, 0.05],
    ])
  })
  test('what is not there, or states no drop, has none', () => {
    const { travel } = wren()
    const valve = main.valve === null ? null : { ...main.valve, restriction: null }
    const bare: Machine = {
      ...wren(),
      circuits: [
        { ...main, valve: null },
        { ...implement, valve },
      ],
      travel: { ...travel, swivel: null, motor: { ...travel.motor, block: null } },
      strainer: null,
    }
    expect(drops(bare, states)).toEqual([])
  })
})
