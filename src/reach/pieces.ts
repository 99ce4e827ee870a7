/**
 * What each option puts into the machine, in SI: pumps, motors, way of a turn, oil. A machine with several options is put
 * together from these pieces: each option replaces components of its own, and no figure of one depends on another. Beside it
 * the family of an option: what the consequences may put in its place, which is a part of the same size (that is what the
 * remedies of pumps and motors choose).
 */
import { carry } from '../calibration/carried.ts'
import { portTooSmall } from '../consequences/connect.ts'
import { sameSize } from '../consequences/pump-remedies.ts'
import type { Connection, Machine, Motor, Pump } from '../machine.ts'
import { fittingRating } from '../tables/fitting-ratings.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { barFromPascals } from '../units/shop-units.ts'
import type { Pascals } from '../units/si.ts'
import type { Question } from './assess.ts'
import { KEEP } from './candidate.ts'
import type { Place } from './places.ts'

/** One option of a place, resolved. */
export interface Piece {
  /** Index of the option; KEEP for what is there. */
  readonly option: number
  readonly machine: Machine
}

export const piecesOf = ({ loaded, start }: Question, place: Place): readonly Piece[] => [
  { option: KEEP, machine: start.before.machine },
  ...place.options.map(({ patch }, option) => ({
    option,
    machine: carry(loaded.prepare([patch]).resolve().machine, start.carried, start.isRestored),
  })),
]

/** Pumps of the circuits of a place, in the order of its circuits. */
export const pumpsOf = (machine: Machine, circuits: readonly string[]): readonly Pump[] =>
  circuits.flatMap((name) => machine.circuits.find((circuit) => circuit.name === name)?.pump ?? [])

const samePumps = (one: readonly Pump[], other: readonly Pump[]): boolean =>
  one.length === other.length && one.every((pump, i) => sameSize(other[i]?.displacement ?? null, pump.displacement))

/** A hose that is too big for the one port goes into the other. */
const isBigger = (one: Connection | null, other: Connection | null): boolean =>
  one !== null &&
  lineSizes.some(({ dash }) => portTooSmall(one, dash) && (other === null || !portTooSmall(other, dash)))

/**
 * A port whose family and size is not rated for a pressure.
 * @param old an end of unknown age takes the older rating
 */
export const isWeak = (connection: Connection | null, pressure: Pascals, old = false): boolean => {
  const rating = connection === null ? null : fittingRating(connection)
  return rating !== null && barFromPascals(pressure) > (old ? rating.olderBar : rating.bar) * (1 - 1e-6)
}

const isMore = (other: number | null, one: number | null): boolean => one !== null && (other === null || other > one)

/**
 * Pumps that may take the place of others: of one size, and asked for by a finding of the others. Those are pressure and
 * speed (`suited` says that they are in order), shaft torque, the rating of the outlet, and ports for bigger hoses; a remedy
 * takes only what is better in what was asked.
 */
export const pumpsLead = (
  one: readonly Pump[],
  other: readonly Pump[],
  suited: boolean,
  pressures: readonly Pascals[],
): boolean =>
  samePumps(one, other) &&
  one.some((pump, i) => {
    const next = other[i]
    return (
      next !== undefined &&
      (!suited ||
        isMore(next.maxShaftTorque, pump.maxShaftTorque) ||
        isWeak(pump.ports.outlet, pressures[i] ?? 0) ||
        isBigger(pump.ports.inlet, next.ports.inlet) ||
        isBigger(pump.ports.outlet, next.ports.outlet))
    )
  })

/** Motors that may take the place of others, asked for by a rating or a port of theirs. */
export const motorLeads = (one: Motor, other: Motor, pressure: Pascals): boolean =>
  sameMotor(one, other) &&
  (isMore(other.maxPressure, one.maxPressure) ||
    isMore(other.maxFlow, one.maxFlow) ||
    isMore(other.maxSpeed, one.maxSpeed) ||
    isMore(other.maxReturnPressure, one.maxReturnPressure) ||
    isWeak(one.ports.work, pressure) ||
    isBigger(one.ports.work, other.ports.work))

const sameMotor = (one: Motor, other: Motor): boolean =>
  sameSize(other.displacement, one.displacement) &&
  (one.secondDisplacement === null) === (other.secondDisplacement === null) &&
  (one.secondDisplacement === null || sameSize(other.secondDisplacement, one.secondDisplacement))

/**
 * Members of a family by index of the piece, the piece itself first: whatever one remedy after another may come to.
 * @param leads one may be replaced by the other; followed step by step
 */
export const familyOf = <T>(
  all: readonly T[],
  own: number,
  leads: (one: T, other: T) => boolean,
): readonly number[] => {
  const family = [own]
  for (const member of family)
    for (const [i, other] of all.entries()) if (!family.includes(i) && leads(all[member] as T, other)) family.push(i)
  return family
}
