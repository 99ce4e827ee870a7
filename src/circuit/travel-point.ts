/**
 * One travel point: the speed at which needed force, flow, pressure and engine balance (method: "A travel point").
 */

import type { LimitedBy } from '../evaluation.ts'
import { motorSpeed } from '../formulas/motor.ts'
import { adhesionLimit, travelSpeed } from '../formulas/traction.ts'
import type { Circuit } from '../machine.ts'
import {
  type CubicMetresPerRev,
  type CubicMetresPerSecond,
  GRAVITY,
  type MetresPerSecond,
  type Newtons,
  type Pascals,
  type RevsPerSecond,
  type Watts,
} from '../units/si.ts'
import { balanceAt, balanceEngine, type CircuitState, type EngineState, type Task } from './balance.ts'
import { type Demand, demandOf, differentialFor, type PointName, startingPull } from './forces.ts'
import type { Conditions, Plant } from './plant.ts'
import { dropBehindMotor, dropOfLine } from './way.ts'

export interface TrackState {
  /** Index of the circuit. */
  readonly circuit: number
  readonly motors: number
  readonly motorFlow: CubicMetresPerSecond
  readonly motorSpeed: RevsPerSecond
  readonly differential: Pascals
  readonly returnPressure: Pascals
  readonly speed: MetresPerSecond
  readonly stands: boolean
}

export interface TravelState {
  readonly point: PointName
  readonly displacement: CubicMetresPerRev
  readonly demand: Demand
  readonly engine: EngineState
  /** The circuits that drive at this point. */
  readonly tracks: readonly TrackState[]
  readonly speed: MetresPerSecond
  readonly pull: Newtons
  readonly stalled: boolean
  readonly limitedBy: LimitedBy
  /** At the motor shafts. */
  readonly useful: Watts
}

/** Tasks of a point: who drives, with what difference across each motor, and who idles. */
const tasksFor = (
  plant: Plant,
  demand: Demand,
  displacement: CubicMetresPerRev,
  drivers: readonly number[],
  point: PointName,
): Task[] => {
  const differential = differentialFor(plant.machine, demand.applied, demand.motors, displacement)
  return plant.machine.circuits.map((_, i) => {
    if (!drivers.includes(i)) return { kind: 'neutral' }
    const fed = plant.motorsFed[i] ?? 0
    const motors = point === 'oneTrack' && drivers.length === 1 && plant.driving.length === 1 ? fed / 2 : fed
    return { kind: 'drive', differential, motors }
  })
}

const trackState = (
  plant: Plant,
  index: number,
  task: Task & { kind: 'drive' },
  state: CircuitState,
  engine: EngineState,
  displacement: CubicMetresPerRev,
  at: Conditions,
): TrackState => {
  const { machine, site } = plant
  const { motor, finalDriveRatio, wayPerTurn, speedFactor } = machine.travel
  const circuit = machine.circuits[index] as Circuit
  const motorFlow = state.wayFlow / task.motors
  const behind =
    dropBehindMotor(machine, circuit, state.wayFlow, task.motors, at) +
    dropOfLine(circuit.lines.return, state.pumpFlow, at) +
    engine.sharedReturn
  const standing = state.relieving && state.wayFlow === 0
  const differential = standing ? Math.max(0, state.pressure - behind) : task.differential
  const turning = motorSpeed(
    motorFlow,
    displacement,
    motor.flowOffset,
    motor.leak,
    differential,
    motor.referenceViscosity,
    at.mu,
  )
  const motorTurns = standing ? 0 : Math.max(0, turning)
  return {
    circuit: index,
    motors: task.motors,
    motorFlow,
    motorSpeed: motorTurns,
    differential,
    returnPressure: behind,
    speed: travelSpeed(motorTurns, finalDriveRatio, wayPerTurn, site.ground.slip, speedFactor),
    stands: motorTurns === 0,
  }
}

