/**
 * What a cooler, a filter or a two-speed motor brings with it though no check asks for it: bypass, fan switch and harness;
 * breather; shift line. Common practice, no source.
 */
import type { Consequence } from '../evaluation.ts'
import type { Line, Machine } from '../machine.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import { cheaperFirst } from './choose.ts'
import { drivingPressure, linePlaces } from './line-places.ts'
import { likeHose, metresToCut } from './line-work.ts'
import { plainParts } from './read-figures.ts'
import { coolers } from './stock.ts'
import { hoseEnds, hoses } from './stock-lines.ts'
import { joinUses, type PartUse, type Uses } from './uses.ts'

export interface Companions extends Uses {
  readonly consequences: readonly Consequence[]
}

/** Hoses that a cooler takes and their length; a filter takes one: it is cut into the return line. Assumed. */
const COOLER_HOSES = 2
const FILTER_HOSES = 1
const HOSE_LENGTH = 1

const cheapest = (shop: Shop, kind: PartKind): Part | null =>
  plainParts(shop, kind)
    .map(({ part }) => part)
    .toSorted(cheaperFirst(shop))[0] ?? null

const consequence = (
  component: string,
  kind: PartKind,
  part: Part | null,
  quantity: number,
  because: readonly string[],
  chain: readonly string[],
): Consequence => ({
  component,
  kind,
  action: 'add',
  part: part?.id ?? null,
  quantity,
  because,
  connections: [],
  available: part !== null,
  // Named and unpriced where the list has none: it is an ordinary part that any shop can get.
  specialOrder: part === null,
  chain,
})

/** The line that cooler and filter are cut into: the return line of the first circuit that has one. */
export const returnLine = (machine: Machine): Line | null =>
  machine.circuits.map(({ lines }) => lines.return).find((line) => line !== null) ?? null

/** Hoses into the return line, of its kind and size, with two ends each like those of the line. */
const returnHoses = (component: string, count: number, machine: Machine, shop: Shop): readonly PartUse[] => {
  const line = returnLine(machine)
  if (line === null || line.dash === null)
    return [{ component, kind: 'hose', part: null, what: `Hoses for the ${component}`, quantity: count }]
  const hose = hoses(shop).find(({ part }) => part.id === line.part) ?? likeHose(line, shop)
  const end = line.ends?.[1] ?? null
  const ofSize = hoseEnds(shop).filter(({ figures }) => figures.dash === line.dash)
  const matching = ofSize.filter(({ figures }) => end !== null && figures.end?.text === end.text)
  const order = cheaperFirst(shop)
  const fitting = (matching.length > 0 ? matching : ofSize).map(({ part }) => part).toSorted(order)[0] ?? null
  const what = `${line.kind ?? 'Hose'} -${line.dash}, metre`
  return [
    { component, kind: 'hose', part: hose?.part.id ?? null, what, quantity: count * HOSE_LENGTH },
    { component, kind: 'fitting', part: fitting?.id ?? null, what: `Hose end -${line.dash}`, quantity: 2 * count },
  ]
}

const small = (component: string, kind: PartKind, part: Part | null, what: string): PartUse => ({
  component,
  kind,
  part: part?.id ?? null,
  what,
  quantity: 1,
})

/**
 * What a cooler brings: a bypass (cold oil bursts a core without one), a fan switch and a harness where it has a fan, and
 * two hoses. A bypass that the cooler states counts as built in where the list has none to sell.
 * @param named components that the option names itself: those are not brought a second time
 * @param isNew false where one cooler takes the place of another: hoses and wiring are there
 */
