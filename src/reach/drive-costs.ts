/** What the choice of motors, sprocket, pumps and oil costs at least, with the relief and the coupling that it forces. */

import { shiftLineBrings } from '../consequences/companions.ts'
import { metresOf } from '../consequences/line-work.ts'
import { priceOf } from '../consequences/part-price.ts'
import { couplings, reliefs, valves } from '../consequences/stock.ts'
import { hoses } from '../consequences/stock-lines.ts'
import { fillOil } from '../costing/fill-oil.ts'
import { pumpFlow, pumpTorque } from '../formulas/pump.ts'
import type { Circuit, Motor, Pump } from '../machine.ts'
import type { Part } from '../shop.ts'
import { noticeable, serviceFactors } from '../tables/limits.ts'
import { cubicMetresPerSecondFromLpm, litresFromCubicMetres, revsPerSecondFromRpm } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import { KEEP } from './candidate.ts'
import { type Ground, type Known, pieceOf } from './drive.ts'
import type { Needed } from './flows.ts'
import { pumpsOf } from './pieces.ts'
import { bringsCircuit } from './places.ts'
import { circuitsOf, joinedBy } from './pump-fit.ts'
import { maySuit } from './suits.ts'
import { addUp, IMPOSSIBLE, isPossible, leastOf, NOTHING, type Prices, plus, type Sum } from './sums.ts'

const HAIR = 1e-6

/** Parts that a family may end in: those of its options, and what is there where the list has it. */
const partsOf = (ground: Ground, known: Known, option: number, own: string | null): readonly Part[] =>
  (known.families[pieceOf(option)] ?? []).flatMap((i) => {
    const part =
      i === 0 ? ground.question.loaded.shop.parts.find(({ id }) => id === own) : known.place.options[i - 1]?.part
    return part === undefined ? [] : [part]
  })

/** Over its limit before already, and not noticeably more now: it may stay. */
const isThere = (now: number, was: number, limit: number | null): boolean =>
  limit !== null && was > limit && now <= was * (1 + noticeable.value)

/** The motor bears the speed and the flow, or did not bear them before either. */
const takes = (ground: Ground, motor: Motor, { turns, motorFlow }: Needed): boolean => {
  const { before, beforeJudged } = ground.question.start
  const own = before.machine.travel.motor
  const { motorSpeedRpm, motorFlowLpm } = beforeJudged.travel.level
  const speedOk =
    motor.maxSpeed === null ||
    turns <= motor.maxSpeed * (1 + HAIR) ||
    isThere(turns, revsPerSecondFromRpm(motorSpeedRpm), own.maxSpeed)
  const flowOk =
    motor.maxFlow === null ||
    motorFlow <= motor.maxFlow * (1 + HAIR) ||
    isThere(motorFlow, cubicMetresPerSecondFromLpm(motorFlowLpm), own.maxFlow)
  return speedOk && flowOk
}

const shiftLines = new WeakMap<Prices, Sum>()

/** The line that shifts motors, where they get a second displacement. */
const shiftLineCost = ({ question }: Ground, prices: Prices): Sum => {
  const known = shiftLines.get(prices)
  if (known !== undefined) return known
  const { shop } = question.loaded
  const line = shiftLineBrings(question.start.before.machine, shop, [], [])
  const parts = line.uses.map(({ part, quantity }) => {
    const found = shop.parts.find(({ id }) => id === part)
    return found === undefined ? NOTHING : prices.part(found, quantity)
  })
  const jobs = line.jobs.map(({ job: name, quantity }) => prices.job(name, quantity))
  // What shifts them is on no list.
  const sum = addUp([prices.unlisted('fitting', 1), ...parts, ...jobs])
  shiftLines.set(prices, sum)
  return sum
}

export interface MotorCost {
  readonly sum: Sum
  /** Motors are bought, so that sprockets come off with them. */
  readonly bought: boolean
}

/** Motors on every side, with the shift line where they get a second displacement. */
export const motorCost = (ground: Ground, option: number, needed: Needed, prices: Prices): MotorCost => {
  const { motor: known, question } = ground
  const { machine } = question.start.before
  const { motors: count, motor: own } = machine.travel
  if (known === null) return { sum: NOTHING, bought: false }
  const piece = known.pieces[pieceOf(option)]?.machine.travel.motor ?? own
  if (option === KEEP && takes(ground, own, needed)) return { sum: NOTHING, bought: false }
  const job = prices.job('replace motor', count)
  const chosen = known.place.options[option]
  const able = partsOf(ground, known, option, own.part).filter((_, i) => {
    const machine = known.pieces[known.families[pieceOf(option)]?.[i] ?? 0]?.machine
    return machine === undefined || takes(ground, machine.travel.motor, needed)
  })
  const parts = chosen === undefined ? able : takes(ground, piece, needed) ? [chosen.part] : []
  const order = chosen === undefined ? prices.order('motor', count) : IMPOSSIBLE
  const bought = plus(leastOf([order, ...parts.map((part) => prices.part(part, count))]), job)
  const shifts = piece.secondDisplacement !== null && own.secondDisplacement === null
  return { sum: shifts ? plus(bought, shiftLineCost(ground, prices)) : bought, bought: true }
}

