/**
 * Places that carry the flow (hoses, valves, swivel, filter, cooler), and the machine with some choice of them. Of what is
 * still open the widest hose is taken that the list has for it (where the shop orders hoses, the widest that there is), or the
 * valve or swivel that takes the least; else its drop is left out.
 */
import { takesOrders } from '../consequences/connect.ts'
import { kindFits } from '../consequences/line-remedies.ts'
import { hoses } from '../consequences/stock-lines.ts'
import type { Circuit, Cooler, Filter, Line, Machine, QuadraticRestriction, Swivel, Valve } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { metresFromMm } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'
import type { Question } from './assess.ts'
import { type Piece, piecesOf } from './pieces.ts'
import type { Place } from './places.ts'

/** What a place may put into the machine that carries the flow. */
export interface Carrier {
  readonly place: Place
  readonly pieces: readonly Piece[]
  /** Of hoses: the bore of each option, what is there first, by line. */
  readonly bores: readonly (readonly Metres[])[]
  readonly widest: readonly Metres[]
  /** Of each piece its class, from 1 on: pieces of one class are one to the oil. */
  readonly classes: readonly number[]
  /** Of each class a piece; none of the class that is open. */
  readonly pieceOf: readonly (number | null)[]
  /** Of valves and swivels the piece that takes the least at every flow; null where that is not one, or one may be ordered. */
  readonly gentlest: number | null
}

/** Restriction as a share of the square of its flow; none where nothing is stated. */
export const steepness = (restriction: QuadraticRestriction | null | undefined): number =>
  restriction === null || restriction === undefined ? 0 : restriction.drop / restriction.flow ** 2

/** Index of what is least in every one of some figures; null where that is not one and the same. */
const leastInAll = (figures: readonly (readonly number[])[]): number | null => {
  const index = figures.findIndex((own) => figures.every((other) => own.every((value, k) => value <= (other[k] ?? 0))))
  return index < 0 ? null : index
}

const gentlestOf = ({ kind, circuits }: Place, pieces: readonly Piece[], shop: Shop): number | null => {
  if ((kind !== 'valve' && kind !== 'swivel') || takesOrders(kind, shop)) return null
  if (kind === 'valve')
    return leastInAll(
      pieces.map(({ machine }) =>
        circuits.map((name) => steepness(machine.circuits.find((one) => one.name === name)?.valve?.restriction)),
      ),
    )
  const swivels = pieces.map(({ machine }) => machine.travel.swivel)
  // Of a stated drop and a drilling either may take less, as the flow is.
  if (swivels.every((swivel) => (swivel?.restriction ?? null) !== null))
    return leastInAll(swivels.map((swivel) => [steepness(swivel?.restriction)]))
  if (swivels.some((swivel) => swivel === null || swivel.restriction !== null || swivel.bore === null)) return null
  return leastInAll(swivels.map((swivel) => [-(swivel?.bore ?? 0)]))
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

export const carrierOf = (question: Question, place: Place): Carrier => {
  const stocked = hoses(question.loaded.shop)
  const boreOf = (id: string) => stocked.find(({ part }) => part.id === id)?.figures.bore ?? null
  const bores = place.lines.map(({ line }) => [
    line.bore,
    ...place.options.map(({ part }) => boreOf(part.id) ?? line.bore),
  ])
  // One to order may be as wide as any size there is.
  const ordered = takesOrders('hose', question.loaded.shop) ? metresFromMm(lineSizes.at(-1)?.boreMm ?? 0) : 0
  const widest = place.lines.map((line) =>
    Math.max(
      line.line.bore,
      ordered,
      ...stocked.flatMap(({ figures }) =>
        figures.bore !== null && kindFits(line, figures.kind) ? [figures.bore] : [],
      ),
    ),
  )
  const pieces = place.kind === 'hose' ? [] : piecesOf(question, place)
  const gentlest = gentlestOf(place, pieces, question.loaded.shop)
  return { place, pieces, bores, widest, gentlest, ...classesOf(place, bores) }
}

const withBore = (line: Line | null, bores: ReadonlyMap<string, Metres>): Line | null => {
  const bore = line === null ? undefined : bores.get(line.id)
  return line === null || bore === undefined ? line : { ...line, bore }
}

/** What each place of the carriers holds: index of the piece, or null for what is open. */
export type Held = readonly (number | null)[]

/** A circuit in neutral with nothing in its way: what a consequence takes out of it is not more. */
const lossless = (circuit: Circuit): Circuit => ({
  ...circuit,
  valve: null,
  lines: { suction: circuit.lines.suction, pressure: null, return: null },
})

/** @param isMost what is not on the way to the motors takes nothing */
export const machineWith = (base: Machine, carriers: readonly Carrier[], held: Held, isMost: boolean): Machine => {
  const bores = new Map<string, Metres>()
  let swivel: Swivel | null = base.travel.swivel
  const filter: Filter | null = null
  const cooler: Cooler | null = null
  const valves = new Map<string, Valve | null>()
  for (const [i, { place, pieces, bores: known, widest, gentlest }] of carriers.entries()) {
    const piece = held[i] ?? gentlest
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
    auxiliary:
      circuit.auxiliary === null
        ? null
        : {
            ...circuit.auxiliary,
            out: withBore(circuit.auxiliary.out, bores),
            back: withBore(circuit.auxiliary.back, bores),
          },
  })
  return {
    ...base,
    filter,
    cooler,
    circuits: base.circuits.map((circuit) =>
      isMost && circuit.drives === 'no track' ? lossless(circuit) : circuitOf(circuit),
    ),
    travel: { ...base.travel, swivel, lines: base.travel.lines.map((line) => withBore(line, bores) as Line) },
  }
}
