/** What hoses, valves, swivel and filter cost at least, where so much must flow through them. */

import type { LinePlace } from '../consequences/line-places.ts'
import { kindFits } from '../consequences/line-remedies.ts'
import { metresOf } from '../consequences/line-work.ts'
import type { Stocked } from '../consequences/read-figures.ts'
import { filters, swivels, valves } from '../consequences/stock.ts'
import { type HoseFigures, hoses } from '../consequences/stock-lines.ts'
import type { Job } from '../consequences/uses.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import { noticeable } from '../tables/limits.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import { cubicMetresPerSecondFromLpm } from '../units/shop-units.ts'
import type { CubicMetresPerSecond, MetresPerSecond, Pascals } from '../units/si.ts'
import type { Question } from './assess.ts'
import { coolerCost } from './cooler-costs.ts'
import { endsCost, type OwnerKind } from './end-costs.ts'
import type { Needed } from './flows.ts'
import { ladderOf } from './ladder.ts'
import type { Place } from './places.ts'
import { addUp, IMPOSSIBLE, NOTHING, type Prices, plus, type Sum } from './sums.ts'

/** Rounding must not call too small what is just big enough. */
const HAIR = 1e-6

/** Least cost of one place: of keeping it, and of each of its options. */
export interface PlaceBound {
  readonly keep: Sum
  readonly option: (index: number) => Sum
}

/** What was over its limit already may stay, and a little more: it is found, and asks for nothing. */
export const unlessThere = (limit: number, before: number): number =>
  before > limit ? before * (1 + noticeable.value) * (1 + HAIR) : limit

export interface Circulation {
  /** Motors that each circuit feeds, by name; none for circuits that drive nothing. */
  readonly fed: ReadonlyMap<string, number>
  /** Circuits that draw through one suction line, by the name of its owner. */
  readonly sharers: ReadonlyMap<string, readonly string[]>
}

export const circulationOf = ({ start }: Question): Circulation => {
  const { circuits, travel } = start.before.machine
  const fed = new Map(
    circuits.flatMap(({ name, drives }): readonly (readonly [string, number])[] =>
      drives === 'no track' ? [] : [[name, drives === 'both tracks' ? travel.motors : travel.motors / 2]],
    ),
  )
  const sharers = new Map<string, readonly string[]>()
  for (const { name, suctionSharedWith } of circuits) {
    const owner = suctionSharedWith ?? name
    sharers.set(owner, [...(sharers.get(owner) ?? []), name])
  }
  return { fed, sharers }
}

/** Flow that a line carries at least. */
const flowOf = (line: LinePlace, { motorFlow }: Needed, { fed, sharers }: Circulation): CubicMetresPerSecond => {
  if (line.role === 'work') return motorFlow
  if (line.role === 'auxiliary' || line.circuit === null) return 0
  const of = (name: string) => (fed.get(name) ?? 0) * motorFlow
  if (line.role !== 'suction') return of(line.circuit)
  return (sharers.get(line.circuit) ?? [line.circuit]).reduce((sum, name) => sum + of(name), 0)
}

/** Above this a line must change whatever else is so. */
const mostIn = ({ role }: LinePlace): MetresPerSecond => {
  const limit = velocityLimits[role]
  return role === 'suction' ? (limit.always ?? Number.POSITIVE_INFINITY) : limit.change
}

const boreFor = (flow: CubicMetresPerSecond, velocity: MetresPerSecond): number =>
  Math.sqrt((4 * flow) / (Math.PI * velocity))

/**
 * Hoses made new: metres and job of each, and two ends of its size.
 * @param settled owners of ports that will be those of the place
 */
export const hoseCost = (
  line: LinePlace,
  { part, figures: { dash, bore } }: Stocked<HoseFigures>,
  shop: Shop,
  prices: Prices,
  settled?: ReadonlySet<OwnerKind>,
): Sum => {
  const metres = metresOf(line.line.length, line.count)
  const made = plus(prices.part(part, metres), prices.job('replace hose', line.count))
  return dash === null || bore === null ? made : plus(made, endsCost(line, { dash, bore }, shop, prices, settled))
}

export type Bounder = (needed: Needed) => PlaceBound

/**
 * A hose that is not rated for the pressure does not stay; of one that states nothing nobody asks. Where the present one is not
 * either, that is found already, and how much less another may bear is left to the evaluation.
 */
const holds = ({ line, workingPressure }: LinePlace, rated: Pascals | null): boolean =>
  workingPressure === null ||
  rated === null ||
  rated >= workingPressure * (1 - HAIR) ||
  (line.maxPressure !== null && line.maxPressure < workingPressure)

const hoseBounder = (question: Question, place: Place, prices: Prices, circulation: Circulation): Bounder => {
  const { shop } = question.loaded
  const { lines: before } = question.start.beforeJudged
  const stocked = hoses(shop)
  const sized = place.lines.map((line) => ({
    line,
    before: before.find(({ id }) => id === line.line.id)?.velocityMps ?? 0,
    ladder: ladderOf({
      present: line.line.bore,
      order: plus(prices.order('hose', line.count), prices.job('replace hose', line.count)),
      parts: stocked
        .filter(
          ({ figures }) => figures.bore !== null && kindFits(line, figures.kind) && holds(line, figures.maxPressure),
        )
        .map((hose) => ({ part: hose.part, size: hose.figures.bore, cost: hoseCost(line, hose, shop, prices) })),
    }),
  }))
  return (needed) => {
    const asked = sized.map(({ line, before: was }) =>
      boreFor(flowOf(line, needed, circulation), unlessThere(mostIn(line), was)),
    )
    return {
      keep: addUp(sized.map(({ ladder }, i) => ladder.kept(asked[i] ?? 0))),
      option: (index) => {
        const id = place.options[index]?.part.id ?? ''
        return addUp(sized.map(({ ladder }, i) => ladder.chosen(id, asked[i] ?? 0)))
      },
    }
  }
}

