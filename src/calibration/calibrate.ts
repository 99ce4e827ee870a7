/**
 * Readings against plates: what was measured wins over what was assumed, faults are named, and readings that do not agree
 * are said to (method: "Calibration"). Steps: relief, metered flows, timed run, engine line, tank temperature, inlet.
 */

import type { Work } from '../circuit/duty.ts'
import { HeatTable, NODE_STEP, oilAfter } from '../circuit/oil-heat.ts'
import { type Conditions, conditionsAt, type Plant, preparePlant } from '../circuit/plant.ts'
import { findRoot } from '../circuit/root.ts'
import { solveLevel } from '../circuit/travel-point.ts'
import type { CalibrationFigures, Fault } from '../evaluation.ts'
import { governedSpeed } from '../formulas/engine.ts'
import type { Circuit, Machine, Site } from '../machine.ts'
import type { CircuitReading, Readings } from '../question.ts'
import { kmhFromMetresPerSecond } from '../units/shop-units.ts'
import type { MetresPerSecond, Pascals } from '../units/si.ts'
import { COOLING_BOUNDS, DRAG_FACTOR, FAULT_SHARE, OFFSET_BOUND, SLIP_FROM_RUN, WORN_LOSS } from './bounds.ts'
import { type Carried, carry, NOTHING_CARRIED, type PumpFit, type ReliefReading } from './carried.ts'
import { fitFlows, flowLoss, type SlipFit } from './fit-flows.ts'
import { fitRun, fitSpeedFactor } from './fit-run.ts'
import { notes } from './notes.ts'

export interface Calibration {
  readonly carried: Carried
  readonly faults: readonly Fault[]
  /** Figures of the machine file that make faults of readings: where one of them was assumed, so was the fault. */
  readonly faultsHangOn: readonly string[]
  /** Readings that do not agree; empty where they do. */
  readonly disagreements: readonly string[]
  readonly figures: CalibrationFigures
}

/** Mutable while it is being gathered. */
interface Gathered {
  carried: Carried
  faults: Fault[]
  faultsHangOn: string[]
  disagreements: string[]
  notes: string[]
}

/** Reading of a circuit: its own, else the one for every circuit that drives. */
const readingFor = (readings: readonly CircuitReading[], circuit: Circuit): Pascals | null => {
  const own = readings.find((r) => r.circuit === circuit.name)
  if (own !== undefined) return own.pressure
  const shared = readings.find((r) => r.circuit === null)
  return shared !== undefined && circuit.drives !== 'no track' ? shared.pressure : null
}

const readReliefs = (machine: Machine, readings: Readings, into: Gathered): void => {
  const reliefs = new Map<string, ReliefReading>()
  for (const circuit of machine.circuits) {
    const read = readingFor(readings.reliefPressure, circuit)
    if (read === null) continue
    const stated = circuit.relief.setting
    const low = read < FAULT_SHARE * stated
    reliefs.set(circuit.name, { stated, read, low })
    const text = (low ? notes.reliefLow : notes.reliefRead)(circuit.name, read, stated)
    if (low) {
      into.faults.push({ component: `circuits.${circuit.name}.relief`, text })
      into.faultsHangOn.push(`circuits.${circuit.name}.relief.setting`)
    }
    into.notes.push(text)
  }
  into.carried = { ...into.carried, reliefs }
}

const keepPump = (circuit: Circuit, fit: SlipFit, worn: boolean, into: Gathered): void => {
  const pumps = new Map<string, PumpFit>(into.carried.pumps)
  pumps.set(circuit.name, { of: circuit.pump, offset: fit.offset, slipFactor: fit.slipFactor, worn })
  into.carried = { ...into.carried, pumps }
}

/** @returns whether any circuit that drives was metered */
const meterFlows = (plant: Plant, readings: Readings, into: Gathered): boolean => {
  const speed = readings.engineSpeed ?? plant.engine.ratedSpeed
  let driving = false
  for (const circuit of plant.machine.circuits) {
    const drives = circuit.drives !== 'no track'
    const own = readings.flows.filter((f) => f.circuit === circuit.name || (f.circuit === null && drives))
    const fit = fitFlows(plant, circuit, own, speed)
    if (fit === null) continue
    driving ||= drives
    const loss = flowLoss(plant, circuit.pump, fit.offset, fit.slipFactor)
    const worn = loss > WORN_LOSS.share
    keepPump(circuit, fit, worn, into)
    into.notes.push(notes.pumpLoss(circuit.name, loss))
    if (fit.otherPump) into.notes.push(notes.otherPump(circuit.name))
    if (fit.disagrees)
      into.disagreements.push(fit.otherPump ? notes.otherPump(circuit.name) : notes.flowsDisagree(circuit.name))
    if (worn) into.faults.push({ component: `circuits.${circuit.name}.pump`, text: notes.wornPump(circuit.name, loss) })
  }
  return driving
}

