/**
 * Least that a candidate costs which begins with some choices: what drives, then what carries the flow, then the oil. Kept by
 * what candidates have in common, for the next one that shares it.
 */
import type { Motor } from '../machine.ts'
import { litresFromCubicMetres } from '../units/shop-units.ts'
import type { Celsius, CubicMetresPerRev, CubicMetresPerSecond } from '../units/si.ts'
import type { Question } from './assess.ts'
import type { Base } from './base.ts'
import type { Best } from './best.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, type Ground, type Known, machinesOf, thinnest } from './drive.ts'
import { motorCost, oilIn, perLitreIn, pumpCost, sprocketCost } from './drive-costs.ts'
import { basesOf, type Driven } from './driven.ts'
import type { OwnerKind } from './end-costs.ts'
import { type Needed, NO_FLOW, neededFor } from './flows.ts'
import { type Joined, joinedCost, linesById } from './joined-lines.ts'
import { jointCosts } from './joint-costs.ts'
import { knownIn } from './known-in.ts'
import type { LevelBound } from './level-bound.ts'
import type { PlaceBound } from './line-bounds.ts'
import type { OilBound } from './oil-bound.ts'
import type { PriceLists } from './price-lists.ts'
import { PriceTable } from './price-table.ts'
import { addUp, type Mode, most, NOTHING, plus, type Sum } from './sums.ts'

const MODES: readonly Mode[] = ['any', 'priced', 'in stock', 'imagined']

type LeakOf = (displacement: CubicMetresPerRev) => CubicMetresPerSecond

/** Bounds for one motor and sprocket, where so much is reached: of the places that carry the flow. */
interface Carrying {
  /** Motors and sprocket, and what carries the flow without a choice. */
  readonly gear: Sum
  /** For each place behind the driving ones. */
  readonly places: readonly PlaceBound[]
}

/** What the prices follow from. */
export interface PriceGround {
  readonly ground: Ground
  readonly lists: PriceLists
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
  private readonly prices: PriceLists['prices']
  private readonly bounders: PriceLists['bounders']
  private readonly fixed: PriceLists['fixed']
  private readonly oils: PriceLists['oils']
  private readonly litres: number
  private readonly before: Joined['before']
  private readonly hoses: PriceLists['hoses']
  private readonly carrying = new Map<string, Carrying>()
  private readonly pumps: PriceLists['pumps']
  private readonly joints: PriceLists['joints']

  constructor(on: PriceGround) {
    const { ground, lists } = on
    const { start } = ground.question
    this.on = on
    this.question = ground.question
    this.prices = lists.prices
    this.bounders = lists.bounders
    this.fixed = lists.fixed
    this.oils = lists.oils
    this.pumps = lists.pumps
    this.joints = lists.joints
    this.before = linesById(start.before.machine)
    this.hoses = lists.hoses
    this.litres = litresFromCubicMetres(start.before.machine.reservoir.volume)
  }

  /**
   * Least that a candidate costs which begins with these choices and reaches a step.
   * @param driven what it shares with others; null while something that drives is open
   * @param isWorkedOut with what really flows, where all that drives is chosen: dearer to work out, and nearer
   * @param isMeeting and meets what is wanted besides the measured figure
   */
  lowest(
    choices: Candidate,
    driven: Driven | null,
    step: number,
    mode: Mode,
    isWorkedOut: boolean,
    isMeeting: boolean,
  ): number {
    const { ground, oil } = this.on
    const below = this.oilAt(step, isMeeting)
    const cooler = below === null ? NOTHING : oil.coolerCost(choices, driven, below, this.prices[mode])
    const perLitre = perLitreIn(this.oils[mode], choiceOf(ground.oil, choices))
    const priced = (sum: Sum) => this.prices[mode].total(plus(sum, cooler), perLitre, this.litres)
    if (driven === null) return priced(this.openSum(choices, step, mode))
    const sumIn = (table: PriceTable | null) => table?.sumOf(choices, this.on.drivingPlaces) ?? NOTHING
    const least = priced(sumIn(this.tableFor(driven, step, mode)))
    if (!isWorkedOut || !this.on.balanced) return least
    const exact = this.exactSum(driven, choices, mode)
    return exact === null ? least : Math.max(least, priced(exact))
  }