interface Kind {
  readonly kind: PartKind
  readonly job: Job
  readonly count: number
  readonly present: number | null
  readonly sizes: ReadonlyMap<string, number | null>
  readonly asked: (needed: Needed) => number
  /** The only ones that can be there in the end; all of the kind where nothing is said. */
  readonly able?: readonly Part[]
}

/** One part of a kind for each of so many places that are alike. */
const partBounder = (place: Place, kind: Kind, shop: Shop, prices: Prices): Bounder => {
  const { count } = kind
  const job = prices.job(kind.job, count)
  const ladder = ladderOf({
    present: kind.present,
    order: plus(prices.order(kind.kind, count), job),
    parts: (kind.able ?? shop.parts.filter((part) => part.kind === kind.kind)).map((part) => ({
      part,
      size: kind.sizes.get(part.id) ?? null,
      cost: plus(prices.part(part, count), job),
    })),
  })
  return (needed) => {
    const asked = kind.asked(needed)
    return {
      keep: ladder.kept(asked),
      option: (index) => ladder.chosen(place.options[index]?.part.id ?? '', asked),
    }
  }
}

const sizesOf = <F>(
  list: readonly { readonly part: Part; readonly figures: F }[],
  size: (figures: F) => number | null,
): ReadonlyMap<string, number | null> => new Map(list.map(({ part, figures }) => [part.id, size(figures)]))

const valveBounder = (question: Question, place: Place, prices: Prices, { fed }: Circulation): Bounder => {
  const { shop } = question.loaded
  const { before, beforeJudged } = question.start
  const ratings = place.circuits.map(
    (name) => before.machine.circuits.find((circuit) => circuit.name === name)?.valve?.ratedFlow ?? null,
  )
  const flows = place.circuits.map((name) => cubicMetresPerSecondFromLpm(beforeJudged.circuits[name]?.pumpFlowLpm ?? 0))
  // Valves that differ may need a bigger one on one side only: then nothing is said of the place.
  const present = new Set(ratings).size === 1 ? (ratings[0] ?? null) : null
  const kind: Kind = {
    kind: 'valve',
    job: 'replace valve',
    count: place.circuits.length,
    present,
    sizes: sizesOf(valves(shop), ({ ratedFlow }) => ratedFlow),
    asked: ({ motorFlow }) => {
      const flow = Math.min(...place.circuits.map((name) => (fed.get(name) ?? 0) * motorFlow))
      const isThere = present !== null && flows.some((was) => was > present && flow <= was * (1 + noticeable.value))
      return isThere ? 0 : flow
    },
  }
  return partBounder(place, kind, shop, prices)
}

const swivelBounder = (question: Question, place: Place, prices: Prices): Bounder => {
  const { shop } = question.loaded
  const { before, beforeJudged } = question.start
  const { swivel } = before.machine.travel
  const bore = swivel?.bore ?? null
  const flow = cubicMetresPerSecondFromLpm(beforeJudged.travel.level.motorFlowLpm)
  const velocity = bore === null ? 0 : (4 * flow) / (Math.PI * bore ** 2)
  const limit = unlessThere(velocityLimits.work.change, velocity)
  const kind: Kind = {
    kind: 'swivel',
    job: 'replace swivel',
    count: 1,
    present: bore,
    sizes: sizesOf(swivels(shop), (figures) => figures.bore),
    asked: ({ motorFlow }) => boreFor(motorFlow, limit),
    // A consequence takes none with fewer passages either.
    able: place.options.map(({ part }) => part),
  }
  return partBounder(place, kind, shop, prices)
}

const filterBounder = (question: Question, place: Place, prices: Prices, { fed }: Circulation): Bounder => {
  const { shop } = question.loaded
  const { machine, more } = question.start.before
  const present = machine.filter?.ratedFlow ?? null
  const motors = [...fed.values()].reduce((sum, count) => sum + count, 0)
  const was = cubicMetresPerSecondFromLpm(more.returnFlowLpm) * machine.cylinderAreaRatio
  const kind: Kind = {
    kind: 'filter',
    job: 'fit filter',
    count: 1,
    present,
    sizes: sizesOf(filters(shop), ({ ratedFlow }) => ratedFlow),
    asked: ({ motorFlow, totalFlow }) => {
      const flow = Math.max(motors * motorFlow, totalFlow) * machine.cylinderAreaRatio
      return present !== null && was > present && flow <= was * (1 + noticeable.value) ? 0 : flow
    },
  }
  return partBounder(place, kind, shop, prices)
}

/** Coolers: nothing asks for one by what flows. */
const coolerBounder = (question: Question, place: Place, prices: Prices): Bounder => {
  const options = place.options.map(({ part }) => coolerCost(question, part, prices))
  return () => ({ keep: NOTHING, option: (index) => options[index] ?? IMPOSSIBLE })
}

/** The bound of one place that carries the flow, as a function of what must flow. */
export const bounderOf = (question: Question, place: Place, prices: Prices, circulation: Circulation): Bounder => {
  switch (place.kind) {
    case 'hose':
      return hoseBounder(question, place, prices, circulation)
    case 'valve':
      return valveBounder(question, place, prices, circulation)
    case 'swivel':
      return swivelBounder(question, place, prices)
    case 'filter':
      return filterBounder(question, place, prices, circulation)
    case 'cooler':
      return coolerBounder(question, place, prices)
    default:
      return () => ({ keep: NOTHING, option: () => IMPOSSIBLE })
  }
}
