/**
 * What the two ends of a new hose cost at least. An end is made for what it is screwed into (connect.ts: joinEnd), and that is the
 * port that is there, one of the ports that the list has for its owner, or, where nobody has read it, what the hose's own end
 * says. Of each the least counts; where no end of the list fits, one on an adapter, or one that is on no list.
 */
import { endsOf, fits } from '../consequences/connect.ts'
import type { LinePlace, Port } from '../consequences/line-places.ts'
import { motors, pumps, swivels, tandems, valves } from '../consequences/stock.ts'
import type { Connection } from '../machine.ts'
import type { Shop } from '../shop.ts'
import type { LineRole } from '../tables/velocity-limits.ts'
import { leastOf, type Prices, plus, type Sum } from './sums.ts'

type Owner = Pick<Port, 'name'> & { readonly kind: 'pump' | 'valve' | 'swivel' | 'motor' }

const WORKING: readonly Owner[] = [
  { kind: 'valve', name: 'work' },
  { kind: 'swivel', name: 'work' },
  { kind: 'motor', name: 'work' },
]

/** Whose ports the two ends of a line may be screwed into; of a work line its name says which of them. */
const OWNERS: { readonly [role in LineRole]: readonly [readonly Owner[], readonly Owner[]] } = {
  suction: [[], [{ kind: 'pump', name: 'inlet' }]],
  pressure: [[{ kind: 'pump', name: 'outlet' }], [{ kind: 'valve', name: 'inlet' }]],
  return: [[{ kind: 'valve', name: 'outlet' }], []],
  work: [WORKING, WORKING],
  auxiliary: [[], []],
}

/** Ports of the list; null where one is not stated. */
const listed = (shop: Shop, { kind, name }: Owner): readonly (Connection | null)[] => {
  if (kind === 'motor') return motors(shop).map(({ figures }) => figures.work)
  if (kind === 'swivel') return swivels(shop).map(({ figures }) => figures.work)
  if (kind === 'valve') return valves(shop).map(({ figures }) => figures[name])
  if (name === 'work') return []
  return [
    ...pumps(shop).map(({ figures }) => figures[name]),
    ...tandems(shop).flatMap(({ figures }) => figures.sections.map((section) => section[name])),
  ]
}

/** What one end may be screwed into; null where nobody knows. */
const portsAt = ({ line, role, ports }: LinePlace, side: 0 | 1, shop: Shop): readonly (Connection | null)[] => {
  const there = ports[side]
  const owners = OWNERS[role][side].filter(({ kind }) => role !== 'work' || there === null || there.kind === kind)
  const all = [there?.connection ?? null, ...owners.flatMap((owner) => listed(shop, owner))]
  const end = line.ends?.[side] ?? null
  // An adapter that is there and stays offers what the hose's own end fits.
  return [...all.map((one) => one ?? end), ...(end === null ? [] : [end])]
}

/**
 * @param dash size of the hose in sixteenths of an inch
 * @returns for all hoses that the line stands for
 */
export const endsCost = (place: LinePlace, dash: number, shop: Shop, prices: Prices): Sum => {
  const ends = endsOf(dash, place.workingPressure, shop)
  const any = ends.map(({ part }) => prices.part(part, place.count))
  const unlisted = prices.unlisted('fitting', place.count)
  const costOf = (port: Connection | null): Sum => {
    if (port === null) return leastOf(ends.length === 0 ? [unlisted] : any)
    const direct = ends.filter(({ figures }) => figures.end !== null && fits(figures.end, port))
    if (direct.length === 0) return leastOf([...any, unlisted])
    return leastOf(direct.map(({ part }) => prices.part(part, place.count)))
  }
  const sideCost = (side: 0 | 1): Sum => leastOf(portsAt(place, side, shop).map(costOf))
  return plus(sideCost(0), sideCost(1))
}
