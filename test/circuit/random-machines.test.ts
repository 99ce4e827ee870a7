/**
 * Two thousand random machines: what must hold for every one of them, whatever the figures. No expected value here comes
 * from the tool: the rules are conservation of energy, and the direction in which a machine answers a change.
 */
import { describe, expect, test } from 'vitest'
import { balanceEngine } from '../../src/circuit/balance.ts'
import { modePower, modesOf } from '../../src/circuit/duty.ts'
import { HeatTable, settledOil } from '../../src/circuit/oil-heat.ts'
import { type Conditions, conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import { solveTravel } from '../../src/circuit/travel-figures.ts'
import { solveLevel, solvePoint, type TravelState } from '../../src/circuit/travel-point.ts'
import { dropOfLine, dropOfRestriction, dropOfSharedReturn, dropToMotor } from '../../src/circuit/way.ts'
import type { Circuit, Machine, Site } from '../../src/machine.ts'
import { randomCase } from '../fixtures/random-machine.ts'

/** A mutation run takes fewer: it tries them once for every mutant. */
const CASES = Number(process.env.RANDOM_MACHINES ?? 2000)
const seeds = Array.from({ length: CASES }, (_, i) => i)

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value]
  if (Array.isArray(value)) return value.flatMap(numbersIn)
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : []
}

/** Every loss on the way of every circuit, component by component: a second account of the heat of a travel point. */
const lossesOf = (plant: Plant, state: TravelState, at: Conditions): number[] => {
  const { machine } = plant
  const { engine } = state
  const shared = dropOfSharedReturn(machine, engine.totalFlow, at)
  return machine.circuits.flatMap((circuit: Circuit, i) => {
    const own = engine.circuits[i]
    if (own === undefined) return [Number.NaN]
    const input = own.torque * 2 * Math.PI * engine.speed
    const pumpLoss = input - own.pressure * own.pumpFlow
    const back = (dropOfLine(circuit.lines.return, own.pumpFlow, at) + shared) * own.pumpFlow
    const track = state.tracks.find((t) => t.circuit === i)
    const over = own.pumpFlow - own.wayFlow
    const relief = own.relieving
      ? (own.pressure - dropOfLine(circuit.lines.return, own.pumpFlow, at) - shared) * over
      : 0
    if (track === undefined) {
      const half = 0.5 * dropOfRestriction(circuit.valve?.restriction, own.wayFlow, at)
      return [pumpLoss, relief, back, (dropOfLine(circuit.lines.pressure, own.wayFlow, at) + half) * own.wayFlow]
    }
    const { motor } = machine.travel
    const perMotor = own.wayFlow / track.motors
    const shaft = state.displacement * track.differential * motor.hydromechanical * track.motorSpeed
    return [
      pumpLoss,
      relief,
      back,
      dropOfLine(circuit.lines.pressure, own.wayFlow, at) * own.wayFlow,
      dropOfRestriction(circuit.valve?.restriction, own.wayFlow, at) * own.wayFlow,
      track.motors * dropOfRestriction(motor.block, perMotor, at) * perMotor,
      track.motors * 2 * dropToMotor(machine, perMotor, at) * perMotor,
      track.motors * (track.differential * perMotor - shaft),
    ]
  })
}

