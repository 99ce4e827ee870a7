/** Ports of a component that is fitted, what is screwed into each, and what it must bear. */
import { drivingPressure, type LinePlace, linePlaces, workingPressure } from '../consequences/line-places.ts'
import { pumps, tandems } from '../consequences/stock.ts'
import type { Circuit, Connection, Machine, Mount } from '../machine.ts'
import type { Shop } from '../shop.ts'
import type { Pascals } from '../units/si.ts'
import type { Joint, JointPlace } from '../work-order.ts'
import { jointOf } from './joints.ts'

export interface Fitted {
  readonly joints: readonly Joint[]
  readonly maxPressure: Pascals | null
  readonly workingPressure: Pascals | null
  readonly mount: string | null
}

const NOTHING: Fitted = { joints: [], maxPressure: null, workingPressure: null, mount: null }

const mountWords = ({ flange, shaft, rotation }: Pick<Mount, 'flange' | 'shaft'> & { rotation: string | null }) => {
  const words = [flange, shaft, rotation].filter((word) => word !== null)
  return words.length === 0 ? null : words.join(', ')
}

/** Line that is screwed into a port of a component. */
const lineAt = (places: readonly LinePlace[], owner: string, name: string): string | null =>
  places.find(({ ports }) => ports.some((port) => port?.owner === owner && port.name === name))?.line.id ?? null

/** Circuits that one pump feeds: a tandem is one part with a section in each. */
const fedBy = (circuit: Circuit, machine: Machine): readonly Circuit[] =>
  circuit.pump.section === null
    ? [circuit]
    : machine.circuits
        .filter(({ pump }) => pump.section !== null && pump.part === circuit.pump.part)
        .toSorted((one, other) => (one.pump.section ?? 0) - (other.pump.section ?? 0))

type PortFigures = { readonly inlet: Connection | null; readonly outlet: Connection | null }

/** Ports of the part itself where it is on the list: it may take the place of one with other ports. */
const listedPorts = (part: string | null, section: number | null, shop: Shop): PortFigures | null => {
  if (section === null) return pumps(shop).find((one) => one.part.id === part)?.figures ?? null
  return tandems(shop).find((one) => one.part.id === part)?.figures.sections[section - 1] ?? null
}

const pumpFitted = (circuit: Circuit, machine: Machine, part: string | null, shop: Shop): Fitted => {
  const places = linePlaces(machine)
  const fed = fedBy(circuit, machine)
  const joints = fed.flatMap((one) => {
    const owner = `circuits.${one.name}.pump`
    const ports = listedPorts(part, one.pump.section, shop) ?? one.pump.ports
    return (['inlet', 'outlet'] as const).flatMap((name) => {
      const line = lineAt(places, owner, name) ?? (name === 'inlet' ? (one.lines.suction?.id ?? null) : null)
      // Sections that share a suction line have one inlet between them.
      return name === 'inlet' && one.suctionSharedWith !== null ? [] : [jointOf(name, ports[name], line)]
    })
  })
  const ratings = fed.map(({ pump }) => pump.maxPressure).filter((rating) => rating !== null)
  return {
    joints,
    maxPressure: ratings.length === 0 ? null : Math.min(...ratings),
    workingPressure: Math.max(...fed.map(workingPressure)),
    mount: mountWords(circuit.pump.mount),
  }
}

const portsFitted = (
  owner: string,
  ports: { readonly [name in JointPlace]?: Connection | null },
  machine: Machine,
): readonly Joint[] => {
  const places = linePlaces(machine)
  return (Object.entries(ports) as [JointPlace, Connection | null][]).map(([name, connection]) =>
    jointOf(name, connection, lineAt(places, owner, name)),
  )
}

/**
 * @param component id of what is fitted
 * @param part on the list that takes the place; null: to order
 * @param machine with the change
 */
export const fittedAt = (component: string, part: string | null, machine: Machine, shop: Shop): Fitted => {
  const { motor, swivel } = machine.travel
  if (component === 'travel.motor')
    return {
      joints: portsFitted(component, motor.ports, machine),
      maxPressure: motor.maxPressure,
      workingPressure: drivingPressure(machine),
      mount: mountWords(motor.mount),
    }
  if (component === 'travel.swivel')
    return swivel === null
      ? NOTHING
      : {
          ...NOTHING,
          joints: portsFitted(component, swivel.ports, machine),
          maxPressure: swivel.maxPressure,
          workingPressure: drivingPressure(machine),
        }
  if (component === 'cooler') return { ...NOTHING, maxPressure: machine.cooler?.maxPressure ?? null }
  const circuit = machine.circuits.find(({ name }) => component.startsWith(`circuits.${name}.`))
  if (circuit === undefined) return NOTHING
  const rest = component.slice(`circuits.${circuit.name}.`.length)
  if (rest === 'pump') return pumpFitted(circuit, machine, part, shop)
  if (rest === 'valve' && circuit.valve !== null)
    return {
      ...NOTHING,
      joints: portsFitted(component, circuit.valve.ports, machine),
      maxPressure: circuit.valve.maxPressure,
      workingPressure: workingPressure(circuit),
    }
  return rest === 'relief' ? { ...NOTHING, workingPressure: workingPressure(circuit) } : NOTHING
}
