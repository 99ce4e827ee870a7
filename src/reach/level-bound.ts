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
import { type Conditions, conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel, type TrackState, type TravelState } from '../circuit/travel-point.ts'
import { dropOfCooler, dropOfFilter, dropOfLine, dropOfRestriction, dropOfSwivel } from '../circuit/way.ts'
import { drivingPressure, type LinePlace, workingPressure } from '../consequences/line-places.ts'
import { kindFits } from '../consequences/line-remedies.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Circuit, Cooler, Filter, Line, Machine, QuadraticRestriction, Site, Swivel, Valve } from '../machine.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import { kmhFromMetresPerSecond, pascalsFromBar } from '../units/shop-units.ts'
import type { CubicMetresPerSecond, Metres, Pascals } from '../units/si.ts'
import type { Question } from './assess.ts'
import { type Candidate, KEEP } from './candidate.ts'
import type { Needed } from './flows.ts'
import { isWeak, type Piece, piecesOf } from './pieces.ts'
import type { Place } from './places.ts'

const HAIR = 1e-6
/** A place that is still open. */
const OPEN = 0
/** Most that a cooler adds behind the motors before its bypass opens, with room to spare. */
const COOLER_BYPASS = pascalsFromBar(10)

/** What a place may put into the machine that carries the flow. */
interface Carrier {
  readonly place: Place
  readonly pieces: readonly Piece[]
  /** Of hoses: the bore of each option, what is there first, by line. */
  readonly bores: readonly (readonly Metres[])[]
  readonly widest: readonly Metres[]
  /** Of each piece its class, from 1 on: pieces of one class are one to the oil. */
  readonly classes: readonly number[]
  /** Of each class a piece; none of the class that is open. */
  readonly pieceOf: readonly (number | null)[]
}

/**
 * What is there is a class of its own, for it may change. Hoses chosen are one where their bores are; coolers and filters
 * where they are chosen at all, for their drops are left out.
 */
