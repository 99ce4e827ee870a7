/**
 * The level point solved with everything that may still be chosen at its best: a bound that is almost what is reached.
 *
 * A machine is put together from the chosen pieces. Of a place that is still open its drop is left out (valve, swivel, filter,
 * cooler) or the widest hose that the list has for it is taken. On the way to the motors a drop at a flow falls with the bore
 * and grows with the flow; pump flow falls with pressure, and so does the speed of the engine. So the flow at which pump
 * and way balance is no less than with what is chosen in the end, and neither is the speed.
 *
 * What was chosen stays (assess.ts); what is kept may still be changed by a consequence. At the flows of this very bound,
 * which are the highest that any of the ways has, it is looked whether a check could ask for it: velocity, rated flow, rated
 * pressure. Where none can, what is kept will be there; else the place counts as open. Valve and swivel are asked to take a bigger hose
 * only where a hose is.
 *
 * Only where no suction may starve a pump (drive.ts), and where both sides are alike (flows.ts).
 */
import { conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel, type TravelState } from '../circuit/travel-point.ts'
import { drivingPressure, type LinePlace, workingPressure } from '../consequences/line-places.ts'
import { kindFits } from '../consequences/line-remedies.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Circuit, Cooler, Filter, Line, Machine, Site, Swivel, Valve } from '../machine.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import { kmhFromMetresPerSecond, pascalsFromBar } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'
import type { Question } from './assess.ts'
import { KEEP } from './candidate.ts'
import type { Needed } from './flows.ts'
import { isWeak, type Piece, piecesOf } from './pieces.ts'
import type { Place } from './places.ts'

const HAIR = 1e-6
/** Most that a cooler adds behind the motors before its bypass opens, with room to spare. */
const COOLER_BYPASS = pascalsFromBar(10)

/** What a place may put into the machine that carries the flow. */
interface Carrier {
  readonly place: Place
  readonly pieces: readonly Piece[]
  /** Of hoses: the bore of each option, what is there first, by line. */
  readonly bores: readonly (readonly Metres[])[]
  readonly widest: readonly Metres[]
}

const carrierOf = (question: Question, place: Place): Carrier => {
  const stocked = hoses(question.loaded.shop)
  const boreOf = (id: string) => stocked.find(({ part }) => part.id === id)?.figures.bore ?? null
  const bores = place.lines.map(({ line }) => [
    line.bore,
    ...place.options.map(({ part }) => boreOf(part.id) ?? line.bore),
  ])
  const widest = place.lines.map((line) =>
    Math.max(
      line.line.bore,
      ...stocked.flatMap(({ figures }) =>
        figures.bore !== null && kindFits(line, figures.kind) ? [figures.bore] : [],
      ),
    ),
  )
  const isPiece = place.kind !== 'hose'
  return { place, pieces: isPiece ? piecesOf(question, place) : [], bores, widest }
}

const withBore = (line: Line | null, bores: ReadonlyMap<string, Metres>): Line | null => {
  const bore = line === null ? undefined : bores.get(line.id)
  return line === null || bore === undefined ? line : { ...line, bore }
}

/** What each place of the carriers holds: index of the piece, or null for what is open. */
type Held = readonly (number | null)[]

const machineWith = (base: Machine, carriers: readonly Carrier[], held: Held): Machine => {
  const bores = new Map<string, Metres>()
  let swivel: Swivel | null = base.travel.swivel
  const filter: Filter | null = null
  const cooler: Cooler | null = null
  const valves = new Map<string, Valve | null>()
  for (const [i, { place, pieces, bores: known, widest }] of carriers.entries()) {
    const piece = held[i] ?? null
    if (place.kind === 'hose')
      for (const [k, line] of place.lines.entries())
        bores.set(line.line.id, (piece === null ? widest[k] : known[k]?.[piece]) ?? line.line.bore)
    if (place.kind === 'swivel') swivel = piece === null ? null : (pieces[piece]?.machine.travel.swivel ?? null)
    if (place.kind === 'valve')
      for (const name of place.circuits)
        valves.set(
          name,
          piece === null ? null : (pieces[piece]?.machine.circuits.find((one) => one.name === name)?.valve ?? null),
        )
  }
  const circuitOf = (circuit: Circuit): Circuit => ({
    ...circuit,
    valve: valves.has(circuit.name) ? (valves.get(circuit.name) ?? null) : circuit.valve,
    lines: {
      suction: circuit.lines.suction,
      pressure: withBore(circuit.lines.pressure, bores),
      return: withBore(circuit.lines.return, bores),
    },
  })
  return {
    ...base,
    filter,
    cooler,
    circuits: base.circuits.map(circuitOf),
    travel: { ...base.travel, swivel, lines: base.travel.lines.map((line) => withBore(line, bores) as Line) },
  }
}

