/** One thread or flange as the technician needs it: standard, thread, seal, look-alikes, how far it is tightened. */
import type { LinePlace } from '../consequences/line-places.ts'
import type { Consequence } from '../evaluation.ts'
import type { Connection } from '../machine.ts'
import type { Part } from '../shop.ts'
import { tighteningOf } from '../tables/assembly-torques.ts'
import { familyStandard, threadOf } from '../tables/connection-standards.ts'
import type { Joint, JointPlace } from '../work-order.ts'

/**
 * @param connection null where nobody has read it: the joint is listed all the same
 * @param into component on the other side
 * @param adapter name of the adapter between, null for none
 */
export const jointOf = (
  place: JointPlace,
  connection: Connection | null,
  into: string | null,
  adapter: string | null = null,
): Joint => {
  if (connection === null)
    return {
      place,
      into,
      connection: null,
      standard: null,
      thread: null,
      seal: null,
      mistakenFor: null,
      adapter,
      tightening: null,
    }
  const family = familyStandard(connection)
  return {
    place,
    into,
    connection: connection.text,
    standard: family?.standard ?? null,
    thread: threadOf(connection),
    seal: family?.seal ?? null,
    mistakenFor: family?.mistakenFor ?? null,
    adapter,
    tightening: tighteningOf(connection),
  }
}

const PLACES = ['first', 'second'] as const

/**
 * Both ends of a hose, in the order of the machine file.
 * @param connections of its consequence, which name the adapters
 */
export const hoseJoints = (
  { line, ports }: LinePlace,
  connections: Consequence['connections'],
  parts: ReadonlyMap<string, Part>,
): readonly Joint[] =>
  PLACES.map((place, side) => {
    const end = line.ends?.[side] ?? null
    const port = ports[side] ?? null
    const joined = connections.find(
      ({ from, to, adapter }) =>
        adapter !== null && from === end?.text && (port === null || to === port.connection.text),
    )
    const adapter = joined?.adapter ?? null
    return jointOf(
      place,
      end ?? port?.connection ?? null,
      port?.owner ?? null,
      adapter === null ? null : (parts.get(adapter)?.name ?? adapter),
    )
  })
