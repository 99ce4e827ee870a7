/**
 * Flows and pressures of all circuits at one engine speed, and the engine speed that they leave. Three nested balances,
 * each with its own bracket: a circuit against its pump, all circuits against the return they share, the pumps' torque
 * against the engine.
 */
import { fullLoadTorque, governedTorque } from '../formulas/engine.ts'
import { pumpTorque } from '../formulas/pump.ts'
import type { Circuit, Pump } from '../machine.ts'
import type { CubicMetresPerSecond, NewtonMetres, Pascals, RevsPerSecond } from '../units/si.ts'
import { intakeLimitsFor } from './intake.ts'
import type { Conditions, Plant } from './plant.ts'
import { fallingFixedPoint, findRoot, rootBetween } from './root.ts'
import {
  type CircuitWays,
  drivingWay,
  dropAlong,
  flowAgainst,
  flowUnder,
  type SolvedWay,
  toolWay,
  type Ways,
  withReturn,
} from './solved-way.ts'
import { dropOfSharedReturn } from './way.ts'

/** Engine and pumps are in balance to this share of rated torque. */
const BALANCED = 1e-13

/** What one circuit is doing. */
export type Task =
  | { readonly kind: 'neutral' }
  /** Drives so many motors, each asking for this pressure difference. */
  | { readonly kind: 'drive'; readonly differential: Pascals; readonly motors: number }
  /** Pushes oil through a tool that asks for this pressure. */
  | { readonly kind: 'tool'; readonly pressure: Pascals }
  /** Held at a pressure, however it comes about (digging; everything over the relief). */
  | { readonly kind: 'held'; readonly pressure: Pascals }

export interface CircuitState {
  readonly pumpFlow: CubicMetresPerSecond
  /** Through motors, tool or the neutral way; the rest goes over the relief. */
  readonly wayFlow: CubicMetresPerSecond
  readonly pressure: Pascals
  readonly torque: NewtonMetres
  /** The relief is open. */
  readonly relieving: boolean
  /** The pump takes in less than it could deliver. */
  readonly starved: boolean
}

export interface PlantState {
  readonly speed: RevsPerSecond
  readonly torque: NewtonMetres
  readonly circuits: readonly CircuitState[]
  /** Drop of filter and cooler together. */
  readonly sharedReturn: Pascals
  readonly totalFlow: CubicMetresPerSecond
}

export interface EngineState extends PlantState {
  /** Torque asked over full-load torque at min(n, rated); 1 when lugging, may pass 1 when stalled. */
  readonly load: number
  readonly lugging: boolean
  /** The torque asked is more than the engine has at 70 % of rated speed; the state is that asked there. */
  readonly stalled: boolean
}

/** Shaft torque of one pump that delivers so much of what it could. */
export const shaftTorque = (
  pump: Pump,
  speed: RevsPerSecond,
  pressure: Pascals,
  deliveredShare: number,
  at: Conditions,
): NewtonMetres =>
  pumpTorque(
    pump.displacement,
    pressure,
    deliveredShare,
    pump.referenceTorqueLoss,
    pump.reference.pressure,
    speed,
    at.mu,
    pump.reference.speed,
    pump.reference.viscosity,
  )

const basePressure = (task: Task): Pascals =>
  task.kind === 'drive' ? task.differential : task.kind === 'tool' ? task.pressure : 0

/** The way that a task takes through its circuit. */
const waysFor = (plant: Plant, index: number, task: Task, at: Conditions): Ways => {
  const ways = at.ways[index] as CircuitWays
  const circuit = plant.machine.circuits[index] as Circuit
  switch (task.kind) {
    case 'drive': {
      const known = ways.driving.get(task.motors)
      if (known !== undefined) return known
      const made = withReturn(drivingWay(plant.machine, circuit, task.motors, at), ways.back)
      ways.driving.set(task.motors, made)
      return made
    }
    case 'tool':
      ways.tool ??= withReturn(toolWay(circuit, at), ways.back)
      return ways.tool
    default:
      return ways.neutral
  }
}

