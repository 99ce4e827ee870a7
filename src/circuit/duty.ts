/**
 * The modes of an hour of work at one oil temperature: what the pumps take in, what leaves as useful power, what stays as
 * heat, and how much oil returns through the cooler (method: "Heat").
 */
import type { ModeName } from '../evaluation.ts'
import type { Attachment, Circuit, Duty } from '../machine.ts'
import type { CubicMetresPerSecond, Pascals, Share, Watts } from '../units/si.ts'
import { balanceEngine, type CircuitState, type PlantState, scaleToPeakTorque, type Task } from './balance.ts'
import type { Conditions, Plant } from './plant.ts'
import { solveLevel } from './travel-point.ts'
import { dropOfLine, dropToTool } from './way.ts'

/** Digging or loading runs at this share of the relief setting where the duty does not say (method, assumption). */
export const WORK_SHARE_OF_RELIEF = 0.4
/** Of the pressure at the tool times its flow, this leaves as work (method, assumption). */
export const ATTACHMENT_USEFUL = 0.75

export interface ModePower {
  readonly input: Watts
  readonly useful: Watts
  /** Through filter and cooler. */
  readonly returnFlow: CubicMetresPerSecond
  /** What holds the flows (engine, reliefs, suction): where it changes with the oil, the heat has a kink. */
  readonly regime: string
}

export interface Work {
  readonly duty: Duty
  readonly attachment: Attachment | null
}

const powerInto = (state: PlantState): Watts => state.torque * 2 * Math.PI * state.speed

const regimeOf = (state: PlantState, engine: 'scaled' | 'lugging' | 'governed'): string =>
  [engine, ...state.circuits.map((c) => (c.starved ? 'starved' : c.relieving ? 'relieving' : 'free'))].join(' ')

/** Circuits that name a kind of work; for implements, those that drive where none is named. */
const circuitsFor = (plant: Plant, work: 'implements' | 'attachment'): readonly number[] => {
  const named = plant.machine.circuits.flatMap((circuit, i) => (circuit.works.includes(work) ? [i] : []))
  return named.length > 0 || work === 'attachment' ? named : plant.driving
}

interface Carried extends PlantState {
  readonly scaled: boolean
  readonly regime: string
}

/** Balanced at the engine's own speed, or scaled down where it cannot carry the mode. */
const carry = (plant: Plant, tasks: readonly Task[], at: Conditions): Carried => {
  const engine = balanceEngine(plant, tasks, at)
  if (!engine.stalled)
    return { ...engine, scaled: false, regime: regimeOf(engine, engine.lugging ? 'lugging' : 'governed') }
  const state = scaleToPeakTorque(plant, tasks, engine, at)
  return { ...state, scaled: true, regime: regimeOf(state, 'scaled') }
}

const heldTasks = (plant: Plant, working: readonly number[], pressure: (setting: Pascals) => Pascals): Task[] =>
  plant.machine.circuits.map((circuit, i) =>
    working.includes(i) ? { kind: 'held', pressure: pressure(circuit.relief.setting) } : { kind: 'neutral' },
  )

const heldMode = (
  plant: Plant,
  at: Conditions,
  pressure: (setting: Pascals) => Pascals,
  usefulShare: Share,
): ModePower => {
  const working = circuitsFor(plant, 'implements')
  const state = carry(plant, heldTasks(plant, working, pressure), at)
  let hydraulic = 0
  for (const i of working) {
    const { pressure: own, pumpFlow } = state.circuits[i] as CircuitState
    hydraulic += own * pumpFlow
  }
  return { input: powerInto(state), useful: usefulShare * hydraulic, returnFlow: state.totalFlow, regime: state.regime }
}

const travelMode = (plant: Plant, at: Conditions): ModePower => {
  const level = solveLevel(plant, at)
  const { engine } = level
  if (!engine.stalled) {
    const regime = regimeOf(engine, engine.lugging ? 'lugging' : 'governed')
    return { input: powerInto(engine), useful: level.useful, returnFlow: engine.totalFlow, regime }
  }
  const tasks: Task[] = plant.machine.circuits.map((_, i) =>
    plant.driving.includes(i) ? { kind: 'held', pressure: 0 } : { kind: 'neutral' },
  )
  const scaled = scaleToPeakTorque(plant, tasks, engine, at)
  const regime = regimeOf(scaled, 'scaled')
  return { input: powerInto(scaled), useful: 0, returnFlow: scaled.totalFlow, regime }
}

/** What reaches the tool of one circuit, and the pressure it has there. */
export const atTool = (
  plant: Plant,
  index: number,
  state: CircuitState,
  sharedReturn: Pascals,
  wanted: Pascals,
  scaled: boolean,
  at: Conditions,
): { readonly flow: CubicMetresPerSecond; readonly pressure: Pascals } => {
  if (!scaled) return { flow: state.wayFlow, pressure: wanted }
  const circuit = plant.machine.circuits[index] as Circuit
  const lost =
    dropToTool(circuit, state.pumpFlow, at) + dropOfLine(circuit.lines.return, state.pumpFlow, at) + sharedReturn
  return { flow: state.pumpFlow, pressure: Math.max(0, state.pressure - lost) }
}

export const attachmentState = (plant: Plant, attachment: Attachment, at: Conditions) => {
  const working = circuitsFor(plant, 'attachment')
  const tasks: Task[] = plant.machine.circuits.map((_, i) =>
    working.includes(i) ? { kind: 'tool', pressure: attachment.pressure } : { kind: 'neutral' },
  )
  return { working, state: carry(plant, tasks, at) }
}

const attachmentMode = (plant: Plant, attachment: Attachment, at: Conditions): ModePower => {
  const { working, state } = attachmentState(plant, attachment, at)
  let flow = 0
  let hydraulic = 0
  for (const i of working) {
    const tool = atTool(
      plant,
      i,
      state.circuits[i] as CircuitState,
      state.sharedReturn,
      attachment.pressure,
      state.scaled,
      at,
    )
    flow += tool.flow
    hydraulic += tool.flow * tool.pressure
  }
  const used = flow > 0 ? Math.min(1, attachment.flow / flow) : 0
  return {
    input: powerInto(state),
    useful: ATTACHMENT_USEFUL * hydraulic * used,
    returnFlow: state.totalFlow,
    regime: state.regime,
  }
}

/** One mode at one oil temperature. */
export const modePower = (plant: Plant, work: Work, mode: ModeName, at: Conditions): ModePower => {
  switch (mode) {
    case 'travel':
      return travelMode(plant, at)
    case 'work': {
      const { pressure, useful } = work.duty.work
      return heldMode(plant, at, (setting) => Math.min(setting, pressure ?? WORK_SHARE_OF_RELIEF * setting), useful)
    }
    case 'relief':
      return heldMode(plant, at, (setting) => setting, 0)
    case 'attachment':
      return work.attachment === null ? modePower(plant, work, 'idle', at) : attachmentMode(plant, work.attachment, at)
    case 'idle': {
      const state = carry(
        plant,
        plant.machine.circuits.map(() => ({ kind: 'neutral' })),
        at,
      )
      return { input: powerInto(state), useful: 0, returnFlow: state.totalFlow, regime: state.regime }
    }
  }
}

/** Modes that the duty really has, with their shares. */
export const modesOf = (duty: Duty): readonly (readonly [ModeName, Share])[] =>
  (
    [
      ['travel', duty.travel],
      ['work', duty.work.share],
      ['relief', duty.relief],
      ['attachment', duty.attachment],
      ['idle', duty.idle],
    ] as const
  ).filter(([, share]) => share > 0)
