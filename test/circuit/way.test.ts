/** Each component on the way by hand, at a density of 850 kg/m3 (where reference drops hold) and 32 mm2/s. */
import { describe, expect, test } from 'vitest'
import type { Oil } from '../../src/circuit/plant.ts'
import {
  drivingWay,
  dropAlong,
  flowUnder,
  neutralWay,
  returnWay,
  suctionWay,
  toolWay,
} from '../../src/circuit/solved-way.ts'
import {
  coreDrop,
  dropBehindMotor,
  dropOfCooler,
  dropOfFilter,
  dropOfLine,
  dropOfRestriction,
  dropOfSharedReturn,
  dropOfSwivel,
  dropToMotor,
  dropToTool,
  elementDrop,
} from '../../src/circuit/way.ts'
import { lineDrop } from '../../src/formulas/line.ts'
import type { Circuit, Cooler, Filter, Machine, Swivel } from '../../src/machine.ts'
import { line, wren } from '../fixtures/wren.ts'

const oil: Oil = { oil: 45, nu: 32e-6, rho: 850, mu: 32e-6 * 850 }
const at = { ...oil, ways: [], suctions: [], intakeLimits: [] }
const lpm = 1 / 60_000

const travel = (over: Partial<Machine['travel']>): Machine => ({ ...wren(), travel: { ...wren().travel, ...over } })
const swivel = (over: Partial<Swivel>): Swivel => ({ ...(wren().travel.swivel as Swivel), ...over })

describe('swivel', () => {
  // Stated 3 bar at 12 L/min: 12 bar at 24.
  test('a stated drop counts before the bore', () => {
    expect(dropOfSwivel(swivel({}), 24 * lpm, at)).toBeCloseTo(12e5, 5)
  })
  test('of a bore alone it is a line of that bore, 0.15 m, two elbows', () => {
    expect(dropOfSwivel(swivel({ restriction: null }), 12 * lpm, at)).toBe(
      lineDrop(12 * lpm, 0.006, 0.15, 2, 32e-6, 850),
    )
  })
  test('of nothing known, and none at all, it is nothing', () => {
    expect(dropOfSwivel(swivel({ restriction: null, bore: null }), 12 * lpm, at)).toBe(0)
    expect(dropOfSwivel(null, 12 * lpm, at)).toBe(0)
  })
})

describe('filter and cooler', () => {
  const filter: Filter = {
    part: null,
    ratedFlow: 60 * lpm,
    drop: 0.3e5,
    reference: { flow: 60 * lpm, viscosity: 32e-6 },
    fineness: null,
    beta: null,
    bypass: 1.7e5,
  }
  const cooler: Cooler = {
    part: null,
    capacity: 100,
    atFlow: 30 * lpm,
    drop: 0.5e5,
    maxPressure: null,
    bypass: 4.5e5,
    airRise: 0,
    fanCurrent: null,
  }
  const machine: Machine = { ...wren(), filter, cooler }

  // Element 0.3 bar x 40/60 = 0.2 bar; core 0.5 bar x (40/30)2 = 0.8889 bar.
  test('drop as stated, laminar and turbulent, together', () => {
    expect(dropOfFilter(machine, 40 * lpm, at)).toBeCloseTo(0.2e5, 6)
    expect(dropOfCooler(machine, 40 * lpm, at)).toBeCloseTo(88_889, 0)
    expect(dropOfSharedReturn(machine, 40 * lpm, at)).toBeCloseTo(108_889, 0)
  })
  // Ten times as viscous at 60 L/min the element asks for 3 bar, the core at 120 L/min for 8 bar.
  test('to their bypass and no further', () => {
    expect(dropOfFilter(machine, 60 * lpm, { ...at, nu: 320e-6 })).toBe(1.7e5)
    expect(dropOfCooler(machine, 120 * lpm, at)).toBe(4.5e5)
  })
  test('without a stated drop, or not there, they drop nothing', () => {
    expect(dropOfSharedReturn({ ...machine, filter: null, cooler: null }, 40 * lpm, at)).toBe(0)
    expect(dropOfFilter({ ...machine, filter: { ...filter, drop: null } }, 40 * lpm, at)).toBe(0)
    expect(dropOfFilter({ ...machine, filter: { ...filter, reference: null } }, 40 * lpm, at)).toBe(0)
    expect(dropOfCooler({ ...machine, cooler: { ...cooler, drop: null } }, 40 * lpm, at)).toBe(0)
    expect(elementDrop({ ...machine, filter: null }, 40 * lpm, at)).toBe(0)
    expect(coreDrop({ ...machine, cooler: null }, 40 * lpm, at)).toBe(0)
  })
  // 3 bar and 8 bar, whatever the bypass.
  test('element and core by themselves know no bypass', () => {
    expect(elementDrop(machine, 60 * lpm, { ...at, nu: 320e-6 })).toBeCloseTo(3e5, 6)
    expect(coreDrop(machine, 120 * lpm, at)).toBeCloseTo(8e5, 6)
  })
})

const [main] = wren().circuits as [Circuit]

