/**
 * What a way may change: the places of the machine that the goal is about, and for each the parts of the list that go there.
 * Both tracks are always changed alike. The rest (relief, coupling, strainer, adapters, plates ...) is no choice: it follows.
 *
 * - a travel speed: the pumps that drive, motors, sprocket, and the lines, valves and swivel of that way;
 * - an attachment: the pump of each circuit that works it, with its lines and valve, or a second pump with a circuit of its
 *   own. Circuits that drive are changed alike for it too, each other one by itself, for the attachment gets the sum;
 * - an oil temperature: both of these, whatever there is;
 * - always: filter, cooler, oil.
 *
 * No component belongs to two places: each bound is of one place, and one choice would undo the other.
 *
 * The engine is no place. Its rated speed cannot be raised (the governor is certified as it is), and one that runs below it
 * is a fault that is restored before anything is held against it.
 */

import { nest } from '../consequences/answer-finding.ts'
import { drivingCircuits, type LinePlace, linePlaces } from '../consequences/line-places.ts'
import { kindFits } from '../consequences/line-remedies.ts'
import { sameText } from '../consequences/pump-remedies.ts'
import { motors, pumps, swivels, type TandemFigures, tandems, valves } from '../consequences/stock.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Loaded } from '../loaded.ts'
import type { Circuit, Machine } from '../machine.ts'
import type { Json, Wants } from '../question.ts'
import type { Part, Shop } from '../shop.ts'
import { barFromPascals, lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import { joinPatches } from './join-patches.ts'
import { once, rankOf } from './place-order.ts'
import { hostsOf, onePump, runsStraight, secondPumps, workingOf } from './second-pump.ts'

export type Patch = { readonly [key: string]: Json }

export type PlaceKind = 'motor' | 'sprocket' | 'pump' | 'oil' | 'valve' | 'swivel' | 'hose' | 'filter' | 'cooler'

/** One part in its place. */
export interface PlaceOption {
  readonly part: Part
  readonly patch: Patch
  /** Name of the circuit that comes with it: a second pump for the attachment (second-pump.ts). Else null. */
  readonly newCircuit: string | null
}

export interface Place {
  /** "pump of left, right" and the like: tells places apart, never printed. */
  readonly id: string
  readonly kind: PlaceKind
  /** Names of the circuits that it belongs to; none for what belongs to the machine. */
  readonly circuits: readonly string[]
  /** Of hoses: every line that is made alike. */
  readonly lines: readonly LinePlace[]
  /** In the order of their ids; keeping what is there is not among them. */
  readonly options: readonly PlaceOption[]
}

/** Choosing it brings a circuit that was not there. */
export const bringsCircuit = ({ options }: Place, option: number): boolean =>
  (options[option]?.newCircuit ?? null) !== null

const byId = <T extends { readonly part: Part }>(list: readonly T[]): readonly T[] =>
  list.toSorted((one, other) => (one.part.id < other.part.id ? -1 : one.part.id > other.part.id ? 1 : 0))

const place = (
  id: string,
  kind: PlaceKind,
  parts: readonly Part[],
  patchOf: (part: Part) => Patch,
  circuits: readonly string[] = [],
  lines: readonly LinePlace[] = [],
): Place => ({
  id,
  kind,
  circuits,
  lines,
  options: byId(parts.map((part) => ({ part, patch: patchOf(part), newCircuit: null }))),
})

const at = (path: readonly string[], value: Json): Patch => nest(path, value) as Patch

/**
 * Pumps of some circuits: sections of one tandem stay a tandem, single pumps stay single and are all alike. A tandem with one
 * section more may take the place, where that section feeds an attachment.
 */
const pumpPlace = (machine: Machine, fed: readonly Circuit[], wants: Wants, shop: Shop): Place => {
  const circuits = onePump(machine, fed)
  const names = circuits.map(({ name }) => name)
  const isTandem = circuits.some(({ pump }) => pump.section !== null)
  const here = new Set(circuits.map(({ pump }) => pump.part))
  const sectionsOf = ({ sections }: TandemFigures) =>
    circuits.flatMap(({ pump }) => sections[(pump.section ?? 1) - 1] ?? [])
  const fitting = isTandem
    ? tandems(shop).filter(
        ({ figures }) => figures.sections.length === circuits.length && runsStraight(circuits, sectionsOf(figures)),
      )
    : pumps(shop)
  const patchOf = (part: Part): Patch =>
    joinPatches(
      circuits.map(({ name, pump }) =>
        at(['circuits', name, 'pump'], isTandem ? { part: part.id, section: pump.section } : { part: part.id }),
      ),
    )
  const parts = fitting.map(({ part }) => part).filter(({ id }) => !here.has(id))
  const plain = place(`pump of ${names.join(', ')}`, 'pump', parts, patchOf, names)
  return { ...plain, options: byId([...plain.options, ...secondPumps(machine, circuits, wants, shop)]) }
}

const valvePlace = (circuits: readonly Circuit[], shop: Shop): readonly Place[] => {
  const had = circuits.filter(({ valve }) => valve !== null)
  if (had.length === 0) return []
  const names = had.map(({ name }) => name)
  const patchOf = (part: Part) => joinPatches(names.map((name) => at(['circuits', name, 'valve'], { part: part.id })))
  return [
    place(
      `valve of ${names.join(', ')}`,
      'valve',
      valves(shop).map(({ part }) => part),
      patchOf,
      names,
    ),
  ]
}

/** Lines that do the same in circuits that are alike are one place: "suction", "pressure", "valve-to-motor". */
const hosePlaces = (lines: readonly LinePlace[], shop: Shop): readonly Place[] => {
  const groups = new Map<string, LinePlace[]>()
  for (const line of lines) {
    const name = line.path.at(-1) ?? ''
    groups.set(name, [...(groups.get(name) ?? []), line])
  }
  return [...groups].map(([name, alike]) => {
    const parts = hoses(shop)
      .filter(({ figures }) => figures.bore !== null && alike.every((line) => kindFits(line, figures.kind)))
      .map(({ part }) => part)
    const circuits = alike.flatMap(({ circuit }) => circuit ?? [])
    const patchOf = (part: Part) => joinPatches(alike.map(({ path }) => at(path, { part: part.id })))
    return place(`${name} of ${circuits.join(', ')}`, 'hose', parts, patchOf, circuits, alike)
  })
}

/** The manifold or brake valve on the motors goes over to the new ones, unless they state one. */
const withBlock = (part: Part, { block }: Machine['travel']['motor']): Json =>
  block === null || part.figures.block !== undefined
    ? { part: part.id }
    : {
        part: part.id,
        block: {
          flow: `${lpmFromCubicMetresPerSecond(block.flow)} L/min`,
          drop: `${barFromPascals(block.drop)} bar`,
        },
      }

/** Motors that bolt on; their flange and shaft are judged by no check, because nothing joins another one. */
const motorPlace = ({ travel }: Machine, shop: Shop): Place => {
  const { mount, part: own } = travel.motor
  const parts = motors(shop)
    .filter(({ figures }) => sameText(figures.mount.flange, mount.flange) && sameText(figures.mount.shaft, mount.shaft))
    .map(({ part }) => part)
  return place(
    'motors',
    'motor',
    parts.filter(({ id }) => id !== own),
    (part) => at(['travel', 'motor'], withBlock(part, travel.motor)),
  )
}

const swivelPlace = ({ travel: { swivel } }: Machine, shop: Shop): readonly Place[] => {
  if (swivel === null) return []
  const enough = (passages: number | null) =>
    passages === null || swivel.passages === null || passages >= swivel.passages
  const parts = swivels(shop)
    .filter(({ figures }) => enough(figures.passages))
    .map(({ part }) => part)
  return [place('swivel', 'swivel', parts, (part) => at(['travel', 'swivel'], { part: part.id }))]
}

const ofMachine = (kind: 'filter' | 'cooler' | 'oil', own: string | null, shop: Shop): Place => {
  const key = kind === 'oil' ? 'fluid' : kind
  const parts = shop.parts.filter((part) => part.kind === kind && part.id !== own)
  return place(kind, kind, parts, (part) => ({ [key]: { part: part.id } }))
}

/**
 * What carries the flow to the motors and back, with or without a part of the list to put there.
 * @param known places whose lines and valves are left out
 */
export const carryingPlaces = (machine: Machine, shop: Shop, known: readonly Place[] = []): readonly Place[] => {
  const driving = drivingCircuits(machine)
  const names = driving.map(({ name }) => name)
  const lines = new Set(known.flatMap((one) => one.lines.map(({ line }) => line.id)))
  const valved = new Set(known.flatMap(({ kind, circuits }) => (kind === 'valve' ? circuits : [])))
  return [
    ...valvePlace(
      driving.filter(({ name }) => !valved.has(name)),
      shop,
    ),
    ...(known.some(({ kind }) => kind === 'swivel') ? [] : swivelPlace(machine, shop)),
    ...hosePlaces(
      linePlaces(machine).filter(
        ({ line, circuit, role }) =>
          !lines.has(line.id) && (circuit === null || (names.includes(circuit) && role !== 'auxiliary')),
      ),
      shop,
    ),
    ...(known.some(({ kind }) => kind === 'filter') ? [] : [ofMachine('filter', machine.filter?.part ?? null, shop)]),
  ]
}

const travelPlaces = (machine: Machine, wants: Wants, shop: Shop): readonly Place[] => {
  const driving = drivingCircuits(machine)
  const wheels = machine.travel.running === 'wheels'
  return [
    motorPlace(machine, shop),
    ...(wheels
      ? []
      : [
          place(
            'sprocket',
            'sprocket',
            shop.parts.filter(({ kind }) => kind === 'sprocket'),
            (part) => at(['travel', 'sprocket'], { part: part.id }),
          ),
        ]),
    pumpPlace(machine, driving, wants, shop),
    ...carryingPlaces(machine, shop),
  ]
}

/** @param isDriven all that drives is a place already, for the travel speed or for the oil's heat */
const attachmentPlaces = (machine: Machine, wants: Wants, shop: Shop, isDriven: boolean): readonly Place[] => {
  const working = workingOf(machine)
  const lines = linePlaces(machine)
  const drives = ({ drives: what }: Circuit) => what !== 'no track'
  const linesOf = (circuits: readonly Circuit[]) =>
    lines.filter((line) => circuits.some(({ name }) => name === line.circuit))
  const together = (circuits: readonly Circuit[], carrying = circuits): readonly Place[] =>
    circuits.length === 0
      ? []
      : [
          pumpPlace(machine, circuits, wants, shop),
          ...valvePlace(carrying, shop),
          ...hosePlaces(linesOf(carrying), shop),
        ]
  const alone = working.filter((one) => !drives(one)).flatMap((one) => together([one]))
  const driving = working.filter(drives)
  if (isDriven) {
    const auxiliary = linesOf(driving).filter(({ role }) => role === 'auxiliary')
    return [...hosePlaces(auxiliary, shop), ...alone]
  }
  // Where no circuit works one, a second pump may.
  return [...(working.length === 0 ? together(hostsOf(machine), []) : together(driving)), ...alone]
}

/**
 * Every place with something to choose.
 * @param machine calibrated, as every way finds it
 */
export const placesFor = (machine: Machine, wants: Wants, { shop, prepare }: Loaded): readonly Place[] => {
  /** Oil and sprocket keep no part: one with the very figures that are there would be no change, and cost nothing. */
  const changes = ({ patch }: PlaceOption): boolean => {
    const { oil: filled, travel } = prepare([patch]).resolve().machine
    return (
      filled.viscosityAt40 !== machine.oil.viscosityAt40 ||
      filled.viscosityAt100 !== machine.oil.viscosityAt100 ||
      travel.wayPerTurn !== machine.travel.wayPerTurn
    )
  }
  const oil = wants.oilBelow !== null
  const isDriven = wants.travelSpeed !== null || oil
  const found = once([
    ...(isDriven ? travelPlaces(machine, wants, shop) : []),
    ...(wants.attachment !== null || oil ? attachmentPlaces(machine, wants, shop, isDriven) : []),
    ofMachine('oil', null, shop),
    ofMachine('cooler', machine.cooler?.part ?? null, shop),
    ofMachine('filter', machine.filter?.part ?? null, shop),
  ])
  const real = found.flatMap((one) => {
    if (one.kind !== 'oil' && one.kind !== 'sprocket') return [one]
    const options = one.options.filter(changes)
    return options.length === 0 ? [] : [{ ...one, options }]
  })
  return real.toSorted((one, other) => rankOf(one) - rankOf(other))
}
