/** The machine as its circuit is drawn: nothing is worked out, only picked and given the shop's units. */
import type { Diagram, DiagramCircuit, DiagramLine } from './diagram.ts'
import type { Circuit, Line, Machine } from './machine.ts'
import {
  barFromPascals,
  cm3FromCubicMetresPerRev,
  litresFromCubicMetres,
  lpmFromCubicMetresPerSecond,
  mmFromMetres,
} from './units/shop-units.ts'

const line = (of: Line | null): DiagramLine | null =>
  of === null ? null : { id: of.id, dash: of.dash, boreMm: mmFromMetres(of.bore) }

const flow = (rated: number | null) => (rated === null ? null : lpmFromCubicMetresPerSecond(rated))

const circuit = (of: Circuit): DiagramCircuit => {
  const id = (part: string) => `circuits.${of.name}.${part}`
  const { auxiliary, coupling, valve } = of
  return {
    name: of.name,
    pump: { id: id('pump'), displacementCm3: cm3FromCubicMetresPerRev(of.pump.displacement) },
    coupling: coupling === null ? null : { id: id('coupling') },
    relief: { id: id('relief'), settingBar: barFromPascals(of.relief.setting) },
    valve: valve === null ? null : { id: id('valve'), ratedFlowLpm: flow(valve.ratedFlow) },
    suction: of.suctionSharedWith === null ? line(of.lines.suction) : null,
    suctionSharedWith: of.suctionSharedWith,
    pressure: line(of.lines.pressure),
    return: line(of.lines.return),
    drives: of.drives,
    works: of.works,
    auxiliary:
      auxiliary === null
        ? null
        : {
            out: line(auxiliary.out),
            back: line(auxiliary.back),
            coupler:
              auxiliary.coupler === null
                ? null
                : { id: id('auxiliary.coupler'), flowLpm: lpmFromCubicMetresPerSecond(auxiliary.coupler.flow) },
          },
  }
}

/**
 * Describes a machine's circuit for drawing.
 * @param machine the machine as it stands, SI
 * @returns the description; ids as findings and consequences name components, figures in cm3/rev, bar, L/min, mm, L, W/K
 */
export const diagramOf = (machine: Machine): Diagram => {
  const { travel, filter, cooler } = machine
  const { motor } = travel
  const second = motor.secondDisplacement
  return {
    engine: { id: 'engine' },
    circuits: machine.circuits.map(circuit),
    travel: {
      running: travel.running,
      motors: travel.motors,
      motor: {
        id: 'travel.motor',
        displacementCm3: cm3FromCubicMetresPerRev(motor.displacement),
        secondDisplacementCm3: second === null ? null : cm3FromCubicMetresPerRev(second),
      },
      block: motor.block === null ? null : { id: 'travel.motor.block' },
      swivel: travel.swivel === null ? null : { id: 'travel.swivel' },
      lines: travel.lines.flatMap((each) => line(each) ?? []),
    },
    filter: filter === null ? null : { id: 'filter', ratedFlowLpm: flow(filter.ratedFlow) },
    cooler: cooler === null ? null : { id: 'cooler', capacityWK: cooler.capacity },
    strainer: machine.strainer === null ? null : { id: 'strainer' },
    reservoir: { id: 'reservoir', volumeL: litresFromCubicMetres(machine.reservoir.volume) },
  }
}
