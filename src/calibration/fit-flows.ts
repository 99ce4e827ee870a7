/** Metered flows fit a pump's offset and slip (method: "Calibration"). */

import type { Plant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { densityAt, viscosityAt } from '../formulas/fluid.ts'
import { pumpFlow } from '../formulas/pump.ts'
import type { Circuit, Pump } from '../machine.ts'
import type { FlowReading } from '../question.ts'
import type { PascalSeconds, RevsPerSecond } from '../units/si.ts'
import { OFFSET_BOUND, SLIP_BOUNDS, WORN_LOSS } from './bounds.ts'

export interface SlipFit {
  readonly offset: number
  readonly slipFactor: number
  /** Not fitted inside the bounds. */
  readonly disagrees: boolean
  /** The metered offset is outside its bound: another pump may be fitted than the plate says. */
  readonly otherPump: boolean
}

interface Row {
  /** Flow without any loss, V n. */
  readonly theory: number
  /** dp/mu times the stated slip: what a slip factor of 1 loses. */
  readonly slip: number
  readonly flow: number
}

export const viscosityOf = (plant: Plant, oil: number): PascalSeconds =>
  viscosityAt(plant.walther, oil) * densityAt(oil)

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value))

/** Slip factor for a given offset: least squares through the rows. */
const slipAt = (rows: readonly Row[], offset: number): number => {
  let top = 0
  let bottom = 0
  for (const row of rows) {
    top += row.slip * ((1 - offset) * row.theory - row.flow)
    bottom += row.slip * row.slip
  }
  return bottom > 0 ? top / bottom : Number.NaN
}

/** One reading: the offset takes what it may, the slip factor what is left. */
const fitOne = (rows: readonly Row[]): SlipFit => {
  const row = rows[0] as Row
  const offset = 1 - (row.flow + row.slip) / row.theory
  if (Math.abs(offset) <= OFFSET_BOUND) return { offset, slipFactor: 1, disagrees: false, otherPump: false }
  const bound = Math.sign(offset) * OFFSET_BOUND
  const slipFactor = slipAt(rows, bound)
  const fits = slipFactor >= SLIP_BOUNDS.least && slipFactor <= SLIP_BOUNDS.most
  return {
    offset: bound,
    slipFactor: fits
      ? slipFactor
      : within(Number.isNaN(slipFactor) ? 1 : slipFactor, SLIP_BOUNDS.least, SLIP_BOUNDS.most),
    disagrees: !fits,
    otherPump: !fits,
  }
}

/** Two and more: offset and slip factor by least squares of the flows. */
const fitMany = (rows: readonly Row[]): SlipFit => {
  let tt = 0
  let ts = 0
  let ss = 0
  let tq = 0
  let sq = 0
  for (const { theory, slip, flow } of rows) {
    tt += theory * theory
    ts += theory * slip
    ss += slip * slip
    tq += theory * flow
    sq += slip * flow
  }
  const determinant = tt * ss - ts * ts
  if (determinant <= 1e-9 * tt * ss) return fitOne([meanRow(rows)])
  const kept = (tq * ss - sq * ts) / determinant
  const slipFactor = (tq * ts - sq * tt) / determinant
  const offset = 1 - kept
  const offsetFits = Math.abs(offset) <= OFFSET_BOUND
  const bounded = within(offset, -OFFSET_BOUND, OFFSET_BOUND)
  const factor = offsetFits ? slipFactor : slipAt(rows, bounded)
  const factorFits = slipFactor >= SLIP_BOUNDS.least && slipFactor <= SLIP_BOUNDS.most
  return {
    offset: bounded,
    slipFactor: within(factor, SLIP_BOUNDS.least, SLIP_BOUNDS.most),
    disagrees: !offsetFits || !factorFits,
    otherPump: !offsetFits,
  }
}

const meanRow = (rows: readonly Row[]): Row => {
  const mean = (pick: (row: Row) => number) => rows.reduce((sum, row) => sum + pick(row), 0) / rows.length
  return { theory: mean((r) => r.theory), slip: mean((r) => r.slip), flow: mean((r) => r.flow) }
}

/**
 * Fits the pump of one circuit to its metered flows.
 * @param plant the machine as its plates say
 * @param speedWithout engine speed for readings that carry none
 * @returns the fit; null where the circuit has no reading
 */
export const fitFlows = (
  plant: Plant,
  circuit: Circuit,
  readings: readonly FlowReading[],
  speedWithout: RevsPerSecond,
): SlipFit | null => {
  if (readings.length === 0) return null
  const { displacement, slip } = circuit.pump
  const rows = readings.map((reading) => ({
    theory: displacement * (reading.engineSpeed ?? speedWithout),
    slip: (slip * reading.pressure) / viscosityOf(plant, reading.oil),
    flow: reading.flow,
  }))
  return rows.length === 1 ? fitOne(rows) : fitMany(rows)
}

/** Share of its flow that a pump loses between 7 and 69 bar, at 50 degC and rated speed. */
export const flowLoss = (plant: Plant, pump: Pump, offset: number, slipFactor: number): number => {
  const mu = viscosityOf(plant, REFERENCE_OIL)
  const speed = plant.engine.ratedSpeed
  const flow = (pressure: number) => pumpFlow(pump.displacement, speed, offset, pump.slip, slipFactor, pressure, mu)
  const low = flow(WORN_LOSS.low)
  return low > 0 ? (low - flow(WORN_LOSS.high)) / low : 1
}
