/**
 * The way of the oil through one circuit: what each component on it takes at a flow. One function a component, so that
 * figures.ts prints the very drops that the balance was found with.
 */
import { lineDrop } from '../formulas/line.ts'
import { laminarDrop, quadraticDrop } from '../formulas/restriction.ts'
import type { Circuit, Line, Machine, QuadraticRestriction, Swivel } from '../machine.ts'
import type { CubicMetresPerSecond, Pascals } from '../units/si.ts'
import type { Conditions } from './plant.ts'

/** A swivel of which only the drilling is known is taken as a line of that bore: 0.15 m, two elbows (method, assumption). */
export const SWIVEL_WAY = { length: 0.15, elbows: 2 }

export const dropOfLine = (line: Line | null, flow: CubicMetresPerSecond, at: Conditions): Pascals =>
  line === null ? 0 : lineDrop(flow, line.bore, line.length, line.elbows, at.nu, at.rho)

export const dropOfRestriction = (
  restriction: QuadraticRestriction | null | undefined,
  flow: CubicMetresPerSecond,
  at: Conditions,
): Pascals =>
  restriction === null || restriction === undefined
    ? 0
    : quadraticDrop(flow, restriction.flow, restriction.drop, at.rho)

/** One way through the swivel. */
export const dropOfSwivel = (swivel: Swivel | null, flow: CubicMetresPerSecond, at: Conditions): Pascals => {
  if (swivel === null) return 0
  if (swivel.restriction !== null) return dropOfRestriction(swivel.restriction, flow, at)
  if (swivel.bore === null) return 0
  return lineDrop(flow, swivel.bore, SWIVEL_WAY.length, SWIVEL_WAY.elbows, at.nu, at.rho)
}

/** Work lines and swivel, one way, at the flow of one motor. */
export const dropToMotor = (machine: Machine, motorFlow: CubicMetresPerSecond, at: Conditions): Pascals => {
  let drop = dropOfSwivel(machine.travel.swivel, motorFlow, at)
  for (const line of machine.travel.lines) drop += dropOfLine(line, motorFlow, at)
  return drop
}

/** Filter before its bypass opens. */
export const elementDrop = (machine: Machine, flow: CubicMetresPerSecond, at: Conditions): Pascals => {
  const { filter } = machine
  if (filter === null || filter.drop === null || filter.reference === null) return 0
  return laminarDrop(flow, filter.reference.flow, filter.drop, at.nu, filter.reference.viscosity)
}

/** Cooler before its bypass opens. */
export const coreDrop = (machine: Machine, flow: CubicMetresPerSecond, at: Conditions): Pascals => {
  const { cooler } = machine
  if (cooler === null || cooler.drop === null) return 0
  return quadraticDrop(flow, cooler.atFlow, cooler.drop, at.rho)
}

export const dropOfFilter = (machine: Machine, flow: CubicMetresPerSecond, at: Conditions): Pascals =>
  machine.filter === null ? 0 : Math.min(elementDrop(machine, flow, at), machine.filter.bypass)

export const dropOfCooler = (machine: Machine, flow: CubicMetresPerSecond, at: Conditions): Pascals =>
  machine.cooler === null ? 0 : Math.min(coreDrop(machine, flow, at), machine.cooler.bypass)

/** Filter and cooler: what all circuits return through together. */
export const dropOfSharedReturn = (machine: Machine, totalFlow: CubicMetresPerSecond, at: Conditions): Pascals =>
  dropOfFilter(machine, totalFlow, at) + dropOfCooler(machine, totalFlow, at)

/** Behind the motor, without return line, filter and cooler. */
export const dropBehindMotor = (
  machine: Machine,
  circuit: Circuit,
  flow: CubicMetresPerSecond,
  motors: number,
  at: Conditions,
): Pascals =>
  dropToMotor(machine, flow / motors, at) +
  0.5 * dropOfRestriction(machine.travel.motor.block, flow / motors, at) +
  0.5 * dropOfRestriction(circuit.valve?.restriction, flow, at)

/** To the tool and back: valve, auxiliary lines, two couplers of the stated drop each. */
export const dropToTool = (circuit: Circuit, flow: CubicMetresPerSecond, at: Conditions): Pascals =>
  dropOfLine(circuit.lines.pressure, flow, at) +
  dropOfRestriction(circuit.valve?.restriction, flow, at) +
  dropOfLine(circuit.auxiliary?.out ?? null, flow, at) +
  dropOfLine(circuit.auxiliary?.back ?? null, flow, at) +
  2 * dropOfRestriction(circuit.auxiliary?.coupler, flow, at)
