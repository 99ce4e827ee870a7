/**
 * What it takes to make a hose new, or to join one that stays to a port that has changed: hose by the metre with its length
 * rounded up to a tenth, two ends each, adapters where an end does not match, one job a hose.
 */
import type { Consequence } from '../evaluation.ts'
import type { Connection, Line } from '../machine.ts'
import type { Part, Shop } from '../shop.ts'
import type { Metres } from '../units/si.ts'
import { cheaperFirst } from './choose.ts'
import { adaptersBetween, fits, joinEnd, portTooSmall, takesOrders } from './connect.ts'
import type { LinePlace, Port } from './line-places.ts'
import type { Stocked } from './read-figures.ts'
import { type HoseFigures, hoses } from './stock-lines.ts'
import type { PartUse, Uses } from './uses.ts'

export interface LineWork extends Uses {
  readonly connections: Consequence['connections']
  /** What the hose's own ends are afterwards, as the machine file writes them; null where nobody knows. */
  readonly ends: readonly [string, string] | null
  /** Ports more than one usual size below the hose. */
  readonly tooSmall: readonly Port[]
}

/** Metres of hose to cut: the length rounded up to a tenth. A rounding error of a unit conversion adds no tenth. */
export const metresToCut = (length: Metres): number => Math.ceil(length * 10 - 1e-6) / 10

/** Metres that so many hoses of one length take off the roll. */
export const metresOf = (length: Metres, count: number): number => Math.round(metresToCut(length) * count * 10) / 10

const SIDES = [0, 1] as const
type Side = (typeof SIDES)[number]

const endOf = (line: Line, side: Side): Connection | null => line.ends?.[side] ?? null

/** Connections that will do at a side: the port, and what an adapter that is there and stays offers to the hose. */
const targets = (place: LinePlace, before: LinePlace | null, side: Side): readonly Connection[] => {
  const port = place.ports[side]?.connection ?? null
  const end = endOf(place.line, side)
  if (port === null) return end === null ? [] : [end]
  const portBefore = before?.ports[side]?.connection ?? null
  const endBefore = before === null ? null : endOf(before.line, side)
  const hadAdapter = portBefore !== null && endBefore !== null && !fits(portBefore, endBefore) && fits(portBefore, port)
  return hadAdapter ? [port, endBefore] : [port]
}

const adapterWords = (from: Connection, to: Connection): string => `Adapter ${from.text} to ${to.text}`

/**
 * A hose (or all hoses of a work line) made new.
 * @param place where it sits now: its `line` gives length, its ports give what it must fit
 * @param before the same place on the machine that the option starts from; null where it was not there
 * @param hose part by the metre, with size and bore; part null for one that is not on the list
 */
export const newHose = (
  place: LinePlace,
  before: LinePlace | null,
  hose: { readonly part: Part | null; readonly what: string; readonly dash: number | null; readonly bore: Metres },
  shop: Shop,
): LineWork => {
  const { line, count } = place
  const component = line.id
  const metres = metresOf(line.length, count)
  const body: PartUse = { component, kind: 'hose', part: hose.part?.id ?? null, what: hose.what, quantity: metres }
  const jobs = [{ component, job: 'replace hose', quantity: count }] as const
  if (hose.dash === null) return { uses: [body], jobs, connections: [], ends: null, tooSmall: [] }
  const { dash, bore } = hose
  const joints = SIDES.map((side) => {
    const wanted = targets(place, before, side)
    const joint = joinEnd(dash, bore, wanted, place.workingPressure, shop)
    return { side, wanted: wanted[0] ?? null, joint }
  })
  const ends = joints.map(({ joint, wanted }): PartUse => {
    const what = `Hose end -${dash}${wanted === null ? '' : `, ${wanted.text}`}`
    return { component, kind: 'fitting', part: joint.end?.id ?? null, what, quantity: count }
  })
  const adapters = joints.flatMap(({ joint, wanted }): readonly PartUse[] => {
    const use = { component, kind: 'adapter', quantity: count } as const
    if (joint.adapter !== null) return [{ ...use, part: joint.adapter.id, what: joint.adapter.name }]
    if (!joint.orders || joint.connection === null || wanted === null) return []
    return [{ ...use, part: null, what: adapterWords(joint.connection, wanted) }]
  })
  const connections = joints.flatMap(({ joint, wanted }) => {
    if (wanted === null) return []
    const from = joint.connection?.text ?? `hose -${dash}`
    return [{ from, to: wanted.text, adapter: joint.adapter?.id ?? null }]
  })
  const texts = joints.map(({ joint, side }) => joint.connection?.text ?? endOf(line, side)?.text ?? null)
  const [first = null, second = null] = texts
  const tooSmall = SIDES.flatMap((side) => {
    const port = place.ports[side]
    return port !== null && portTooSmall(port.connection, dash) ? [port] : []
  })
  return {
    uses: [body, ...ends, ...adapters],
    jobs,
    connections,
    ends: first === null || second === null ? null : [first, second],
    tooSmall,
  }
}