export const coolerBrings = (
  coolerPart: string | null,
  machine: Machine,
  shop: Shop,
  named: ReadonlySet<string>,
  isNew: boolean,
  because: readonly string[],
  chain: readonly string[],
): Companions => {
  if (!isNew) return { uses: [], jobs: [], consequences: [] }
  const cooler = coolers(shop).find(({ part }) => part.id === coolerPart)?.figures ?? null
  const hasFan = (machine.cooler?.fanCurrent ?? cooler?.fanCurrent ?? 0) > 0
  const wanted: readonly (readonly [component: string, kind: PartKind, what: string, needed: boolean])[] = [
    ['cooler-bypass', 'oil cooler bypass', 'Cooler bypass', !(cooler?.bypassStated ?? false)],
    ['thermostat', 'thermostat', 'Fan switch', false],
    ['harness', 'harness', 'Relay, fuse and cable for the fan', hasFan],
  ]
  const brought = wanted.flatMap(([component, kind, what, needed]) => {
    if (named.has(component) || (kind !== 'oil cooler bypass' && !hasFan)) return []
    const part = cheapest(shop, kind)
    if (part === null && !needed) return []
    return [
      {
        use: small(component, kind, part, what),
        consequence: consequence(component, kind, part, 1, because, [...chain, `with it: ${what.toLowerCase()}`]),
      },
    ]
  })
  return {
    uses: [...brought.map(({ use }) => use), ...returnHoses('cooler', COOLER_HOSES, machine, shop)],
    jobs: [],
    consequences: brought.map((one) => one.consequence),
  }
}

/** What a filter on a machine that had none brings: one hose, and a breather where the list has one. */
export const filterBrings = (
  machine: Machine,
  shop: Shop,
  named: ReadonlySet<string>,
  isNew: boolean,
  because: readonly string[],
  chain: readonly string[],
): Companions => {
  if (!isNew) return { uses: [], jobs: [], consequences: [] }
  const breather = named.has('breather') ? null : cheapest(shop, 'breather')
  return {
    uses: [
      ...(breather === null ? [] : [small('breather', 'breather', breather, breather.name)]),
      ...returnHoses('filter', FILTER_HOSES, machine, shop),
    ],
    jobs: [],
    consequences:
      breather === null
        ? []
        : [
            consequence('breather', 'breather', breather, 1, because, [
              ...chain,
              'breather, so that no dirt is breathed in',
            ]),
          ],
  }
}

/** Hoses of the shift line: one to the swivel, from there one to each motor; without a swivel one to each motor. */
const shiftHoses = (machine: Machine): readonly number[] => {
  const work = linePlaces(machine).filter(({ role }) => role === 'work')
  return work.flatMap(({ line }) => {
    const upToSwivel = machine.travel.swivel !== null && !line.id.endsWith('motor')
    return Array.from({ length: upToSwivel ? 1 : machine.travel.motors }, () => metresToCut(line.length))
  })
}

/**
 * What motors with a second displacement bring on a machine that had none: the line that shifts them, of the smallest hose
 * that bears the working pressure, and its job. What shifts them (a valve in the pilot line, or a lever) hangs on what the
 * machine offers: it is named, and stays without a price.
 */
export const shiftLineBrings = (
  machine: Machine,
  shop: Shop,
  because: readonly string[],
  chain: readonly string[],
): Companions => {
  const component = 'travel.lines.shift'
  const lengths = shiftHoses(machine)
  const pressure = drivingPressure(machine) ?? 0
  const order = cheaperFirst(shop)
  const [hose] = hoses(shop)
    .filter(({ figures }) => figures.dash !== null && figures.maxPressure !== null && figures.maxPressure >= pressure)
    .toSorted((a, b) => (a.figures.dash ?? 0) - (b.figures.dash ?? 0) || order(a.part, b.part))
  const ends = hoseEnds(shop).filter(({ figures }) => figures.dash === hose?.figures.dash)
  const [end] = ends.map(({ part }) => part).toSorted(order)
  const metres = Math.round(lengths.reduce((sum, length) => sum + length, 0) * 10) / 10
  const cut: readonly PartUse[] =
    metres === 0
      ? []
      : [
          { component, kind: 'hose', part: hose?.part.id ?? null, what: 'Shift line, metre', quantity: metres },
          {
            component,
            kind: 'fitting',
            part: end?.id ?? null,
            what: 'End of a shift line',
            quantity: 2 * lengths.length,
          },
        ]
  const words = [...chain, 'shift line to each motor; its valve or lever is found on the machine or priced on sight']
  return {
    uses: [
      ...cut,
      { component, kind: 'fitting', part: null, what: 'Valve or lever that shifts the motors', quantity: 1 },
    ],
    jobs: [{ component, job: 'fit shift line', quantity: 1 }],
    consequences: [consequence(component, 'hose', hose?.part ?? null, Math.max(1, lengths.length), because, words)],
  }
}

export const joinCompanions = (all: readonly Companions[]): Companions => ({
  ...joinUses(all),
  consequences: all.flatMap((one) => one.consequences),
})