const runAlone = (
  plant: Plant,
  measured: MetresPerSecond,
  at: Conditions,
  readings: Readings,
  into: Gathered,
): void => {
  const fit = fitRun(plant, measured, at, readings.engineSpeed)
  const worn = fit.slipFactor > SLIP_FROM_RUN.worn && !fit.disagrees
  for (const i of plant.driving) {
    const circuit = plant.machine.circuits[i] as Circuit
    keepPump(circuit, fit, worn, into)
    if (worn) into.faults.push({ component: `circuits.${circuit.name}.pump`, text: notes.wornFromRun(circuit.name) })
  }
  if (fit.disagrees) into.disagreements.push(notes.runDisagrees)
  else if (fit.slipFactor >= SLIP_FROM_RUN.doubtful && !worn) into.disagreements.push(notes.meterFlow(fit.slipFactor))
}

const sayRun = (measured: MetresPerSecond, predicted: MetresPerSecond, into: Gathered): void => {
  const ratio = predicted > 0 ? measured / predicted : Number.POSITIVE_INFINITY
  const say = Math.abs(ratio - 1) <= OFFSET_BOUND ? notes.runAgrees : ratio < 1 ? notes.runSlow : notes.runFast
  into.notes.push(say(measured, predicted))
}

const timeRun = (plant: Plant, metered: boolean, readings: Readings, into: Gathered): MetresPerSecond | null => {
  const run = readings.travel
  if (run === null) return null
  const measured = run.distance / run.time
  const at = conditionsAt(plant, run.oil)
  const predicted = solveLevel(plant, at, readings.engineSpeed).speed
  sayRun(measured, predicted, into)
  if (!metered) {
    runAlone(plant, measured, at, readings, into)
    return predicted
  }
  const fitted = preparePlant(carry(plant.machine, { ...into.carried, reliefs: new Map() }, false), plant.site)
  const fit = fitSpeedFactor(solveLevel(fitted, conditionsAt(fitted, run.oil), readings.engineSpeed), measured)
  const dragging = fit.speedFactor < DRAG_FACTOR
  into.carried = { ...into.carried, speedFactor: fit.speedFactor, dragging }
  into.notes.push(notes.speedFactor(fit.speedFactor))
  if (fit.disagrees) into.disagreements.push(notes.speedFactorDisagrees)
  if (dragging) into.faults.push({ component: 'travel.motor', text: notes.dragging(fit.speedFactor) })
  return predicted
}

/** The whole governor line moves so that the model gives the read speed at the load it was read at. */
const readEngine = (plant: Plant, readings: Readings, into: Gathered): void => {
  const read = readings.engineSpeed
  if (read === null) return
  const { ratedSpeed, ratedTorque, droop, rise, highIdle } = plant.engine
  let expected: number | null = highIdle
  // What a governor without any droop would hold: a reading that is short of that is a fault whatever the droop is.
  let surely: number | null = ratedSpeed
  if (readings.travel !== null) {
    const fitted = preparePlant(carry(plant.machine, { ...into.carried, reliefs: new Map() }, false), plant.site)
    const state = solveLevel(fitted, conditionsAt(fitted, readings.travel.oil), read)
    expected = governedSpeed(state.engine.torque, ratedSpeed, ratedTorque, droop, rise)
    surely = governedSpeed(state.engine.torque, ratedSpeed, ratedTorque, 0, rise)
  }
  if (expected === null) {
    into.disagreements.push(notes.engineDisagrees)
    return
  }
  const engineFactor = read / expected
  const engineSlow = engineFactor < FAULT_SHARE
  into.carried = { ...into.carried, engineFactor, engineSlow }
  const slow = readings.travel === null ? notes.engineSlowIdle : notes.engineSlow
  const text = (engineSlow ? slow : notes.engineRead)(read, expected)
  if (engineSlow) {
    into.faults.push({ component: 'engine', text })
    into.faultsHangOn.push('engine.rated-speed')
    if (surely === null || read >= FAULT_SHARE * surely) into.faultsHangOn.push('engine.governor-droop')
  }
  into.notes.push(text)
}

