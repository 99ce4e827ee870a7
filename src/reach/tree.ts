/**
 * Bounds of a part of the candidates: those that begin with some choices, place by place. The places stand in the order
 * motors, sprocket, pumps, oil, then those that carry the flow. Long because price and reach are bounded from the same
 * choices, and kept for the next node that shares them.
 */

import type { Motor } from '../machine.ts'
import { litresFromCubicMetres, lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import type { Question } from './assess.ts'
import { attachmentMost } from './attachment-bound.ts'
import type { Best } from './best.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, composed, type Ground, groundOf, type Known, machinesOf, pieceOf } from './drive.ts'
import { motorCost, type OilCost, oilCosts, pumpCost, sprocketCost } from './drive-costs.ts'
import { pumpCannot, standsStill, tooStrong } from './drive-limits.ts'
import { isSymmetric, type Needed, NO_FLOW, neededFor } from './flows.ts'
import { jointCosts } from './joint-costs.ts'
import { Base, LevelBound } from './level-bound.ts'
import { type Bounder, bounderOf, circulationOf, type PlaceBound } from './line-bounds.ts'
import { OilBound } from './oil-bound.ts'
import { pumpsOf } from './pieces.ts'
import type { PlaceKind } from './places.ts'
import { PriceTable } from './price-table.ts'
import { addUp, type Mode, most, NOTHING, type Prices, plus, pricesOf, type Sum } from './sums.ts'
import type { Drive } from './travel-bound.ts'
import { fastest } from './travel-bound.ts'

/** Rounding must not call out of reach what is just reached. */
const HAIR = 1e-6

/** Kinds that decide how far a way reaches. */
const DRIVING: ReadonlySet<PlaceKind> = new Set<PlaceKind>(['motor', 'sprocket', 'pump', 'oil'])

const MODES: readonly Mode[] = ['any', 'priced', 'in stock']

/** Bounds for one motor and sprocket, where so much is reached: of the places that carry the flow. */
interface Carrying {
  readonly gear: Sum
  /** For each place behind the driving ones. */
  readonly places: readonly PlaceBound[]
}

/** What candidates have in common that make the same choices of all that drives. */
interface Driven {
  readonly choices: Candidate
  readonly high: number
  /** Price tables by step (from -1 on) and mode. */
  readonly tables: Map<number, PriceTable>
  /** Price tables where it is worked out what flows, by the code of what carries it and mode. */
  readonly exact: Map<number, PriceTable>
  /** Machines that may be there in the end, put together when first asked for. */
  bases: readonly Base[] | null
}

/** What can be said of every candidate that begins with some choices. */
export class Tree {
  readonly question: Question
  readonly ground: Ground
  /** Places that decide how far a way reaches come first; this many. */
  readonly drivingPlaces: number
  private readonly best: Best
  private readonly prices: { readonly [mode in Mode]: Prices }
  private readonly bounders: { readonly [mode in Mode]: readonly Bounder[] }
  private readonly oils: { readonly [mode in Mode]: readonly OilCost[] }
  private readonly litres: number
  private readonly symmetric: boolean
  /** Of each place: its hoses lead to the attachment. */
  private readonly auxiliary: readonly boolean[]
  private readonly level: LevelBound
  private readonly oil: OilBound
  private readonly carrying = new Map<string, Carrying>()
  private readonly pumps = new Map<string, Sum>()
  private readonly joints = new Map<string, ReadonlyMap<string, Sum>>()
  private readonly highs = new Map<string, number>()
  private readonly driven = new Map<number, Driven>()

  constructor(question: Question, best: Best) {
    const { places, loaded, start } = question
    this.question = question
    this.best = best
    this.ground = groundOf(question)
    this.drivingPlaces = places.filter(({ kind }) => DRIVING.has(kind)).length
    const byMode = <T>(of: (mode: Mode) => T) => ({ any: of('any'), priced: of('priced'), 'in stock': of('in stock') })
    this.prices = byMode((mode) => pricesOf(loaded.shop, mode))
    const circulation = circulationOf(question)
    const carrying = places.slice(this.drivingPlaces)
    this.bounders = byMode((mode) =>
      carrying.map((place) => bounderOf(question, place, this.prices[mode], circulation)),
    )
    this.oils = byMode((mode) => oilCosts(this.ground, this.prices[mode]))
    this.litres = litresFromCubicMetres(start.before.machine.reservoir.volume)
    this.level = new LevelBound(question, places.slice(this.drivingPlaces))
    this.oil = new OilBound(this.ground, this.drivingPlaces)
    this.symmetric = isSymmetric(start.before.machine)
    this.auxiliary = places.map(({ lines }) => lines.some(({ role }) => role === 'auxiliary'))
  }

  private motorsOf(option: number): readonly Motor[] {
    return machinesOf(this.ground, this.ground.motor, option).map(({ travel }) => travel.motor)
  }

  /** Least turns and flow of the motors for a step of the travel speed; none where something else is measured. */
  private neededAt(step: number, motors: readonly Motor[], sprocket: number): Needed {
    const { question, plant, motor: known } = this.ground
    const speed = this.best.steps[step]
    if (question.measure !== 'travel-speed' || speed === undefined || known === null || !this.symmetric) return NO_FLOW
    const [way = plant.machine.travel.wayPerTurn] = machinesOf(this.ground, this.ground.sprocket, sprocket).map(
      ({ travel }) => travel.wayPerTurn,
    )
    const all = motors.map((one) => neededFor(speed, plant.machine, plant.site.ground.slip, one, way))
    return {
      turns: Math.min(...all.map(({ turns }) => turns)),
      motorFlow: Math.min(...all.map(({ motorFlow }) => motorFlow)),
      totalFlow: 0,
    }
  }

  /** What all candidates share that begin with these choices of what drives; all of them are made. */
  private drivenBy(choices: Candidate): Driven {
    const { places } = this.question
    let code = 0
    for (let i = 0; i < this.drivingPlaces; i++)
      code = code * ((places[i]?.options.length ?? 0) + 1) + (choices[i] as number) - KEEP
    const known = this.driven.get(code)
    if (known !== undefined) return known
    const own = choices.slice(0, this.drivingPlaces)
    const made = { choices: own, high: this.highOf(own), tables: new Map(), exact: new Map(), bases: null }
    this.driven.set(code, made)
    return made
  }

  private carryingFor(motor: number, sprocket: number, step: number, mode: Mode): Carrying {
    const key = `${motor} ${sprocket} ${step} ${mode}`
    const known = this.carrying.get(key)
    if (known !== undefined) return known
    const made = this.carryingAt(motor, sprocket, this.neededAt(step, this.motorsOf(motor), sprocket), mode)
    this.carrying.set(key, made)
    return made
  }

  /** Motors are the chosen ones in the end, or those that are there; nothing asks for others. */
  private keepsMotors(driven: Driven): boolean {
    const [base] = this.basesOf(driven)
    const pumps = machinesOf(this.ground, this.ground.driving, choiceOf(this.ground.driving, driven.choices) ?? KEEP)
    return this.isSolved() && base !== undefined && pumps.length === 1 && this.level.keepsMotors(base, 0)
  }

  private carryingAt(motor: number, sprocket: number, needed: Needed, mode: Mode): Carrying {
    const prices = this.prices[mode]
    const motors = motorCost(this.ground, motor, needed, prices)
    const gear = plus(motors.sum, sprocketCost(this.ground, sprocket, motors.bought, prices))
    return { gear, places: this.bounders[mode].map((bounder) => bounder(needed)) }
  }

  private tableOf({ choices }: Driven, { gear, places }: Carrying, mode: Mode): PriceTable {
    const filled = this.oilOf(choiceOf(this.ground.oil, choices), mode)
    const { driving, other } = this.ground
    const joints = [driving, other].map((known) => this.jointsOf(known, choiceOf(known, choices) ?? KEEP, mode))
    const joined = places.map((bound, i): PlaceBound => {
      const lines = this.question.places[this.drivingPlaces + i]?.lines ?? []
      const join = lines.flatMap(({ line }) => joints.flatMap((one) => one.get(line.id) ?? []))
      return join.length === 0 ? bound : { ...bound, keep: most(bound.keep, addUp(join)) }
    })
    return new PriceTable(addUp([this.pumpSum(choices, mode), gear, filled]), joined)
  }

  private jointsOf(pumps: Known | null, option: number, mode: Mode): ReadonlyMap<string, Sum> {
    const key = `${pumps?.index} ${option} ${mode}`
    const known = this.joints.get(key)
    if (known !== undefined) return known
    const made = jointCosts(this.ground, option === KEEP ? null : pumps, option, this.prices[mode])
    this.joints.set(key, made)
    return made
  }

  private tableFor(driven: Driven, step: number, mode: Mode): PriceTable {
    const key = MODES.length * (step + 1) + MODES.indexOf(mode)
    const known = driven.tables.get(key)
    if (known !== undefined) return known
    const [m, s] = this.gearOf(driven.choices)
    const [base] = this.basesOf(driven)
    const own = this.keepsMotors(driven) ? base?.machine.travel.motor : undefined
    const carrying =
      own === undefined
        ? this.carryingFor(m, s, step, mode)
        : this.carryingAt(m, s, this.neededAt(step, [own], s), mode)
    const made = this.tableOf(driven, carrying, mode)
    driven.tables.set(key, made)
    return made
  }

  /** With what flows in a whole candidate before any consequence; null where that is not worked out. */
  private exactTable(driven: Driven, choices: Candidate, mode: Mode): PriceTable | null {
    if (!this.isBalanced()) return null
    const isWhole = choices.length === this.question.places.length
    const code = isWhole ? this.level.codeOf(choices, this.drivingPlaces) : 0
    const key = MODES.length * code + MODES.indexOf(mode)
    const known = driven.exact.get(key)
    if (known !== undefined) return known
    const [base] = this.basesOf(driven)
    const asked = base === undefined ? null : this.level.asked(base, code)
    if (asked === null) return null
    const [m, s] = this.gearOf(driven.choices)
    const made = this.tableOf(driven, this.carryingAt(m, s, asked, mode), mode)
    driven.exact.set(key, made)
    return made
  }

  /** The level point can be solved for bounds (level-bound.ts): whatever is measured, its flows are judged. */
  private isBalanced(): boolean {
    return this.symmetric && !this.ground.mayStarve && this.ground.other === null
  }

  private isSolved(): boolean {
    return this.question.measure === 'travel-speed' && this.isBalanced()
  }

  private gearOf(choices: Candidate): readonly [motor: number, sprocket: number] {
    const { motor, sprocket } = this.ground
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

  /** Every machine that the choices of what drives may come to, the chosen pieces first. */
  private basesOf(driven: Driven): readonly Base[] {
    if (driven.bases !== null) return driven.bases
    const { ground } = this
    const { driving, motor, sprocket, oil } = ground
    const [pumps = [], motors = [], ways, oils] = [driving, motor, sprocket, oil].map((known) =>
      machinesOf(ground, known, choiceOf(known, driven.choices) ?? KEEP),
    )
    const { machine } = this.question.start.before
    driven.bases = pumps.flatMap((pump) =>
      motors.map((one) => new Base(composed(machine, pump, one, oils?.[0], ways?.[0]))),
    )
    return driven.bases
  }

  private pumpSum(choices: Candidate, mode: Mode): Sum {
    const { driving, other } = this.ground
    const oil = choiceOf(this.ground.oil, choices)
    const mu = this.thinnest(oil)
    return addUp(
      [driving, other].flatMap((known) => {
        const option = known === null ? undefined : choices[known.index]
        if (known === null || option === undefined || option === KEEP) return []
        const key = `${known.index} ${option} ${oil} ${mode}`
        const sum = this.pumps.get(key) ?? pumpCost(this.ground, known, option, mu, this.prices[mode])
        this.pumps.set(key, sum)
        return [sum]
      }),
    )
  }

  /**
   * Least that a candidate costs which begins with these choices and reaches a step.
   * @param isWorkedOut with what really flows, where all that drives is chosen: dearer to work out, and nearer
   */
  lowest(choices: Candidate, step: number, mode: Mode, isWorkedOut = false): number {
    const oil = choiceOf(this.ground.oil, choices)
    const wanted = this.question.measure === 'oil-temperature' ? this.best.steps[step] : undefined
    const cooler = wanted === undefined ? NOTHING : this.oil.coolerCost(choices, -wanted, this.prices[mode])
    const priced = (sum: Sum) => this.prices[mode].total(plus(sum, cooler), this.perLitre(oil, mode), this.litres)
    const least = priced(this.sumOf(choices, step, mode, false))
    const isDriven = choices.length >= this.drivingPlaces
    return isWorkedOut && isDriven ? Math.max(least, priced(this.sumOf(choices, step, mode, true))) : least
  }

  private sumOf(choices: Candidate, step: number, mode: Mode, isWorkedOut: boolean): Sum {
    if (choices.length >= this.drivingPlaces) {
      const driven = this.drivenBy(choices)
      const table = isWorkedOut ? this.exactTable(driven, choices, mode) : this.tableFor(driven, step, mode)
      return table?.sumOf(choices, this.drivingPlaces) ?? NOTHING
    }
    const { motor, sprocket, oil } = this.ground
    const [m, s] = [choiceOf(motor, choices), choiceOf(sprocket, choices)]
    const sum = plus(this.pumpSum(choices, mode), this.oilOf(choiceOf(oil, choices), mode))
    if (m === undefined) return sum
    // Where the sprocket is still open, keeping it costs least; what must flow then is not known.
    const { gear, places } = this.carryingFor(m, s ?? KEEP, s === undefined ? -1 : step, mode)
    return addUp([sum, gear, ...places.map(({ keep }) => keep)])
  }

  /** Every drive that a choice may come to. */
  private drivesFor(motor: number, sprocket: number, pump: number): readonly Drive[] {
    const { plant, driving } = this.ground
    const names = plant.driving.flatMap((i) => plant.machine.circuits[i]?.name ?? [])
    const [way = plant.machine.travel.wayPerTurn] = machinesOf(this.ground, this.ground.sprocket, sprocket).map(
      ({ travel }) => travel.wayPerTurn,
    )
    return machinesOf(this.ground, driving, pump).flatMap((machine) =>
      this.motorsOf(motor).map((one) => ({ pumps: pumpsOf(machine, names), motor: one, wayPerTurn: way })),
    )
  }

  /**
   * Most that a candidate reaches which begins with these choices, worked out with what carries the flow; Infinity where that
   * is not done: another measure, sides that differ, a suction that may starve, or drives that are still open.
   */
  tight(choices: Candidate): number {
    if (this.question.measure === 'oil-temperature') return -this.oil.least(choices)
    if (!this.isSolved() || choices.length < this.drivingPlaces) return Number.POSITIVE_INFINITY
    const { ground, level } = this
    const driven = this.drivenBy(choices)
    const bases = this.basesOf(driven)
    const [base] = bases
    const code = level.codeOf(choices, this.drivingPlaces)
    if (base === undefined) return Number.POSITIVE_INFINITY
    if (bases.length === 1) return level.most(base, code)
    const pumps = machinesOf(ground, ground.driving, choiceOf(ground.driving, choices) ?? KEEP)
    if (pumps.length === 1 && level.keepsMotors(base, code)) return level.most(base, code)
    // More than one may be there in the end: then what carries the flow may follow any of them.
    return Math.max(...bases.map((one) => level.most(one, 0)))
  }

  private thinnest(oil: number | undefined): PascalSeconds {
    const { viscosities } = this.ground
    return oil === undefined ? Math.min(...viscosities) : (viscosities[pieceOf(oil)] ?? Math.min(...viscosities))
  }

  private thickest(oil: number | undefined): PascalSeconds {
    const { viscosities } = this.ground
    return oil === undefined ? Math.max(...viscosities) : (viscosities[pieceOf(oil)] ?? Math.max(...viscosities))
  }

  /** A hose is chosen for a line to the attachment that goes with a second pump: a new circuit has its own. */
  private choosesLost(choices: Candidate): boolean {
    const pump = choiceOf(this.ground.driving, choices) ?? KEEP
    if ((this.ground.driving?.place.options[pump]?.newCircuit ?? null) === null) return false
    return choices.some((option, i) => option !== KEEP && this.auxiliary[i] === true)
  }

  /** Most that a candidate scores which begins with these choices; null: none of them can be built. */
  high(choices: Candidate): number | null {
    if (choices.length >= this.drivingPlaces) {
      const { high } = this.drivenBy(choices)
      return Number.isNaN(high) || this.choosesLost(choices) ? null : high
    }
    const key = choices.join()
    const known = this.highs.get(key)
    const high = known ?? this.highOf(choices)
    this.highs.set(key, high)
    return Number.isNaN(high) ? null : high
  }

  /** Not so where some other wish than the measured one cannot be met: the attachment's oil, or the temperature. */
  mayMeet(choices: Candidate): boolean {
    const { ground, question } = this
    const { attachment, oilBelow } = question.wants
    const pump = choiceOf(ground.driving, choices)
    if (attachment !== null && question.measure !== 'attachment-flow' && pump !== undefined) {
      const mu = this.thickest(choiceOf(ground.oil, choices))
      const flow = attachmentMost(ground, choiceOf(ground.other, choices), pump, mu)
      if (flow < lpmFromCubicMetresPerSecond(attachment.flow) * (1 - HAIR)) return false
    }
    const isOilTold =
      oilBelow !== null && question.measure !== 'oil-temperature' && choices.length >= this.drivingPlaces
    return !isOilTold || this.oil.least(choices) <= oilBelow + HAIR
  }

  private highOf(choices: Candidate): number {
    const { ground, question } = this
    const [m, s, p] = [ground.motor, ground.sprocket, ground.driving].map((known) => choiceOf(known, choices))
    const other = choiceOf(ground.other, choices)
    const oil = choiceOf(ground.oil, choices)
    const cannot = (known: Known | null, option: number | undefined) =>
      option !== undefined &&
      (pumpCannot(ground, known, option) || tooStrong(ground, known, option, this.thinnest(oil)))
    if (cannot(ground.other, other) || cannot(ground.driving, p)) return Number.NaN
    if (m === undefined || s === undefined || p === undefined) return Number.POSITIVE_INFINITY
    const drives = this.drivesFor(m, s, p)
    if ((m !== KEEP || s !== KEEP || p !== KEEP) && standsStill(ground, drives)) return Number.NaN
    const mu = this.thickest(oil)
    switch (question.measure) {
      case 'travel-speed':
        return Math.max(...drives.map((drive) => fastest(ground.plant, drive, mu, ground.mayStarve)))
      case 'attachment-flow':
        return attachmentMost(ground, other, p, mu)
      default:
        // Worked out with the cooler, in tight().
        return -question.loaded.scenario.site.ambient
    }
  }
}