/** What one circuit's pump could deliver at no pressure, and what it loses for each pascal. */
interface Source {
  readonly pump: Pump
  readonly most: CubicMetresPerSecond
  readonly perPressure: number
  /** Most that its suction lets in; Infinity where it gets what it wants. */
  readonly limit: CubicMetresPerSecond
}

const sourceOf = (plant: Plant, index: number, speed: RevsPerSecond, at: Conditions): Source => {
  const { pump } = plant.machine.circuits[index] as Circuit
  return {
    pump,
    most: (1 - pump.flowOffset) * pump.displacement * speed,
    perPressure: (pump.slipFactor * pump.slip) / at.mu,
    limit: Number.POSITIVE_INFINITY,
  }
}

const deliveredAt = ({ most, perPressure, limit }: Source, pressure: Pascals): CubicMetresPerSecond =>
  Math.min(limit, Math.max(0, most - perPressure * pressure))

/** Flow that the pump gives into its way, as long as the relief stays shut. */
const flowInto = (source: Source, whole: SolvedWay, base: Pascals): CubicMetresPerSecond =>
  Math.min(source.limit, flowAgainst(whole, source.most, source.perPressure, base))

/** What a pump delivers while its circuit does its task; with the relief open, what it delivers at the setting. */
const deliveredIn = (
  plant: Plant,
  index: number,
  task: Task,
  source: Source,
  sharedReturn: Pascals,
  at: Conditions,
): CubicMetresPerSecond => {
  if (task.kind === 'held') return deliveredAt(source, task.pressure)
  const { setting } = (plant.machine.circuits[index] as Circuit).relief
  const { whole } = waysFor(plant, index, task, at)
  const base = basePressure(task) + sharedReturn
  const flow = flowInto(source, whole, base)
  return base + dropAlong(whole, flow) <= setting ? flow : deliveredAt(source, setting)
}

/**
 * One circuit against its pump: flow delivered at the pressure that this very flow asks for, or, where that is above the
 * relief setting, what the setting can push.
 * @param sharedReturn pressure in front of filter and cooler [Pa]
 */
const settleCircuit = (
  plant: Plant,
  index: number,
  task: Task,
  source: Source,
  speed: RevsPerSecond,
  sharedReturn: Pascals,
  at: Conditions,
): CircuitState => {
  const { setting } = (plant.machine.circuits[index] as Circuit).relief
  const state = (pressure: Pascals, wayFlow: CubicMetresPerSecond, relieving: boolean): CircuitState => {
    const could = Math.max(0, source.most - source.perPressure * pressure)
    const does = Math.min(source.limit, could)
    const share = could > 0 ? does / could : 1
    return {
      pumpFlow: does,
      wayFlow: Math.min(wayFlow, does),
      pressure,
      torque: shaftTorque(source.pump, speed, pressure, share, at),
      relieving,
      starved: does < could,
    }
  }
  if (task.kind === 'held') return state(task.pressure, deliveredAt(source, task.pressure), false)
  const { way, whole } = waysFor(plant, index, task, at)
  const base = basePressure(task) + sharedReturn
  const flow = flowInto(source, whole, base)
  const pressure = base + dropAlong(whole, flow)
  if (pressure <= setting) return state(pressure, flow, false)
  const most = deliveredAt(source, setting)
  const behind = base + dropAlong((at.ways[index] as CircuitWays).back, most)
  return state(setting, flowUnder(way, setting - behind, most), true)
}

const sumOf = (states: readonly CircuitState[], pick: (state: CircuitState) => number): number => {
  let sum = 0
  for (const state of states) sum += pick(state)
  return sum
}

/**
 * The sources with what their suctions let in, while the circuits do their tasks against this return; as they are where no
 * suction can starve a pump.
 */
const behindSuction = (
  plant: Plant,
  tasks: readonly Task[],
  sources: readonly Source[],
  sharedReturn: Pascals,
  at: Conditions,
): readonly Source[] => {
  if (at.intakeLimits.every((limit) => limit === Number.POSITIVE_INFINITY)) return sources
  const wanted = sources.map((source, i) => deliveredIn(plant, i, tasks[i] as Task, source, sharedReturn, at))
  const limits = intakeLimitsFor(plant, wanted, at)
  return sources.map((source, i) => ({ ...source, limit: limits[i] as number }))
}

