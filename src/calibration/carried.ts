/**
 * What the readings taught about a machine, apart from the machine, so that it can be put on an option's machine too: the
 * read relief and the engine's line stay with the machine, a fitted pump only as long as that pump is there.
 */
import type { Circuit, Machine, Pump } from '../machine.ts'
import type { Pascals } from '../units/si.ts'

export interface PumpFit {
  /** The pump that was measured. */
  readonly of: Pump
  readonly offset: number
  readonly slipFactor: number
  /** The fit is called a fault: the restored machine has the pump healthy. */
  readonly worn: boolean
}

export interface ReliefReading {
  readonly stated: Pascals
  readonly read: Pascals
  readonly low: boolean
}

export interface Carried {
  readonly pumps: ReadonlyMap<string, PumpFit>
  readonly reliefs: ReadonlyMap<string, ReliefReading>
  /** On all speeds of the engine's line, torques unchanged. */
  readonly engineFactor: number
  readonly engineSlow: boolean
  readonly speedFactor: number
  /** The speed factor is called a fault behind the pump. */
  readonly dragging: boolean
  readonly coolingFactor: number
}

export const NOTHING_CARRIED: Carried = {
  pumps: new Map(),
  reliefs: new Map(),
  engineFactor: 1,
  engineSlow: false,
  speedFactor: 1,
  dragging: false,
  coolingFactor: 1,
}

/** The same pump: not from another part, not of another size. A tolerance drawn for a range does not make it another. */
const samePump = (pump: Pump, measured: Pump): boolean =>
  pump.part === measured.part &&
  pump.section === measured.section &&
  Math.abs(pump.displacement / measured.displacement - 1) < 1e-9

const withPump = (circuit: Circuit, fit: PumpFit | undefined, restored: boolean): Pump => {
  const { pump } = circuit
  if (fit === undefined || !samePump(pump, fit.of) || (restored && fit.worn)) return pump
  return { ...pump, flowOffset: fit.offset, slipFactor: fit.slipFactor }
}

const withRelief = (circuit: Circuit, reading: ReliefReading | undefined, restored: boolean): Circuit['relief'] => {
  const { relief } = circuit
  const changed = reading !== undefined && Math.abs(relief.setting / reading.stated - 1) > 1e-9
  if (reading === undefined || changed || (restored && reading.low)) return relief
  return { ...relief, setting: reading.read }
}

/**
 * A machine with what the readings taught.
 * @param restored true: what is called a fault is put right, a reading that is no fault stays
 */
export const carry = (machine: Machine, carried: Carried, restored: boolean): Machine => {
  const engineFactor = restored && carried.engineSlow ? 1 : carried.engineFactor
  return {
    ...machine,
    engine: {
      ...machine.engine,
      ratedSpeed: machine.engine.ratedSpeed * engineFactor,
      netPower: machine.engine.netPower * engineFactor,
    },
    circuits: machine.circuits.map((circuit) => ({
      ...circuit,
      pump: withPump(circuit, carried.pumps.get(circuit.name), restored),
      relief: withRelief(circuit, carried.reliefs.get(circuit.name), restored),
    })),
    travel: { ...machine.travel, speedFactor: restored && carried.dragging ? 1 : carried.speedFactor },
    coolingFactor: carried.coolingFactor,
  }
}

/** Restoring changes what the model gives (a starved suction, say, is a fault that it does not). */
export const restoringMatters = (carried: Carried): boolean =>
  carried.engineSlow ||
  carried.dragging ||
  [...carried.pumps.values()].some((fit) => fit.worn) ||
  [...carried.reliefs.values()].some((reading) => reading.low)
