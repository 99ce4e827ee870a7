/**
 * Figures of the level point for the result document: circuits, lines and drops, in the contract's words and units. Where
 * the level point stalls by the engine they are those asked at 70 % of rated speed.
 */
import type { CircuitFigures, DropFigures, LineFigures } from '../evaluation.ts'
import { meanVelocity, reynolds } from '../formulas/line.ts'
import { pumpFlow } from '../formulas/pump.ts'
import type { Circuit, Line, Machine } from '../machine.ts'
import { lineRole, velocityLimits } from '../tables/velocity-limits.ts'
import { barFromPascals, lpmFromCubicMetresPerSecond, mmFromMetres } from '../units/shop-units.ts'
import type { CubicMetresPerSecond, NewtonMetres, Pascals, RevsPerSecond } from '../units/si.ts'
import { balanceEngine, type CircuitState, type EngineState, shaftTorque } from './balance.ts'
import { type Conditions, inletPressure, type Plant, strainerDrop } from './plant.ts'
import type { TrackState, TravelState } from './travel-point.ts'
import { dropOfCooler, dropOfFilter, dropOfLine, dropOfRestriction, dropOfSwivel } from './way.ts'

/** Relief setting with its override: what ratings are held against. */
export const workingPressure = (circuit: Circuit): Pascals => circuit.relief.setting * (1 + circuit.relief.override)

/** Highest working pressure among the circuits that drive. */
export const drivingPressure = (plant: Plant): Pascals =>
  Math.max(...plant.driving.map((i) => workingPressure(plant.machine.circuits[i] as Circuit)))

/** All levers in neutral. */
export const neutralState = (plant: Plant, at: Conditions): EngineState =>
  balanceEngine(
    plant,
    plant.machine.circuits.map(() => ({ kind: 'neutral' })),
    at,
  )

/** Flow and torque of one pump at its relief setting, as its suction lets it. */
export const atRelief = (
  plant: Plant,
  index: number,
  speed: RevsPerSecond,
  at: Conditions,
): { readonly flow: CubicMetresPerSecond; readonly torque: NewtonMetres } => {
  const { pump, relief } = plant.machine.circuits[index] as Circuit
  const could = pumpFlow(pump.displacement, speed, pump.flowOffset, pump.slip, pump.slipFactor, relief.setting, at.mu)
  const flow = Math.min(could, at.intakeLimits[index] ?? could)
  return { flow, torque: shaftTorque(pump, speed, relief.setting, could > 0 ? flow / could : 1, at) }
}

/** Flow in a circuit's suction line: its own, or the sum of those that share it. */
export const suctionFlow = (plant: Plant, states: readonly CircuitState[], index: number): CubicMetresPerSecond =>
  (plant.suctionGroups[index] as readonly number[]).reduce((sum, i) => sum + (states[i] as CircuitState).pumpFlow, 0)

/** Absolute pressure at a pump's inlet in a balanced state. */
export const inletAt = (plant: Plant, engine: EngineState, index: number, at: Conditions): Pascals =>
  inletPressure(plant, at, index, suctionFlow(plant, engine.circuits, index), engine.totalFlow)

export const circuitFigures = (
  plant: Plant,
  engine: EngineState,
  neutral: EngineState,
  at: Conditions,
): { [name: string]: CircuitFigures } =>
  Object.fromEntries(
    plant.machine.circuits.map((circuit, i) => [
      circuit.name,
      {
        pumpFlowLpm: lpmFromCubicMetresPerSecond(engine.circuits[i]?.pumpFlow ?? 0),
        theoreticalFlowLpm: lpmFromCubicMetresPerSecond(circuit.pump.displacement * engine.speed),
        inletPressureBarAbs: barFromPascals(inletAt(plant, engine, i, at)),
        neutralPressureBar: barFromPascals(neutral.circuits[i]?.pressure ?? 0),
        reliefSettingBar: barFromPascals(circuit.relief.setting),
        shaftTorqueNm: atRelief(plant, i, plant.engine.ratedSpeed, at).torque,
      },
    ]),
  )

