/** The machine as the oil's bound looks at it: what is still open, or may be changed, takes no pressure. */
import type { Cooler, Line, Machine } from '../machine.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { metresFromMm } from '../units/shop-units.ts'
import type { Covered } from './level-bound.ts'

/** Wide enough to take nothing. */
const WIDE = metresFromMm(lineSizes.at(-1)?.boreMm ?? 50) * 2
const wide = (line: Line | null): Line | null => (line === null ? null : { ...line, bore: WIDE })

/**
 * What is held keeps its drop.
 * @param machine with what carries the flow as it is held
 * @param covered the lines and valves that are held
 */
export const withHeld = (machine: Machine, cooler: Cooler | null, { lines, valves }: Covered): Machine => {
  const kept = (line: Line | null): Line | null => (line !== null && lines.has(line.id) ? line : wide(line))
  return {
    ...machine,
    filter: null,
    cooler: cooler === null ? null : { ...cooler, drop: null },
    circuits: machine.circuits.map((circuit) => ({
      ...circuit,
      valve:
        circuit.valve === null || valves.has(circuit.name) ? circuit.valve : { ...circuit.valve, restriction: null },
      lines: {
        suction: wide(circuit.lines.suction),
        pressure: kept(circuit.lines.pressure),
        return: kept(circuit.lines.return),
      },
      auxiliary:
        circuit.auxiliary === null
          ? null
          : { out: kept(circuit.auxiliary.out), back: kept(circuit.auxiliary.back), coupler: null },
    })),
  }
}

const NOTHING_HELD: Covered = { lines: new Set(), valves: new Set() }

/** Nothing on the way takes any pressure. */
export const withoutDrops = (machine: Machine, cooler: Cooler | null): Machine => {
  const { travel } = machine
  const lines = travel.lines.map((line) => wide(line) as Line)
  return withHeld({ ...machine, travel: { ...travel, swivel: null, lines } }, cooler, NOTHING_HELD)
}
