/**
 * Least that a candidate costs which begins with some choices: what drives, then what carries the flow, then the oil. Kept by
 * what candidates have in common, for the next one that shares it.
 */
import type { Motor } from '../machine.ts'
import { litresFromCubicMetres } from '../units/shop-units.ts'
import type { Question } from './assess.ts'
import type { Best } from './best.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, type Ground, type Known, machinesOf, pieceOf, thinnest } from './drive.ts'
import { motorCost, type OilCost, oilCosts, pumpCost, sprocketCost } from './drive-costs.ts'
import { basesOf, type Driven } from './driven.ts'
import { type Needed, NO_FLOW, neededFor } from './flows.ts'
import { jointCosts } from './joint-costs.ts'
import { knownIn } from './known-in.ts'
import type { LevelBound } from './level-bound.ts'
import { type Bounder, bounderOf, circulationOf, type PlaceBound } from './line-bounds.ts'
import type { OilBound } from './oil-bound.ts'
import { PriceTable } from './price-table.ts'
import { addUp, type Mode, most, NOTHING, type Prices, plus, pricesOf, type Sum } from './sums.ts'

const MODES: readonly Mode[] = ['any', 'priced', 'in stock']

/** Bounds for one motor and sprocket, where so much is reached: of the places that carry the flow. */
interface Carrying {
  readonly gear: Sum
  /** For each place behind the driving ones. */
  readonly places: readonly PlaceBound[]
}

/** What the prices follow from. */
export interface PriceGround {
  readonly ground: Ground
  readonly best: Best
  readonly level: LevelBound
  readonly oil: OilBound
  /** Places that decide how far a way reaches come first; this many. */
  readonly drivingPlaces: number
  /** All circuits that drive are alike (flows.ts). */
  readonly symmetric: boolean
  /** The level point can be solved for bounds (level-bound.ts). */
  readonly balanced: boolean
}

export class PriceBound {
  private readonly on: PriceGround
  private readonly question: Question
  private readonly prices: { readonly [mode in Mode]: Prices }
  private readonly bounders: { readonly [mode in Mode]: readonly Bounder[] }
  private readonly oils: { readonly [mode in Mode]: readonly OilCost[] }
  private readonly litres: number
  private readonly carrying = new Map<string, Carrying>()
  private readonly pumps = new Map<string, Sum>()
  private readonly joints = new Map<string, ReadonlyMap<string, Sum>>()

  constructor(on: PriceGround) {
    const { ground, drivingPlaces } = on
    const { places, loaded, start } = ground.question
    this.on = on
    this.question = ground.question
    const byMode = <T>(of: (mode: Mode) => T) => ({ any: of('any'), priced: of('priced'), 'in stock': of('in stock') })
    this.prices = byMode((mode) => pricesOf(loaded.shop, mode))
    const circulation = circulationOf(ground.question)
    this.bounders = byMode((mode) =>
      places.slice(drivingPlaces).map((place) => bounderOf(ground.question, place, this.prices[mode], circulation)),
    )
    this.oils = byMode((mode) => oilCosts(ground, this.prices[mode]))
    this.litres = litresFromCubicMetres(start.before.machine.reservoir.volume)
  }

  /**
   * Least that a candidate costs which begins with these choices and reaches a step.
   * @param driven what it shares with others; null while something that drives is open
   * @param isWorkedOut with what really flows, where all that drives is chosen: dearer to work out, and nearer
   */
  lowest(choices: Candidate, driven: Driven | null, step: number, mode: Mode, isWorkedOut: boolean): number {
    const { ground, best, oil } = this.on
    const wanted = this.question.measure === 'oil-temperature' ? best.steps[step] : undefined
    const cooler = wanted === undefined ? NOTHING : oil.coolerCost(choices, driven, -wanted, this.prices[mode])
    const perLitre = this.perLitre(choiceOf(ground.oil, choices), mode)
    const priced = (sum: Sum) => this.prices[mode].total(plus(sum, cooler), perLitre, this.litres)
    if (driven === null) return priced(this.openSum(choices, step, mode))
    const sumIn = (table: PriceTable | null) => table?.sumOf(choices, this.on.drivingPlaces) ?? NOTHING
    const least = priced(sumIn(this.tableFor(driven, step, mode)))
    return isWorkedOut ? Math.max(least, priced(sumIn(this.exactTable(driven, choices, mode)))) : least
  }

  /** While something that drives is open. */
  private openSum(choices: Candidate, step: number, mode: Mode): Sum {
    const { motor, sprocket, oil } = this.on.ground
    const [m, s] = [choiceOf(motor, choices), choiceOf(sprocket, choices)]
    const sum = plus(this.pumpSum(choices, mode), this.oilOf(choiceOf(oil, choices), mode))
    if (m === undefined) return sum
    // Where the sprocket is still open, keeping it costs least; what must flow then is not known.
    const { gear, places } = this.carryingFor(m, s ?? KEEP, s === undefined ? -1 : step, mode)
    return addUp([sum, gear, ...places.map(({ keep }) => keep)])
  }

  /** Least turns and flow of the motors for a step of the travel speed; none where something else is measured. */
  private neededAt(step: number, motors: readonly Motor[], sprocket: number): Needed {
    const { ground, best, symmetric } = this.on
    const { plant } = ground
    const speed = best.steps[step]
    const isTravel = this.question.measure === 'travel-speed'
    if (!isTravel || speed === undefined || ground.motor === null || !symmetric) return NO_FLOW
    const [way = plant.machine.travel.wayPerTurn] = machinesOf(ground, ground.sprocket, sprocket).map(
      ({ travel }) => travel.wayPerTurn,
    )
    const all = motors.map((one) => neededFor(speed, plant.machine, plant.site.ground.slip, one, way))
    return {
      turns: Math.min(...all.map(({ turns }) => turns)),
      motorFlow: Math.min(...all.map(({ motorFlow }) => motorFlow)),
      totalFlow: 0,
    }
  }

