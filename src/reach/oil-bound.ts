/**
 * The coolest that the oil can settle with some drive and some cooler, whatever else is chosen: the heat balance of the duty
 * with every drop left out that is still open or may be changed by a consequence (level-bound.ts).
 *
 * What a drop takes is torque of the pump, and all of it becomes heat; digging and the open relief are held at pressures that
 * no line changes. Without the drops the torque falls by dT and the governed engine turns faster, n'/n = 1 + droop dT/T_rated,
 * which the losses L of pump and motors follow with the square of n at most. So what is saved is 2 pi n dT, and what is added
 * no more than 2 droop (dT/T_rated) L <= 2 droop 2 pi n dT (L/P_rated): less than what is saved, as long as the engine is on
 * its governor line, where L <= P_rated, and the droop below a half. More flow through a cooler cools more as well. At every
 * oil temperature the heat is then no more and the cooling no less: the oil settles no hotter.
 *
 * An engine that lugs may gain more speed than that; where one may (oil-margin.ts), MARGIN is taken off for it, which is an
 * estimate and not proved. Two-speed motors change over to the large displacement where they do not hold the level in the small
 * one: at each temperature a way gives no less heat than the cooler of the two, so the cooler of both is the bound.
 *
 * A cooler that was chosen stays. Where none was, a consequence may still bring one: the price of a cooler is then counted,
 * and the air is the bound.
 */
import { HeatTable, settledOil } from '../circuit/oil-heat.ts'
import { type Plant, preparePlant } from '../circuit/plant.ts'
import type { Cooler, Machine } from '../machine.ts'
import { hotOil, noticeable } from '../tables/limits.ts'
import type { Celsius } from '../units/si.ts'
import type { Base } from './base.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { anyCoolerCost } from './cooler-costs.ts'
import { choiceOf, composed, type Ground, machinesOf, withOthers } from './drive.ts'
import { basesOf, type Driven } from './driven.ts'
import { strongest } from './gentle-coolers.ts'
import { knownIn } from './known-in.ts'
import type { LevelBound } from './level-bound.ts'
import { withHeld, withoutDrops } from './oil-machine.ts'
import { isProved, staysBelow } from './oil-margin.ts'
import { piecesOf } from './pieces.ts'
import { bringsCircuit } from './places.ts'
import { isPossible, NOTHING, type Prices, pricesOf, type Sum } from './sums.ts'

/** Where it is not proved [K]. */
const MARGIN = 1
/** In place of an option: a cooler that is as good as any of the list. */
const STRONGEST = -2
/** Surplus of heat at which the oil counts as settled [W]. */
const ENOUGH = 0.01
/** What the roots may be off [K]: ENOUGH of a machine that gives off no less than 10 W a kelvin, and rounding. */
const HAIR = 2e-3

/** Its motors keep to their large displacement. */
const inLarge = (machine: Machine): Machine => {
  const { travel } = machine
  return { ...machine, travel: { ...travel, motor: { ...travel.motor, secondDisplacement: null } } }
}

export class OilBound {
  private readonly ground: Ground
  private readonly level: LevelBound
  /** Flows are judged by the level bound, so that what is chosen and what stays can be held. */
  private readonly balanced: boolean
  private readonly drivingPlaces: number
  private readonly coolers: readonly (Cooler | null)[]
  private readonly strongest: Cooler | null
  private readonly coolerIndex: number
  private readonly mayOrder: boolean
  private readonly known = new Map<string, Celsius>()
  private readonly anyCooler = new Map<Prices, Sum>()
  private readonly brings = new Map<string, boolean>()
  private readonly narrowest = new Map<Base, Map<number, readonly Plant[]>>()

  constructor(ground: Ground, level: LevelBound, drivingPlaces: number, balanced: boolean) {
    const { question } = ground
    this.ground = ground
    this.level = level
    this.balanced = balanced
    this.drivingPlaces = drivingPlaces
    this.coolerIndex = question.places.findIndex(({ kind }) => kind === 'cooler')
    const place = question.places[this.coolerIndex]
    const pieces = place === undefined ? [] : piecesOf(question, place).slice(1)
    this.coolers = pieces.map(({ machine }) => machine.cooler)
    this.strongest = strongest(this.coolers.filter((cooler) => cooler !== null)) ?? question.start.before.machine.cooler
    this.mayOrder = isPossible(pricesOf(question.loaded.shop, 'any').order('cooler', 1))
  }

  private coolerIn(choices: Candidate): number | undefined {
    return this.coolerIndex < 0 ? KEEP : choices[this.coolerIndex]
  }

  /**
   * Coolest that the oil can settle. Where a cooler may still be chosen, or come as a consequence, it is one of the list; one
   * to order may be as big as anything, and the air is the bound.
   */
  least(choices: Candidate, driven: Driven | null): Celsius {
    const option = this.coolerIn(choices)
    const isOpen = option === undefined || (option === KEEP && this.mayBring(choices, driven))
    if (!isOpen) return this.leastWith(choices, driven, option)
    if (this.mayOrder) return this.ground.question.loaded.scenario.site.ambient
    return Math.min(this.leastWith(choices, driven, KEEP), this.leastWith(choices, driven, STRONGEST))
  }