const velocityIn = (line: LinePlace, bore: Metres, machine: Machine, state: TravelState): number => {
  const area = (Math.PI / 4) * bore ** 2
  if (line.role === 'work') return Math.max(...state.tracks.map(({ motorFlow }) => motorFlow)) / area
  const index = machine.circuits.findIndex(({ name }) => name === line.circuit)
  return (state.engine.circuits[index]?.pumpFlow ?? 0) / area
}

interface Solved {
  readonly machine: Machine
  readonly state: TravelState
}

export class LevelBound {
  /** The last one solved: several questions are asked of it in turn. */
  private last: { readonly id: string; readonly solved: Solved } | null = null
  private readonly carriers: readonly Carrier[]
  private readonly site: Site
  private readonly known = new Map<string, number>()
  private readonly ratings: ReadonlyMap<string, number | null>

  constructor(question: Question, places: readonly Place[]) {
    this.carriers = places.map((place) => carrierOf(question, place))
    this.site = question.loaded.scenario.site
    this.ratings = new Map(hoses(question.loaded.shop).map(({ part, figures }) => [part.id, figures.maxPressure]))
  }

  private solve(base: Machine, key: string, held: Held): Solved {
    const id = `${key}/${this.nameOf(held)}`
    if (this.last !== null && this.last.id === id) return this.last.solved
    const solved = this.solveAnew(base, held)
    this.last = { id, solved }
    return solved
  }

  private solveAnew(base: Machine, held: Held): Solved {
    const machine = machineWith(base, this.carriers, held)
    const plant = preparePlant(machine, this.site)
    return { machine, state: solveLevel(plant, conditionsAt(plant, REFERENCE_OIL)) }
  }

  /** A check could ask for another one at these flows. */
  private mayChange(i: number, piece: number, machine: Machine, state: TravelState): boolean {
    const { place, pieces, bores } = this.carriers[i] as Carrier
    const flows = state.engine.circuits.map(({ pumpFlow }) => pumpFlow)
    if (place.kind === 'hose')
      return place.lines.some((line, k) => {
        if (line.role === 'suction' || line.role === 'auxiliary') return false
        const rating =
          piece === 0 ? line.line.maxPressure : (this.ratings.get(place.options[piece - 1]?.part.id ?? '') ?? null)
        const weak =
          line.workingPressure !== null &&
          ((rating !== null && rating < line.workingPressure * (1 - HAIR)) ||
            (line.line.ends ?? []).some((end) => isWeak(end, line.workingPressure ?? 0, true)))
        const velocity = velocityIn(line, bores[k]?.[piece] ?? line.line.bore, machine, state)
        return weak || velocity > velocityLimits[line.role].change * (1 - HAIR)
      })
    const own = pieces[piece]?.machine
    if (own === undefined) return false
    if (place.kind === 'valve')
      return place.circuits.some((name) => {
        const index = own.circuits.findIndex((circuit) => circuit.name === name)
        const circuit = own.circuits[index]
        const rated = circuit?.valve?.ratedFlow ?? null
        const most = circuit?.valve?.maxPressure ?? null
        return (
          (rated !== null && (flows[index] ?? 0) > rated * (1 - HAIR)) ||
          (most !== null && circuit !== undefined && workingPressure(circuit) > most * (1 - HAIR)) ||
          (circuit !== undefined &&
            [circuit.valve?.ports.inlet, circuit.valve?.ports.work].some((port) =>
              isWeak(port ?? null, workingPressure(circuit)),
            ))
        )
      })
    if (place.kind === 'filter') {
      const rated = own.filter?.ratedFlow ?? null
      return rated !== null && state.engine.totalFlow * own.cylinderAreaRatio > rated * (1 - HAIR)
    }
    if (place.kind !== 'swivel') return false
    const { swivel } = own.travel
    const flow = Math.max(...state.tracks.map(({ motorFlow }) => motorFlow))
    const fast =
      swivel !== null &&
      swivel.bore !== null &&
      flow / ((Math.PI / 4) * swivel.bore ** 2) > velocityLimits.work.change * (1 - HAIR)
    const most = swivel?.maxPressure ?? null
    const pressure = drivingPressure(own) ?? 0
    return fast || isWeak(swivel?.ports.work ?? null, pressure) || (most !== null && pressure > most * (1 - HAIR))
  }