const pullOf = (
  plant: Plant,
  point: PointName,
  tracks: readonly TrackState[],
  displacement: CubicMetresPerRev,
): Newtons => {
  const { machine, site } = plant
  let pull = 0
  for (const track of tracks) {
    const { relief } = machine.circuits[track.circuit] as Circuit
    pull += startingPull(machine, relief.setting, track.motors, displacement)
  }
  if (point === 'turn' || point === 'oneTrack') return pull
  const grade = point === 'grade' ? site.steepestGrade : 0
  return Math.min(pull, adhesionLimit(site.ground.adhesion, machine.mass * GRAVITY, grade))
}

const limitOf = (demand: Demand, engine: EngineState, drivers: readonly number[], stands: boolean): LimitedBy => {
  const states = drivers.map((i) => engine.circuits[i] as CircuitState)
  if (engine.stalled) return 'engine'
  if (demand.spinning && !stands) return 'adhesion'
  if (states.some((s) => s.relieving)) return 'relief'
  if (states.some((s) => s.starved)) return 'suction'
  return engine.lugging ? 'engine' : null
}

/** Drivers of the point: all that drive, or of one track the one circuit. */
const solveWith = (
  plant: Plant,
  point: PointName,
  displacement: CubicMetresPerRev,
  drivers: readonly number[],
  at: Conditions,
  fixedSpeed: RevsPerSecond | null,
): TravelState => {
  const demand = demandOf(plant, point)
  const tasks = tasksFor(plant, demand, displacement, drivers, point)
  const engine: EngineState =
    fixedSpeed === null
      ? balanceEngine(plant, tasks, at)
      : { ...balanceAt(plant, tasks, fixedSpeed, at), load: Number.NaN, lugging: false, stalled: false }
  const tracks = drivers.map((i) =>
    trackState(
      plant,
      i,
      tasks[i] as Task & { kind: 'drive' },
      engine.circuits[i] as CircuitState,
      engine,
      displacement,
      at,
    ),
  )
  const stands = tracks.some((t) => t.stands)
  const stalled = engine.stalled || stands || demand.spinning
  const mean = tracks.reduce((sum, t) => sum + t.speed, 0) / tracks.length
  const { motor } = plant.machine.travel
  const useful = engine.stalled
    ? 0
    : tracks.reduce(
        (sum, t) => sum + t.motors * displacement * t.differential * motor.hydromechanical * t.motorSpeed,
        0,
      )
  return {
    point,
    displacement,
    demand,
    engine,
    tracks,
    speed: stalled ? 0 : mean,
    pull: pullOf(plant, point, tracks, displacement),
    stalled,
    limitedBy: limitOf(demand, engine, drivers, stands),
    useful,
  }
}

/**
 * Solves one travel point.
 * @param displacement of the motors [m3/rev]: the small one of a two-speed motor on the level, else the large one
 * @param fixedSpeed engine speed to hold [rev/s] (a run whose engine speed was read); null: the engine finds its own
 * @returns the balanced state; of `oneTrack` with a circuit a track, the slower of the two
 */
export const solvePoint = (
  plant: Plant,
  point: PointName,
  displacement: CubicMetresPerRev,
  at: Conditions,
  fixedSpeed: RevsPerSecond | null = null,
): TravelState => {
  if (point !== 'oneTrack' || plant.driving.length === 1)
    return solveWith(plant, point, displacement, plant.driving, at, fixedSpeed)
  const alone = plant.driving.map((i) => solveWith(plant, point, displacement, [i], at, fixedSpeed))
  return alone.reduce((slowest, next) => (next.speed < slowest.speed ? next : slowest))
}

/**
 * The level point: a two-speed motor runs in its small displacement; where that cannot hold the level, in its large one.
 */
export const solveLevel = (plant: Plant, at: Conditions, fixedSpeed: RevsPerSecond | null = null): TravelState => {
  const { displacement, secondDisplacement } = plant.machine.travel.motor
  if (secondDisplacement === null) return solvePoint(plant, 'level', displacement, at, fixedSpeed)
  const fast = solvePoint(plant, 'level', secondDisplacement, at, fixedSpeed)
  return fast.stalled ? solvePoint(plant, 'level', displacement, at, fixedSpeed) : fast
}
