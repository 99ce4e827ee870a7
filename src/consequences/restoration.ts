/**
 * What putting the faults right takes: the worn pump, a relief that is set low, a starved inlet, motors or running gear that
 * drag, an engine that is slow. Nothing is upgraded; only what the fault demands is bought.
 */
import type { Consequence, Fault } from '../evaluation.ts'
import type { Circuit, Machine } from '../machine.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import { cubicMetresPerSecondFromLpm } from '../units/shop-units.ts'
import { atLeastStated, choose } from './choose.ts'
import { filterBrings } from './companions.ts'
import { linePlaces } from './line-places.ts'
import { likeHose, newHose } from './line-work.ts'
import { pumpWords } from './names.ts'
import { sameSize } from './pump-remedies.ts'
import { replacementPump, sameWords, sectionsOf } from './replacement-pump.ts'
import { filters, motors, strainers } from './stock.ts'
import { type JobUse, joinUses, type PartUse, type Uses } from './uses.ts'

export interface RestorationNeeds extends Uses {
  readonly consequences: readonly Consequence[]
}

const NOTHING: RestorationNeeds = { uses: [], jobs: [], consequences: [] }

const join = (all: readonly RestorationNeeds[]): RestorationNeeds => ({
  ...joinUses(all),
  consequences: all.flatMap((one) => one.consequences),
})

interface Bought {
  readonly component: string
  readonly kind: PartKind
  readonly part: Part | null
  readonly what: string
  readonly quantity: number
  readonly action: Consequence['action']
  readonly fault: Fault
  readonly chain: readonly string[]
  readonly jobs: readonly JobUse[]
}

/** One thing bought; where the list has none it is a special order, or is named without a price. */
const bought = (shop: Shop, one: Bought): RestorationNeeds => {
  const { component, kind, part, what, quantity, action, fault, chain, jobs } = one
  const order = part === null && shop.specialOrder.some((special) => special.kind === kind)
  const consequence: Consequence = {
    component,
    kind,
    action,
    part: part?.id ?? null,
    quantity,
    because: [],
    connections: [],
    available: part !== null,
    specialOrder: order,
    chain: [fault.text, ...chain],
  }
  return { uses: [{ component, kind, part: part?.id ?? null, what, quantity }], jobs, consequences: [consequence] }
}

/**
 * A worn pump has shed metal into the oil: the tank is opened and cleaned and the oil is new; a filter that is there gets
 * two new elements, one after the other (elements are not on the list: named, unpriced); a machine that never had one gets one, or the new pump would
 * wear as the old one did.
 */
const wornPump = (fault: Fault, circuit: Circuit, machine: Machine, shop: Shop): RestorationNeeds => {
  const sections = sectionsOf(circuit, machine)
  const component = `circuits.${(sections[0] ?? circuit).name}.pump`
  const isTandem = circuit.pump.section !== null
  const part = replacementPump(sections, shop)
  const pump = bought(shop, {
    component,
    kind: isTandem ? 'tandem pump' : 'pump',
    part,
    what: part?.name ?? `Pump, ${pumpWords(circuit, shop)}`,
    quantity: 1,
    action: 'replace',
    fault,
    chain: ['pump of the same size and mount'],
    jobs: [
      { component, job: 'replace pump', quantity: 1 },
      { component: 'reservoir', job: 'clean reservoir', quantity: 1 },
    ],
  })
  return join([pump, filterAgainstWear(fault, machine, shop)])
}

/** Pump flow of all circuits at rated speed without losses, times the area ratio: what a return filter must pass. */
const mostReturnFlow = (machine: Machine): number =>
  machine.cylinderAreaRatio *
  machine.circuits.reduce((sum, { pump }) => sum + pump.displacement * machine.engine.ratedSpeed, 0)

const filterAgainstWear = (fault: Fault, machine: Machine, shop: Shop): RestorationNeeds => {
  const chain = ['worn metal is in the oil, and nothing filters it']
  if (machine.filter !== null) {
    // One after a few hours and one after a working day. An element is no filter: no allowance for filters prices it.
    const use: PartUse = { component: 'filter', kind: 'kit', part: null, what: 'Filter element', quantity: 2 }
    return { ...NOTHING, uses: [use] }
  }
  const flow = mostReturnFlow(machine)
  const met = ({ ratedFlow }: { readonly ratedFlow: number | null }) => atLeastStated(ratedFlow, flow)
  const { chosen } = choose(filters(shop), [{ what: 'rated flow', met }], ({ ratedFlow }) => ratedFlow, shop)
  const filter = bought(shop, {
    component: 'filter',
    kind: 'filter',
    part: chosen?.part ?? null,
    what: chosen?.part.name ?? 'Return filter',
    quantity: 1,
    action: 'add',
    fault,
    chain,
    jobs: [{ component: 'filter', job: 'fit filter', quantity: 1 }],
  })
  return join([filter, filterBrings(machine, shop, new Set(), true, [], [fault.text, ...chain])])
}

/** A relief that reads low is set; a new one is bought only where setting it does not help, which the job shows. */
const lowRelief = (fault: Fault): RestorationNeeds => ({
  uses: [],
  jobs: [{ component: fault.component, job: 'set relief', quantity: 1 }],
  consequences: [],
})

