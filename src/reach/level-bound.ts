/**
 * The level point solved with everything that may still be chosen at its best: a bound that is almost what is reached.
 * Long because every question is asked of the same solved machines, kept by the code of what carries the flow.
 *
 * A machine is put together from the chosen pieces. Of a place that is still open the widest hose of the list is taken, or the
 * valve or swivel that takes the least (carriers.ts), the gentlest cooler (gentle-coolers.ts), and no filter: of a filter only the
 * drop of the one that is there counts, while it is kept. On the way to the motors a drop at a flow falls with the bore and grows
 * with the flow; pump flow falls with pressure, and so does the speed of the engine. So the flow at which pump and way balance is
 * no less than with what is chosen in the end, and neither is the speed.
 *
 * What was chosen stays (assess.ts); what is kept may still be changed by a consequence. At the flows of this very bound,
 * which are the highest that any of the ways has, it is looked whether a check could ask for it: velocity, rated flow, rated
 * pressure. Where none can, what is kept will be there; else the place counts as open. Valve and swivel are asked to take a bigger hose
 * only where a hose is.
 *
 * Only where no suction may starve a pump (drive.ts). The sides need not be alike: each balances its own way, and an engine
 * that carries less of the one turns faster for both.
 */

import { differentialFor } from '../circuit/forces.ts'
import { type Conditions, conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel, solvePoint, type TrackState } from '../circuit/travel-point.ts'
import { dropOfCooler, dropOfFilter } from '../circuit/way.ts'
import { drivingPressure } from '../consequences/line-places.ts'
import { motorLeak } from '../formulas/motor.ts'
import type { Machine, Site } from '../machine.ts'
import { kmhFromMetresPerSecond, pascalsFromBar } from '../units/shop-units.ts'
import type { CubicMetresPerRev, CubicMetresPerSecond, Pascals } from '../units/si.ts'
import type { Question } from './assess.ts'
import type { Base, Solved } from './base.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { holdingBack, mostBehind, narrowestOf } from './carrier-drops.ts'
import { type Carrier, carrierOf, type Held, machineWith } from './carriers.ts'
import type { Needed } from './flows.ts'
import { type GentleCoolers, gentleCoolers } from './gentle-coolers.ts'
import { knownIn } from './known-in.ts'
import { type Bounder, bounderOf, circulationOf } from './line-bounds.ts'
import { mayChange, type Was, wasOf } from './may-change.ts'
import { isWeak } from './pieces.ts'
import { carryingPlaces, type Place } from './places.ts'
import { isPossible, NOTHING, pricesOf } from './sums.ts'

const HAIR = 1e-6
/** Beside a relief or a bypass that opens the solved speeds of two machines may be off by a little more. */
const SOLVED = 3e-5
/** A place that is still open. */
const OPEN = 0
/** What is there. */
const OWN = 1
/** Most that a cooler adds behind the motors before its bypass opens, with room to spare. */
const COOLER_BYPASS = pascalsFromBar(10)

/** @param i index of the carrier */
export type MayStay = (i: number, option: number) => boolean

/** Lines by id, circuits by name. */
export interface Covered {
  readonly lines: ReadonlySet<string>
  readonly valves: ReadonlySet<string>
}

export class LevelBound {
  private readonly carriers: readonly Carrier[]
  /** Places that a class of each carrier has in a code. */
  private readonly weights: readonly number[]
  private readonly site: Site
  private readonly was: Was
  private readonly bounders: readonly Bounder[]
  /** Of what is there and has no choice: it may still be changed by a consequence. */
  private readonly fixed: number
  /** Index among the carriers. */
  private readonly filter: number
  private readonly cooler: number
  private readonly coolers: GentleCoolers

