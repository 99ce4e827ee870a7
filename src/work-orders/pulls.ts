/** The parts to pull, one line each, in the order in which the quote came to them. */
import { type LinePlace, linePlaces } from '../consequences/line-places.ts'
import { metresToCut } from '../consequences/line-work.ts'
import { adapters, hoseEnds, hoses } from '../consequences/stock-lines.ts'
import type { PartUse } from '../consequences/uses.ts'
import type { Consequence, CostLine } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Part, Shop } from '../shop.ts'
import { barFromPascals, mmFromMetres } from '../units/shop-units.ts'
import type { Joint, Pull } from '../work-order.ts'
import { fittedAt } from './component-joints.ts'
import { hoseJoints, jointOf } from './joints.ts'

export interface PullInput {
  readonly uses: readonly PartUse[]
  readonly consequences: readonly Consequence[]
  /** With the change. */
  readonly machine: Machine
  readonly shop: Shop
  /** Lines of the quote, which name the kits. */
  readonly lines: readonly CostLine[]
}

const bar = (pressure: number | null) => (pressure === null ? null : barFromPascals(pressure))

type Told = Pick<Pull, 'pieces' | 'lengthM' | 'boreMm' | 'maxPressureBar' | 'workingPressureBar' | 'mount' | 'joints'>

const BARE: Told = {
  pieces: null,
  lengthM: null,
  boreMm: null,
  maxPressureBar: null,
  workingPressureBar: null,
  mount: null,
  joints: [],
}

interface Known {
  readonly parts: ReadonlyMap<string, Part>
  readonly places: ReadonlyMap<string, LinePlace>
}

/** A hose end, on the list or not; quick couplers and a shift valve are fittings too. */
const isEnd = ({ what }: PartUse): boolean => /\bend\b/iu.test(what)

/** A hose: of a line of the machine, or of what an option adds, which is cut to fit. */
const hoseTold = (use: PartUse, { uses, consequences, shop }: PullInput, { parts, places }: Known): Told => {
  const figures = hoses(shop).find(({ part }) => part.id === use.part)?.figures ?? null
  const place = places.get(use.component) ?? null
  const ends = uses.filter((one) => one.component === use.component && one.kind === 'fitting' && isEnd(one))
  if (place === null) {
    const end = hoseEnds(shop).find(({ part }) => part.id === ends[0]?.part)?.figures.end ?? null
    const number = ends.reduce((sum, { quantity }) => sum + quantity, 0)
    return {
      ...BARE,
      pieces: number === 0 ? null : number / 2,
      boreMm: figures?.bore == null ? null : mmFromMetres(figures.bore),
      maxPressureBar: bar(figures?.maxPressure ?? null),
      joints: number === 0 ? [] : [jointOf('first', end, null), jointOf('second', end, null)],
    }
  }
  const connections = consequences
    .filter(({ component }) => component === use.component)
    .flatMap((consequence) => consequence.connections)
  return {
    ...BARE,
    pieces: place.count,
    lengthM: metresToCut(place.line.length),
    boreMm: mmFromMetres(figures?.bore ?? place.line.bore),
    maxPressureBar: bar(figures?.maxPressure ?? place.line.maxPressure),
    workingPressureBar: bar(place.workingPressure),
    joints: hoseJoints(place, connections, parts),
  }
}

const adapterTold = (use: PartUse, { shop, machine }: PullInput, { places }: Known): Told => {
  const figures = adapters(shop).find(({ part }) => part.id === use.part)?.figures ?? null
  const pressure = places.get(use.component)?.workingPressure ?? null
  const joints: readonly Joint[] =
    figures === null
      ? []
      : figures.connections.flatMap((connection, side) =>
          connection === null ? [] : [jointOf(side === 0 ? 'first' : 'second', connection, null)],
        )
  const mount = joints.length === 0 ? fittedAt(use.component, use.part, machine, shop).mount : null
  return {
    ...BARE,
    boreMm: figures?.bore == null ? null : mmFromMetres(figures.bore),
    maxPressureBar: bar(figures?.maxPressure ?? null),
    workingPressureBar: bar(pressure),
    mount,
    joints,
  }
}

const told = (use: PartUse, input: PullInput, known: Known): Told => {
  if (use.kind === 'hose') return hoseTold(use, input, known)
  if (use.kind === 'adapter') return adapterTold(use, input, known)
  // The ends of a hose are told with the hose.
  if (use.kind === 'fitting') return BARE
  const fitted = fittedAt(use.component, use.part, input.machine, input.shop)
  return {
    ...BARE,
    // What is to be ordered has no rating yet: it must bear what the circuit asks.
    maxPressureBar: use.part === null ? null : bar(fitted.maxPressure),
    workingPressureBar: bar(fitted.workingPressure),
    mount: fitted.mount,
    joints: fitted.joints,
  }
}

const UNITS: { readonly [kind in PartUse['kind']]?: Pull['unit'] } = { hose: 'm', oil: 'L' }

/** Name of the kit that holds a part, where the quote sells it. */
const kitOf = (part: string | null, { lines }: PullInput, { parts }: Known): string | null => {
  const kits = lines.flatMap((line) => {
    const sold = line.part === null ? undefined : parts.get(line.part)
    return sold?.kind === 'kit' ? [sold] : []
  })
  return kits.find(({ holds }) => holds.some((held) => held.part === part))?.name ?? null
}

/** The same small part twice for one place is one line; a hose stays a line of its own. */
const joined = (uses: readonly PartUse[]): readonly PartUse[] => {
  const byKey = new Map<string, PartUse>()
  for (const [index, use] of uses.entries()) {
    const { component, kind, part, what } = use
    const key = kind === 'hose' ? `${index}` : [component, kind, part, what].join('\n')
    byKey.set(key, { ...use, quantity: (byKey.get(key)?.quantity ?? 0) + use.quantity })
  }
  return [...byKey.values()]
}

/** One line for each use: every hose by its place, because each is cut for it. */
export const pullsOf = (input: PullInput): readonly Pull[] => {
  const { shop, machine } = input
  const known: Known = {
    parts: new Map(shop.parts.map((part) => [part.id, part])),
    places: new Map(linePlaces(machine).map((place) => [place.line.id, place])),
  }
  return joined(input.uses).map((use): Pull => {
    const part = use.part === null ? undefined : known.parts.get(use.part)
    const order = part === undefined ? shop.specialOrder.find(({ kind }) => kind === use.kind) : undefined
    return {
      component: use.component,
      kind: use.kind,
      part: use.part,
      what: part?.name ?? use.what,
      quantity: use.quantity,
      unit: UNITS[use.kind] ?? 'piece',
      ...told(use, input, known),
      kit: kitOf(use.part, input, known),
      stock: part?.stock ?? null,
      leadDays: part?.leadDays ?? order?.leadDays ?? null,
      oldPartBack: (part?.coreDeposit ?? null) !== null,
    }
  })
}
