/**
 * From the findings that ask to what takes the places: first components, then the hoses, so that each hose is made for the
 * port that will be there. Pure: the conductor applies the patches and evaluates again.
 */
import type { Finding } from '../evaluation.ts'
import type { Circuit, Machine } from '../machine.ts'
import type { PartKind } from '../shop.ts'
import { chainUpTo, type RemedyInput } from './answer-finding.ts'
import { fits, portTooSmall } from './connect.ts'
import { couplingRemedy, type PortWanted, reliefRemedy, valveRemedy } from './control-remedies.ts'
import { coolerRemedy, currentRemedy, filterRemedy } from './cooling-remedies.ts'
import { type LinePlace, linePlaces, type Port } from './line-places.ts'
import { chooseHose, type HoseChoice, inletHelp, lineRemedy, needsInletHelp } from './line-remedies.ts'
import { adaptHose, hadOf, newHose } from './line-work.ts'
import { mountRemedy } from './mount-remedy.ts'
import { inWords } from './names.ts'
import { withPortsOf } from './new-ports.ts'
import { pumpRemedy } from './pump-remedies.ts'
import { motorRemedy, swivelRemedy } from './travel-remedies.ts'
import type { Remedy } from './uses.ts'

export type { RemedyInput } from './answer-finding.ts'
export { type Remedy, settle } from './uses.ts'

/** What is sized by heat or by what another answer brings, and so waits until the oil's way is settled. */
const WAITING: readonly (readonly string[])[] = [['oil-temperature', 'cooler-pressure'], ['fan-current']]

const turnOf = (finding: Finding): number => WAITING.findIndex((checks) => checks.includes(finding.check)) + 1

/**
 * The findings whose turn it is: pump, valves and lines before the cooler, the cooler before its current. A cooler that was
 * sized while hoses were still too small would be too big.
 * @param asking findings that ask
 * @returns those of the first turn that has any
 */
export const inTurn = (asking: readonly Finding[]): readonly Finding[] => {
  const first = Math.min(...asking.map(turnOf))
  return asking.filter((finding) => turnOf(finding) === first)
}

type Answerer = (ports: readonly PortWanted[]) => readonly Remedy[]

/** What answers for a component of a circuit: its name under the circuit. */
const inCircuit = (
  input: RemedyInput,
  circuit: Circuit,
  rest: string,
  because: readonly Finding[],
): Answerer | null => {
  if (rest === 'pump') return (ports) => [pumpRemedy(input, circuit, because, ports)]
  if (rest === 'pump.mount') return () => [mountRemedy(input, circuit, because)]
  if (rest === 'relief') return () => [reliefRemedy(input, circuit, because)]
  if (rest === 'valve') return (ports) => [valveRemedy(input, circuit, because, ports)]
  if (rest === 'coupling') return () => [couplingRemedy(input, circuit, because)]
  return null
}

/** What answers for a component; null for lines, which come later, and for what no part cures. */
const answererFor = (input: RemedyInput, component: string, because: readonly Finding[]): Answerer | null => {
  if (component === 'travel.swivel') return (ports) => [swivelRemedy(input, because, ports)]
  if (component === 'travel.motor') return (ports) => [motorRemedy(input, because, ports)]
  if (component === 'cooler') return () => coolerRemedy(input, because)
  if (component === 'alternator') return () => [currentRemedy(input, because)]
  if (component === 'filter') return () => [filterRemedy(input, because)]
  const circuit = input.machine.circuits.find(({ name }) => component.startsWith(`circuits.${name}.`))
  if (circuit === undefined) return null
  return inCircuit(input, circuit, component.slice(`circuits.${circuit.name}.`.length), because)
}

/** One tandem pump is one component, whichever of its circuits asks: that of its first section. */
const componentOf = (component: string, machine: Machine): string => {
  const circuit = machine.circuits.find(({ name }) => component.startsWith(`circuits.${name}.pump`))
  if (circuit === undefined || circuit.pump.section === null) return component
  const sections = machine.circuits.filter(({ pump }) => pump.section !== null && pump.part === circuit.pump.part)
  const first = sections.toSorted((one, other) => (one.pump.section ?? 0) - (other.pump.section ?? 0))[0] ?? circuit
  return component.replace(`circuits.${circuit.name}.`, `circuits.${first.name}.`)
}

const byComponent = (input: RemedyInput): ReadonlyMap<string, readonly Finding[]> => {
  const groups = new Map<string, Finding[]>()
  for (const finding of input.asking) {
    if (input.done.has(finding.id)) continue
    const component = componentOf(finding.component, input.machine)
    groups.set(component, [...(groups.get(component) ?? []), finding])
  }
  return groups
}

/** A check asks for a component that no part cures: the option stops there and says so. */
const unanswered = (input: RemedyInput, component: string, because: readonly Finding[]): Remedy => ({
  consequence: {
    component,
    kind: component.split('.').at(-1) ?? component,
    action: 'replace',
    part: null,
    quantity: 1,
    because: because.map(({ id }) => id),
    connections: [],
    available: false,
    specialOrder: false,
    chain: [...chainUpTo(input, because), `no part is known that cures this: ${inWords(component, input.machine)}`],
  },
  patch: null,
  uses: [],
  jobs: [],
  stop: true,
})

interface Lines {
  readonly choices: readonly HoseChoice[]
  readonly strainers: readonly Remedy[]
}

