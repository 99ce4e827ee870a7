/**
 * The coolest that the oil can settle with some drive and some cooler, whatever else is chosen: the heat balance of the duty
 * with every drop between pump and motors left out.
 *
 * What a drop takes becomes heat, in the travel mode and in neutral; digging and the open relief are held at pressures that no
 * line changes. Without the drops the engine may turn a little faster, by less than its droop times the share of torque that
 * they take, which moves the balance by tenths of a kelvin: MARGIN is taken off for it. (An estimate, tried on random lists;
 * the travel bound is proved.)
 *
 * A cooler that was chosen stays. Where none was, a consequence may still bring one: the price of a cooler is then counted
 * (tree.ts), and the air is the bound.
 */
import type { Work } from '../circuit/duty.ts'
import { HeatTable, settledOil } from '../circuit/oil-heat.ts'
import { preparePlant } from '../circuit/plant.ts'
import type { Cooler, Line, Machine, Site } from '../machine.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { metresFromMm } from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'

const MARGIN = 1

/** Wide enough to take nothing. */
const WIDE = metresFromMm(lineSizes.at(-1)?.boreMm ?? 50) * 2
const wide = (line: Line | null): Line | null => (line === null ? null : { ...line, bore: WIDE })

const withoutDrops = (machine: Machine, cooler: Cooler | null): Machine => ({
  ...machine,
  filter: null,
  cooler: cooler === null ? null : { ...cooler, drop: null },
  circuits: machine.circuits.map((circuit) => ({
    ...circuit,
    valve: circuit.valve === null ? null : { ...circuit.valve, restriction: null },
    lines: {
      suction: wide(circuit.lines.suction),
      pressure: wide(circuit.lines.pressure),
      return: wide(circuit.lines.return),
    },
    auxiliary:
      circuit.auxiliary === null
        ? null
        : { out: wide(circuit.auxiliary.out), back: wide(circuit.auxiliary.back), coupler: null },
  })),
  travel: { ...machine.travel, swivel: null, lines: machine.travel.lines.map((line) => wide(line) as Line) },
})

/**
 * @param machine with pumps, motors, sprocket and oil as chosen
 * @param cooler as chosen; null: none
 * @returns [degC]; Infinity where nothing settles
 */
export const coolest = (machine: Machine, cooler: Cooler | null, site: Site, work: Work): Celsius => {
  const plant = preparePlant(withoutDrops(machine, cooler), site)
  const settled = settledOil(plant, work, new HeatTable(plant, work, site.ambient))
  return settled === null ? Number.POSITIVE_INFINITY : Math.max(site.ambient, settled - MARGIN)
}