  /**
   * @param base the machine with pumps, motors, sprocket and oil as chosen
   * @param key tells these choices apart
   * @param choices of the places that carry the flow, as far as they are made
   * @returns level speed in km/h
   */
  most(base: Machine, key: string, choices: readonly number[]): number {
    const chosen: Held = this.carriers.map((_, i) => {
      const option = choices[i]
      return option === undefined ? null : option - KEEP
    })
    return this.mostHeld(base, key, chosen)
  }

  /**
   * With every place chosen, nothing asks for other motors: neither speed and flow, nor the pressures, and no hose changes
   * that would ask for bigger ports. A cooler that the oil asks for is allowed for behind the motors.
   */
  keepsMotors(base: Machine, key: string, choices: readonly number[]): boolean {
    if (choices.length < this.carriers.length) return false
    const held: Held = choices.map((option) => option - KEEP)
    const { machine, state } = this.solve(base, key, held)
    const { motor } = base.travel
    const pressure = drivingPressure(base) ?? 0
    if (state.stalled || held.some((piece, i) => piece === 0 && this.mayChange(i, piece, machine, state))) return false
    const within = (value: number, rating: number | null) => rating === null || value <= rating * (1 - HAIR)
    return (
      !isWeak(motor.ports.work, pressure) &&
      within(pressure, motor.maxPressure) &&
      state.tracks.every(
        (track) =>
          within(track.motorSpeed, motor.maxSpeed) &&
          within(track.motorFlow, motor.maxFlow) &&
          within(track.returnPressure + COOLER_BYPASS, motor.maxReturnPressure),
      )
    )
  }

  /**
   * What flows before any consequence, with every place chosen: what is too small for it is asked for at once, whatever
   * follows. Null where the machine stands, or where a cooler that is there takes some of it.
   */
  asked(base: Machine, key: string, choices: readonly number[]): Needed | null {
    const cooler = this.carriers.findIndex(({ place }) => place.kind === 'cooler')
    const isKept = cooler < 0 || choices[cooler] === KEEP
    if (choices.length < this.carriers.length || (isKept && base.cooler !== null)) return null
    const { state } = this.solve(
      base,
      key,
      choices.map((option) => option - KEEP),
    )
    if (state.stalled) return null
    const least = (values: readonly number[]) => Math.min(...values) * (1 - HAIR)
    return {
      turns: least(state.tracks.map(({ motorSpeed }) => motorSpeed)),
      motorFlow: least(state.tracks.map(({ motorFlow }) => motorFlow)),
    }
  }

  private mostHeld(base: Machine, key: string, chosen: Held): number {
    const id = `${key}/${this.nameOf(chosen)}`
    const known = this.known.get(id)
    if (known !== undefined) return known
    const { machine, state } = this.solve(base, key, chosen)
    // A machine that stands shows no flows to judge by.
    const changed = chosen.map((piece, i) => piece === 0 && (state.stalled || this.mayChange(i, piece, machine, state)))
    const isHose = (i: number) => this.carriers[i]?.place.kind === 'hose'
    const hoseChanges =
      changed.some((is, i) => is && isHose(i)) || chosen.some((piece, i) => piece === null && isHose(i))
    const released: Held = chosen.map((piece, i) => (changed[i] === true || (hoseChanges && !isHose(i)) ? null : piece))
    const same = released.every((piece, i) => piece === chosen[i])
    const speed = kmhFromMetresPerSecond(state.speed) * (1 + HAIR)
    const most = same ? speed : this.mostHeld(base, key, released)
    this.known.set(id, most)
    return most
  }

  /** Options of one bore are one to the oil. */
  private nameOf(held: Held): string {
    return held
      .map((piece, i) => {
        if (piece === null) return '*'
        const { bores, place } = this.carriers[i] as Carrier
        if (place.kind !== 'hose') return piece
        const option = place.options[piece - 1]?.part.id ?? ''
        return `${bores.map((of) => of[piece]).join('+')}@${piece === 0 ? 'own' : this.ratings.get(option)}`
      })
      .join()
  }
}
