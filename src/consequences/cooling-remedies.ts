/** Cooler, its current, filter and strainer: what is fitted or changed when a check asks. */
import type { Finding } from '../evaluation.ts'
import type { Json } from '../question.ts'
import type { Part } from '../shop.ts'
import {
  cubicMetresPerSecondFromLpm,
  lpmFromCubicMetresPerSecond,
  pascalsFromBar,
  wattsFromKw,
} from '../units/shop-units.ts'
import { answer, askedValue, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, type Candidate, choose, type Requirement } from './choose.ts'
import { coolerBrings } from './companions.ts'
import { capacityAt, coolerNeed, surfaceLoss } from './cooler-need.ts'
import { type CoolerFigures, coolers, currentGivers, filters, strainers } from './stock.ts'
import type { Remedy } from './uses.ts'

/** A cooler that still leaves the oil hot is followed by one at least so much bigger, or the passes would not end. */
const NEXT_SIZE = 1.1

/** Of a cooler to order [W/K]. */
const LEAST_CAPACITY = 1

/** Remedy of the cooler, and of what it brings. */
export const coolerRemedy = (input: RemedyInput, because: readonly Finding[]): readonly Remedy[] => {
  const { machine, before, site, shop, steady, targetOilC } = input
  const tooHot = because.some(({ check }) => check === 'oil-temperature')
  const flow = cubicMetresPerSecondFromLpm(steady.returnFlowLpm)
  const own = machine.cooler
  const present = own === null ? 0 : capacityAt(own.capacity, own.atFlow, flow)
  const least = tooHot && own !== null ? present * NEXT_SIZE : present
  const heat = wattsFromKw(steady.averageHeatKw)
  const needFor = (airRise: number): number | null => {
    if (!tooHot) return least
    const need = coolerNeed(heat, surfaceLoss(machine), targetOilC, site.ambient, airRise)
    return need === null ? null : Math.max(need, least)
  }
  const pressureBar = askedValue(because, 'cooler-pressure')
  const need = needFor(own?.airRise ?? 0)
  const requirements: readonly Requirement<CoolerFigures>[] = [
    {
      what: need === null ? 'air colder than the oil is to be' : `${written(need, 'W/K', 0)} at the return flow`,
      met: ({ capacity, atFlow, airRise }) => {
        const wanted = needFor(airRise)
        return capacity !== null && atFlow !== null && wanted !== null && capacityAt(capacity, atFlow, flow) >= wanted
      },
    },
    {
      what: `pressure of ${written(pressureBar ?? 0, 'bar')}`,
      met: ({ maxPressure }) => pressureBar === null || atLeastStated(maxPressure, pascalsFromBar(pressureBar)),
    },
  ]
  const effective = ({ capacity, atFlow }: CoolerFigures): number | null =>
    capacity === null || atFlow === null ? null : capacityAt(capacity, atFlow, flow)
  const choice = choose(coolers(shop), requirements, effective, shop)
  const isNew = before.cooler === null
  const ordered: Json = {
    part: null,
    // None is made that sheds nothing.
    capacity: written(Math.max(need ?? 0, LEAST_CAPACITY) / 1000, 'kW/K', 4),
    'at-flow': written(steady.returnFlowLpm, 'L/min'),
    ...(pressureBar === null ? {} : { 'max-pressure': written(pressureBar, 'bar') }),
  }
  const failed = need === null ? 'the air is not colder than the oil is to be' : choice.failed
  const main = answer(input, {
    component: 'cooler',
    kind: 'cooler',
    action: isNew ? 'add' : 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed,
    quantity: 1,
    path: ['cooler'],
    ordered,
    orderedWords: `${written(need ?? 0, 'W/K', 0)} at ${written(steady.returnFlowLpm, 'L/min', 0)}`,
    job: 'fit cooler',
  })
  if (main.stop || own !== null) return [main]
  const ids = because.map(({ id }) => id)
  const brought = coolerBrings(main.consequence.part, machine, shop, new Set(), isNew, ids, main.consequence.chain)
  const extras = brought.consequences.map(
    (consequence): Remedy => ({
      consequence,
      patch: null,
      uses: brought.uses.filter(({ component }) => component === consequence.component),
      jobs: [],
      stop: false,
    }),
  )
  const hoses = brought.uses.filter(({ component }) => component === 'cooler')
  return [{ ...main, uses: [...main.uses, ...hoses] }, ...extras]
}