  /**
   * A consequence may bring a cooler: not where the narrowest ways that may stay settle at no more than what the check lets
   * be, and no engine lugs there that could give more heat (oil-margin.ts).
   */
  private mayBring(choices: Candidate, driven: Driven | null): boolean {
    const { ground, level } = this
    const { start } = ground.question
    if (start.before.machine.cooler !== null || ground.mayStarve || driven === null) return true
    const code = level.codeOf(choices, this.drivingPlaces)
    const base = this.baseFor(driven, code)
    if (base === null) return true
    return knownIn(this.brings, `${driven.choices.join()}/${code}`, () => {
      const was = start.beforeJudged.heat.steadyOilC
      if (was === null) return true
      // Too hot before already: asked for only where it is noticeably hotter.
      const limit = was > hotOil.value ? was * (1 + noticeable.value) : hotOil.value
      // Two-speed motors may change over at some flow between.
      const least = base.machine.travel.motor.secondDisplacement === null ? HAIR : MARGIN
      return !this.narrowestOf(base, code).every((plant) => staysBelow(plant, start.work, limit - least))
    })
  }

  /** With this cooler; kept is what is there. */
  private leastWith(choices: Candidate, driven: Driven | null, option: number): Celsius {
    const { ground, level, drivingPlaces } = this
    const { start, loaded } = ground.question
    const { site } = loaded.scenario
    if (ground.mayStarve || driven === null) return site.ambient
    const own = start.before.machine.cooler
    const cooler = option === KEEP ? own : option === STRONGEST ? this.strongest : (this.coolers[option] ?? null)
    const open = () =>
      Math.min(...this.machinesFor(choices).map((one) => this.coolestOf(withoutDrops(one, cooler), null)))
    const loose = knownIn(this.known, `${driven.choices.join()}/${option}`, open)
    const chosen = level.codeOf(choices, drivingPlaces)
    const base = this.baseFor(driven, chosen)
    if (base === null) return loose
    const code = level.settled(base, chosen)
    const key = `${driven.choices.join()}/${option}/${code}`
    return knownIn(this.known, key, () => {
      const machine = withHeld(level.heldIn(base, code), cooler, level.coveredIn(code))
      return Math.max(loose, this.coolestOf(machine, base))
    })
  }

  /**
   * @param machine that takes the least
   * @param base of which the narrowest ways are known; null: of several
   * @returns Infinity where nothing settles
   */
  private coolestOf(machine: Machine, base: Base | null): Celsius {
    const { start, loaded } = this.ground.question
    const { site } = loaded.scenario
    const { travel } = machine
    const isTwoSpeed = travel.motor.secondDisplacement !== null
    // Of a way that does not hold the level in the small displacement the large one counts.
    const machines = isTwoSpeed ? [machine, inLarge(machine)] : [machine]
    const each = machines.map((one) => {
      const plant = preparePlant(one, site)
      const table = new HeatTable(plant, start.work, site.ambient)
      return { plant, settled: settledOil(plant, start.work, table, ENOUGH) ?? Number.POSITIVE_INFINITY }
    })
    const settled = Math.min(...each.map((one) => one.settled))
    if (settled === Number.POSITIVE_INFINITY) return settled
    const isSure =
      base !== null &&
      each.every(({ plant }, i) => {
        const ways = this.narrowestOf(base, 0)
        const narrowest = i === 0 ? ways : ways.map((way) => preparePlant(inLarge(way.machine), site))
        return isProved(narrowest, plant, start.work, settled)
      })
    return Math.max(site.ambient, settled - (isSure ? HAIR : MARGIN))
  }

  private narrowestOf(base: Base, code: number): readonly Plant[] {
    const { site } = this.ground.question.loaded.scenario
    const known = knownIn(this.narrowest, base, () => new Map())
    return knownIn(known, code, () => this.level.narrowest(base, code).map((machine) => preparePlant(machine, site)))
  }

  /** The one machine that what drives comes to, whatever carries the flow; null where that is not so. */
  private baseFor(driven: Driven, code: number): Base | null {
    if (!this.balanced) return null
    const { driving } = this.ground
    // Nobody has read a circuit that is not there yet: what carries its flow is left open.
    if (driving !== null && bringsCircuit(driving.place, choiceOf(driving, driven.choices) ?? KEEP)) return null
    const bases = basesOf(this.ground, driven)
    const [base] = bases
    if (base === undefined || bases.length === 1) return base ?? null
    const pumps = machinesOf(this.ground, driving, choiceOf(driving, driven.choices) ?? KEEP)
    return pumps.length === 1 && this.level.keepsMotors(base, code) ? base : null
  }

  /** Every machine that what drives may come to. */
  private machinesFor(choices: Candidate): readonly Machine[] {
    const { ground } = this
    const { machine } = ground.question.start.before
    const { driving, motor, sprocket, oil } = ground
    const [pumps = [], motors = [], ways, oils] = [driving, motor, sprocket, oil].map((one) =>
      machinesOf(ground, one, choiceOf(one, choices) ?? KEEP),
    )
    return pumps.flatMap((pump) =>
      motors.flatMap((gear) => withOthers(ground, composed(machine, pump, gear, oils?.[0], ways?.[0]), choices)),
    )
  }

  /**
   * Where the oil is too hot without another cooler, one is chosen later or a consequence brings it: the cheapest of the
   * list, or to order.
   */
  coolerCost(choices: Candidate, driven: Driven | null, wanted: Celsius, prices: Prices): Sum {
    const option = this.coolerIn(choices) ?? KEEP
    if (option !== KEEP || this.leastWith(choices, driven, KEEP) <= wanted) return NOTHING
    return knownIn(this.anyCooler, prices, () => anyCoolerCost(this.ground.question, prices))
  }
}
