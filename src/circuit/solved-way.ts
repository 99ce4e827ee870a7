/**
 * The way of the oil through a circuit as powers of its flow, worked out once an oil temperature: what the balances ask
 * for hundreds of times. The components and their drops are those of way.ts; a test holds the two together.
 */
import { lineCoefficients } from '../formulas/line.ts'
import { quadraticDrop } from '../formulas/restriction.ts'
import type { Circuit, Line, Machine, QuadraticRestriction } from '../machine.ts'
import type { CubicMetresPerSecond, Pascals } from '../units/si.ts'
import type { Oil } from './plant.ts'
import { SWIVEL_WAY } from './way.ts'

/** dp = linear Q + square Q^2 + sum of max(laminar Q, turbulent Q^1.75). */
export interface SolvedWay {
  linear: number
  square: number
  /** Pairs of laminar and turbulent, line after line. */
  readonly friction: number[]
}

const empty = (): SolvedWay => ({ linear: 0, square: 0, friction: [] })

/** Adds a line that carries `share` of the circuit's flow, passed `times` times. */
const addLine = (way: SolvedWay, line: Pick<Line, 'bore' | 'length' | 'elbows'> | null, oil: Oil, share: number, times: number): void => {
  if (line === null) return
  const { laminar, turbulent, linear, square } = lineCoefficients(line.bore, line.length, line.elbows, oil.nu, oil.rho)
  way.linear += times * linear * share
  way.square += times * square * share * share
  way.friction.push(times * laminar * share, times * turbulent * share ** 1.75)
}

const addRestriction = (
  way: SolvedWay,
  restriction: QuadraticRestriction | null | undefined,
  oil: Oil,
  share: number,
  times: number,
): void => {
  if (restriction === null || restriction === undefined) return
  way.square += times * quadraticDrop(1, restriction.flow, restriction.drop, oil.rho) * share * share
}

const addSwivel = (way: SolvedWay, { travel }: Machine, oil: Oil, share: number): void => {
  const { swivel } = travel
  if (swivel === null) return
  if (swivel.restriction !== null) addRestriction(way, swivel.restriction, oil, share, 2)
  else if (swivel.bore !== null) addLine(way, { bore: swivel.bore, ...SWIVEL_WAY }, oil, share, 2)
}

/** Pump to tank with the motors between, without return line, filter and cooler. */
export const drivingWay = (machine: Machine, circuit: Circuit, motors: number, oil: Oil): SolvedWay => {
  const way = empty()
  const share = 1 / motors
  addLine(way, circuit.lines.pressure, oil, 1, 1)
  addRestriction(way, circuit.valve?.restriction, oil, 1, 1)
  addRestriction(way, machine.travel.motor.block, oil, share, 1)
  addSwivel(way, machine, oil, share)
  for (const line of machine.travel.lines) addLine(way, line, oil, share, 2)
  return way
}

/** The neutral way: pressure line and half of the valve. */
export const neutralWay = (circuit: Circuit, oil: Oil): SolvedWay => {
  const way = empty()
  addLine(way, circuit.lines.pressure, oil, 1, 1)
  addRestriction(way, circuit.valve?.restriction, oil, 1, 0.5)
  return way
}

/** To the tool and back: valve, auxiliary lines, two couplers of the stated drop each. */
export const toolWay = (circuit: Circuit, oil: Oil): SolvedWay => {
  const way = empty()
  addLine(way, circuit.lines.pressure, oil, 1, 1)
  addRestriction(way, circuit.valve?.restriction, oil, 1, 1)
  addLine(way, circuit.auxiliary?.out ?? null, oil, 1, 1)
  addLine(way, circuit.auxiliary?.back ?? null, oil, 1, 1)
  addRestriction(way, circuit.auxiliary?.coupler, oil, 1, 2)
  return way
}

export const returnWay = (circuit: Circuit, oil: Oil): SolvedWay => {
  const way = empty()
  addLine(way, circuit.lines.return, oil, 1, 1)
  return way
}

/** Drop of a way at the circuit's flow. */
export const dropAlong = (way: SolvedWay, flow: CubicMetresPerSecond): Pascals => {
  if (!(flow > 0)) return 0
  const root = Math.sqrt(flow)
  const power = flow * root * Math.sqrt(root)
  let drop = (way.linear + way.square * flow) * flow
  const { friction } = way
  for (let i = 0; i < friction.length; i += 2)
    drop += Math.max((friction[i] as number) * flow, (friction[i + 1] as number) * power)
  return drop
}

/** The ways of one circuit at one temperature. */
export interface CircuitWays {
  readonly neutral: SolvedWay
  readonly back: SolvedWay
  tool: SolvedWay | null
  /** By the number of motors fed. */
  readonly driving: Map<number, SolvedWay>
}

export const waysOf = (circuit: Circuit, oil: Oil): CircuitWays => ({
  neutral: neutralWay(circuit, oil),
  back: returnWay(circuit, oil),
  tool: null,
  driving: new Map(),
})
