/**
 * A second pump for the attachment: a tandem takes the place of the pump that is there. All its sections but one feed the
 * circuits as before; the one left over feeds a circuit of its own that works the attachment and nothing else, so that the
 * travel speed stays what those sections give.
 *
 * Nobody has read a circuit that is not there yet. So it is taken like the one beside it, and written as assumed:
 *
 * - pressure and return line: hose, length and elbows of that circuit; suction: the same line (a tandem draws through one);
 * - lines to the attachment: those that are there change over, with their couplers; where there are none, hoses like the
 *   pressure line, as long as the way from the valve to a motor, with couplers of COUPLER_DROP at the wanted flow;
 * - valve and relief: the smallest of the list that pass the flow of that section at rated speed;
 * - relief setting: ABOVE times the wanted pressure, for the lines have their drop as well.
 *
 * Where the list has no valve for it there is no such option.
 */

import { type Candidate, choose } from '../consequences/choose.ts'
import { drivingCircuits } from '../consequences/line-places.ts'
import { reliefs, type TandemFigures, tandems, valves } from '../consequences/stock.ts'
import type { Circuit, Line, Machine, QuadraticRestriction } from '../machine.ts'
import type { Json, Wants } from '../question.ts'
import type { Part, Shop } from '../shop.ts'
import { barFromPascals, lpmFromCubicMetresPerSecond, mmFromMetres } from '../units/shop-units.ts'
import type { CubicMetresPerSecond, Metres, Pascals } from '../units/si.ts'
import { joinPatches } from './join-patches.ts'
import type { Patch, PlaceOption } from './places.ts'

/** Relief setting over the wanted pressure: common practice, no source. */
const ABOVE = 1.2
/** Reliefs are set by a gauge that shows so much [bar]. */
const SETTING_STEP = 5
/** Drop of one quick coupler at the flow that it is bought for [bar]: common practice, no source. */
const COUPLER_DROP = 5

/** Circuits that are fed by the same pump: all sections of a tandem, else the circuits themselves. */
export const onePump = (machine: Machine, circuits: readonly Circuit[]): readonly Circuit[] => {
  const parts = circuits.flatMap(({ pump }) => (pump.section === null || pump.part === null ? [] : [pump.part]))
  return machine.circuits.filter(
    (circuit) =>
      circuits.includes(circuit) ||
      (circuit.pump.section !== null && circuit.pump.part !== null && parts.includes(circuit.pump.part)),
  )
}

/** Circuits that work an attachment: it gets what all of them give. */
export const workingOf = ({ circuits }: Machine): readonly Circuit[] =>
  circuits.filter(({ works }) => works.includes('attachment'))

/**
 * Circuits whose pump a tandem with one more section replaces; none where the attachment has a pump already, or where it is
 * worked from several pumps: one circuit more would leave it on some of them.
 */
export const hostsOf = (machine: Machine): readonly Circuit[] => {
  const working = workingOf(machine)
  const host = working[0] ?? drivingCircuits(machine)[0]
  if (host === undefined || [host, ...working].some(({ drives }) => drives === 'no track')) return []
  const hosts = onePump(machine, [host])
  return working.every((circuit) => hosts.includes(circuit)) ? hosts : []
}

const lengthText = (length: Metres, note: string): string => `${mmFromMetres(length)} mm${note}`

/** A line as it is written in a machine file. */
const written = ({ dash, bore, kind, elbows, ends, maxPressure }: Line, length: Metres, isMoved: boolean): Patch => ({
  ...(dash === null ? { bore: lengthText(bore, '') } : { hose: -dash }),
  ...(kind === null ? {} : { kind }),
  length: lengthText(length, isMoved ? '' : ' (assumed)'),
  elbows,
  ...(isMoved && ends !== null ? { ends: ends.map(({ text }) => text) } : {}),
  ...(maxPressure === null ? {} : { 'max-pressure': `${barFromPascals(maxPressure)} bar` }),
})

const maybeWritten = (line: Line | null, isMoved: boolean): Json =>
  line === null ? null : written(line, line.length, isMoved)

const movedCoupler = (coupler: QuadraticRestriction | null): Json =>
  coupler === null
    ? null
    : { flow: `${lpmFromCubicMetresPerSecond(coupler.flow)} L/min`, drop: `${barFromPascals(coupler.drop)} bar` }

const auxiliaryOf = (machine: Machine, host: Circuit, wanted: CubicMetresPerSecond): Json => {
  const { auxiliary } = host
  if (auxiliary !== null)
    return {
      lines: { out: maybeWritten(auxiliary.out, true), back: maybeWritten(auxiliary.back, true) },
      coupler: movedCoupler(auxiliary.coupler),
    }
  const like = host.lines.pressure ?? machine.travel.lines[0]
  const way = machine.travel.lines.reduce((sum, { length }) => sum + length, 0)
  const line = like === undefined || !(way > 0) ? null : written(like, way, false)
  return {
    lines: { out: line, back: line },
    coupler: { flow: `${lpmFromCubicMetresPerSecond(wanted)} L/min`, drop: `${COUPLER_DROP} bar (assumed)` },
  }
}