  constructor(question: Question, places: readonly Place[]) {
    const fixed = carryingPlaces(question.start.before.machine, question.loaded.shop, places)
    this.carriers = [...places, ...fixed].map((place) => carrierOf(question, place))
    this.site = question.loaded.scenario.site
    this.was = wasOf(question)
    const [prices, circulation] = [pricesOf(question.loaded.shop, 'any'), circulationOf(question)]
    this.bounders = places.map((place) => bounderOf(question, place, prices, circulation))
    let weight = 1
    this.weights = this.carriers.map(({ pieceOf }) => {
      const own = weight
      weight *= pieceOf.length
      return own
    })
    this.filter = this.carriers.findIndex(({ place }) => place.kind === 'filter')
    this.cooler = this.carriers.findIndex(({ place }) => place.kind === 'cooler')
    this.coolers = gentleCoolers(question)
    this.fixed = fixed.reduce((sum, _, i) => sum + (this.weights[places.length + i] as number) * OWN, 0)
  }

  /**
   * One number for all choices that are one to the oil.
   * @param choices of all places, those that carry the flow from the index `from` on; as far as they are made
   */
  codeOf(choices: Candidate, from: number): number {
    let code = this.fixed
    for (let i = from; i < choices.length; i++)
      code +=
        (this.weights[i - from] as number) * (this.carriers[i - from]?.classes[(choices[i] as number) - KEEP] as number)
    return code
  }

  private classAt(code: number, i: number): number {
    return Math.floor(code / (this.weights[i] as number)) % (this.carriers[i]?.pieceOf.length ?? 1)
  }

  private heldOf(code: number): Held {
    return this.carriers.map(({ pieceOf }, i) => pieceOf[this.classAt(code, i)] ?? null)
  }

  /** The code with some places open. */
  private released(code: number, isOpen: (i: number) => boolean): number {
    return this.weights.reduce(
      (sum, weight, i) => (isOpen(i) ? sum + weight * (OPEN - this.classAt(code, i)) : sum),
      code,
    )
  }

  private solve(base: Base, code: number): Solved {
    if (base.last !== null && base.last.code === code) return base.last.solved
    const held = this.heldOf(code)
    // Of two sides that differ, or of one in neutral, less in the way of the one would be more through filter and cooler for the
    // other: then both are left out.
    const filter = base.isEven && held[this.filter] === 0 ? base.machine.filter : null
    const isChosen = (held[this.cooler] ?? 0) > 0
    const cooler = base.isEven ? this.coolers[isChosen ? 'chosen' : 'kept'] : null
    const machine = { ...machineWith(base.machine, this.carriers, held, true), filter, cooler }
    const plant = preparePlant(machine, this.site)
    const at = conditionsAt(plant, REFERENCE_OIL)
    const state = solveLevel(plant, at)
    const { displacement } = machine.travel.motor
    const slow =
      state.stalled || state.displacement === displacement ? null : solvePoint(plant, 'level', displacement, at)
    const solved = { machine, at, state, states: slow === null || slow.stalled ? [state] : [state, slow] }
    base.last = { code, solved }
    return solved
  }

  /**
   * The code with everything open that a consequence may change, whatever is chosen in the end of what is still open.
   * @param code of what carries the flow, as far as it is chosen
   */
  settled(base: Base, code: number): number {
    return knownIn(base.settled, code, () => {
      const { machine, state, states } = this.solve(base, code)
      const held = this.heldOf(code)
      // A machine that stands shows no flows to judge by.
      const asksFor = (i: number) =>
        state.stalled || states.some((one) => mayChange(this.carriers[i] as Carrier, machine, one, this.was))
      const isHose = (i: number) => this.carriers[i]?.place.kind === 'hose'
      const changed = held.map((piece, i) => piece === 0 && asksFor(i))
      // One that is still open may be kept in the end.
      const hoseChanges = held.some((piece, i) => isHose(i) && (changed[i] === true || (piece === null && asksFor(i))))
      const released = this.released(
        code,
        (i) => held[i] !== null && (changed[i] === true || (hoseChanges && !isHose(i))),
      )
      return released === code ? code : this.settled(base, released)
    })
  }

  /**
   * Most that is reached.
   * @param code of what carries the flow, as far as it is chosen
   * @returns level speed in km/h
   */
  most(base: Base, code: number): number {
    const settled = this.settled(base, code)
    return knownIn(base.most, settled, () => {
      const speeds = this.solve(base, settled).states.map(({ speed }) => kmhFromMetresPerSecond(speed))
      return Math.max(...speeds) * (1 + SOLVED)
    })
  }