/** All circuits at one engine speed, coupled by the filter and cooler they share. */
export const balanceAt = (plant: Plant, tasks: readonly Task[], speed: RevsPerSecond, at: Conditions): PlantState => {
  const sources = tasks.map((_, index) => sourceOf(plant, index, speed, at))
  const delivered = (sharedReturn: Pascals) => {
    const limited = behindSuction(plant, tasks, sources, sharedReturn, at)
    let sum = 0
    for (let i = 0; i < tasks.length; i++)
      sum += deliveredIn(plant, i, tasks[i] as Task, limited[i] as Source, sharedReturn, at)
    return sum
  }
  const coupled = plant.machine.filter !== null || plant.machine.cooler !== null
  const sharedReturn = coupled
    ? fallingFixedPoint((pressure) => dropOfSharedReturn(plant.machine, delivered(pressure), at))
    : 0
  const limited = behindSuction(plant, tasks, sources, sharedReturn, at)
  const circuits = tasks.map((task, i) => settleCircuit(plant, i, task, limited[i] as Source, speed, sharedReturn, at))
  return {
    speed,
    torque: sumOf(circuits, (s) => s.torque),
    circuits,
    sharedReturn,
    totalFlow: sumOf(circuits, (s) => s.pumpFlow),
  }
}

/**
 * The engine against the pumps. On the governor line first; where the torque asked at rated speed is more than the
 * engine has there, it lugs to where the two meet; where it is still more at 70 % of rated speed, it stalls, and the state
 * returned is the one asked there.
 */
export const balanceEngine = (plant: Plant, tasks: readonly Task[], at: Conditions): EngineState => {
  const { engine } = plant
  const { ratedSpeed, ratedTorque, droop, rise, highIdle, lowest } = engine
  let state: PlantState = balanceAt(plant, tasks, highIdle, at)
  const spare = (speed: RevsPerSecond) => {
    state = balanceAt(plant, tasks, speed, at)
    return governedTorque(speed, ratedSpeed, ratedTorque, droop, rise) - state.torque
  }
  const atHighIdle = -state.torque
  const atRated = spare(ratedSpeed)
  if (atRated >= 0) {
    const speed = rootBetween(spare, ratedSpeed, highIdle, atRated, atHighIdle, BALANCED * ratedTorque)
    state = balanceAt(plant, tasks, speed, at)
    return { ...state, load: state.torque / ratedTorque, lugging: false, stalled: false }
  }
  const atLowest = spare(lowest)
  if (atLowest < 0) {
    const has = fullLoadTorque(lowest, ratedSpeed, ratedTorque, rise)
    return { ...state, load: state.torque / has, lugging: true, stalled: true }
  }
  const speed = rootBetween(spare, lowest, ratedSpeed, atLowest, atRated, BALANCED * ratedTorque)
  state = balanceAt(plant, tasks, speed, at)
  return { ...state, load: 1, lugging: true, stalled: false }
}

/**
 * A mode that the engine cannot carry: the pressures of the circuits that work are scaled down together until the pumps
 * ask for just the peak torque at 70 % of rated speed; circuits in neutral keep theirs.
 * @returns the scaled state, and the factor on the pressures
 */
export const scaleToPeakTorque = (
  plant: Plant,
  tasks: readonly Task[],
  asked: PlantState,
  at: Conditions,
): PlantState & { readonly factor: number } => {
  const { lowest, ratedSpeed, ratedTorque, rise } = plant.engine
  const has = fullLoadTorque(lowest, ratedSpeed, ratedTorque, rise)
  const heldAt = (factor: number): Task[] =>
    tasks.map((task, i) =>
      task.kind === 'neutral'
        ? task
        : { kind: 'held', pressure: factor * (asked.circuits[i] as CircuitState).pressure },
    )
  const spare = (factor: number) => has - balanceAt(plant, heldAt(factor), lowest, at).torque
  const atNone = spare(0)
  const factor = atNone <= 0 ? 0 : findRoot(spare, 0, 1)
  return { ...balanceAt(plant, heldAt(factor), lowest, at), factor }
}