const classesOf = (place: Place, bores: readonly (readonly Metres[])[]) => {
  const names = new Map<string, number>()
  const pieceOf: (number | null)[] = [null]
  const classes = Array.from({ length: place.options.length + 1 }, (_, piece) => {
    const alike = place.kind === 'hose' ? bores.map((of) => of[piece]).join('+') : 'chosen'
    const isAlike = ['hose', 'filter', 'cooler'].includes(place.kind)
    const name = piece === 0 ? 'own' : isAlike ? alike : `${piece}`
    const known = names.get(name)
    if (known !== undefined) return known
    names.set(name, pieceOf.length)
    pieceOf.push(piece)
    return pieceOf.length - 1
  })
  return { classes, pieceOf }
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
  return { place, pieces: isPiece ? piecesOf(question, place) : [], bores, widest, ...classesOf(place, bores) }
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

/**
 * Most that a place which is still open may add behind a motor, at no more than these flows. What is chosen and too small for
 * the flow is found, so no more flows through it than its check allows; what is kept may have been too small before.
 */
const mostBehind = (
  { place, pieces, bores }: Carrier,
  side: number,
  motorFlow: CubicMetresPerSecond,
  flow: CubicMetresPerSecond,
  at: Conditions,
): Pascals => {
  const within = (bore: Metres, role: 'return' | 'work', most: CubicMetresPerSecond, piece: number) =>
    piece === 0 ? most : Math.min(most, velocityLimits[role].change * (Math.PI / 4) * bore ** 2)
  const drops = Array.from({ length: place.options.length + 1 }, (_, piece): Pascals => {
    const own = pieces[piece]?.machine
    switch (place.kind) {
      case 'hose':
        return place.lines.reduce((sum, { line, role }, k) => {
          if (role !== 'return' && role !== 'work') return sum
          const bore = bores[k]?.[piece] ?? line.bore
          const most = within(bore, role, role === 'work' ? motorFlow : flow, piece)
          return sum + dropOfLine({ ...line, bore }, most, at)
        }, 0)
      case 'valve': {
        const circuit = own?.circuits.filter(({ name }) => place.circuits.includes(name))[side]
        const rated = piece === 0 ? null : (circuit?.valve?.ratedFlow ?? null)
        return 0.5 * dropOfRestriction(circuit?.valve?.restriction, Math.min(flow, rated ?? flow), at)
      }
      case 'swivel': {
        const swivel = own?.travel.swivel ?? null
        const bore = swivel?.bore ?? null
        return dropOfSwivel(swivel, bore === null ? motorFlow : within(bore, 'work', motorFlow, piece), at)
      }
      default:
        return 0
    }
  })
  return Math.max(...drops)
}

/** Restriction as a share of the square of its flow; none where nothing is stated. */
const steepness = (restriction: QuadraticRestriction | null | undefined): number =>
  restriction === null || restriction === undefined ? 0 : restriction.drop / restriction.flow ** 2

/** Pieces of which one takes at least as much as any other of the place, at every flow. */
const narrowestOf = ({ place, pieces, bores, widest }: Carrier): readonly number[] => {
  const all = Array.from({ length: place.options.length + 1 }, (_, piece) => piece)
  const first = (list: readonly number[], size: (piece: number) => number): readonly number[] => {
    const least = Math.min(...list.map(size))
    return list.filter((piece) => size(piece) === least).slice(0, 1)
  }
  if (place.kind === 'hose') {
    // What is there may differ from line to line: then it stands beside the narrowest of the list.
    const chosen = first(all.slice(1), (piece) => bores[0]?.[piece] ?? 0)
    const isOwn = widest.every((_, k) => (bores[k]?.[0] ?? 0) <= (bores[k]?.[chosen[0] ?? 0] ?? 0))
    const isChosen = widest.every((_, k) => (bores[k]?.[0] ?? 0) >= (bores[k]?.[chosen[0] ?? 0] ?? 0))
    return isOwn ? [0] : isChosen ? chosen : [0, ...chosen]
  }
  if (place.kind === 'valve') {
    const of = (piece: number) =>
      pieces[piece]?.machine.circuits.find(({ name }) => place.circuits.includes(name))?.valve?.restriction
    return first(all, (piece) => -steepness(of(piece)))
  }
  if (place.kind !== 'swivel') return [0]
  const swivelOf = (piece: number) => pieces[piece]?.machine.travel.swivel ?? null
  const stated = all.filter((piece) => (swivelOf(piece)?.restriction ?? null) !== null)
  const drilled = all.filter((piece) => !stated.includes(piece) && (swivelOf(piece)?.bore ?? null) !== null)
  const found = [
    ...first(stated, (piece) => -steepness(swivelOf(piece)?.restriction)),
    ...first(drilled, (piece) => swivelOf(piece)?.bore ?? 0),
  ]
  return found.length > 0 ? found : [0]
}

/** A filter that holds back so much at any flow: its bypass is always open. */
const holdingBack = (pressure: Pascals): Filter | null =>
  pressure > 0
    ? {
        part: null,
        ratedFlow: null,
        drop: 1e12,
        reference: { flow: 1, viscosity: 1 },
        fineness: null,
        beta: null,
        bypass: pressure,
      }
    : null

interface Solved {
  readonly machine: Machine
  readonly at: Conditions
  readonly state: TravelState
}

/** A machine with pumps, motors, sprocket and oil as chosen, and what was worked out for it, by code of what carries the flow. */
export class Base {
  readonly machine: Machine
  readonly most = new Map<number, number>()
  readonly keeps = new Map<number, boolean>()
  readonly asked = new Map<number, Needed | null>()
  /** The last one solved: several questions are asked of it in turn. */
  last: { readonly code: number; readonly solved: Solved } | null = null

  constructor(machine: Machine) {
    this.machine = machine
  }
}

const knownIn = <T>(map: Map<number, T>, code: number, work: () => T): T => {
  const known = map.get(code)
  if (known !== undefined) return known
  const made = work()
  map.set(code, made)
  return made
}

export class LevelBound {
  private readonly carriers: readonly Carrier[]
  /** Places that a class of each carrier has in a code. */
  private readonly weights: readonly number[]
  private readonly site: Site
  private readonly ratings: ReadonlyMap<string, number | null>

  constructor(question: Question, places: readonly Place[]) {
    this.carriers = places.map((place) => carrierOf(question, place))
    this.site = question.loaded.scenario.site
    this.ratings = new Map(hoses(question.loaded.shop).map(({ part, figures }) => [part.id, figures.maxPressure]))
    let weight = 1
    this.weights = this.carriers.map(({ pieceOf }) => {
      const own = weight
      weight *= pieceOf.length
      return own
    })
  }

  /**
   * One number for all choices that are one to the oil.
   * @param choices of all places, those that carry the flow from the index `from` on; as far as they are made
   */
  codeOf(choices: Candidate, from: number): number {
    let code = 0
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
    const machine = machineWith(base.machine, this.carriers, this.heldOf(code))
    const plant = preparePlant(machine, this.site)
    const at = conditionsAt(plant, REFERENCE_OIL)
    const solved = { machine, at, state: solveLevel(plant, at) }
    base.last = { code, solved }
    return solved
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
   * Most that is reached.
   * @param code of what carries the flow, as far as it is chosen
   * @returns level speed in km/h
   */
  most(base: Base, code: number): number {
    return knownIn(base.most, code, () => {
      const { machine, state } = this.solve(base, code)
      const held = this.heldOf(code)
      // A machine that stands shows no flows to judge by.
      const mayChange = (i: number) => state.stalled || this.mayChange(i, 0, machine, state)
      const isHose = (i: number) => this.carriers[i]?.place.kind === 'hose'
      const changed = held.map((piece, i) => piece === 0 && mayChange(i))
      // One that is still open may be kept in the end.
      const hoseChanges = held.some(
        (piece, i) => isHose(i) && (changed[i] === true || (piece === null && mayChange(i))),
      )
      const released = this.released(
        code,
        (i) => held[i] !== null && (changed[i] === true || (hoseChanges && !isHose(i))),
      )
      return released === code ? kmhFromMetresPerSecond(state.speed) * (1 + HAIR) : this.most(base, released)
    })
  }

  /**
   * Nothing asks for other motors, whatever is chosen in the end of what is still open: neither speed and flow, nor the
   * pressures, and no hose changes that would ask for bigger ports. A cooler that the oil asks for is allowed for behind the
   * motors.
   */
  keepsMotors(base: Base, code: number): boolean {
    return knownIn(base.keeps, code, () => {
      const { machine, state, at } = this.solve(base, code)
      if (state.stalled) return false
      const held = this.heldOf(code)
      const mayChange = held.map((piece, i) => (piece === 0 || piece === null) && this.mayChange(i, 0, machine, state))
      if (mayChange.some((may, i) => may && this.carriers[i]?.place.kind === 'hose')) return false
      // Another valve, swivel or filter lets more flow: it is looked at with none in the way.
      const released = this.released(code, (i) => held[i] === 0 && mayChange[i] === true)
      if (released !== code) return this.keepsMotors(base, released)
      const { motor } = base.machine.travel
      const pressure = drivingPressure(base.machine) ?? 0
      const within = (value: number, rating: number | null) => rating === null || value <= rating * (1 - HAIR)
      const open = this.carriers.filter((_, i) => held[i] === null)
      return (
        !isWeak(motor.ports.work, pressure) &&
        within(pressure, motor.maxPressure) &&
        state.tracks.every((track, i) => {
          const flow = state.engine.circuits[track.circuit]?.wayFlow ?? 0
          const more = open.reduce((sum, one) => sum + mostBehind(one, i, track.motorFlow, flow, at), 0)
          return (
            within(track.motorSpeed, motor.maxSpeed) &&
            within(track.motorFlow, motor.maxFlow) &&
            within(track.returnPressure + more + COOLER_BYPASS, motor.maxReturnPressure)
          )
        })
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

  /**
   * Least that flows before any consequence, whatever is chosen in the end of what is still open: what is too small for it is
   * asked for at once, whatever follows. A narrower way and more pressure behind the motors only slow the flow. Null where
   * the machine may stand.
   */
  asked(base: Base, code: number): Needed | null {
    return knownIn(base.asked, code, () => {
      const { state: most, at } = this.solve(base, code)
      if (most.stalled) return null
      const held = this.heldOf(code)
      const ways = held.reduce<readonly (readonly number[])[]>(
        (all, piece, i) => {
          const narrowest = piece === null ? narrowestOf(this.carriers[i] as Carrier) : [piece]
          return all.flatMap((one) => narrowest.map((next) => [...one, next]))
        },
        [[]],
      )
      const filter = holdingBack(this.sharedReturn(base, code, most.engine.totalFlow, at))
      const states = ways.map((way) => {
        const machine = { ...machineWith(base.machine, this.carriers, way), filter }
        const plant = preparePlant(machine, this.site)
        return solveLevel(plant, conditionsAt(plant, REFERENCE_OIL))
      })
      if (states.some(({ stalled }) => stalled)) return null
      const least = (pick: (track: TrackState) => number) =>
        Math.min(...states.flatMap(({ tracks }) => tracks.map(pick))) * (1 - HAIR)
      return {
        turns: least(({ motorSpeed }) => motorSpeed),
        motorFlow: least(({ motorFlow }) => motorFlow),
      }
    })
  }
}