  /** Temperature that the oil has to settle at for a step; null where none is asked. */
  private oilAt(step: number, isMeeting: boolean): Celsius | null {
    const { measure, wants } = this.question
    if (measure !== 'oil-temperature') return isMeeting ? wants.oilBelow : null
    const score = this.on.best.steps[step]
    return score === undefined ? null : -score
  }

  /** While something that drives is open. */
  private openSum(choices: Candidate, step: number, mode: Mode): Sum {
    const { motor, sprocket, oil } = this.on.ground
    const [m, s] = [choiceOf(motor, choices), choiceOf(sprocket, choices)]
    const sum = plus(this.pumpSum(choices, mode), oilIn(this.oils[mode], choiceOf(oil, choices)))
    if (m === undefined) return sum
    // Where the sprocket is still open, keeping it costs least; what must flow then is not known.
    const { gear, places } = this.carryingFor(m, s ?? KEEP, s === undefined ? -1 : step, mode)
    return addUp([sum, gear, ...places.map(({ keep }) => keep)])
  }

  /** Least turns and flow of the motors for a step of the travel speed; none where something else is measured. */
  private neededAt(
    step: number,
    motors: readonly Motor[],
    sprocket: number,
    isAlike: boolean,
    leakOf?: LeakOf,
  ): Needed {
    const { ground, best } = this.on
    const { plant } = ground
    const speed = best.steps[step]
    const isTravel = this.question.measure === 'travel-speed'
    if (!isTravel || speed === undefined || ground.motor === null || !isAlike) return NO_FLOW
    const [way = plant.machine.travel.wayPerTurn] = machinesOf(ground, ground.sprocket, sprocket).map(
      ({ travel }) => travel.wayPerTurn,
    )
    const all = motors.map((one) => neededFor(speed, plant.machine, plant.site.ground.slip, one, way, leakOf))
    return {
      turns: Math.min(...all.map(({ turns }) => turns)),
      motorFlow: Math.min(...all.map(({ motorFlow }) => motorFlow)),
      totalFlow: 0,
    }
  }

  private carryingFor(motor: number, sprocket: number, step: number, mode: Mode): Carrying {
    return knownIn(this.carrying, `${motor} ${sprocket} ${step} ${mode}`, () => {
      const motors = machinesOf(this.on.ground, this.on.ground.motor, motor).map(({ travel }) => travel.motor)
      return this.carryingAt(motor, sprocket, this.neededAt(step, motors, sprocket, this.on.symmetric), mode)
    })
  }

  private carryingAt(motor: number, sprocket: number, needed: Needed, mode: Mode): Carrying {
    const { ground } = this.on
    const prices = this.prices[mode]
    const motors = motorCost(ground, motor, needed, prices)
    const gear = plus(motors.sum, sprocketCost(ground, sprocket, motors.bought, prices))
    const fixed = this.fixed[mode].map((bounder) => bounder(needed).keep)
    return { gear: addUp([gear, ...fixed]), places: this.bounders[mode].map((bounder) => bounder(needed)) }
  }

  /** What the choices of what drives cost at least, and each place behind them. */
  private boundsOf({ choices }: Driven, { gear, places }: Carrying, mode: Mode): { base: Sum; places: PlaceBound[] } {
    const { driving, others, oil } = this.on.ground
    const joints = [driving, ...others].map((known) => this.jointsOf(known, choiceOf(known, choices) ?? KEEP, mode))
    const joined = places.map((bound, i): PlaceBound => {
      const lines = this.question.places[this.on.drivingPlaces + i]?.lines ?? []
      const join = lines.flatMap(({ line }) => joints.flatMap((one) => one.get(line.id) ?? []))
      return join.length === 0 ? bound : { ...bound, keep: most(bound.keep, addUp(join)) }
    })
    const filled = oilIn(this.oils[mode], choiceOf(oil, choices))
    return { base: addUp([this.pumpSum(choices, mode), gear, filled]), places: joined }
  }

