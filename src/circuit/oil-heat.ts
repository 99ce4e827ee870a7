/**
 * The oil's heat balance: what a duty puts into it and what leaves, at one oil temperature; the temperature at which it
 * settles; and the day's curve from ambient (method: "Heat").
 */
import { densityAt, specificHeatAt } from '../formulas/fluid.ts'
import { coolerHeat, surfaceHeat } from '../formulas/thermal.ts'
import type { Machine } from '../machine.ts'
import { NO_BALANCE_ABOVE } from '../tables/oil-risk.ts'
import type { Celsius, JoulesPerKelvin, Watts } from '../units/si.ts'
import { type ModePower, modePower, modesOf, type Work } from './duty.ts'
import { conditionsAt, type Plant } from './plant.ts'
import { rootBetween } from './root.ts'

/** Specific heat of steel [J/kgK] (method). */
const STEEL_HEAT = 480
/** Nodes at which the heat of the modes is worked out for the curve; between them it is smooth. */
const NODE_STEP = 4

export interface HeatAt {
  /** Average over the duty. */
  readonly heat: Watts
  /** Average share of the cooler's capacity that the return flows use: mean of min(1, sqrt(Q/Q_ref)). */
  readonly coolerShare: number
  readonly modes: readonly ModePower[]
}

/** Average heat of the duty at one oil temperature. */
export const heatAt = (plant: Plant, work: Work, oil: Celsius): HeatAt => {
  const at = conditionsAt(plant, oil)
  const { cooler } = plant.machine
  let heat = 0
  let coolerShare = 0
  const modes = modesOf(work.duty).map(([mode, share]) => {
    const power = modePower(plant, work, mode, at)
    heat += share * (power.input - power.useful)
    if (cooler !== null) coolerShare += share * Math.min(1, Math.sqrt(power.returnFlow / cooler.atFlow))
    return power
  })
  return { heat, coolerShare, modes }
}

/** Heat that leaves by reservoir, other surfaces and cooler. */
export const heatOut = (machine: Machine, ambient: Celsius, oil: Celsius, coolerShare: number): Watts => {
  const { reservoir, cooler } = machine
  const surfaces =
    surfaceHeat(reservoir.heatTransfer, reservoir.coolingSurface, oil - ambient) +
    surfaceHeat(machine.otherHeatTransfer, machine.otherCoolingSurface, oil - ambient)
  const core = cooler === null ? 0 : coolerShare * coolerHeat(cooler.capacity, 1, 1, oil, ambient, cooler.airRise)
  return machine.coolingFactor * surfaces + core
}

/** Oil and the steel that warms with it. */
export const heatStored = (machine: Machine, oil: Celsius): JoulesPerKelvin =>
  densityAt(oil) * specificHeatAt(oil) * machine.reservoir.volume + machine.reservoir.steelMass * STEEL_HEAT

/**
 * Table of the duty's heat over oil temperature, worked out node by node as far as asked. Independent of the cooling
 * factor, so that calibration reads it again and again.
 */
export class HeatTable {
  readonly #plant: Plant
  readonly #work: Work
  readonly #nodes: HeatAt[] = []
  readonly start: Celsius

  constructor(plant: Plant, work: Work, start: Celsius) {
    this.#plant = plant
    this.#work = work
    this.start = start
  }

  temperatureOf(node: number): Celsius {
    return this.start + node * NODE_STEP
  }