/** Sprockets on every side; where motors are changed they come off with them, and where they may be no more is booked. */
export const sprocketCost = (ground: Ground, option: number, motorsBought: boolean, prices: Prices): Sum => {
  const part = ground.sprocket?.place.options[option]?.part
  if (part === undefined) return NOTHING
  const count = ground.question.start.before.machine.travel.motors
  const jobs = motorsBought
    ? NOTHING
    : leastOf([prices.job('replace sprocket', count), prices.job('replace motor', count)])
  return plus(prices.part(part, count), isPossible(jobs) ? jobs : NOTHING)
}

/** A relief that passes what the pump gives at the setting, where the one that is there does not. */
const reliefCost = (ground: Ground, circuit: Circuit, pump: Pump, mu: PascalSeconds, prices: Prices): Sum => {
  const { relief, name } = circuit
  const { plant, question } = ground
  if (relief.ratedFlow === null || ground.mayStarve) return NOTHING
  const speed = plant.engine.ratedSpeed
  const { displacement, flowOffset, slip, slipFactor } = pump
  const flow = pumpFlow(displacement, speed, flowOffset, slip, slipFactor, relief.setting, mu)
  const was = cubicMetresPerSecondFromLpm(question.start.before.more.circuits[name]?.flowAtReliefLpm ?? 0)
  if (flow <= relief.ratedFlow * (1 + HAIR) || isThere(flow, was, relief.ratedFlow)) return NOTHING
  const parts = reliefs(question.loaded.shop)
    .filter(({ figures }) => figures.ratedFlow === null || figures.ratedFlow >= flow * (1 - HAIR))
    .map(({ part }) => prices.part(part, 1))
  return plus(leastOf([prices.order('relief', 1), ...parts]), prices.job('replace relief', 1))
}

/**
 * A coupling that carries the torque of all pumps on its shaft, where the one that is there does not.
 * @param job of changing it
 */
const couplingCost = (
  ground: Ground,
  circuits: readonly Circuit[],
  pumps: readonly Pump[],
  mu: PascalSeconds,
  prices: Prices,
  job = prices.job('replace coupling', 1),
): Sum => {
  const { question, plant } = ground
  if (ground.mayStarve) return NOTHING
  const { cylinders } = plant.machine.engine
  const factor = cylinders <= 3 ? serviceFactors.upToThreeCylinders.value : serviceFactors.fourAndMore.value
  const torque = circuits.reduce((sum, { relief }, i) => {
    const pump = pumps[i]
    if (pump === undefined) return sum
    const { displacement, referenceTorqueLoss, reference } = pump
    const { pressure, speed, viscosity } = reference
    const turns = plant.engine.ratedSpeed
    const at = relief.setting
    return sum + pumpTorque(displacement, at, 1, referenceTorqueLoss, pressure, turns, mu, speed, viscosity)
  }, 0)
  const was = circuits.reduce(
    (sum, { name }) => sum + (question.start.beforeJudged.circuits[name]?.shaftTorqueNm ?? 0),
    0,
  )
  return addUp(
    circuits.map(({ coupling }) => {
      if (coupling === null) return NOTHING
      const fits = torque * factor <= coupling.ratedTorque * (1 + HAIR)
      if (fits || isThere(torque, was, coupling.ratedTorque / factor)) return NOTHING
      const parts = couplings(question.loaded.shop)
        .filter(({ figures }) => figures.ratedTorque === null || figures.ratedTorque >= torque * factor * (1 - HAIR))
        .map(({ part }) => prices.part(part, 1))
      return plus(leastOf([prices.order('coupling', 1), ...parts]), job)
    }),
  )
}

/**
 * Valve, relief and hoses of the circuit that comes with a second pump. A consequence may take others of them, but none that
 * passes less than what the pump gives. That is taken as half of its size at rated speed: an assumption, for an engine that
 * lugs turns at 70 % of it (method) and a new pump keeps more than 5/7 of its flow at the relief setting.
 */