  private tableOf(driven: Driven, carrying: Carrying, mode: Mode): PriceTable {
    const { base, places } = this.boundsOf(driven, carrying, mode)
    const sizes = this.question.places.slice(this.on.drivingPlaces).map(({ options }) => options.length)
    return new PriceTable(base, places, sizes)
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
      const own = this.keptDrive(driven)
      const carrying =
        own === null ? this.carryingFor(m, s, step, mode) : this.carryingAt(m, s, this.neededIn(own, step, s), mode)
      return this.tableOf(driven, carrying, mode)
    })
  }

  /** What carries the flow, at the least that flows before any consequence; null where the machine may stand. */
  private carryingExactly(driven: Driven, code: number, mode: Mode): Carrying | null {
    const [base] = basesOf(this.on.ground, driven)
    const asked = base === undefined ? null : this.on.level.asked(base, code)
    const [m, s] = this.gearOf(driven.choices)
    return asked === null ? null : this.carryingAt(m, s, asked, mode)
  }

  /**
   * With the least that flows in any of these candidates, what is still open kept; null where one may stand. Of a whole one the
   * hoses are made for the ports that will be there.
   */
  private exactSum(driven: Driven, choices: Candidate, mode: Mode): Sum | null {
    const own = choices.slice(this.on.drivingPlaces)
    const key = own.join()
    const isWhole = choices.length === this.question.places.length
    const last =
      driven.last?.key === key
        ? driven.last
        : { key, sums: new Map<Mode, Sum | null>(), joined: isWhole ? this.joinedIn(driven, choices) : null }
    driven.last = last
    return knownIn(last.sums, mode, () => {
      const carrying = this.carryingExactly(driven, this.on.level.codeOf(choices, this.on.drivingPlaces), mode)
      if (carrying === null) return null
      const { base, places } = this.boundsOf(driven, carrying, mode)
      const { joined } = last
      return addUp([
        base,
        ...places.map(({ keep, option }, i) => {
          const chosen = own[i] ?? KEEP
          const alone = chosen === KEEP ? keep : option(chosen)
          const place = this.question.places[this.on.drivingPlaces + i]
          if (joined === null || place?.kind !== 'hose') return alone
          const { shop } = this.question.loaded
          return most(alone, joinedCost(place, chosen, joined, shop, this.prices[mode], this.hoses[mode]))
        }),
      ])
    })
  }

  /** What the hoses of a whole candidate are screwed into; null where another drive may be there in the end. */
  private joinedIn(driven: Driven, choices: Candidate): Joined | null {
    const { ground, level, drivingPlaces } = this.on
    const bases = basesOf(ground, driven)
    const [base] = bases
    if (base === undefined || bases.length !== 1) return null
    const code = level.settled(base, level.codeOf(choices, drivingPlaces))
    const settled = new Set<OwnerKind>(['pump', 'motor', ...level.keptIn(code)])
    return { lines: linesById(level.heldIn(base, code)), before: this.before, settled }
  }

  private neededIn(base: Base, step: number, sprocket: number): Needed {
    const leakOf = (displacement: CubicMetresPerRev) => this.on.level.leakIn(base, displacement)
    return this.neededAt(step, [base.machine.travel.motor], sprocket, base.isAlike, leakOf)
  }

  /** The drive that is there in the end, whatever carries the flow; null where something may ask for another. */
  private keptDrive(driven: Driven): Base | null {
    const { ground, level, balanced } = this.on
    const [base] = basesOf(ground, driven)
    const pumps = machinesOf(ground, ground.driving, choiceOf(ground.driving, driven.choices) ?? KEEP)
    const isTold = this.question.measure === 'travel-speed' && balanced && base !== undefined && pumps.length === 1
    return isTold && level.keepsMotors(base, 0) ? base : null
  }

  private gearOf(choices: Candidate): readonly [motor: number, sprocket: number] {
    const { motor, sprocket } = this.on.ground
    return [choiceOf(motor, choices) ?? KEEP, choiceOf(sprocket, choices) ?? KEEP]
  }

  private pumpSum(choices: Candidate, mode: Mode): Sum {
    const { ground } = this.on
    const oil = choiceOf(ground.oil, choices)
    return addUp(
      [ground.driving, ...ground.others].flatMap((known) => {
        const option = known === null ? undefined : choices[known.index]
        if (known === null || option === undefined || option === KEEP) return []
        const cost = () => pumpCost(ground, known, option, thinnest(ground, oil), this.prices[mode])
        return [knownIn(this.pumps, `${known.index} ${option} ${oil} ${mode}`, cost)]
      }),
    )
  }
}