const settingFor = (wanted: Pascals): string =>
  `${Math.ceil((barFromPascals(wanted) * ABOVE) / SETTING_STEP - 1e-9) * SETTING_STEP} bar`

/** Smallest of the list that passes the flow. */
const smallest = <F extends { readonly ratedFlow: CubicMetresPerSecond | null }>(
  list: readonly Candidate<F>[],
  flow: CubicMetresPerSecond,
  shop: Shop,
): Part | null => {
  const passes = { what: 'rated flow', met: ({ ratedFlow }: F) => (ratedFlow ?? 0) >= flow }
  return choose(list, [passes], ({ ratedFlow }) => ratedFlow, shop).chosen?.part ?? null
}

/** Name of the new circuit, as no other is called. */
const nameFor = ({ circuits }: Machine): string => {
  const taken = new Set(circuits.map(({ name }) => name))
  let name = 'attachment'
  for (let i = 2; taken.has(name); i++) name = `attachment-${i}`
  return name
}

/** Tracks that are driven by unequal pumps do not run straight: the sections of circuits that drive are alike. */
export const runsStraight = (circuits: readonly Circuit[], sections: TandemFigures['sections']): boolean =>
  new Set(circuits.flatMap(({ drives }, i) => (drives === 'no track' ? [] : [sections[i]?.displacement ?? null])))
    .size <= 1

interface Tandem {
  readonly part: Part
  readonly figures: TandemFigures
}

/** For each of the sections that may feed the attachment, what it takes. */
const optionsOf = (
  machine: Machine,
  hosts: readonly Circuit[],
  { flow, pressure }: NonNullable<Wants['attachment']>,
  shop: Shop,
  { part, figures: { sections } }: Tandem,
): readonly PlaceOption[] => {
  const host = hosts.find(({ works }) => works.includes('attachment')) ?? hosts[0]
  if (host === undefined) return []
  const name = nameFor(machine)
  return sections.flatMap((section, own) => {
    const others = sections.map((_, i) => i + 1).filter((i) => i !== own + 1)
    // Of sections that are alike the last feeds the attachment.
    const isLast = sections.findLastIndex(({ displacement }) => displacement === section.displacement) === own
    const rest = others.flatMap((i) => sections[i - 1] ?? [])
    if (section.displacement === null || !isLast || !runsStraight(hosts, rest)) return []
    const most = section.displacement * machine.engine.ratedSpeed
    const valve = smallest(valves(shop), most, shop)
    if (valve === null) return []
    const relief = smallest(reliefs(shop), most, shop)
    const passes =
      relief === null ? { 'rated-flow': `${lpmFromCubicMetresPerSecond(most)} L/min` } : { part: relief.id }
    const circuit: Patch = {
      loop: 'open',
      pump: { part: part.id, section: own + 1 },
      relief: { ...passes, setting: settingFor(pressure) },
      valve: { part: valve.id },
      lines: {
        suction: host.lines.suction === null ? null : { 'same-as': host.suctionSharedWith ?? host.name },
        pressure: maybeWritten(host.lines.pressure, false),
        return: maybeWritten(host.lines.return, false),
      },
      drives: 'no track',
      works: ['attachment'],
      auxiliary: auxiliaryOf(machine, host, flow),
    }
    const before = hosts.map(
      ({ name: one, works }, i): Patch => ({
        circuits: {
          [one]: {
            pump: { part: part.id, section: others[i] ?? 1 },
            ...(works.includes('attachment')
              ? { works: works.filter((what) => what !== 'attachment'), auxiliary: null }
              : {}),
          },
        },
      }),
    )
    return [{ part, patch: joinPatches([...before, { circuits: { [name]: circuit } }]), newCircuit: name }]
  })
}

/**
 * Every way to give the attachment a pump of its own in the place of these circuits' pump, in the order of the parts' ids;
 * none where a tandem would take the place of another pump, or of one of several that are changed alike.
 * @param machine calibrated, as every way finds it
 */
export const secondPumps = (
  machine: Machine,
  circuits: readonly Circuit[],
  { attachment }: Wants,
  shop: Shop,
): readonly PlaceOption[] => {
  const hosts = hostsOf(machine)
  const isWhole = hosts.length === circuits.length && hosts.every((host) => circuits.includes(host))
  if (attachment === null || hosts.length === 0 || !isWhole) return []
  return tandems(shop)
    .filter(({ figures }) => figures.sections.length === hosts.length + 1)
    .toSorted((one, other) => (one.part.id < other.part.id ? -1 : 1))
    .flatMap((tandem) => optionsOf(machine, hosts, attachment, shop, tandem))
}