  node(index: number): HeatAt {
    while (this.#nodes.length <= index)
      this.#nodes.push(heatAt(this.#plant, this.#work, this.temperatureOf(this.#nodes.length)))
    return this.#nodes[index] as HeatAt
  }

  /** Cubic through the four nodes around (Catmull-Rom), third order in the node step. */
  between(oil: Celsius): { readonly heat: Watts; readonly coolerShare: number } {
    const place = Math.max(0, (oil - this.start) / NODE_STEP)
    const index = Math.floor(place)
    const u = place - index
    const before = this.node(Math.max(0, index - 1))
    const left = this.node(index)
    const right = this.node(index + 1)
    const after = this.node(index + 2)
    const first = index === 0
    const cubic = (pick: (h: HeatAt) => number) => {
      const [p1, p2, p3] = [pick(left), pick(right), pick(after)]
      const p0 = first ? 3 * p1 - 3 * p2 + p3 : pick(before)
      return p1 + 0.5 * u * (p2 - p0 + u * (2 * p0 - 5 * p1 + 4 * p2 - p3 + u * (3 * (p1 - p2) + p3 - p0)))
    }
    return { heat: cubic((h) => h.heat), coolerShare: cubic((h) => h.coolerShare) }
  }
}

/**
 * Temperature at which the oil settles when it warms from ambient: the first balance of heat in and heat out on the way
 * up, found between two nodes and refined with the losses at that very temperature.
 * @returns temperature [degC]; null where there is no balance below 150 degC
 */
export const settledOil = (plant: Plant, work: Work, table: HeatTable): Celsius | null => {
  const { machine } = plant
  const { ambient } = plant.site
  const surplusOf = (oil: Celsius, at: HeatAt) => at.heat - heatOut(machine, ambient, oil, at.coolerShare)
  const surplus = (oil: Celsius) => surplusOf(oil, heatAt(plant, work, oil))
  let low = table.start
  let atLow = surplusOf(low, table.node(0))
  if (atLow <= 0) return low
  for (let index = 1; low < NO_BALANCE_ABOVE; index++) {
    const high = table.temperatureOf(index)
    const atHigh = surplusOf(high, table.node(index))
    if (atHigh <= 0) {
      const settled = rootBetween(surplus, low, high, atLow, atHigh)
      return settled <= NO_BALANCE_ABOVE ? settled : null
    }
    low = high
    atLow = atHigh
  }
  return null
}

/** The day's curve, minute by minute inside, reported every five minutes. */
export interface WarmUp {
  readonly curve: readonly (readonly [number, number])[]
  /** Minutes until the oil reaches a temperature; null within eight hours. */
  readonly minutesTo: (oil: Celsius) => number | null
}

const HOURS = 8
const REPORTED_EVERY = 5

/** One minute of the balance by the classical fourth-order Runge-Kutta step. */
const minuteLater = (rate: (oil: Celsius) => number, oil: Celsius): Celsius => {
  const a = rate(oil)
  const b = rate(oil + 30 * a)
  const c = rate(oil + 30 * b)
  const d = rate(oil + 60 * c)
  return oil + 10 * (a + 2 * b + 2 * c + d)
}

/** Temperature rise a second at an oil temperature. */
const warmingRate = (machine: Machine, ambient: Celsius, table: HeatTable) => (oil: Celsius): number => {
  const at = table.between(Math.min(oil, NO_BALANCE_ABOVE))
  return (at.heat - heatOut(machine, ambient, oil, at.coolerShare)) / heatStored(machine, oil)
}

/** Oil temperature after a time from ambient, the surfaces as the machine says. */
export const oilAfter = (machine: Machine, ambient: Celsius, table: HeatTable, seconds: number): Celsius => {
  const rate = warmingRate(machine, ambient, table)
  let oil = ambient
  let left = seconds
  for (; left >= 60; left -= 60) oil = Math.min(NO_BALANCE_ABOVE, minuteLater(rate, oil))
  const next = minuteLater(rate, oil)
  return oil + (left / 60) * (next - oil)
}

export const warmUp = (machine: Machine, ambient: Celsius, table: HeatTable): WarmUp => {
  const rate = warmingRate(machine, ambient, table)
  const minutes: number[] = [ambient]
  for (let minute = 1; minute <= HOURS * 60; minute++)
    minutes.push(Math.min(NO_BALANCE_ABOVE, minuteLater(rate, minutes[minute - 1] as number)))
  return {
    curve: minutes.flatMap((oil, minute) => (minute % REPORTED_EVERY === 0 ? [[minute, oil] as const] : [])),
    minutesTo: (oil) => {
      const after = minutes.findIndex((reached) => reached >= oil)
      if (after < 0) return null
      if (after === 0) return 0
      const before = minutes[after - 1] as number
      return after - 1 + (oil - before) / ((minutes[after] as number) - before)
    },
  }
}