const newCircuitCost = (ground: Ground, circuit: Circuit, prices: Prices): Sum => {
  const { shop } = ground.question.loaded
  const flow = 0.5 * circuit.pump.displacement * ground.plant.machine.engine.ratedSpeed
  const passing = (
    list: readonly { readonly part: Part; readonly figures: { readonly ratedFlow: number | null } }[],
  ): readonly Sum[] =>
    list.flatMap(({ part, figures: { ratedFlow } }) =>
      ratedFlow === null || ratedFlow >= flow ? [prices.part(part, 1)] : [],
    )
  const { lines, auxiliary } = circuit
  const made = [lines.pressure, lines.return, auxiliary?.out ?? null, auxiliary?.back ?? null]
  return addUp([
    leastOf([...passing(valves(shop)), prices.order('valve', 1)]),
    leastOf([...passing(reliefs(shop)), prices.unlisted('relief', 1)]),
    ...made.map((line) => {
      if (line === null) return NOTHING
      const metres = metresOf(line.length, 1)
      return leastOf([...hoses(shop).map(({ part }) => prices.part(part, metres)), prices.unlisted('hose', metres)])
    }),
  ])
}

/**
 * Pumps of a place, with what joins them, and the relief and the coupling that they force.
 * @param mu the thinnest that the oil may be: it leaks most and drags least
 */
export const pumpCost = (
  ground: Ground,
  known: Known | null,
  option: number,
  mu: PascalSeconds,
  prices: Prices,
): Sum => {
  if (known === null || option === KEEP) return NOTHING
  const circuits = circuitsOf(ground, known)
  const tandem = circuits.some(({ pump }) => pump.section !== null)
  const pieces = tandem ? 1 : circuits.length
  const chosen = known.place.options[option]
  // The second pump's job is booked in place of the swap, and holds that of the coupling (contained-jobs.ts).
  const isSecond = bringsCircuit(known.place, option)
  const job = isSecond ? prices.job('fit second pump', 1) : prices.job('replace pump', pieces)
  const pumps = pumpsOf(known.pieces[pieceOf(option)]?.machine ?? ground.plant.machine, known.place.circuits)
  if (chosen === undefined || !maySuit(pumps, circuits, ground.plant.engine.highIdle)) return IMPOSSIBLE
  const added = (known.pieces[pieceOf(option)]?.machine.circuits ?? []).filter(({ name }) => name === chosen.newCircuit)
  const shaft = [...circuits, ...added].map((circuit, i) => ({ ...circuit, pump: pumps[i] ?? circuit.pump }))
  return addUp([
    prices.part(chosen.part, isSecond ? 1 : pieces),
    job,
    joinedBy(ground, pumps, circuits, prices),
    // Couplers are on no list; those that are there change over.
    isSecond && circuits.every(({ auxiliary }) => auxiliary === null) ? prices.unlisted('fitting', 2) : NOTHING,
    ...(isSecond
      ? [
          ...added.map((circuit) => newCircuitCost(ground, circuit, prices)),
          couplingCost(
            ground,
            shaft,
            shaft.map(({ pump }) => pump),
            mu,
            prices,
            NOTHING,
          ),
        ]
      : []),
    ...circuits.map((circuit, i) => {
      const pump = pumps[i]
      return pump === undefined ? NOTHING : reliefCost(ground, circuit, pump, mu, prices)
    }),
    ...(isSecond
      ? []
      : tandem
        ? [couplingCost(ground, circuits, pumps, mu, prices)]
        : circuits.map((circuit, i) => couplingCost(ground, [circuit], pumps.slice(i, i + 1), mu, prices))),
  ])
}

export interface OilCost {
  readonly sum: Sum
  /** For one litre of what is filled in. */
  readonly perLitre: number
}

export const oilCosts = (ground: Ground, prices: Prices): readonly OilCost[] => {
  const { start, loaded } = ground.question
  const { machine } = start.before
  const machines = ground.oil === null ? [machine] : ground.oil.pieces.map((piece) => piece.machine)
  const litres = litresFromCubicMetres(machine.reservoir.volume)
  return machines.map(({ oil }, i) => {
    const filled = fillOil(1, oil, loaded.shop)
    const part = loaded.shop.parts.find(({ id }) => id === filled.part)
    const priced = part !== undefined && priceOf(part, loaded.shop) !== null
    const perLitre = priced ? prices.part(part, 1).money : 0
    const changed = plus(prices.job('change oil', 1), { ...NOTHING, litres })
    return { sum: i === 0 ? NOTHING : changed, perLitre }
  })
}

/** Of the chosen one; nothing while it is open. */
export const oilIn = (oils: readonly OilCost[], option: number | undefined): Sum =>
  (option === undefined ? undefined : oils[pieceOf(option)])?.sum ?? NOTHING

/** Least that a litre costs of what is filled in. */
export const perLitreIn = (oils: readonly OilCost[], option: number | undefined): number =>
  (option === undefined ? undefined : oils[pieceOf(option)])?.perLitre ?? Math.min(...oils.map((one) => one.perLitre))