describe('behind the motor', () => {
  // At 12 L/min for each of two motors: the lines and the swivel once, half of the block (5 bar at 14 L/min: 3.673 bar) and
  // half of the valve (9 bar at 38 L/min, 24 flow: 3.590 bar).
  test('way back, half of the block, half of the valve', () => {
    const back = dropToMotor(wren(), 12 * lpm, at)
    expect(dropBehindMotor(wren(), main, 24 * lpm, 2, at) - back).toBeCloseTo(0.5 * 3.6735e5 + 0.5 * 3.59e5, -2)
    const [one, other] = wren().travel.lines as [(typeof main)['lines']['pressure'], (typeof main)['lines']['pressure']]
    expect(back).toBeCloseTo(3e5 + dropOfLine(one, 12 * lpm, at) + dropOfLine(other, 12 * lpm, at), 5)
    const bare = { ...main, valve: null }
    expect(dropBehindMotor(wren(), bare, 24 * lpm, 2, at) - back).toBeCloseTo(0.5 * 3.6735e5, -2)
    expect(dropToMotor(travel({ swivel: null }), 12 * lpm, at)).toBeCloseTo(back - 3e5, 5)
  })
})

describe('to the tool and back', () => {
  const hose = line('circuits.main.auxiliary.lines.out', 8, 0.0127, '2-wire hose', 3, 2, ['G 1/2', 'G 1/2'], 275e5)
  const auxiliary = { out: hose, back: { ...hose, length: 4 }, coupler: { flow: 30 * lpm, drop: 2e5 } }
  const circuit = { ...main, auxiliary } as Circuit

  // Couplers 2 x 2 bar, valve 9 bar (30/38)2 = 5.609 bar, at 30 L/min; lines beside them.
  test('pressure line, whole valve, both hoses, two couplers', () => {
    const lines =
      dropOfLine(main.lines.pressure, 30 * lpm, at) +
      dropOfLine(auxiliary.out, 30 * lpm, at) +
      dropOfLine(auxiliary.back, 30 * lpm, at)
    expect(dropToTool(circuit, 30 * lpm, at) - lines).toBeCloseTo(4e5 + 5.6094e5, -2)
  })
  // Of the valve 5.609 bar at 30 L/min.
  test('without a valve it is as much less', () => {
    const open = { ...circuit, valve: null }
    expect(dropToTool(circuit, 30 * lpm, at) - dropToTool(open, 30 * lpm, at)).toBeCloseTo(5.6094e5, -2)
    expect(dropAlong(toolWay(open, oil), 30 * lpm) / dropToTool(open, 30 * lpm, at)).toBeCloseTo(1, 12)
  })
  test('as powers of the flow it is the same', () => {
    for (const flow of [2, 15, 30, 60])
      expect(dropAlong(toolWay(circuit, oil), flow * lpm) / dropToTool(circuit, flow * lpm, at)).toBeCloseTo(1, 12)
    expect(dropAlong(toolWay(main, oil), 30 * lpm) / dropToTool(main, 30 * lpm, at)).toBeCloseTo(1, 12)
  })
})

test('return and suction as powers of the flow are their lines; no line, no way', () => {
  expect(dropAlong(returnWay(main, oil), 20 * lpm) / dropOfLine(main.lines.return, 20 * lpm, at)).toBeCloseTo(1, 12)
  const suction = suctionWay(main, oil)
  expect(
    suction === null ? 0 : dropAlong(suction, 20 * lpm) / dropOfLine(main.lines.suction, 20 * lpm, at),
  ).toBeCloseTo(1, 12)
  const bare = { ...main, lines: { suction: null, pressure: null, return: null } }
  expect(dropAlong(returnWay(bare, oil), 20 * lpm)).toBe(0)
  expect(suctionWay(bare, oil)).toBeNull()
})

describe('as powers of the flow', () => {
  test('a swivel of which nothing is known, or none, adds nothing to the way', () => {
    const along = (machine: Machine) => dropAlong(drivingWay(machine, main, 2, oil), 20 * lpm)
    const without = along(travel({ swivel: null }))
    expect(along(travel({ swivel: swivel({ restriction: null, bore: null }) }))).toBe(without)
    // 3 bar at 12 L/min, twice, at 10 L/min a motor.
    expect(along(wren()) - without).toBeCloseTo(2 * 3e5 * (10 / 12) ** 2, 3)
  })
  test('without a valve the neutral way is the pressure line', () => {
    const way = neutralWay({ ...main, valve: null }, oil)
    expect(dropAlong(way, 20 * lpm) / dropOfLine(main.lines.pressure, 20 * lpm, at)).toBeCloseTo(1, 12)
    const bare = { ...main, valve: null, lines: { ...main.lines, pressure: null } }
    expect(dropAlong(drivingWay(travel({ swivel: null, lines: [] }), bare, 2, oil), 14 * lpm)).toBeCloseTo(1.25e5, 5)
  })
  test('oil that flows back drops nothing, a pressure that sucks pushes nothing', () => {
    expect(dropAlong(neutralWay(main, oil), -10 * lpm)).toBe(0)
    expect(dropAlong(neutralWay(main, oil), 0)).toBe(0)
    expect(flowUnder(neutralWay(main, oil), -1e5, 20 * lpm)).toBe(0)
    expect(flowUnder(neutralWay(main, oil), 0, 20 * lpm)).toBe(0)
  })
})

test('what is not there drops nothing', () => {
  expect(dropOfLine(null, 20 * lpm, at)).toBe(0)
  expect(dropOfRestriction(null, 20 * lpm, at)).toBe(0)
  expect(dropOfRestriction(undefined, 20 * lpm, at)).toBe(0)
})