describe('random machines', () => {
  test('every point ends with finite figures and no negative loss, and the losses make up the heat to 1e-9', () => {
    for (const seed of seeds) {
      const { machine, site } = randomCase(seed)
      const plant = preparePlant(machine, site)
      const at = conditionsAt(plant, 50)
      for (const point of machine.travel.running === 'wheels'
        ? (['level', 'grade'] as const)
        : (['level', 'grade', 'turn', 'oneTrack'] as const)) {
        const state = solvePoint(plant, point, machine.travel.motor.displacement, at)
        for (const value of numbersIn(state)) expect(Number.isNaN(value), `seed ${seed} ${point}`).toBe(false)
        if (state.engine.stalled) continue
        const input = state.engine.torque * 2 * Math.PI * state.engine.speed
        const losses = lossesOf(plant, state, at)
        for (const loss of losses) expect(loss, `seed ${seed} ${point}`).toBeGreaterThan(-1e-6 * input)
        const sum = losses.reduce((a, b) => a + b, 0)
        expect(Math.abs(input - state.useful - sum), `seed ${seed} ${point}`).toBeLessThan(1e-9 * input)
      }
    }
  })

  test('all travel points, hot and cold, and the heat of every mode are finite', () => {
    for (const seed of seeds.slice(0, 500)) {
      const { machine, site, duty } = randomCase(seed)
      const plant = preparePlant(machine, site)
      const work = { duty, attachment: null }
      const steady = settledOil(plant, work, new HeatTable(plant, work, site.ambient))
      const { points } = solveTravel(plant, conditionsAt(plant, 50), steady)
      for (const value of numbersIn(points)) expect(Number.isFinite(value), `seed ${seed}`).toBe(true)
      const at = conditionsAt(plant, steady ?? 150)
      for (const [mode] of modesOf(duty)) {
        const { input, useful } = modePower(plant, work, mode, at)
        expect(useful, `seed ${seed} ${mode}`).toBeGreaterThanOrEqual(0)
        expect(input, `seed ${seed} ${mode}`).toBeGreaterThanOrEqual(useful)
      }
    }
  })
})

type Turn = (machine: Machine, site: Site) => { machine: Machine; site: Site }

const pumps = (machine: Machine, change: (circuit: Circuit) => Partial<Circuit['pump']>): Machine => ({
  ...machine,
  circuits: machine.circuits.map((circuit) => ({ ...circuit, pump: { ...circuit.pump, ...change(circuit) } })),
})

const slower: { readonly [what: string]: Turn } = {
  'a worn pump': (machine, site) => ({
    machine: pumps(machine, (c) => ({ slipFactor: c.pump.slipFactor * 1.5 })),
    site,
  }),
  'more drag': (machine, site) => ({
    machine: { ...machine, travel: { ...machine.travel, efficiency: machine.travel.efficiency * 0.9 } },
    site,
  }),
  'more mass': (machine, site) => ({ machine: { ...machine, mass: machine.mass * 1.2 }, site }),
  'a smaller bore': (machine, site) => ({
    machine: {
      ...machine,
      travel: { ...machine.travel, lines: machine.travel.lines.map((line) => ({ ...line, bore: line.bore * 0.9 })) },
    },
    site,
  }),
}

const level = (machine: Machine, site: Site): TravelState => {
  const plant = preparePlant(machine, site)
  return solveLevel(plant, conditionsAt(plant, 50))
}

describe('directions', () => {
  for (const [what, turn] of Object.entries(slower))
    test(`${what} never makes it faster`, () => {
      for (const seed of seeds.slice(0, 400)) {
        const { machine, site } = randomCase(seed)
        const changed = turn(machine, site)
        const [from, to] = [level(machine, site), level(changed.machine, changed.site)]
        // Named threshold: a two-speed motor that cannot hold the level falls back to its slow speed, which may be the faster.
        if (from.displacement !== to.displacement) continue
        // A worn pump asks the engine for less and sends less oil back through the return; where engine or relief is the
        // limit that may even help.
        if (from.limitedBy === 'engine' || from.limitedBy === 'relief') continue
        expect(to.speed, `seed ${seed}`).toBeLessThanOrEqual(from.speed * (1 + 1e-9))
      }
    })

  test('a steeper grade is never climbed faster', () => {
    for (const seed of seeds.slice(0, 400)) {
      const { machine, site } = randomCase(seed)
      const on = (steepestGrade: number) => {
        const plant = preparePlant(machine, { ...site, steepestGrade })
        return solvePoint(plant, 'grade', machine.travel.motor.displacement, conditionsAt(plant, 50)).speed
      }
      expect(on(site.steepestGrade + 0.05), `seed ${seed}`).toBeLessThanOrEqual(on(site.steepestGrade) * (1 + 1e-9))
    }
  })

  const steadyOf = (machine: Machine, site: Site, seed: number): number => {
    const { duty } = randomCase(seed)
    const plant = preparePlant(machine, site)
    const work = { duty, attachment: null }
    return settledOil(plant, work, new HeatTable(plant, work, site.ambient)) ?? 151
  }

  test('hotter ambient is never cooler oil, more surface never hotter', () => {
    for (const seed of seeds.slice(0, 300)) {
      const { machine, site } = randomCase(seed)
      const steady = steadyOf(machine, site, seed)
      expect(steadyOf(machine, { ...site, ambient: site.ambient + 3 }, seed), `seed ${seed}`).toBeGreaterThanOrEqual(
        steady - 1e-6,
      )
      const bigger = { ...machine, otherCoolingSurface: machine.otherCoolingSurface + 0.2 }
      expect(steadyOf(bigger, site, seed), `seed ${seed}`).toBeLessThanOrEqual(steady + 1e-6)
    }
  })
})

