/**
 * The places that decide how far a way reaches: pumps, motors, sprocket, oil. What was chosen stays (assess.ts); of what is
 * kept its family counts (pieces.ts): the fastest of it, and the cheapest.
 */
import { conditionsAt, type Plant, preparePlant, STARVED_INLET } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { drivingCircuits, drivingPressure, workingPressure } from '../consequences/line-places.ts'
import type { Circuit, Machine, Pump } from '../machine.ts'
import { thinAir } from '../tables/limits.ts'
import { pascalsFromBar, revsPerSecondFromRpm } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import type { Question } from './assess.ts'
import type { Base } from './base.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { familyOf, motorLeads, type Piece, piecesOf, pumpsLead, pumpsOf } from './pieces.ts'
import { bringsCircuit, type Place, type PlaceKind } from './places.ts'
import { suits } from './suits.ts'

/** A place with its pieces (what is there first, then the options) and their families. */
export interface Known {
  readonly index: number
  readonly place: Place
  readonly pieces: readonly Piece[]
  readonly families: readonly (readonly number[])[]
}

const knownPlace = (question: Question, index: number, place: Place): Known => {
  const pieces = piecesOf(question, place)
  const { machine, more } = question.start.before
  const driving = drivingPressure(machine) ?? 0
  const circuits = place.circuits.flatMap((name) => machine.circuits.find((one) => one.name === name) ?? [])
  const pressures = circuits.map(workingPressure)
  const idle = revsPerSecondFromRpm(more.highIdleRpm)
  // A consequence takes no pump that comes with a circuit of its own.
  const pumps = pieces.map(({ machine: of, option }) =>
    bringsCircuit(place, option) ? [] : pumpsOf(of, place.circuits),
  )
  const motors = pieces.map((piece) => piece.machine.travel.motor)
  const families = pieces.map((_, own) => {
    // What was chosen stays; what is kept may be replaced by a consequence.
    if (own > 0) return [own]
    if (place.kind === 'pump')
      return familyOf(pumps, own, (one, other) => pumpsLead(one, other, suits(one, circuits, idle), pressures))
    return place.kind === 'motor' ? familyOf(motors, own, (one, other) => motorLeads(one, other, driving)) : [own]
  })
  return { index, place, pieces, families }
}

/** What the bounds read of the machine and of every choice; worked out once for a search. */
export interface Ground {
  readonly question: Question
  readonly plant: Plant
  readonly motor: Known | null
  readonly sprocket: Known | null
  /** Pumps of the circuits that drive; null where they are no place. */
  readonly driving: Known | null
  /** Pumps of circuits that work the attachment and do not drive: each pump is a place of its own. */
  readonly others: readonly Known[]
  readonly oil: Known | null
  /** Dynamic viscosity at 50 degC of each oil, what is there first. */
  readonly viscosities: readonly PascalSeconds[]
  readonly mayStarve: boolean
  /** Machines put together so far, by the choices of what drives (driven.ts): one search after the other asks for them. */
  readonly bases: Map<string, readonly Base[]>
}

const muOf = (question: Question, machine: Machine): PascalSeconds =>
  conditionsAt(preparePlant(machine, question.loaded.scenario.site), REFERENCE_OIL).mu

/**
 * A way within limits leaves every pump its inlet pressure, well above the one that starves it; but not where the machine is
 * short of it already, nor where thin air makes that a mere watch.
 */
const mayStarve = ({ start }: Question, pumps: readonly Pump[]): boolean => {
  const isShort = start.beforeJudged.findings.some(
    ({ check, severity }) => check.startsWith('inlet-pressure') && severity !== 'ok',
  )
  const air = pascalsFromBar(start.before.more.atmosphereBar)
  const thin = pascalsFromBar(thinAir.value)
  return isShort || pumps.some(({ minInletPressure: least }) => least <= STARVED_INLET || air - least < thin)
}

