/**
 * What the two ends of a new hose cost at least. An end is made for what it is screwed into (connect.ts: joinEnd), and that is the
 * port that is there, one of the ports that the list has for its owner, or, where nobody has read it, what the hose's own end
 * says. Of each the least counts.
 */
import { joinEnd } from '../consequences/connect.ts'
import type { LinePlace, Port } from '../consequences/line-places.ts'
import { motors, pumps, swivels, tandems, valves } from '../consequences/stock.ts'
import type { Connection } from '../machine.ts'
import type { Shop } from '../shop.ts'
import type { LineRole } from '../tables/velocity-limits.ts'
import type { Metres } from '../units/si.ts'
import { leastOf, NOTHING, type Prices, plus, type Sum } from './sums.ts'

export type OwnerKind = 'pump' | 'valve' | 'swivel' | 'motor'
type Owner = Pick<Port, 'name'> & { readonly kind: OwnerKind }

const WORKING: readonly Owner[] = [
  { kind: 'valve', name: 'work' },
  { kind: 'swivel', name: 'work' },
  { kind: 'motor', name: 'work' },
]

/** Whose ports the two ends of a line may be screwed into. */
const OWNERS: { readonly [role in LineRole]: readonly [readonly Owner[], readonly Owner[]] } = {
  suction: [[], [{ kind: 'pump', name: 'inlet' }]],
  pressure: [[{ kind: 'pump', name: 'outlet' }], [{ kind: 'valve', name: 'inlet' }]],
  return: [[{ kind: 'valve', name: 'outlet' }], []],
  work: [WORKING, WORKING],
  auxiliary: [[], []],
}

/** Owners of a side; a port that was read on a work line says which of them it is. */
export const ownersAt = ({ role, ports }: LinePlace, side: 0 | 1): readonly Owner[] => {
  const there = ports[side]
  return OWNERS[role][side].filter(({ kind }) => role !== 'work' || there === null || there.kind === kind)
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
const portsAt = (
  place: LinePlace,
  side: 0 | 1,
  shop: Shop,
  settled: ReadonlySet<OwnerKind>,
): readonly (Connection | null)[] => {
  const owners = ownersAt(place, side).filter(({ kind }) => !settled.has(kind))
  const all = [place.ports[side]?.connection ?? null, ...owners.flatMap((owner) => listed(shop, owner))]
  const end = place.line.ends?.[side] ?? null
  // An adapter that is there and stays offers what the hose's own end fits.
  return [...all.map((one) => one ?? end), ...(end === null ? [] : [end])]
}

const NOBODY: ReadonlySet<OwnerKind> = new Set()

/**
 * @param dash size of the hose in sixteenths of an inch
 * @param bore of the hose [m]
 * @param settled owners whose ports are those of the place
 * @returns for all hoses that the line stands for; IMPOSSIBLE where no end is to be had
 */
export const endsCost = (
  place: LinePlace,
  { dash, bore }: { readonly dash: number; readonly bore: Metres },
  shop: Shop,
  prices: Prices,
  settled: ReadonlySet<OwnerKind> = NOBODY,
): Sum => {
  const { count, workingPressure } = place
  const costOf = (port: Connection | null): Sum => {
    const { end, adapter, orders } = joinEnd(dash, bore, port === null ? [] : [port], workingPressure, shop)
    if (end === null) return prices.order('fitting', count)
    const between = adapter === null ? (orders ? prices.order('adapter', count) : NOTHING) : prices.part(adapter, count)
    return plus(prices.part(end, count), between)
  }
  const sideCost = (side: 0 | 1): Sum => {
    const ports = portsAt(place, side, shop, settled)
    const texts = new Map(ports.map((port) => [port?.text ?? '', port]))
    return leastOf([...texts.values()].map(costOf))
  }
  return plus(sideCost(0), sideCost(1))
}