type Giver = ReturnType<typeof currentGivers>[number]['figures']

/** Lamps that draw less or an alternator that gives more, for a fan that draws more than is left. */
export const currentRemedy = (input: RemedyInput, because: readonly Finding[]): Remedy => {
  const { machine, shop, earlier } = input
  const short = Math.max(0, (machine.cooler?.fanCurrent ?? 0) - (machine.engine.spareCurrent ?? 0))
  const had = new Set(earlier.map(({ component }) => component))
  const candidates: readonly Candidate<Giver>[] = [
    ...(had.has('lamp-set') ? [] : currentGivers(shop, 'lamp set')),
    ...(had.has('alternator') ? [] : currentGivers(shop, 'alternator')),
  ]
  const what = `${written(short, 'A')} more than is left`
  const met = ({ current }: Giver) => atLeastStated(current, short)
  // All that give enough do equally well: the cheapest is taken.
  const choice = choose(candidates, [{ what, met }], () => 0, shop)
  const lamps = choice.chosen?.part.kind === 'lamp set'
  const component = lamps ? 'lamp-set' : 'alternator'
  return answer(input, {
    component,
    kind: lamps ? 'lamp set' : 'alternator',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path: [component],
    ordered: { current: written(short, 'A') },
    orderedWords: what,
    job: null,
    cameWith: 'cooler',
  })
}

type Rated = { readonly ratedFlow: number | null }

const byFlow = (input: RemedyInput, list: readonly { readonly part: Part; readonly figures: Rated }[], lpm: number) => {
  const flow = cubicMetresPerSecondFromLpm(lpm)
  const what = `rated flow of ${written(lpm, 'L/min')}`
  const met = ({ ratedFlow }: Rated) => atLeastStated(ratedFlow, flow)
  return { what, choice: choose(list, [{ what, met }], ({ ratedFlow }) => ratedFlow, input.shop) }
}

/** A return filter for the return flow at its worst. */
export const filterRemedy = (input: RemedyInput, because: readonly Finding[]): Remedy => {
  const { machine, before } = input
  const worst = input.steady.returnFlowLpm * machine.cylinderAreaRatio
  const lpm = Math.max(
    askedValue(because, 'filter-flow') ?? worst,
    lpmFromCubicMetresPerSecond(machine.filter?.ratedFlow ?? 0),
  )
  const { what, choice } = byFlow(input, filters(input.shop), lpm)
  return answer(input, {
    component: 'filter',
    kind: 'filter',
    action: before.filter === null ? 'add' : 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path: ['filter'],
    ordered: { part: null, 'rated-flow': written(lpm, 'L/min') },
    orderedWords: what,
    job: 'fit filter',
  })
}

/**
 * A tank strainer with a rated flow of at least so much; null where the list has none, so that the caller can look for
 * another way.
 */
export const strainerRemedy = (input: RemedyInput, because: readonly Finding[], lpm: number): Remedy | null => {
  const { what, choice } = byFlow(input, strainers(input.shop), lpm)
  if (choice.chosen === null) return null
  return answer(input, {
    component: 'strainer',
    kind: 'strainer',
    action: 'replace',
    because,
    chosen: choice.chosen.part,
    failed: null,
    quantity: 1,
    path: ['strainer'],
    ordered: null,
    orderedWords: what,
    // It sits in the tank, which is drained for it.
    job: 'change oil',
  })
}
