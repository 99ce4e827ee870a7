/**
 * The oil's heat balance: what a duty puts into it and what leaves, at one oil temperature; the temperature at which it
 * settles; and the day's curve from ambient (method: "Heat").
 */
import { densityAt, specificHeatAt } from '../formulas/fluid.ts'
import { coolerHeat, surfaceHeat } from '../formulas/thermal.ts'
import type { Machine } from '../machine.ts'
import { NO_BALANCE_ABOVE } from '../tables/oil-risk.ts'
import type { Celsius, JoulesPerKelvin, Seconds, Watts } from '../units/si.ts'
import { type ModePower, modePower, modesOf, type Work } from './duty.ts'
import { conditionsAt, type Plant } from './plant.ts'
import { rootBetween } from './root.ts'

/** Specific heat of steel [J/kgK] (method). */
const STEEL_HEAT = 480
/** Nodes [K] at which the heat of the modes is worked out for the curve; between them it is smooth: 2 K and 8 K give times to 70 °C that differ by a twentieth of a second. */
export const NODE_STEP = 8
/** Nodes [K] around a kink: where an engine begins to lug or stall, a relief closes, a suction lets everything through. */
const KINK_STEP = 1

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

const sameRegime = (one: HeatAt, other: HeatAt): boolean =>
  one.modes.every(({ regime }, mode) => regime === other.modes[mode]?.regime)

/**
 * Table of the duty's heat over oil temperature, worked out node by node as far as asked, closer where the nodes around do
 * not work in the same way. Independent of the cooling factor, so that calibration reads it again and again.
 */
export class HeatTable {
  readonly #plant: Plant
  readonly #work: Work
  readonly #nodes = new Map<number, HeatAt>()
  #closer: HeatTable | null = null
  readonly start: Celsius
  readonly #step: number

  constructor(plant: Plant, work: Work, start: Celsius, step: number = NODE_STEP) {
    this.#step = step
    this.#plant = plant
    this.#work = work
    this.start = start
  }

  temperatureOf(node: number): Celsius {
    return this.start + node * this.#step
  }

  node(index: number): HeatAt {
    const known = this.#nodes.get(index)
    if (known !== undefined) return known
    const made = heatAt(this.#plant, this.#work, this.temperatureOf(index))
    this.#nodes.set(index, made)
    return made
  }

  /** Cubic through the four nodes around (Catmull-Rom), third order in the node step. */
  between(oil: Celsius): { readonly heat: Watts; readonly coolerShare: number } {
    const place = Math.max(0, (oil - this.start) / this.#step)
    const index = Math.floor(place)
    const u = place - index
    const before = this.node(Math.max(0, index - 1))
    const left = this.node(index)
    const right = this.node(index + 1)
    const after = this.node(index + 2)
    const kinked = !(sameRegime(before, left) && sameRegime(left, right) && sameRegime(right, after))
    if (kinked && this.#step > KINK_STEP) {
      this.#closer ??= new HeatTable(this.#plant, this.#work, this.start, KINK_STEP)
      return this.#closer.between(oil)
    }
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
 * @param enough surplus of heat that counts as none [W]; 0 goes to the last bit
 * @returns temperature [degC]; null where there is no balance below 150 degC
 */
export const settledOil = (plant: Plant, work: Work, table: HeatTable, enough: Watts = 0): Celsius | null => {
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
      const settled = rootBetween(surplus, low, high, atLow, atHigh, enough)
      return settled <= NO_BALANCE_ABOVE ? settled : null
    }
    low = high
    atLow = atHigh
  }
  return null
}

/** The day's curve. */
export interface WarmUp {
  readonly curve: readonly (readonly [number, number])[]
  /** Minutes until the oil reaches a temperature; null within eight hours. */
  readonly minutesTo: (oil: Celsius) => number | null
}

const HOURS = 8
/** Minutes between two points of the curve, and the longest step of the integration. */
const STEP = 5

type Rate = (oil: Celsius) => number

/** One step of the classical fourth-order Runge-Kutta method, never above the end of what can be an answer. */
const after = (rate: Rate, oil: Celsius, seconds: Seconds): Celsius => {
  const a = rate(oil)
  const b = rate(oil + (seconds / 2) * a)
  const c = rate(oil + (seconds / 2) * b)
  const d = rate(oil + seconds * c)
  return Math.min(NO_BALANCE_ABOVE, oil + (seconds / 6) * (a + 2 * b + 2 * c + d))
}

/** Temperature rise a second at an oil temperature. */
const warmingRate =
  (machine: Machine, ambient: Celsius, table: HeatTable): Rate =>
  (oil) => {
    const at = table.between(Math.min(oil, NO_BALANCE_ABOVE))
    return (at.heat - heatOut(machine, ambient, oil, at.coolerShare)) / heatStored(machine, oil)
  }

/** Oil temperature after a time from ambient, the surfaces as the machine says. */
export const oilAfter = (machine: Machine, ambient: Celsius, table: HeatTable, seconds: Seconds): Celsius => {
  const rate = warmingRate(machine, ambient, table)
  const steps = Math.max(1, Math.ceil(seconds / (STEP * 60)))
  let oil = ambient
  for (let step = 0; step < steps; step++) oil = after(rate, oil, seconds / steps)
  return oil
}

/** Where in a step the oil passes a temperature: the cubic through both ends with their slopes. */
const passedAt = (from: Celsius, to: Celsius, rise: number, riseAfter: number, oil: Celsius): number => {
  const along = (u: number) => {
    const v = 1 - u
    return from * (1 + 2 * u) * v * v + to * u * u * (3 - 2 * u) + rise * u * v * v - riseAfter * u * u * v - oil
  }
  return rootBetween(along, 0, 1, from - oil, to - oil)
}

/** The curve from ambient over eight hours, a point every five minutes. */
export const warmUp = (machine: Machine, ambient: Celsius, table: HeatTable): WarmUp => {
  const rate = warmingRate(machine, ambient, table)
  const points: [number, number][] = [[0, ambient]]
  for (let oil = ambient, minute = STEP; minute <= HOURS * 60; minute += STEP) {
    oil = after(rate, oil, STEP * 60)
    points.push([minute, oil])
  }
  return {
    curve: points,
    minutesTo: (oil) => {
      const next = points.findIndex(([, reached]) => reached >= oil)
      if (next < 0) return null
      if (next === 0) return 0
      const [minute, from] = points[next - 1] as [number, number]
      const [, to] = points[next] as [number, number]
      const slope = (reached: Celsius) => rate(reached) * STEP * 60
      return minute + STEP * passedAt(from, to, slope(from), slope(to), oil)
    },
  }
}
