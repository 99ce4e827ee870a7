/** The balances against what they must balance: pressures along a circuit, the return that all share, the engine's torque. */
import { describe, expect, test } from 'vitest'
import { balanceAt, balanceEngine, scaleToPeakTorque, shaftTorque, type Task } from '../../src/circuit/balance.ts'
import { conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import { dropOfLine, dropOfRestriction, dropOfSharedReturn, dropToTool } from '../../src/circuit/way.ts'
import type { Circuit, Filter, Machine } from '../../src/machine.ts'
import { randomCase } from '../fixtures/random-machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const lpm = 1 / 60_000
const [main] = wren().circuits as [Circuit]
const plantOf = (machine: Machine): Plant => preparePlant(machine, wrenSite)
const NEUTRAL: Task = { kind: 'neutral' }
const held = (pressure: number): Task => ({ kind: 'held', pressure })

/** What the pump gives at a pressure, by the method: V n - w k p/mu. */
const delivered = (speed: number, pressure: number, mu: number) =>
  main.pump.displacement * speed - (main.pump.slipFactor * main.pump.slip * pressure) / mu

describe('one circuit at 50 rev/s', () => {
  const state = (task: Task) => {
    const plant = plantOf(wren())
    const at = conditionsAt(plant, 50)
    const { circuits, ...rest } = balanceAt(plant, [task], 50, at)
    return { ...rest, at, circuit: circuits[0] as (typeof circuits)[number] }
  }

  test('held: the flow at that pressure, all of it on its way', () => {
    const { circuit, totalFlow, torque, speed, at } = state(held(100e5))
    expect(circuit.pumpFlow).toBeCloseTo(delivered(50, 100e5, at.mu), 12)
    expect(circuit).toMatchObject({ wayFlow: circuit.pumpFlow, pressure: 100e5, relieving: false, starved: false })
    expect([totalFlow, torque, speed]).toEqual([circuit.pumpFlow, circuit.torque, 50])
    expect(torque).toBe(shaftTorque(main.pump, 50, 100e5, 1, at))
  })
  test('neutral: pressure line, half of the valve, return line', () => {
    const { circuit, at } = state(NEUTRAL)
    const flow = circuit.pumpFlow
    const drop =
      dropOfLine(main.lines.pressure, flow, at) +
      0.5 * dropOfRestriction(main.valve?.restriction, flow, at) +
      dropOfLine(main.lines.return, flow, at)
    expect(circuit.pressure).toBeCloseTo(drop, 3)
    expect(flow).toBeCloseTo(delivered(50, drop, at.mu), 12)
  })
  test('tool: its pressure on top of the way there and back', () => {
    const { circuit, at } = state({ kind: 'tool', pressure: 60e5 })
    const flow = circuit.pumpFlow
    expect(circuit.pressure).toBeCloseTo(60e5 + dropToTool(main, flow, at) + dropOfLine(main.lines.return, flow, at), 3)
    expect(circuit).toMatchObject({ wayFlow: flow, relieving: false })
  })
  test('over the relief the setting holds: the tool gets what it can push, the return carries everything', () => {
    const { circuit, at } = state({ kind: 'tool', pressure: 152e5 })
    expect([circuit.pressure, circuit.relieving]).toEqual([155e5, true])
    expect(circuit.pumpFlow).toBeCloseTo(delivered(50, 155e5, at.mu), 12)
    expect(circuit.wayFlow).toBeLessThan(circuit.pumpFlow)
    const way = dropToTool(main, circuit.wayFlow, at) + dropOfLine(main.lines.return, circuit.pumpFlow, at)
    expect(152e5 + way).toBeCloseTo(155e5, 0)
  })
  test('asked for more than the setting nothing goes on', () => {
    const { circuit } = state({ kind: 'tool', pressure: 170e5 })
    expect(circuit).toMatchObject({ wayFlow: 0, pressure: 155e5, relieving: true })
  })
})

describe('a pump', () => {
  // A displacement that falls 4 % short of its label: 0.96 V n without pressure.
  test('gives as much less as its displacement falls short of its label', () => {
    const plant = plantOf({ ...wren(), circuits: [{ ...main, pump: { ...main.pump, flowOffset: 0.04 } }] })
    const { circuits } = balanceAt(plant, [held(0)], 50, conditionsAt(plant, 50))
    expect(circuits[0]?.pumpFlow).toBeCloseTo(0.96 * 7.9e-6 * 50, 12)
  })
  // T = s V p/2 pi + T_ref (0.7 p/p_ref + 0.3 m), s what it delivers of what it could; m is at its bound of 10 on cold oil.
  test('that starves turns as much more easily, but for its friction', () => {
    const plant = plantOf(wren())
    const at = conditionsAt(plant, -15)
    const { circuits } = balanceAt(plant, [held(100e5)], 50, at)
    const [circuit] = circuits
    const share = (circuit?.pumpFlow ?? 0) / delivered(50, 100e5, at.mu)
    expect(circuit?.starved).toBe(true)
    expect(share).toBeLessThan(0.9)
    const loss = main.pump.referenceTorqueLoss * ((0.7 * 100) / 160 + 0.3 * 10)
    expect(circuit?.torque).toBeCloseTo((share * 7.9e-6 * 100e5) / (2 * Math.PI) + loss, 9)
  })
})

describe('circuits that return together', () => {
  const filter: Filter = {
    part: null,
    ratedFlow: null,
    drop: 0.4e5,
    reference: { flow: 40 * lpm, viscosity: 32e-6 },
    fineness: null,
    beta: null,
    bypass: 1.7e5,
  }
  const machine: Machine = { ...wren(), filter, circuits: [main, { ...main, name: 'other', drives: 'no track' }] }
  test('the filter drops with the sum of their flows, and both feel it', () => {
    const plant = plantOf(machine)
    const at = conditionsAt(plant, 50)
    const both = balanceAt(plant, [NEUTRAL, NEUTRAL], 50, at)
    const [one, other] = both.circuits
    expect(both.totalFlow).toBeCloseTo((one?.pumpFlow ?? 0) + (other?.pumpFlow ?? 0), 15)
    expect(both.sharedReturn).toBeGreaterThan(0.2e5)
    expect(Math.abs(both.sharedReturn / dropOfSharedReturn(machine, both.totalFlow, at) - 1)).toBeLessThan(1e-12)
    const without = balanceAt(plantOf({ ...machine, filter: null }), [NEUTRAL, NEUTRAL], 50, at)
    expect(without.sharedReturn).toBe(0)
    expect((one?.pressure ?? 0) - (without.circuits[0]?.pressure ?? 0)).toBeCloseTo(both.sharedReturn, -3)
    expect(both.torque).toBeCloseTo((one?.torque ?? 0) + (other?.torque ?? 0), 12)
  })
  test('one that is held at a pressure gives the filter what it delivers there', () => {
    const plant = plantOf(machine)
    const at = conditionsAt(plant, 50)
    const { circuits, sharedReturn, totalFlow } = balanceAt(plant, [held(150e5), NEUTRAL], 50, at)
    expect(circuits[0]?.pumpFlow).toBeCloseTo(delivered(50, 150e5, at.mu), 12)
    expect(Math.abs(sharedReturn / dropOfSharedReturn(machine, totalFlow, at) - 1)).toBeLessThan(1e-12)
  })
})

describe('engine', () => {
  const heldAt = (share: number) => (machine: Machine) =>
    machine.circuits.map((circuit): Task => held(share * circuit.relief.setting))

  test('governed, lugging or stalled, as its torque at rated speed and at 70 % of it decides', () => {
    const seen = new Set<string>()
    for (let seed = 0; seed < 120; seed++) {
      const { machine, site } = randomCase(seed)
      const plant = preparePlant(machine, site)
      const at = conditionsAt(plant, 50)
      const { ratedSpeed, ratedTorque, droop, rise } = plant.engine
      for (const share of [0.3, 0.6, 0.8, 1]) {
        const tasks = heldAt(share)(machine)
        const state = balanceEngine(plant, tasks, at)
        const where = `seed ${seed}, ${share}`
        const asked = (speed: number) => balanceAt(plant, tasks, speed, at).torque
        const peak = ratedTorque * (1 + rise)
        if (asked(ratedSpeed) <= ratedTorque) {
          seen.add('governed')
          expect([state.lugging, state.stalled], where).toEqual([false, false])
          expect(state.speed, where).toBeGreaterThanOrEqual(ratedSpeed)
          expect(state.speed, where).toBeLessThan(ratedSpeed * (1 + droop))
          expect(state.load, where).toBeCloseTo(state.torque / ratedTorque, 12)
        } else if (asked(0.7 * ratedSpeed) <= peak) {
          seen.add('lugging')
          expect([state.lugging, state.stalled, state.load], where).toEqual([true, false, 1])
          expect(state.speed, where).toBeLessThan(ratedSpeed)
          expect(state.speed, where).toBeGreaterThanOrEqual(0.7 * ratedSpeed)
        } else {
          seen.add('stalled')
          expect([state.lugging, state.stalled], where).toEqual([true, true])
          expect(state.speed, where).toBeCloseTo(0.7 * ratedSpeed, 12)
          expect(state.load, where).toBeCloseTo(asked(0.7 * ratedSpeed) / peak, 12)
          expect(state.load, where).toBeGreaterThan(1)
        }
        expect(state.torque, where).toBeCloseTo(asked(state.speed), 9)
      }
    }
    expect([...seen].sort()).toEqual(['governed', 'lugging', 'stalled'])
  })
})

describe('a mode that is too much', () => {
  // Of 4 kW: 12.73 N.m at 50 rev/s, derated and with 12 % rise 14.08 N.m at 35.
  const machine: Machine = {
    ...wren(),
    circuits: [main, { ...main, name: 'other', drives: 'no track' }, { ...main, name: 'third', drives: 'no track' }],
  }
  const ready = (netPower: number) => {
    const plant = plantOf({ ...machine, engine: { ...machine.engine, netPower } })
    return { plant, at: conditionsAt(plant, 50) }
  }
  const tasks: readonly Task[] = [held(150e5), NEUTRAL, held(75e5)]

  test('its pressures go down together until the pumps ask for just what the engine has', () => {
    const { plant, at } = ready(4000)
    const asked = balanceEngine(plant, tasks, at)
    expect(asked.stalled).toBe(true)
    const { factor, circuits, torque, speed } = scaleToPeakTorque(plant, tasks, asked, at)
    expect(factor).toBeGreaterThan(0)
    expect(factor).toBeLessThan(1)
    expect(torque).toBeCloseTo(plant.engine.ratedTorque * 1.12, 9)
    expect(speed).toBe(35)
    expect(circuits[0]?.pressure).toBeCloseTo(factor * 150e5, 3)
    expect(circuits[2]?.pressure).toBeCloseTo(factor * 75e5, 3)
    expect(circuits[1]?.pressure).toBeCloseTo(balanceAt(plant, tasks, 35, at).circuits[1]?.pressure ?? 0, 6)
  })
  test('where the engine cannot turn the pumps even without pressure it is without', () => {
    const { plant, at } = ready(300)
    const asked = balanceEngine(plant, tasks, at)
    const { factor, circuits } = scaleToPeakTorque(plant, tasks, asked, at)
    expect([factor, circuits[0]?.pressure, circuits[2]?.pressure]).toEqual([0, 0, 0])
  })
})
