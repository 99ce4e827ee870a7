/** What a pump must bear where it is put; nothing asks for another one then, but for ports and shaft torque. */
import { atLeastStated } from '../consequences/choose.ts'
import { workingPressure } from '../consequences/line-places.ts'
import type { Circuit, Pump } from '../machine.ts'
import type { RevsPerSecond } from '../units/si.ts'

/** It turns the right way, as far as anybody has read it. */
export const turns = (pumps: readonly Pump[], circuits: readonly Circuit[]): boolean =>
  pumps.every(({ mount: { rotation: now } }, i) => {
    const there = circuits[i]?.pump.mount.rotation ?? null
    return now === null || there === null || now === 'both' || there === 'both' || now === there
  })

/**
 * It turns the right way, and bears pressure and speed, where they are stated.
 * @param circuits that it is put into, as they are on the machine
 * @param highIdle the fastest that the engine turns
 */
export const suits = (pumps: readonly Pump[], circuits: readonly Circuit[], highIdle: RevsPerSecond): boolean =>
  turns(pumps, circuits) &&
  pumps.every((pump, i) => {
    const circuit = circuits[i]
    if (circuit === undefined) return true
    return (
      (pump.maxPressure === null || atLeastStated(pump.maxPressure, workingPressure(circuit))) &&
      (pump.maxSpeed === null || atLeastStated(pump.maxSpeed, highIdle))
    )
  })

/**
 * Where the pump that is there does not bear what it must, that is found already, and asks for nothing: then another may bear as
 * little. How little is left to the evaluation.
 */
export const maySuit = (pumps: readonly Pump[], circuits: readonly Circuit[], highIdle: RevsPerSecond): boolean => {
  const present = circuits.map(({ pump }) => pump)
  return suits(pumps, circuits, highIdle) || (turns(pumps, circuits) && !suits(present, circuits, highIdle))
}
