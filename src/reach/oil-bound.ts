/**
 * The coolest that the oil can settle with some drive and some cooler, whatever else is chosen: the heat balance of the duty
 * with every drop between pump and motors left out.
 *
 * What a drop takes is torque of the pump, and all of it becomes heat; digging and the open relief are held at pressures that
 * no line changes. Without the drops the torque falls by dT and the governed engine turns faster, n'/n = 1 + droop dT/T_rated,
 * which the losses L of pump and motors follow with the square of n at most. So what is saved is 2 pi n dT, and what is added
 * no more than 2 droop (dT/T_rated) L <= 2 droop 2 pi n dT (L/P_rated): less than what is saved, as long as the engine is on
 * its governor line, where L <= P_rated, and the droop below a half. More flow through a cooler cools more as well. At every
 * oil temperature the heat is then no more and the cooling no less: the oil settles no hotter.
 *
 * An engine that lugs may gain more speed than that; MARGIN is taken off for it, which is an estimate and not proved.
 *
 * A cooler that was chosen stays. Where none was, a consequence may still bring one: the price of a cooler is then counted,
 * and the air is the bound.
 */
import type { Work } from '../circuit/duty.ts'
import { HeatTable, settledOil } from '../circuit/oil-heat.ts'
import { preparePlant } from '../circuit/plant.ts'
import type { Cooler, Line, Machine, Site } from '../machine.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { metresFromMm } from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, composed, type Ground, machinesOf } from './drive.ts'
import { type Piece, piecesOf } from './pieces.ts'
import { leastOf, NOTHING, type Prices, plus, type Sum } from './sums.ts'

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

export class OilBound {
  private readonly ground: Ground
  private readonly drivingPlaces: number
  private readonly coolers: readonly Piece[]
  private readonly coolerIndex: number
  private readonly known = new Map<string, Celsius>()

  constructor(ground: Ground, drivingPlaces: number) {
    const { question } = ground
    this.ground = ground
    this.drivingPlaces = drivingPlaces
    this.coolerIndex = question.places.findIndex(({ kind }) => kind === 'cooler')
    const place = question.places[this.coolerIndex]
    this.coolers = place === undefined ? [] : piecesOf(question, place).slice(1)
  }

  private coolerIn(choices: Candidate): number | undefined {
    return this.coolerIndex < 0 ? KEEP : choices[this.coolerIndex]
  }

  /** Coolest that the oil can settle; the air where a cooler may still be chosen, or come as a consequence. */
  least(choices: Candidate): Celsius {
    const option = this.coolerIn(choices)
    return option === undefined || option === KEEP
      ? this.ground.question.loaded.scenario.site.ambient
      : this.leastWith(choices, option)
  }

  /** With this cooler; kept is what is there. */
  private leastWith(choices: Candidate, option: number): Celsius {
    const { ground } = this
    const { start, loaded } = ground.question
    const { site } = loaded.scenario
    if (ground.mayStarve || choices.length < this.drivingPlaces) return site.ambient
    const key = `${choices.slice(0, this.drivingPlaces).join()}/${option}`
    const known = this.known.get(key)
    if (known !== undefined) return known
    const own = start.before.machine.cooler
    const cooler = option === KEEP ? own : (this.coolers[option]?.machine.cooler ?? own)
    const { driving, motor, sprocket, oil, other } = ground
    const [pumps = [], motors = [], ways, oils, others = []] = [driving, motor, sprocket, oil, other].map((one) =>
      machinesOf(ground, one, choiceOf(one, choices) ?? KEEP),
    )
    const names = other?.place.circuits ?? []
    const all = pumps.flatMap((pump) =>
      motors.flatMap((gear) =>
        others.map((second) => {
          const base = composed(start.before.machine, pump, gear, oils?.[0], ways?.[0])
          const circuits = base.circuits.map((circuit, i) =>
            names.includes(circuit.name) ? { ...circuit, pump: second.circuits[i]?.pump ?? circuit.pump } : circuit,
          )
          return coolest({ ...base, circuits }, cooler, site, start.work)
        }),
      ),
    )
    const least = Math.min(...all)
    this.known.set(key, least)
    return least
  }

  /** Where the oil is too hot without another cooler, a consequence must bring one: the cheapest of the list, or to order. */
  coolerCost(choices: Candidate, wanted: Celsius, prices: Prices): Sum {
    const isChosen = this.coolerIndex >= 0 && this.coolerIn(choices) !== KEEP
    if (isChosen || this.leastWith(choices, KEEP) <= wanted) return NOTHING
    const parts = this.ground.question.loaded.shop.parts.filter(({ kind }) => kind === 'cooler')
    const any = leastOf([prices.order('cooler', 1), ...parts.map((part) => prices.part(part, 1))])
    return plus(any, prices.job('fit cooler', 1))
  }
}
