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
const addLine = (
  way: SolvedWay,
  line: Pick<Line, 'bore' | 'length' | 'elbows'> | null,
  oil: Oil,
  share: number,
  times: number,
): void => {
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

/** From the strainer to the pump; null where no suction line is described. */
export const suctionWay = (circuit: Circuit, oil: Oil): SolvedWay | null => {
  if (circuit.lines.suction === null) return null
  const way = empty()
  addLine(way, circuit.lines.suction, oil, 1, 1)
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

/** A step that gains less than this share of the flow is rounding: the flow is found. */
const FOUND = 4e-16
/** Newton steps; from the right of a convex curve a handful suffices, the rest is for ways that are all but closed. */
const MOST_STEPS = 100

/**
 * Root of  own Q + perPressure (base + D(Q)) = most  by Newton steps from the right. D rises and is convex (sums and larger
 * ones of rising convex powers), so from a flow that is too much the steps fall towards the one root and never pass it.
 * @param start [m3/s] a flow at which the left side is at least `most`; where it is less, it is returned
 */
const fallTo = (
  way: SolvedWay,
  start: CubicMetresPerSecond,
  own: number,
  perPressure: number,
  base: Pascals,
  most: number,
): CubicMetresPerSecond => {
  const { linear, square, friction } = way
  let flow = start
  for (let step = 0; step < MOST_STEPS && flow > 0; step++) {
    const root = Math.sqrt(flow)
    const steep = root * Math.sqrt(root)
    const power = flow * steep
    let drop = (linear + square * flow) * flow
    let slope = linear + 2 * square * flow
    for (let i = 0; i < friction.length; i += 2) {
      const laminar = (friction[i] as number) * flow
      const turbulent = (friction[i + 1] as number) * power
      if (laminar > turbulent) {
        drop += laminar
        slope += friction[i] as number
      } else {
        drop += turbulent
        slope += 1.75 * (friction[i + 1] as number) * steep
      }
    }
    const next = flow - (own * flow + perPressure * (base + drop) - most) / (own + perPressure * slope)
    if (!(next < flow * (1 - FOUND))) return flow
    flow = Math.max(0, next)
  }
  return flow
}

/**
 * Flow of a source that gives `most` less `perPressure` for each pascal, against a base pressure and its own drop:
 * Q = most - perPressure (base + D(Q)). Of a pump: most = (1 - e) V n, perPressure = w k / mu. The bracket is
 * [0, most - perPressure base].
 * @param most [m3/s], perPressure [m3/(s.Pa)], base [Pa]
 * @returns flow [m3/s]; 0 where the base alone takes everything
 */
export const flowAgainst = (
  way: SolvedWay,
  most: CubicMetresPerSecond,
  perPressure: number,
  base: Pascals,
): CubicMetresPerSecond => fallTo(way, Math.max(0, most - perPressure * base), 1, perPressure, base, most)

/**
 * Flow that a pressure pushes along a way: D(Q) = pressure.
 * @param pressure [Pa]; 0 and less push nothing
 * @param enough flow [m3/s] at which the way asks for at least that pressure; where it asks for less, it is returned
 */
export const flowUnder = (way: SolvedWay, pressure: Pascals, enough: CubicMetresPerSecond): CubicMetresPerSecond =>
  pressure > 0 ? fallTo(way, enough, 0, 1, -pressure, 0) : 0

/** One way behind the other. */
export const joined = (way: SolvedWay, next: SolvedWay): SolvedWay => ({
  linear: way.linear + next.linear,
  square: way.square + next.square,
  friction: [...way.friction, ...next.friction],
})

/** A way, and the same with the return line behind it. */
export interface Ways {
  readonly way: SolvedWay
  readonly whole: SolvedWay
}

/** The ways of one circuit at one temperature. */
export interface CircuitWays {
  readonly neutral: Ways
  readonly back: SolvedWay
  tool: Ways | null
  /** By the number of motors fed. */
  readonly driving: Map<number, Ways>
}

export const withReturn = (way: SolvedWay, back: SolvedWay): Ways => ({ way, whole: joined(way, back) })

export const waysOf = (circuit: Circuit, oil: Oil): CircuitWays => {
  const back = returnWay(circuit, oil)
  return { neutral: withReturn(neutralWay(circuit, oil), back), back, tool: null, driving: new Map() }
}
