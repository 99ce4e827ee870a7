/**
 * Whether a pump can take the place of the one that was there, and what joins it. As the checks and remedies judge it: a
 * length that is over the room stops; another flange or shaft needs a plate, a hub or a coupling of the list, or an adapter to
 * order; the wrong rotation, too little pressure or speed need another pump of the same size, from the list or to order.
 */
import { couplingFor, plateBetween } from '../consequences/mount-remedy.ts'
import { sameText } from '../consequences/pump-remedies.ts'
import type { Circuit, Pump } from '../machine.ts'
import type { Ground, Known } from './drive.ts'
import { IMPOSSIBLE, leastOf, NOTHING, type Prices, plus, type Sum } from './sums.ts'

const HAIR = 1e-6

/** Circuits of a pump place as they are on the machine. */
export const circuitsOf = (ground: Ground, known: Known): readonly Circuit[] =>
  known.place.circuits.flatMap((name) => ground.plant.machine.circuits.find((one) => one.name === name) ?? [])

/** It goes in; where the present one is too long already, how much longer another may be is left to the evaluation. */
export const hasRoom = (pumps: readonly Pump[], circuits: readonly Circuit[]): boolean =>
  pumps.every(({ mount: { length } }, i) => {
    const room = circuits[i]?.room?.length ?? null
    const present = circuits[i]?.pump.mount.length ?? null
    const isThere = room !== null && present !== null && present > room
    return length === null || room === null || isThere || length <= room * (1 + HAIR)
  })

/**
 * What joins flange and shaft at least; IMPOSSIBLE where nothing does. A coupling bored for the shaft adds nothing here: it
 * may be the one that the torque asks for.
 */
export const joinedBy = (ground: Ground, pumps: readonly Pump[], circuits: readonly Circuit[], prices: Prices): Sum => {
  const { shop } = ground.question.loaded
  const [pump, circuit] = [pumps[0], circuits[0]]
  if (pump === undefined || circuit === undefined) return NOTHING
  const joints = (['flange', 'shaft'] as const).map((what): Sum => {
    const [now, there] = [pump.mount[what], circuit.pump.mount[what]]
    if (now === null || there === null || sameText(now, there)) return NOTHING
    const plate = plateBetween(now, there, shop)
    if (plate !== null) return prices.part(plate, 1)
    if (what === 'shaft' && couplingFor(now, circuit, shop) !== null) return NOTHING
    return leastOf([prices.order('adapter', 1), IMPOSSIBLE])
  })
  return joints.reduce(plus, NOTHING)
}