  private carryingFor(motor: number, sprocket: number, step: number, mode: Mode): Carrying {
    return knownIn(this.carrying, `${motor} ${sprocket} ${step} ${mode}`, () => {
      const motors = machinesOf(this.on.ground, this.on.ground.motor, motor).map(({ travel }) => travel.motor)
      return this.carryingAt(motor, sprocket, this.neededAt(step, motors, sprocket), mode)
    })
  }

  private carryingAt(motor: number, sprocket: number, needed: Needed, mode: Mode): Carrying {
    const { ground } = this.on
    const prices = this.prices[mode]
    const motors = motorCost(ground, motor, needed, prices)
    const gear = plus(motors.sum, sprocketCost(ground, sprocket, motors.bought, prices))
    return { gear, places: this.bounders[mode].map((bounder) => bounder(needed)) }
  }

  private tableOf({ choices }: Driven, { gear, places }: Carrying, mode: Mode): PriceTable {
    const { driving, other, oil } = this.on.ground
    const joints = [driving, other].map((known) => this.jointsOf(known, choiceOf(known, choices) ?? KEEP, mode))
    const joined = places.map((bound, i): PlaceBound => {
      const lines = this.question.places[this.on.drivingPlaces + i]?.lines ?? []
      const join = lines.flatMap(({ line }) => joints.flatMap((one) => one.get(line.id) ?? []))
      return join.length === 0 ? bound : { ...bound, keep: most(bound.keep, addUp(join)) }
    })
    const filled = this.oilOf(choiceOf(oil, choices), mode)
    return new PriceTable(addUp([this.pumpSum(choices, mode), gear, filled]), joined)
  }

  private jointsOf(pumps: Known | null, option: number, mode: Mode): ReadonlyMap<string, Sum> {
    return knownIn(this.joints, `${pumps?.index} ${option} ${mode}`, () =>
      jointCosts(this.on.ground, option === KEEP ? null : pumps, option, this.prices[mode]),
    )
  }

  /** With what must flow at least for a step. */
  private tableFor(driven: Driven, step: number, mode: Mode): PriceTable {
    return knownIn(driven.tables, MODES.length * (step + 1) + MODES.indexOf(mode), () => {
      const [m, s] = this.gearOf(driven.choices)
      const own = this.keptMotor(driven)
      const carrying =
        own === null ? this.carryingFor(m, s, step, mode) : this.carryingAt(m, s, this.neededAt(step, [own], s), mode)
      return this.tableOf(driven, carrying, mode)
    })
  }

  /** With what flows at least before any consequence; null where that is not worked out. */
  private exactTable(driven: Driven, choices: Candidate, mode: Mode): PriceTable | null {
    const { ground, level, balanced, drivingPlaces } = this.on
    if (!balanced) return null
    const isWhole = choices.length === this.question.places.length
    const code = isWhole ? level.codeOf(choices, drivingPlaces) : 0
    return knownIn(driven.exact, MODES.length * code + MODES.indexOf(mode), () => {
      const [base] = basesOf(ground, driven)
      const asked = base === undefined ? null : level.asked(base, code)
      const [m, s] = this.gearOf(driven.choices)
      return asked === null ? null : this.tableOf(driven, this.carryingAt(m, s, asked, mode), mode)
    })
  }

  /** The motors that are there in the end, whatever carries the flow; null where something may ask for others. */
  private keptMotor(driven: Driven): Motor | null {
    const { ground, level, balanced } = this.on
    const [base] = basesOf(ground, driven)
    const pumps = machinesOf(ground, ground.driving, choiceOf(ground.driving, driven.choices) ?? KEEP)
    const isTold = this.question.measure === 'travel-speed' && balanced && base !== undefined && pumps.length === 1
    return isTold && level.keepsMotors(base, 0) ? base.machine.travel.motor : null
  }

  private gearOf(choices: Candidate): readonly [motor: number, sprocket: number] {
    const { motor, sprocket } = this.on.ground
    return [choiceOf(motor, choices) ?? KEEP, choiceOf(sprocket, choices) ?? KEEP]
  }

  private oilOf(oil: number | undefined, mode: Mode): Sum {
    return (oil === undefined ? undefined : this.oils[mode][pieceOf(oil)])?.sum ?? NOTHING
  }

  /** Least that a litre costs of what is filled in. */
  private perLitre(oil: number | undefined, mode: Mode): number {
    const oils = this.oils[mode]
    const chosen = oil === undefined ? undefined : oils[pieceOf(oil)]
    return chosen?.perLitre ?? Math.min(...oils.map((one) => one.perLitre))
  }

  private pumpSum(choices: Candidate, mode: Mode): Sum {
    const { ground } = this.on
    const oil = choiceOf(ground.oil, choices)
    return addUp(
      [ground.driving, ground.other].flatMap((known) => {
        const option = known === null ? undefined : choices[known.index]
        if (known === null || option === undefined || option === KEEP) return []
        const cost = () => pumpCost(ground, known, option, thinnest(ground, oil), this.prices[mode])
        return [knownIn(this.pumps, `${known.index} ${option} ${oil} ${mode}`, cost)]
      }),
    )
  }
}