const lineFigures = (line: Line, flow: CubicMetresPerSecond, working: Pascals | null, at: Conditions): LineFigures => {
  const velocity = meanVelocity(flow, line.bore)
  return {
    id: line.id,
    velocityMps: velocity,
    limitMps: velocityLimits[lineRole(line.id)].guide,
    reynolds: reynolds(velocity, line.bore, at.nu),
    dropBar: barFromPascals(dropOfLine(line, flow, at)),
    boreMm: mmFromMetres(line.bore),
    flowLpm: lpmFromCubicMetresPerSecond(flow),
    workingPressureBar: working === null ? null : barFromPascals(working),
  }
}

/** The most that any motor of the point takes: work lines are one entry for all of their kind. */
const mostMotorFlow = (tracks: readonly TrackState[]): CubicMetresPerSecond =>
  Math.max(...tracks.map((t) => t.motorFlow))

export const linesOf = (plant: Plant, level: TravelState, at: Conditions): LineFigures[] => {
  const { machine } = plant
  const { engine } = level
  const ofCircuits = machine.circuits.flatMap((circuit, i) => {
    const state = engine.circuits[i] as CircuitState
    const { suction, pressure } = circuit.lines
    const back = circuit.lines.return
    return [
      ...(suction === null || circuit.suctionSharedWith !== null
        ? []
        : [lineFigures(suction, suctionFlow(plant, engine.circuits, i), null, at)]),
      ...(pressure === null ? [] : [lineFigures(pressure, state.wayFlow, workingPressure(circuit), at)]),
      ...(back === null
        ? []
        : [lineFigures(back, state.pumpFlow, dropOfLine(back, state.pumpFlow, at) + engine.sharedReturn, at)]),
    ]
  })
  const flow = mostMotorFlow(level.tracks)
  const working = drivingPressure(plant)
  return [...ofCircuits, ...machine.travel.lines.map((line) => lineFigures(line, flow, working, at))]
}

const dropFigures = (id: string, flow: CubicMetresPerSecond, drop: Pascals): DropFigures => ({
  id,
  flowLpm: lpmFromCubicMetresPerSecond(flow),
  dropBar: barFromPascals(drop),
})

export const dropsOf = (plant: Plant, level: TravelState, at: Conditions): DropFigures[] => {
  const machine: Machine = plant.machine
  const { engine } = level
  const flow = mostMotorFlow(level.tracks)
  const { swivel, motor } = machine.travel
  const valves = machine.circuits.flatMap((circuit, i) => {
    const { wayFlow } = engine.circuits[i] as CircuitState
    if (circuit.valve === null || circuit.valve.restriction === null) return []
    const way = plant.driving.includes(i) ? 1 : 0.5
    const drop = way * dropOfRestriction(circuit.valve.restriction, wayFlow, at)
    return [dropFigures(`circuits.${circuit.name}.valve`, wayFlow, drop)]
  })
  return [
    ...valves,
    ...(swivel === null ? [] : [dropFigures('travel.swivel', flow, dropOfSwivel(swivel, flow, at))]),
    ...(motor.block === null
      ? []
      : [dropFigures('travel.motor.block', flow, dropOfRestriction(motor.block, flow, at))]),
    ...(machine.filter === null
      ? []
      : [dropFigures('filter', engine.totalFlow, dropOfFilter(machine, engine.totalFlow, at))]),
    ...(machine.cooler === null
      ? []
      : [dropFigures('cooler', engine.totalFlow, dropOfCooler(machine, engine.totalFlow, at))]),
    ...(machine.strainer === null
      ? []
      : [dropFigures('strainer', engine.totalFlow, strainerDrop(machine.strainer, engine.totalFlow, at.nu))]),
  ]
}