const chooseLines = (input: RemedyInput, groups: ReadonlyMap<string, readonly Finding[]>): Lines => {
  const choices: HoseChoice[] = []
  const strainers: Remedy[] = []
  for (const place of linePlaces(input.machine)) {
    const because = groups.get(place.line.id)
    if (because === undefined) continue
    if (place.role !== 'suction' || !needsInletHelp(because)) choices.push(chooseHose(input, place, because))
    else {
      const help = inletHelp(input, place, because)
      if ('hose' in help) choices.push(help.hose)
      else if (!strainers.some(({ consequence }) => consequence.part === help.strainer.consequence.part))
        strainers.push(help.strainer)
    }
  }
  return { choices, strainers }
}

/** Ports that are too small for the hoses just chosen, by the component that owns them. */
const smallPorts = (
  choices: readonly HoseChoice[],
): ReadonlyMap<string, { kind: PartKind; wanted: PortWanted[]; because: Finding[] }> => {
  const owners = new Map<string, { kind: PartKind; wanted: PortWanted[]; because: Finding[] }>()
  for (const { place, hose, because } of choices) {
    const dash = hose?.figures.dash ?? null
    const small = place.ports.filter(
      (port): port is Port => port !== null && dash !== null && portTooSmall(port.connection, dash),
    )
    for (const { owner, kind, name } of small) {
      const known = owners.get(owner) ?? { kind, wanted: [], because: [] }
      known.wanted.push({ name, dash: dash ?? 0 })
      known.because.push(...because)
      owners.set(owner, known)
    }
  }
  return owners
}

/** A hose that the option did not make new, on a port that has just changed. */
const adaptedRemedy = (
  input: RemedyInput,
  place: LinePlace,
  now: LinePlace,
  before: LinePlace | null,
  components: readonly Remedy[],
): readonly Remedy[] => {
  const { line } = place
  const changed = place.ports.some((port, side) => {
    const was = now.ports[side]?.connection ?? null
    return port !== null && (was === null || !fits(port.connection, was))
  })
  if (!changed) return []
  const isRenewed = before === null || line.part !== before.line.part || line.bore !== before.line.bore
  const part = input.shop.parts.find(({ id }) => id === line.part) ?? null
  const renewed = { part, what: line.kind ?? 'Hose', dash: line.dash, bore: line.bore }
  const work = isRenewed ? newHose(place, before, renewed, input.shop) : adaptHose(place, before, input.shop)
  if (work === null) return []
  const owners = components.filter(({ consequence }) =>
    place.ports.some((port) => port?.owner === consequence.component),
  )
  const { available, specialOrder } = hadOf(work, input.shop, isRenewed)
  const remade = work.jobs.length > 0
  return [
    {
      consequence: {
        component: line.id,
        kind: remade ? 'hose' : 'adapter',
        action: remade ? 'replace' : 'adapt',
        part: work.uses.find(({ kind }) => kind === (remade ? 'hose' : 'adapter'))?.part ?? null,
        quantity: place.count,
        because: [...new Set(owners.flatMap(({ consequence }) => consequence.because))],
        connections: work.connections,
        available,
        specialOrder,
        chain: [
          ...(owners[0]?.consequence.chain ?? [input.option]),
          `${inWords(line.id, input.machine)} joined to the new port`,
        ],
      },
      patch: null,
      uses: work.uses,
      jobs: work.jobs,
      stop: false,
    },
  ]
}

/**
 * Answers the findings that ask.
 * @param input findings, machine now and before, shop, and the figures of the machine now
 * @returns remedies in the order of the findings' components, hoses last; each with a merge patch over the machine file,
 *   or none where nothing of the evaluation changes
 */
export const remedies = (input: RemedyInput): readonly Remedy[] => {
  const groups = byComponent(input)
  const lineIds = new Set(linePlaces(input.machine).map(({ line }) => line.id))
  const components = [...groups].flatMap(([component, because]): readonly Remedy[] => {
    if (lineIds.has(component)) return []
    return answererFor(input, component, because)?.([]) ?? [unanswered(input, component, because)]
  })
  const { choices, strainers } = chooseLines(input, groups)
  const owners = [...smallPorts(choices)].flatMap(([owner, { wanted, because }]): readonly Remedy[] => {
    if (components.some(({ consequence }) => consequence.component === owner)) return []
    const bigger = answererFor(input, owner, because)?.(wanted) ?? []
    // Nothing bigger on the list: the adapter stays, and the connection shows it.
    return bigger.filter(({ consequence }) => consequence.part !== null)
  })
  const all = [...components, ...owners]
  const virtual = all.reduce((machine, remedy) => withPortsOf(machine, remedy, input.shop), input.machine)
  const nowPlaces = new Map(linePlaces(input.machine).map((place) => [place.line.id, place]))
  const beforePlaces = new Map(linePlaces(input.before).map((place) => [place.line.id, place]))
  const lines = linePlaces(virtual).flatMap((place): readonly Remedy[] => {
    const before = beforePlaces.get(place.line.id) ?? null
    const choice = choices.find((one) => one.place.line.id === place.line.id)
    if (choice !== undefined) return [lineRemedy(input, { ...choice, place }, before)]
    const now = nowPlaces.get(place.line.id)
    return now === undefined ? [] : adaptedRemedy(input, place, now, before, all)
  })
  return [...all, ...strainers, ...lines]
}
