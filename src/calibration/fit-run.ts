/** A timed run fits the pump (alone) or the speed factor (beside metered flows). */
import type { Conditions, Plant } from '../circuit/plant.ts'
import { preparePlant } from '../circuit/plant.ts'
import { rootBetween } from '../circuit/root.ts'
import { solveLevel, type TravelState } from '../circuit/travel-point.ts'
import type { Machine } from '../machine.ts'
import type { MetresPerSecond, RevsPerSecond } from '../units/si.ts'
import { OFFSET_BOUND, SLIP_BOUNDS, SPEED_FACTOR_BOUNDS } from './bounds.ts'
import type { SlipFit } from './fit-flows.ts'

/** Every driving pump with this offset and slip factor. */
const withPumps = (machine: Machine, offset: number, slipFactor: number): Machine => ({
  ...machine,
  circuits: machine.circuits.map((circuit) =>
    circuit.drives === 'no track' ? circuit : { ...circuit, pump: { ...circuit.pump, flowOffset: offset, slipFactor } },
  ),
})

/** Level speed with such pumps, at the run's oil and engine speed. */
const runSpeed = (
  plant: Plant,
  offset: number,
  slipFactor: number,
  at: Conditions,
  engineSpeed: RevsPerSecond | null,
): MetresPerSecond =>
  solveLevel(preparePlant(withPumps(plant.machine, offset, slipFactor), plant.site), at, engineSpeed).speed

/**
 * A timed run alone. The pump's capacity gives or takes up to the bound of its offset, which is what the readings together
 * cannot tell apart; only what is left beyond fits the slip factor.
 * @param measured speed of the run [m/s]
 */
export const fitRun = (
  plant: Plant,
  measured: MetresPerSecond,
  at: Conditions,
  engineSpeed: RevsPerSecond | null,
): SlipFit => {
  const excess = (offset: number, slipFactor: number) => runSpeed(plant, offset, slipFactor, at, engineSpeed) - measured
  const least = excess(OFFSET_BOUND, 1)
  const most = excess(-OFFSET_BOUND, 1)
  if (least <= 0 && most >= 0) {
    const offset = rootBetween((e) => excess(e, 1), -OFFSET_BOUND, OFFSET_BOUND, most, least)
    return { offset, slipFactor: 1, disagrees: false, otherPump: false }
  }
  const slow = least > 0
  const offset = slow ? OFFSET_BOUND : -OFFSET_BOUND
  const bound = slow ? SLIP_BOUNDS.most : SLIP_BOUNDS.least
  const atBound = excess(offset, bound)
  if (slow ? atBound > 0 : atBound < 0) return { offset, slipFactor: bound, disagrees: true, otherPump: false }
  const slipFactor = rootBetween((w) => excess(offset, w), 1, bound, slow ? least : most, atBound)
  return { offset, slipFactor, disagrees: false, otherPump: false }
}

export interface SpeedFit {
  readonly speedFactor: number
  readonly disagrees: boolean
}

/** A run beside metered flows: the pump is known, the rest of the difference lies behind it. */
export const fitSpeedFactor = (predicted: TravelState, measured: MetresPerSecond): SpeedFit => {
  const { least, most } = SPEED_FACTOR_BOUNDS
  const factor = predicted.speed > 0 ? measured / predicted.speed : Number.POSITIVE_INFINITY
  return { speedFactor: Math.min(most, Math.max(least, factor)), disagrees: !(factor >= least && factor <= most) }
}
