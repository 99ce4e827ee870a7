/**
 * The machine made ready for solving: what does not depend on oil temperature is worked out once (engine line, which
 * circuit feeds how many motors, the atmosphere), what does (viscosity, density, how much oil each suction passes) once
 * a temperature.
 */
import { standardAtmosphere } from '../formulas/atmosphere.ts'
import { siteDerate } from '../formulas/engine.ts'
import { densityAt, viscosityAt, waltherConstants } from '../formulas/fluid.ts'
import { lineDrop } from '../formulas/line.ts'
import { laminarDrop } from '../formulas/restriction.ts'
import type { Circuit, Machine, Site, Strainer } from '../machine.ts'
import type {
  Celsius,
  CubicMetresPerSecond,
  KilogramsPerCubicMetre,
  NewtonMetres,
  PascalSeconds,
  Pascals,
  RevsPerSecond,
  Share,
  SquareMetresPerSecond,
} from '../units/si.ts'
import { findRoot } from './root.ts'
import { type CircuitWays, type SolvedWay, suctionWay, waysOf } from './solved-way.ts'

/** A pump's inlet holds this much, absolute, or it takes in no more (method: "Pump and motor"). */
export const STARVED_INLET: Pascals = 0.2e5

/** Full-load torque is known down to this share of rated speed; below it the engine stalls. */
export const LOWEST_ENGINE_SPEED = 0.7

/** The engine's line after derating for the site. */
export interface EngineLine {
  readonly ratedTorque: NewtonMetres
  readonly ratedSpeed: RevsPerSecond
  readonly droop: Share
  readonly rise: Share
  /** No load. */
  readonly highIdle: RevsPerSecond
  /** 70 % of rated. */
  readonly lowest: RevsPerSecond
  readonly derate: Share
}

export interface Plant {
  readonly machine: Machine
  readonly site: Site
  readonly atmosphere: Pascals
  readonly engine: EngineLine
  readonly walther: { readonly a: number; readonly b: number }
  /** For each circuit, the motors that it feeds when everything drives; 0 where it drives nothing. */
  readonly motorsFed: readonly number[]
  /** Indices of the circuits that drive. */
  readonly driving: readonly number[]
  /** Indices of the circuits that share a suction line, itself included. */
  readonly suctionGroups: readonly (readonly number[])[]
}

/** Oil at one temperature. */
export interface Oil {
  readonly oil: Celsius
  readonly nu: SquareMetresPerSecond
  readonly rho: KilogramsPerCubicMetre
  readonly mu: PascalSeconds
}

/** Oil at one temperature, what each suction passes of it, and what each way takes. */
export interface Conditions extends Oil {
  readonly ways: readonly CircuitWays[]
  /** Suction line of each circuit, as a way; null where none is described. */
  readonly suctions: readonly (SolvedWay | null)[]
  /** Most that each circuit's pump can take in with all pumps in step; Infinity where it always gets what it wants. */
  readonly intakeLimits: readonly CubicMetresPerSecond[]
}

const engineLine = (machine: Machine, site: Site): EngineLine => {
  const { engine } = machine
  const derate = siteDerate(site.altitude, site.ambient)
  return {
    ratedTorque: (derate * engine.netPower) / (2 * Math.PI * engine.ratedSpeed),
    ratedSpeed: engine.ratedSpeed,
    droop: engine.governorDroop,
    rise: engine.torqueRise,
    highIdle: engine.ratedSpeed * (1 + engine.governorDroop),
    lowest: engine.ratedSpeed * LOWEST_ENGINE_SPEED,
    derate,
  }
}

const fedBy = (circuit: Circuit, motors: number): number => {
  if (circuit.drives === 'no track') return 0
  return circuit.drives === 'both tracks' ? motors : motors / 2
}

const suctionGroup = (machine: Machine, { suctionSharedWith, name }: Circuit): number[] => {
  const owner = suctionSharedWith ?? name
  return machine.circuits.flatMap((other, i) => ((other.suctionSharedWith ?? other.name) === owner ? [i] : []))
}