  /** What leaks past one motor in a displacement while it drives on the level: the same whatever carries the flow. */
  leakIn(base: Base, displacement: CubicMetresPerRev): CubicMetresPerSecond {
    const { machine, at, state } = this.solve(base, 0)
    const { motor } = machine.travel
    const { applied, motors } = state.demand
    return motorLeak(
      motor.leak,
      differentialFor(machine, applied, motors, displacement),
      motor.referenceViscosity,
      at.mu,
    )
  }

  /**
   * The machine with what is held by a code: no valve, swivel, filter or cooler where it is open, and the widest hose. What
   * no carrier is about stays as it is.
   */
  heldIn(base: Base, code: number): Machine {
    return machineWith(base.machine, this.carriers, this.heldOf(code), false)
  }

  /** Of valve and swivel those that are there in the end by a settled code. */
  keptIn(code: number): readonly ('valve' | 'swivel')[] {
    const held = this.heldOf(code)
    return (['valve', 'swivel'] as const).filter((kind) =>
      this.carriers.every(({ place }, i) => place.kind !== kind || held[i] !== null),
    )
  }

  /** Lines and circuits whose hoses and valves the carriers are about; a line to the attachment only where it was chosen. */
  coveredIn(code: number): Covered {
    const held = this.heldOf(code)
    const about = this.carriers.filter(
      ({ place }, i) => held[i] !== 0 || place.lines.every(({ role }) => role !== 'auxiliary'),
    )
    return {
      lines: new Set(about.flatMap(({ place }) => place.lines.map(({ line }) => line.id))),
      valves: new Set(about.flatMap(({ place }) => (place.kind === 'valve' ? place.circuits : []))),
    }
  }

  /**
   * Nothing asks for other motors, whatever is chosen in the end of what is still open: neither speed and flow, nor the
   * pressures, and no hose changes that would ask for bigger ports. A cooler that the oil asks for is allowed for behind the
   * motors.
   */
  keepsMotors(base: Base, code: number): boolean {
    return knownIn(base.keeps, code, () => {
      const { machine, state, states, at } = this.solve(base, code)
      if (state.stalled) return false
      const held = this.heldOf(code)
      const changes = held.map(
        (piece, i) =>
          (piece === 0 || piece === null) &&
          states.some((one) => mayChange(this.carriers[i] as Carrier, machine, one, this.was)),
      )
      if (changes.some((may, i) => may && this.carriers[i]?.place.kind === 'hose')) return false
      // Another valve, swivel or filter lets more flow: it is looked at with none in the way.
      const released = this.released(code, (i) => held[i] === 0 && changes[i] === true)
      if (released !== code) return this.keepsMotors(base, released)
      const { motor } = base.machine.travel
      const pressure = drivingPressure(base.machine) ?? 0
      const within = (value: number, rating: number | null) => rating === null || value <= rating * (1 - HAIR)
      const open = this.carriers.filter((_, i) => held[i] === null)
      return (
        !isWeak(motor.ports.work, pressure) &&
        within(pressure, motor.maxPressure) &&
        states.every(({ tracks, engine }) =>
          tracks.every((track, i) => {
            const flow = engine.circuits[track.circuit]?.wayFlow ?? 0
            const more = open.reduce((sum, one) => sum + mostBehind(one, i, track.motorFlow, flow, at), 0)
            return (
              within(track.motorSpeed, motor.maxSpeed) &&
              within(track.motorFlow, motor.maxFlow) &&
              within(track.returnPressure + more + COOLER_BYPASS, motor.maxReturnPressure)
            )
          }),
        )
      )
    })
  }

  /** Most that filter and cooler may hold back at no more than this flow. */
  private sharedReturn(base: Base, code: number, flow: CubicMetresPerSecond, at: Conditions): Pascals {
    const most = (kind: 'filter' | 'cooler', there: Machine, dropOf: typeof dropOfFilter): Pascals => {
      const i = this.carriers.findIndex(({ place }) => place.kind === kind)
      const carrier = this.carriers[i]
      if (carrier === undefined) return dropOf(there, flow, at)
      const chosen = this.classAt(code, i)
      const pieces = carrier.pieces.filter((_, piece) => chosen === OPEN || carrier.classes[piece] === chosen)
      return Math.max(...pieces.map((piece) => dropOf(piece.machine, flow, at)))
    }
    return most('filter', base.machine, dropOfFilter) + most('cooler', base.machine, dropOfCooler)
  }

