/** The machine with the ports of a part that was just chosen, so that hoses are made for what will be there. */
import type { Circuit, Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { motors, pumps, swivels, tandems, valves } from './stock.ts'
import type { Remedy } from './uses.ts'

const withValve = (circuit: Circuit, id: string, shop: Shop): Circuit => {
  const figures = valves(shop).find(({ part }) => part.id === id)?.figures
  if (figures === undefined || circuit.valve === null) return circuit
  const { inlet, outlet, work } = figures
  return { ...circuit, valve: { ...circuit.valve, ports: { inlet, outlet, work } } }
}

const withPump = (circuit: Circuit, id: string, section: number | null, shop: Shop): Circuit => {
  const single = pumps(shop).find(({ part }) => part.id === id)?.figures
  const tandem = tandems(shop).find(({ part }) => part.id === id)?.figures
  const figures = single ?? tandem?.sections[(section ?? 1) - 1]
  if (figures === undefined) return circuit
  return { ...circuit, pump: { ...circuit.pump, ports: { inlet: figures.inlet, outlet: figures.outlet } } }
}

/**
 * Ports only: nothing else of the part is read here, the evaluator builds the machine with the patch.
 * @returns the same machine where the remedy changes no port that is known
 */
export const withPortsOf = (machine: Machine, { consequence, patch }: Remedy, shop: Shop): Machine => {
  const { component, kind, part } = consequence
  if (part === null || patch === null) return machine
  const { travel } = machine
  if (kind === 'swivel' && travel.swivel !== null) {
    const work = swivels(shop).find((one) => one.part.id === part)?.figures.work ?? null
    return { ...machine, travel: { ...travel, swivel: { ...travel.swivel, ports: { work } } } }
  }
  if (kind === 'motor') {
    const work = motors(shop).find((one) => one.part.id === part)?.figures.work ?? null
    return { ...machine, travel: { ...travel, motor: { ...travel.motor, ports: { work } } } }
  }
  const circuits = machine.circuits.map((circuit) => {
    const own = component === `circuits.${circuit.name}.${kind === 'valve' ? 'valve' : 'pump'}`
    if (kind === 'valve') return own ? withValve(circuit, part, shop) : circuit
    if (kind === 'pump') return own ? withPump(circuit, part, null, shop) : circuit
    if (kind !== 'tandem pump') return circuit
    const first = machine.circuits.find(({ name }) => component === `circuits.${name}.pump`)
    const sameShaft = first !== undefined && circuit.pump.section !== null && circuit.pump.part === first.pump.part
    return sameShaft ? withPump(circuit, part, circuit.pump.section, shop) : circuit
  })
  return { ...machine, circuits }
}