export const groundOf = (question: Question): Ground => {
  const { start, places, loaded } = question
  const { machine } = start.before
  const drivingNames = drivingCircuits(machine).map(({ name }) => name)
  const all = (kind: PlaceKind): readonly Known[] =>
    places.flatMap((place, index) => (place.kind === kind ? [knownPlace(question, index, place)] : []))
  const find = (kind: PlaceKind): Known | null => all(kind)[0] ?? null
  const drives = ({ place }: Known) => place.circuits.some((name) => drivingNames.includes(name))
  const pumps = all('pump')
  const oil = find('oil')
  return {
    question,
    plant: preparePlant(machine, loaded.scenario.site),
    motor: find('motor'),
    sprocket: find('sprocket'),
    // Whatever drives is changed alike: no second place is about it (places.ts).
    driving: pumps.find(drives) ?? null,
    others: pumps.filter((known) => !drives(known)),
    oil,
    viscosities: oil === null ? [muOf(question, machine)] : oil.pieces.map((piece) => muOf(question, piece.machine)),
    mayStarve: mayStarve(
      question,
      pumps.flatMap(({ pieces }) => pieces.flatMap((piece) => piece.machine.circuits.map(({ pump }) => pump))),
    ),
    bases: new Map(),
  }
}

/** Index of the piece of a choice: what is there is the first. */
export const pieceOf = (option: number): number => option - KEEP

/** Members of the family of a choice, as machines that hold their piece; the machine itself where it is no place. */
export const machinesOf = (ground: Ground, known: Known | null, option: number): readonly Machine[] =>
  known === null
    ? [ground.question.start.before.machine]
    : (known.families[pieceOf(option)] ?? []).flatMap((i) => known.pieces[i]?.machine ?? [])

/** What is chosen of a place; undefined: still open. What is no place is kept. */
export const choiceOf = (known: { readonly index: number } | null, choices: Candidate): number | undefined =>
  known === null ? KEEP : choices[known.index]

/** The machine with pumps, motors, oil and sprocket of others. */
export const composed = (
  machine: Machine,
  pump: Machine,
  motor: Machine,
  oil: Machine | undefined,
  sprocket: Machine | undefined,
): Machine => ({
  ...machine,
  oil: oil?.oil ?? machine.oil,
  // With a second pump comes a circuit, and one that is there works the attachment no more.
  circuits: pump.circuits,
  travel: {
    ...machine.travel,
    motor: motor.travel.motor,
    wayPerTurn: sprocket?.travel.wayPerTurn ?? machine.travel.wayPerTurn,
  },
})

/**
 * The machine with the attachment's own pumps: one for each way that their families may come to; what is still open is kept.
 * @param machine with the pumps that drive as they are chosen
 */
export const withOthers = (ground: Ground, machine: Machine, choices: Candidate): readonly Machine[] =>
  ground.others.reduce<readonly Machine[]>(
    (all, known) => {
      const { circuits: names } = known.place
      return machinesOf(ground, known, choiceOf(known, choices) ?? KEEP).flatMap((second) => {
        const pumps = new Map(second.circuits.map(({ name, pump }) => [name, pump]))
        const circuitOf = (circuit: Circuit): Circuit =>
          names.includes(circuit.name) ? { ...circuit, pump: pumps.get(circuit.name) ?? circuit.pump } : circuit
        return all.map((one) => ({ ...one, circuits: one.circuits.map(circuitOf) }))
      })
    },
    [machine],
  )

/** Thinnest that the oil may be at 50 degC. @param oil choice of it; undefined: still open */
export const thinnest = ({ viscosities }: Ground, oil: number | undefined): PascalSeconds =>
  (oil === undefined ? undefined : viscosities[pieceOf(oil)]) ?? Math.min(...viscosities)

/** Thickest that the oil may be at 50 degC. @param oil choice of it; undefined: still open */
export const thickest = ({ viscosities }: Ground, oil: number | undefined): PascalSeconds =>
  (oil === undefined ? undefined : viscosities[pieceOf(oil)]) ?? Math.max(...viscosities)