/**
 * Makes a machine ready at a site.
 * @returns what every later step of the circuit reads
 */
export const preparePlant = (machine: Machine, site: Site): Plant => {
  const motorsFed = machine.circuits.map((circuit) => fedBy(circuit, machine.travel.motors))
  return {
    machine,
    site,
    atmosphere: standardAtmosphere(site.altitude),
    engine: engineLine(machine, site),
    walther: waltherConstants(machine.oil.viscosityAt40, machine.oil.viscosityAt100),
    motorsFed,
    driving: motorsFed.flatMap((motors, i) => (motors > 0 ? [i] : [])),
    suctionGroups: machine.circuits.map((circuit) => suctionGroup(machine, circuit)),
  }
}

/** Drop of the strainer in front of all pumps. */
export const strainerDrop = (
  strainer: Strainer | null,
  flow: CubicMetresPerSecond,
  nu: SquareMetresPerSecond,
): Pascals => (strainer === null ? 0 : laminarDrop(flow, strainer.ratedFlow, strainer.drop, nu, strainer.viscosity))

/**
 * Absolute pressure at a pump's inlet: atmosphere - suction line - strainer. The suction line carries what its sharers
 * take, the strainer what all circuits take. No static head: the format does not carry the oil level above the pump.
 * @param lineFlow flow in the suction line [m3/s]
 * @param totalFlow flow through the strainer [m3/s]
 * @returns pressure [Pa absolute], may fall below zero where the flow is impossible
 */
export const inletPressure = (
  plant: Plant,
  conditions: Oil,
  index: number,
  lineFlow: CubicMetresPerSecond,
  totalFlow: CubicMetresPerSecond,
): Pascals => {
  const line = (plant.machine.circuits[index] as Circuit).lines.suction
  const lineLoss =
    line === null ? 0 : lineDrop(lineFlow, line.bore, line.length, line.elbows, conditions.nu, conditions.rho)
  return plant.atmosphere - lineLoss - strainerDrop(plant.machine.strainer, totalFlow, conditions.nu)
}

/**
 * Most a pump can take in with every pump at the same share of its displacement, up to a tenth over high idle. Where it is
 * Infinity for all, no state of the machine starves a pump; where it is not, the flows of a state decide (intake.ts).
 */
const intakeLimit = (plant: Plant, oil: Oil, index: number): CubicMetresPerSecond => {
  const { circuits, strainer } = plant.machine
  const { pump, lines } = circuits[index] as Circuit
  if (lines.suction === null && strainer === null) return Number.POSITIVE_INFINITY
  const sum = (indices: readonly number[]) =>
    indices.reduce((total, i) => total + (circuits[i] as Circuit).pump.displacement, 0) / pump.displacement
  const inGroup = sum(plant.suctionGroups[index] as readonly number[])
  const inAll = sum(circuits.map((_, i) => i))
  const margin = (flow: number) => inletPressure(plant, oil, index, flow * inGroup, flow * inAll) - STARVED_INLET
  const most = pump.displacement * plant.engine.highIdle * 1.1
  const atMost = margin(most)
  if (atMost >= 0) return Number.POSITIVE_INFINITY
  return margin(0) <= 0 ? 0 : findRoot(margin, 0, most)
}

/** Oil at one temperature. */
export const conditionsAt = (plant: Plant, oil: Celsius): Conditions => {
  const nu = viscosityAt(plant.walther, oil)
  const rho = densityAt(oil)
  const state = { oil, nu, rho, mu: nu * rho }
  return {
    ...state,
    ways: plant.machine.circuits.map((circuit) => waysOf(circuit, state)),
    suctions: plant.machine.circuits.map((circuit) => suctionWay(circuit, state)),
    intakeLimits: plant.machine.circuits.map((_, i) => intakeLimit(plant, state, i)),
  }
}