/**
 * A hose that stays, on ports of which one or both have changed: an adapter where its end does not match, or, where the
 * list has none, a new hose of its own size with the end that does; where the list cannot make that either, an adapter to
 * order, if the shop takes such orders.
 * @returns null where nothing is to be done
 */
export const adaptHose = (place: LinePlace, before: LinePlace | null, shop: Shop): LineWork | null => {
  const { line, count, workingPressure } = place
  const mismatched = SIDES.flatMap((side) => {
    const port = place.ports[side]?.connection ?? null
    const end = endOf(line, side)
    const portBefore = before?.ports[side]?.connection ?? null
    const same = port !== null && portBefore !== null && fits(port, portBefore)
    return port === null || end === null || same || fits(port, end) ? [] : [{ side, port, end }]
  })
  if (mismatched.length === 0) return null
  const joined = mismatched.map(({ port, end }) => ({
    port,
    end,
    adapter: adaptersBetween(end, port, line.bore, workingPressure, shop)[0] ?? null,
  }))
  const adapted: LineWork = {
    uses: joined.map(({ port, end, adapter }) => ({
      component: line.id,
      kind: 'adapter',
      part: adapter?.id ?? null,
      what: adapter?.name ?? adapterWords(end, port),
      quantity: count,
    })),
    jobs: [],
    connections: joined.map(({ port, end, adapter }) => ({
      from: end.text,
      to: port.text,
      adapter: adapter?.id ?? null,
    })),
    ends: line.ends === null ? null : [line.ends[0].text, line.ends[1].text],
    tooSmall: [],
  }
  if (joined.every(({ adapter }) => adapter !== null)) return adapted
  const own = hoses(shop).find(({ part }) => part.id === line.part) ?? likeHose(line, shop)
  const what = `${line.kind ?? 'Hose'}${line.dash === null ? '' : ` -${line.dash}`}, metre`
  const anew = newHose(place, before, { part: own?.part ?? null, what, dash: line.dash, bore: line.bore }, shop)
  return takesOrders('adapter', shop) && !hadOf(anew, shop).available ? adapted : anew
}

/** The cheapest hose on the list of the same kind and size. */
export const likeHose = (line: Line, shop: Shop): Stocked<HoseFigures> | null => {
  const order = cheaperFirst(shop)
  const like = hoses(shop).filter(({ figures }) => figures.dash === line.dash && figures.kind === line.kind)
  return like.toSorted((one, other) => order(one.part, other.part))[0] ?? null
}

export interface Had {
  /** All of it is on the list. */
  readonly available: boolean
  /** What is not can be ordered. */
  readonly specialOrder: boolean
  /** What is not on the list. */
  readonly lacking: readonly PartUse[]
}

/**
 * Whether hoses, ends and adapters of it can be had: from the list, else to order where the shop takes orders for the kind.
 * @param isAsked the hose itself is what the option asks for: one that is not on the list is told as that, without a price
 */
export const hadOf = ({ uses }: LineWork, shop: Shop, isAsked = false): Had => {
  const lacking = uses.filter(
    ({ part, kind }) => part === null && !(isAsked && kind === 'hose' && !takesOrders(kind, shop)),
  )
  return {
    available: lacking.length === 0,
    specialOrder: lacking.length > 0 && lacking.every(({ kind }) => takesOrders(kind, shop)),
    lacking,
  }
}