/** A starved inlet: the strainer is changed and the suction hose made new, both of the size that is there. */
const starvedInlet = (fault: Fault, circuit: Circuit, machine: Machine, shop: Shop): RestorationNeeds => {
  const line = circuit.lines.suction
  const place = line === null ? undefined : linePlaces(machine).find((one) => one.line.id === line.id)
  const part =
    line === null ? null : (shop.parts.find(({ id }) => id === line.part) ?? likeHose(line, shop)?.part ?? null)
  const what = `Suction hose${line?.dash ? ` -${line.dash}` : ''}, metre`
  const work =
    place === undefined
      ? null
      : newHose(place, place, { part, what, dash: place.line.dash, bore: place.line.bore }, shop)
  const hose: RestorationNeeds = {
    uses: work?.uses ?? [],
    jobs: work?.jobs ?? [],
    consequences:
      line === null
        ? []
        : [
            {
              component: line.id,
              kind: 'hose',
              action: 'replace',
              part: part?.id ?? null,
              quantity: 1,
              because: [],
              connections: work?.connections ?? [],
              available: part !== null,
              specialOrder: part === null,
              chain: [fault.text, 'suction hose made new'],
            },
          ],
  }
  const flow = machine.strainer?.ratedFlow ?? cubicMetresPerSecondFromLpm(0)
  const met = ({ ratedFlow }: { readonly ratedFlow: number | null }) => atLeastStated(ratedFlow, flow)
  const { chosen } = choose(strainers(shop), [{ what: 'rated flow', met }], ({ ratedFlow }) => ratedFlow, shop)
  const strainer =
    machine.strainer === null
      ? NOTHING
      : bought(shop, {
          component: 'strainer',
          kind: 'strainer',
          part: chosen?.part ?? null,
          what: chosen?.part.name ?? 'Tank strainer',
          quantity: 1,
          action: 'replace',
          fault,
          chain: ['tank strainer changed'],
          jobs: [{ component: 'strainer', job: 'change oil', quantity: 1 }],
        })
  return join([hose, strainer])
}

/** Motors of the same displacement, all of them: what is lost behind the pump is lost in motors or running gear. */
const draggingMotors = (fault: Fault, machine: Machine, shop: Shop): RestorationNeeds => {
  const { motor, motors: count } = machine.travel
  const own = shop.parts.find(({ id }) => id === motor.part) ?? null
  const { chosen } = choose(
    motors(shop),
    [
      { what: 'displacement', met: ({ displacement }) => sameSize(displacement, motor.displacement) },
      {
        what: 'second displacement',
        met: ({ secondDisplacement }) =>
          motor.secondDisplacement === null
            ? secondDisplacement === null
            : sameSize(secondDisplacement, motor.secondDisplacement),
      },
      { what: 'flange', met: ({ mount }) => sameWords(mount.flange, motor.mount.flange) },
      { what: 'shaft', met: ({ mount }) => sameWords(mount.shaft, motor.mount.shaft) },
      {
        what: 'pressure',
        met: ({ maxPressure }) => motor.maxPressure === null || atLeastStated(maxPressure, motor.maxPressure),
      },
    ],
    ({ displacement }) => (displacement === null ? 1 : Math.abs(displacement / motor.displacement - 1)),
    shop,
  )
  const part = own ?? chosen?.part ?? null
  return bought(shop, {
    component: 'travel.motor',
    kind: 'motor',
    part,
    what: part?.name ?? 'Travel motor of the same size',
    quantity: count,
    action: 'replace',
    fault,
    chain: ['motors of the same size, all of them; tracks, brakes and final drives are looked at first'],
    jobs: [{ component: 'travel.motor', job: 'replace motor', quantity: count }],
  })
}

const forFault = (fault: Fault, machine: Machine, shop: Shop): RestorationNeeds => {
  const { component } = fault
  const circuit = machine.circuits.find(({ name }) => component.startsWith(`circuits.${name}.`))
  if (component === 'travel.motor') return draggingMotors(fault, machine, shop)
  if (circuit !== undefined && component.endsWith('.pump')) return wornPump(fault, circuit, machine, shop)
  if (circuit !== undefined && component.endsWith('.relief')) return lowRelief(fault)
  if (circuit !== undefined && component.endsWith('.lines.suction')) return starvedInlet(fault, circuit, machine, shop)
  // An engine that is slow, and whatever else: a repair that nobody can price before it is looked at.
  const part: PartUse = {
    component,
    kind: 'kit',
    part: null,
    what: `Repair of the ${component.replaceAll('.', ' ')}, on sight`,
    quantity: 1,
  }
  return { ...NOTHING, uses: [part] }
}

/**
 * What two faults both ask for is done once: a tandem pump, the tank, the filter. Within one fault nothing is dropped: a hose
 * has two ends alike.
 */
const once = (all: readonly RestorationNeeds[]): RestorationNeeds => {
  const seen = new Set<string>()
  const fresh = <T>(list: readonly T[], key: (one: T) => string): readonly T[] =>
    list.filter((one) => !seen.has(key(one)))
  const use = ({ component, kind, what }: PartUse): string => `use ${component} ${kind} ${what}`
  const job = ({ component, job: name }: JobUse): string => `job ${component} ${name}`
  const consequence = ({ component, kind }: Consequence): string => `consequence ${component} ${kind}`
  const kept = all.map((needs): RestorationNeeds => {
    const left = {
      uses: fresh(needs.uses, use),
      jobs: fresh(needs.jobs, job),
      consequences: fresh(needs.consequences, consequence),
    }
    for (const key of [...needs.uses.map(use), ...needs.jobs.map(job), ...needs.consequences.map(consequence)])
      seen.add(key)
    return left
  })
  return join(kept)
}

/**
 * What putting every fault right takes.
 * @param faults as calibration called them, each with the component it sits in
 * @param machine as it stands
 */
export const restorationNeeds = (faults: readonly Fault[], machine: Machine, shop: Shop): RestorationNeeds =>
  once(faults.map((fault) => forFault(fault, machine, shop)))