const readTank = (
  plates: Machine,
  site: Site,
  work: Work,
  readings: Readings,
  heatStep: number,
  into: Gathered,
): void => {
  const reading = readings.oilTemperature
  if (reading === null) return
  const machine = carry(plates, into.carried, false)
  const table = new HeatTable(preparePlant(machine, site), work, reading.ambient, heatStep)
  const excess = (coolingFactor: number) =>
    oilAfter({ ...machine, coolingFactor }, reading.ambient, table, reading.after) - reading.reading
  const { least, most } = COOLING_BOUNDS
  const disagrees = excess(least) < 0 || excess(most) > 0
  const coolingFactor = disagrees ? (excess(least) < 0 ? least : most) : findRoot(excess, least, most)
  into.carried = { ...into.carried, coolingFactor }
  into.notes.push(notes.coolingFactor(coolingFactor))
  // Only what is not stated is 0 m2 of cylinders, valve and lines.
  const bare = disagrees && coolingFactor === most && machine.otherCoolingSurface === 0
  if (disagrees) into.disagreements.push(bare ? notes.oilCoolerThanTank : notes.oilDisagrees)
}

const readInlets = (plant: Plant, readings: Readings, into: Gathered): void => {
  const seen = new Set<string>()
  for (const circuit of plant.machine.circuits) {
    const gauge = readingFor(readings.inletPressure, circuit)
    if (gauge === null) continue
    const absolute = plant.atmosphere + gauge
    const limit = circuit.pump.minInletPressure
    const component = `circuits.${circuit.suctionSharedWith ?? circuit.name}.lines.suction`
    if (absolute >= limit || seen.has(component)) continue
    seen.add(component)
    const text = notes.starvedInlet(circuit.name, absolute, limit)
    into.faults.push({ component, text })
    into.notes.push(text)
  }
}

/** Slip factor and volumetric efficiency at the pump's own reference point, of the circuit that is worst. */
const worstPump = (machine: Machine): { readonly slipFactor: number; readonly efficiency: number } => {
  const all = machine.circuits.map(({ pump }) => {
    const { pressure, speed, viscosity } = pump.reference
    const lost = (pump.slipFactor * pump.slip * pressure) / (viscosity * pump.displacement * speed)
    return { slipFactor: pump.slipFactor, efficiency: 1 - pump.flowOffset - lost }
  })
  return all.reduce((worst, next) => (next.efficiency < worst.efficiency ? next : worst))
}

/**
 * Calibrates a machine against its readings.
 * @param plates the machine as its file says, nothing carried
 * @param heatStep nodes of the heat table [K]; the draws of a range take wider ones
 * @returns what the readings taught, the faults, and the figures of the result
 */
export const calibrate = (
  plates: Machine,
  site: Site,
  work: Work,
  readings: Readings,
  heatStep: number = NODE_STEP,
): Calibration => {
  const into: Gathered = { carried: NOTHING_CARRIED, faults: [], faultsHangOn: [], disagreements: [], notes: [] }
  readReliefs(plates, readings, into)
  const plant = preparePlant(carry(plates, into.carried, false), site)
  const metered = meterFlows(plant, readings, into)
  const predicted = timeRun(plant, metered, readings, into)
  readEngine(plant, readings, into)
  readTank(plates, site, work, readings, heatStep, into)
  readInlets(plant, readings, into)
  const fitted = carry(plates, into.carried, false)
  const measured = fitted.circuits.filter((c) => into.carried.pumps.has(c.name) || into.carried.pumps.size === 0)
  const worst = worstPump({ ...fitted, circuits: measured })
  const run = readings.travel
  return {
    carried: into.carried,
    faults: into.faults,
    faultsHangOn: into.faultsHangOn,
    disagreements: into.disagreements,
    figures: {
      pumpSlipFactor: worst.slipFactor,
      impliedVolumetricEfficiency: worst.efficiency,
      speedFactor: into.carried.speedFactor,
      coolingFactor: into.carried.coolingFactor,
      measuredSpeedKmh: run === null ? null : kmhFromMetresPerSecond(run.distance / run.time),
      predictedSpeedKmh: predicted === null ? null : kmhFromMetresPerSecond(predicted),
      notes: into.notes,
    },
  }
}