  /** The narrowest that may be there in the end: of some places more than one, for which takes most depends on the flow. */
  private narrowestWays(code: number, mayStay: MayStay = () => true): readonly Held[] {
    return this.heldOf(code).reduce<readonly (readonly number[])[]>(
      (all, piece, i) => {
        const narrowest =
          piece === null ? narrowestOf(this.carriers[i] as Carrier, (option) => mayStay(i, option)) : [piece]
        return all.flatMap((one) => narrowest.map((next) => [...one, next]))
      },
      [[]],
    )
  }

  /** Not so of what is too small for the least that flows: a check finds it, and what was chosen does not stay. */
  private mayStayAt(least: Needed): MayStay {
    const bounds = this.bounders.map((bounder) => bounder(least))
    return (i, option) => isPossible(bounds[i]?.option(option) ?? NOTHING)
  }

  /**
   * Machines of which one takes at least as much as any way within limits does, filter and cooler at their bypass.
   * @param code of what carries the flow, as far as it is chosen
   */
  narrowest(base: Base, code: number): readonly Machine[] {
    const least = this.asked(base, code)
    const mayStay = least === null ? undefined : this.mayStayAt(least)
    const bypass = (kind: 'filter' | 'cooler') =>
      Math.max(
        base.machine[kind]?.bypass ?? 0,
        ...this.carriers.flatMap(({ place, pieces }) =>
          place.kind === kind ? pieces.map(({ machine }) => machine[kind]?.bypass ?? 0) : [],
        ),
      )
    const filter = holdingBack(bypass('filter') + bypass('cooler'))
    return this.narrowestWays(code, mayStay).map((way) => ({
      ...machineWith(base.machine, this.carriers, way, false),
      filter,
    }))
  }

  /** Least that flows in some ways; null where one of them may stand. */
  private leastOf(base: Base, code: number, ways: readonly Held[]): Needed | null {
    const { state: most, states: all, at } = this.solve(base, code)
    if (most.stalled) return null
    const flow = Math.max(...all.map(({ engine }) => engine.totalFlow))
    const filter = holdingBack(this.sharedReturn(base, code, flow, at))
    const states = ways.map((way) => {
      const machine = { ...machineWith(base.machine, this.carriers, way, false), filter }
      const plant = preparePlant(machine, this.site)
      return solveLevel(plant, conditionsAt(plant, REFERENCE_OIL))
    })
    // One that falls back to the large displacement: others between may creep in the small one over an open relief.
    if (states.some(({ stalled, displacement }) => stalled || displacement !== most.displacement)) return null
    const least = (pick: (track: TrackState) => number) =>
      Math.min(...states.flatMap(({ tracks }) => tracks.map(pick))) * (1 - HAIR)
    return {
      turns: least(({ motorSpeed }) => motorSpeed),
      motorFlow: least(({ motorFlow }) => motorFlow),
      totalFlow: Math.min(...states.map(({ engine }) => engine.totalFlow)) * (1 - HAIR),
    }
  }

  /**
   * Least that flows before any consequence, whatever is chosen in the end of what is still open: what is too small for it is
   * asked for at once, whatever follows. A narrower way and more pressure behind the motors only slow the flow. What is too small
   * for it does not stay where it was chosen, so the least is that of what may: looked for until nothing more falls out. Null where
   * the machine may stand.
   */
  asked(base: Base, code: number): Needed | null {
    return knownIn(base.asked, code, () => {
      let ways = this.narrowestWays(code)
      let found = this.leastOf(base, code, ways)
      for (let before = ''; found !== null && before !== ways.join(); ) {
        before = ways.join()
        ways = this.narrowestWays(code, this.mayStayAt(found))
        found = ways.join() === before ? found : this.leastOf(base, code, ways)
      }
      return found
    })
  }
}