/**
 * Small steps make small changes: 0.1 % of an input moves the level speed by less than 2 %, unless a named threshold is
 * crossed (the point stalls, or a two-speed motor falls back to its slow speed).
 */
describe('continuity', () => {
  const steps: { readonly [what: string]: (machine: Machine) => Machine } = {
    mass: (m) => ({ ...m, mass: m.mass * 1.001 }),
    'engine power': (m) => ({ ...m, engine: { ...m.engine, netPower: m.engine.netPower * 1.001 } }),
    'pump displacement': (m) => pumps(m, (c) => ({ displacement: c.pump.displacement * 1.001 })),
    'relief setting': (m) => ({
      ...m,
      circuits: m.circuits.map((c) => ({ ...c, relief: { ...c.relief, setting: c.relief.setting * 1.001 } })),
    }),
    'oil viscosity': (m) => ({ ...m, oil: { ...m.oil, viscosityAt40: m.oil.viscosityAt40 * 1.001 } }),
  }
  for (const [what, step] of Object.entries(steps))
    test(what, () => {
      for (const seed of seeds.slice(0, 400)) {
        const { machine, site } = randomCase(seed)
        const solve = (m: Machine) => {
          const plant = preparePlant(m, site)
          return solveLevel(plant, conditionsAt(plant, 50))
        }
        const [a, b] = [solve(machine), solve(step(machine))]
        const threshold = a.stalled !== b.stalled || Math.abs(a.displacement / b.displacement - 1) > 0.01
        if (threshold || a.stalled) continue
        expect(Math.abs(b.speed / a.speed - 1), `seed ${seed}`).toBeLessThan(0.02)
      }
    })
})

describe('engine', () => {
  test('the torque asked is the torque given wherever it does not stall', () => {
    for (const seed of seeds.slice(0, 400)) {
      const { machine, site } = randomCase(seed)
      const plant = preparePlant(machine, site)
      const at = conditionsAt(plant, 50)
      const state = balanceEngine(
        plant,
        machine.circuits.map((circuit) => ({ kind: 'held', pressure: 0.7 * circuit.relief.setting })),
        at,
      )
      if (state.stalled) continue
      const { ratedSpeed, ratedTorque, droop, rise } = plant.engine
      // By hand: above rated speed the line from (rated, rated torque) to (rated (1 + droop), 0); below it the torque rise.
      const given =
        state.speed >= ratedSpeed
          ? (ratedTorque * (1 + droop - state.speed / ratedSpeed)) / droop
          : ratedTorque * (1 + (rise * (1 - state.speed / ratedSpeed)) / 0.3)
      expect(Math.abs(given - state.torque), `seed ${seed}`).toBeLessThan(1e-9 * ratedTorque)
    }
  })
})
