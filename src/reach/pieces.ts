/**
 * What each option puts into the machine, in SI: pumps, motors, way of a turn, oil. A machine with several options is put
 * together from these pieces: each option replaces components of its own, and no figure of one depends on another. Beside it
 * the family of an option: what the consequences may put in its place, which is a part of the same size (that is what the
 * remedies of pumps and motors choose).
 */
import { carry } from '../calibration/carried.ts'
import { sameSize } from '../consequences/pump-remedies.ts'
import type { Machine, Motor, Pump } from '../machine.ts'
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

export const samePumps = (one: readonly Pump[], other: readonly Pump[]): boolean =>
  one.every((pump, i) => sameSize(other[i]?.displacement ?? null, pump.displacement))

export const sameMotor = (one: Motor, other: Motor): boolean =>
  sameSize(other.displacement, one.displacement) &&
  (one.secondDisplacement === null) === (other.secondDisplacement === null) &&
  (one.secondDisplacement === null || sameSize(other.secondDisplacement, one.secondDisplacement))

/**
 * Members of a family by index of the piece, the piece itself first: whatever one remedy after another may come to.
 * @param same of one size: not the same twice removed, so the family is closed step by step
 */
export const familyOf = <T>(all: readonly T[], own: number, same: (one: T, other: T) => boolean): readonly number[] => {
  const family = [own]
  for (const member of family)
    for (const [i, other] of all.entries()) if (!family.includes(i) && same(all[member] as T, other)) family.push(i)
  return family
}
