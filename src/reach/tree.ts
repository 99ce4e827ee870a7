/**
 * Bounds of a part of the candidates: those that begin with some choices, place by place. The places stand in the order
 * motors, sprocket, pumps, oil, then those that carry the flow.
 */
import { preparePlant } from '../circuit/plant.ts'
import { lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import type { Question } from './assess.ts'
import { attachmentMost } from './attachment-bound.ts'
import type { Base } from './base.ts'
import type { Best } from './best.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, type Ground, groundOf, type Known, machinesOf, thickest, thinnest } from './drive.ts'
import { fastestAllowed, pumpCannot, standsStill, tooStrong } from './drive-limits.ts'
import { basesOf, type Driven } from './driven.ts'
import { isSymmetric } from './flows.ts'
import { knownIn } from './known-in.ts'
import { LevelBound } from './level-bound.ts'
import { OilBound } from './oil-bound.ts'
import { pumpsOf } from './pieces.ts'
import { bringsCircuit, type PlaceKind } from './places.ts'
import { PriceBound } from './price-bound.ts'
import { type PriceLists, priceListsOf } from './price-lists.ts'
import type { Mode } from './sums.ts'
import { allTooHot } from './too-hot.ts'
import { type Drive, fastest } from './travel-bound.ts'

/** Rounding must not call out of reach what is just reached. */
const HAIR = 1e-6

/** Lines seldom make the oil hotter by more than this [K]: further off nobody looks. */
const NEAR = 8

/** Kinds that decide how far a way reaches. */
const DRIVING: ReadonlySet<PlaceKind> = new Set<PlaceKind>(['motor', 'sprocket', 'pump', 'oil'])

interface Shared {
  readonly ground: Ground
  readonly drivingPlaces: number
  readonly balanced: boolean
  readonly level: LevelBound
  readonly oil: OilBound
  readonly lists: PriceLists
  /** Most that is reached: within the limits of engine and pull, and past them. */
  readonly highs: { readonly within: Map<string, number>; readonly past: Map<string, number> }
}

const shared = new WeakMap<Question, Shared>()

/** What several searches of one question work on: worked out once, with all that its bounds have found so far. */
const sharedBy = (question: Question): Shared => {
  const before = shared.get(question)
  if (before !== undefined) return before
  const ground = groundOf(question)
  const drivingPlaces = question.places.filter(({ kind }) => DRIVING.has(kind)).length
  const balanced = !ground.mayStarve && ground.others.length === 0
  const level = new LevelBound(question, question.places.slice(drivingPlaces))
  const oil = new OilBound(ground, level, drivingPlaces, balanced)
  const lists = priceListsOf(ground, drivingPlaces)
  const highs = { within: new Map<string, number>(), past: new Map<string, number>() }
  const now = { ground, drivingPlaces, balanced, level, oil, lists, highs }
  shared.set(question, now)
  return now
}

/** What can be said of every candidate that begins with some choices. */
export class Tree {
  readonly question: Question
  readonly ground: Ground
  /** What passes a limit of engine or pull counts as well: the search looks for what stands in the way. */
  private readonly pastLimits: boolean
  /** Places that decide how far a way reaches come first; this many. */
  readonly drivingPlaces: number
  /** The level point can be solved for bounds (level-bound.ts): whatever is measured, its flows are judged. */
  private readonly balanced: boolean
  /** So many choices, and what drives and the cooler are among them. */
  readonly settledAt: number
  /** Of each place: its hoses lead to the attachment. */
  private readonly auxiliary: readonly boolean[]
  /** Circuits that drive. */
  private readonly drivers: readonly string[]
  private readonly level: LevelBound
  private readonly oil: OilBound
  private readonly price: PriceBound
  private readonly highs: Map<string, number>
  private readonly driven = new Map<number, Driven>()

  constructor(question: Question, best: Best) {
    const { places, start } = question
    const { ground, drivingPlaces, balanced, level, oil, lists, highs } = sharedBy(question)
    const symmetric = isSymmetric(start.before.machine)
    this.question = question
    this.ground = ground
    this.pastLimits = best.aim === 'past limits'
    this.highs = this.pastLimits ? highs.past : highs.within
    this.drivingPlaces = drivingPlaces
    this.balanced = balanced
    this.settledAt = Math.max(drivingPlaces, places.findIndex(({ kind }) => kind === 'cooler') + 1)
    this.auxiliary = places.map(({ lines }) => lines.some(({ role }) => role === 'auxiliary'))
    this.drivers = ground.plant.driving.flatMap((i) => ground.plant.machine.circuits[i]?.name ?? [])
    this.level = level
    this.oil = oil
    this.price = new PriceBound({ ground, lists, best, level, oil, drivingPlaces, symmetric, balanced })
  }

  /** What all candidates share that begin with these choices of what drives; null while one of them is open. */
  private drivenBy(choices: Candidate): Driven | null {
    if (choices.length < this.drivingPlaces) return null
    const { places } = this.question
    let code = 0
    for (let i = 0; i < this.drivingPlaces; i++)
      code = code * ((places[i]?.options.length ?? 0) + 1) + (choices[i] as number) - KEEP
    return knownIn(this.driven, code, (): Driven => {
      const own = choices.slice(0, this.drivingPlaces)
      return {
        choices: own,
        high: knownIn(this.highs, own.join(), () => this.highOf(own)),
        tables: new Map(),

        last: null,
        isStuck: null,
      }
    })
  }

  /**
   * Least that a candidate costs which begins with these choices and reaches a step.
   * @param isWorkedOut with what really flows, where all that drives is chosen: dearer to work out, and nearer
   * @param isMeeting and meets what is wanted besides the measured figure
   */
  lowest(choices: Candidate, step: number, mode: Mode, isWorkedOut = false, isMeeting = false): number {
    return this.price.lowest(choices, this.drivenBy(choices), step, mode, isWorkedOut, isMeeting)
  }

  /** Every drive that a choice may come to. */
  private drivesFor(motor: number, sprocket: number, pump: number): readonly Drive[] {
    const { ground } = this
    const { plant, driving } = ground
    const [wayPerTurn = plant.machine.travel.wayPerTurn] = machinesOf(ground, ground.sprocket, sprocket).map(
      ({ travel }) => travel.wayPerTurn,
    )
    return machinesOf(ground, driving, pump).flatMap((machine) =>
      machinesOf(ground, ground.motor, motor).map(({ travel }) => ({
        pumps: pumpsOf(machine, this.drivers),
        motor: travel.motor,
        wayPerTurn,
      })),
    )
  }

  /**
   * Most that a candidate reaches which begins with these choices, worked out with what carries the flow; Infinity where that
   * is not done: another measure, sides that differ, a suction that may starve, or drives that are still open.
   */
  tight(choices: Candidate): number {
    const { ground, level, question } = this
    const driven = this.drivenBy(choices)
    if (question.measure === 'oil-temperature') return -this.oil.least(choices, driven)
    if (question.measure !== 'travel-speed' || !this.balanced || driven === null) return Number.POSITIVE_INFINITY
    const bases = basesOf(ground, driven)
    const [base] = bases
    const code = level.codeOf(choices, this.drivingPlaces)
    if (base === undefined) return Number.POSITIVE_INFINITY
    if (bases.length === 1) return level.most(base, code)
    const pumps = machinesOf(ground, ground.driving, choiceOf(ground.driving, choices) ?? KEEP)
    if (pumps.length === 1 && level.keepsMotors(base, code))
      return this.isStuck(driven, base) ? Number.NEGATIVE_INFINITY : level.most(base, code)
    // More than one may be there in the end: then what carries the flow may follow any of them.
    return Math.max(...bases.map((one) => level.most(one, 0)))
  }

  /** With the motors that are there: high() allows for all that a consequence may bring. */
  private isStuck(driven: Driven, { machine }: Base): boolean {
    const { ground } = this
    const [m, s, p] = [ground.motor, ground.sprocket, ground.driving].map((known) => choiceOf(known, driven.choices))
    const isChanged = m !== KEEP || s !== KEEP || p !== KEEP
    if (!isChanged || this.pastLimits) return false
    const { motor, wayPerTurn } = machine.travel
    driven.isStuck ??= standsStill(ground, [{ pumps: pumpsOf(machine, this.drivers), motor, wayPerTurn }])
    return driven.isStuck
  }

  /**
   * The oil of none of these candidates may be as hot as it gets: looked at where the cooler is settled and what drives, for it is
   * dear to work out.
   */
  tooHot(choices: Candidate): boolean {
    const driven = this.drivenBy(choices)
    if (this.pastLimits || driven === null || choices.length < this.settledAt) return false
    const [base] = basesOf(this.ground, driven)
    if (base === undefined) return false
    const plant = preparePlant(base.machine, this.question.loaded.scenario.site)
    const coolest = this.oil.least(choices.slice(0, this.settledAt), driven)
    if (allTooHot(this.question, coolest, plant)) return true
    const mayBe = choices.length > this.settledAt && allTooHot(this.question, coolest + NEAR, plant)
    return mayBe && allTooHot(this.question, this.oil.least(choices, driven), plant)
  }

  /** A hose is chosen for a line to the attachment that goes with a second pump: a new circuit has its own. */
  private choosesLost(choices: Candidate): boolean {
    const { driving } = this.ground
    if (driving === null || !bringsCircuit(driving.place, choiceOf(driving, choices) ?? KEEP)) return false
    return choices.some((option, i) => option !== KEEP && this.auxiliary[i] === true)
  }

  /** Most that a candidate scores which begins with these choices; null: none of them can be built. */
  high(choices: Candidate): number | null {
    const driven = this.drivenBy(choices)
    if (driven !== null && this.choosesLost(choices)) return null
    const high = driven?.high ?? knownIn(this.highs, choices.join(), () => this.highOf(choices))
    return Number.isNaN(high) ? null : high
  }

  /** Not so where some other wish than the measured one cannot be met: the attachment's oil, or the temperature. */
  mayMeet(choices: Candidate): boolean {
    const { ground, question } = this
    const { attachment, oilBelow } = question.wants
    const pump = choiceOf(ground.driving, choices)
    if (attachment !== null && question.measure !== 'attachment-flow' && pump !== undefined) {
      const mu = thickest(ground, choiceOf(ground.oil, choices))
      const flow = attachmentMost(ground, choices, mu)
      if (flow < lpmFromCubicMetresPerSecond(attachment.flow) * (1 - HAIR)) return false
    }
    const isOilTold =
      oilBelow !== null && question.measure !== 'oil-temperature' && choices.length >= this.drivingPlaces
    if (!isOilTold) return true
    const driven = this.drivenBy(choices)
    const coolest = this.oil.least(choices.slice(0, this.settledAt), driven)
    if (coolest > oilBelow + HAIR) return false
    return coolest + NEAR < oilBelow || this.oil.least(choices, driven) <= oilBelow + HAIR
  }

  /** NaN where none of them can be built. */
  private highOf(choices: Candidate): number {
    const { ground, question } = this
    const [m, s, p] = [ground.motor, ground.sprocket, ground.driving].map((known) => choiceOf(known, choices))
    const oil = choiceOf(ground.oil, choices)
    const cannot = (known: Known | null, option: number | undefined) =>
      option !== undefined &&
      (pumpCannot(ground, known, option) ||
        (!this.pastLimits && tooStrong(ground, known, option, thinnest(ground, oil))))
    if ([ground.driving, ...ground.others].some((known) => cannot(known, choiceOf(known, choices)))) return Number.NaN
    if (m === undefined || s === undefined || p === undefined) return Number.POSITIVE_INFINITY
    const drives = this.drivesFor(m, s, p)
    const isChanged = m !== KEEP || s !== KEEP || p !== KEEP
    if (isChanged && !this.pastLimits && standsStill(ground, drives)) return Number.NaN
    const mu = thickest(ground, oil)
    switch (question.measure) {
      case 'travel-speed':
        return Math.min(
          this.pastLimits ? Number.POSITIVE_INFINITY : fastestAllowed(ground),
          Math.max(...drives.map((drive) => fastest(ground.plant, drive, mu, ground.mayStarve))),
        )
      case 'attachment-flow':
        return attachmentMost(ground, choices, mu)
      default:
        // Worked out with the cooler, in tight().
        return -question.loaded.scenario.site.ambient
    }
  }
}
