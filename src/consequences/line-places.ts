/**
 * Where each line of a machine sits: how many hoses its entry stands for, what its two ends are screwed into, and the
 * pressure that it must bear. A line's own `ends` are those of the hose; where they differ from the port there is an
 * adapter between.
 */
import type { Circuit, Connection, Line, Machine } from '../machine.ts'
import type { PartKind } from '../shop.ts'
import { type LineRole, lineRole } from '../tables/velocity-limits.ts'
import type { Pascals } from '../units/si.ts'

/** A port, and the component that it belongs to. */
export interface Port {
  readonly owner: string
  readonly kind: PartKind
  readonly name: 'inlet' | 'outlet' | 'work'
  readonly connection: Connection
}

export interface LinePlace {
  readonly line: Line
  readonly role: LineRole
  /** Way to it in the machine file. */
  readonly path: readonly string[]
  /** Circuit that it belongs to; null for work lines. */
  readonly circuit: string | null
  /** Hoses that the entry stands for. */
  readonly count: number
  /** What the two ends are screwed into; null where nobody has read it. */
  readonly ports: readonly [Port | null, Port | null]
  /** Relief setting with its override; null for suction and return lines, which the relief does not reach. */
  readonly workingPressure: Pascals | null
}

const port = (
  owner: string,
  kind: PartKind,
  name: Port['name'],
  connection: Connection | null | undefined,
): Port | null => (connection === null || connection === undefined ? null : { owner, kind, name, connection })

/** Relief setting with its override: what hoses, fittings, valves and motors of the circuit must bear [Pa]. */
export const workingPressure = ({ relief }: Circuit): Pascals => relief.setting * (1 + relief.override)

export const drivingCircuits = (machine: Machine): readonly Circuit[] =>
  machine.circuits.filter((circuit) => circuit.drives !== 'no track')

/** Highest working pressure that reaches the motors [Pa], null where nothing drives. */
export const drivingPressure = (machine: Machine): Pascals | null => {
  const pressures = drivingCircuits(machine).map(workingPressure)
  return pressures.length === 0 ? null : Math.max(...pressures)
}

const pumpKind = (circuit: Circuit): PartKind => (circuit.pump.section === null ? 'pump' : 'tandem pump')

const circuitPorts = (circuit: Circuit, role: LineRole): LinePlace['ports'] => {
  const at = `circuits.${circuit.name}`
  const { pump, valve } = circuit
  if (role === 'suction') return [null, port(`${at}.pump`, pumpKind(circuit), 'inlet', pump.ports.inlet)]
  if (role === 'pressure')
    return [
      port(`${at}.pump`, pumpKind(circuit), 'outlet', pump.ports.outlet),
      port(`${at}.valve`, 'valve', 'inlet', valve?.ports.inlet),
    ]
  if (role === 'return') return [port(`${at}.valve`, 'valve', 'outlet', valve?.ports.outlet), null]
  return [null, null]
}

const circuitPlaces = (circuit: Circuit): readonly LinePlace[] => {
  const { suction, pressure } = circuit.lines
  const own: readonly (readonly [string, Line | null])[] = [
    ['suction', circuit.suctionSharedWith === null ? suction : null],
    ['pressure', pressure],
    ['return', circuit.lines.return],
  ]
  const base = ['circuits', circuit.name]
  const lines = own.flatMap(([name, line]): readonly LinePlace[] => {
    if (line === null) return []
    const role = lineRole(line.id)
    const bears = role === 'pressure' ? workingPressure(circuit) : null
    const ports = circuitPorts(circuit, role)
    return [
      { line, role, path: [...base, 'lines', name], circuit: circuit.name, count: 1, ports, workingPressure: bears },
    ]
  })
  const { out = null, back = null } = circuit.auxiliary ?? {}
  const auxiliary = (
    [
      ['out', out],
      ['back', back],
    ] as const
  ).flatMap(([name, line]): readonly LinePlace[] =>
    line === null
      ? []
      : [
          {
            line,
            role: 'auxiliary',
            path: [...base, 'auxiliary', 'lines', name],
            circuit: circuit.name,
            count: 1,
            ports: [null, null],
            workingPressure: workingPressure(circuit),
          },
        ],
  )
  return [...lines, ...auxiliary]
}

/** What a work line joins, read from a name of the form FROM-to-TO; another name says nothing. */
const workPort = (machine: Machine, word: string | undefined): Port | null => {
  if (word === 'motor') return port('travel.motor', 'motor', 'work', machine.travel.motor.ports.work)
  if (word === 'swivel') return port('travel.swivel', 'swivel', 'work', machine.travel.swivel?.ports.work)
  if (word !== 'valve') return null
  const circuit = drivingCircuits(machine).find(({ valve }) => valve?.ports.work)
  return circuit === undefined
    ? null
    : port(`circuits.${circuit.name}.valve`, 'valve', 'work', circuit.valve?.ports.work)
}

const workPlaces = (machine: Machine): readonly LinePlace[] =>
  machine.travel.lines.map((line) => {
    const name = line.id.slice('travel.lines.'.length)
    const [from, to] = name.split('-to-')
    return {
      line,
      role: 'work',
      path: ['travel', 'lines', name],
      circuit: null,
      count: machine.travel.motors * 2,
      ports: [workPort(machine, from), workPort(machine, to)],
      workingPressure: drivingPressure(machine),
    }
  })

/** Every line of the machine once; a shared suction line belongs to the circuit that owns it. */
export const linePlaces = (machine: Machine): readonly LinePlace[] => [
  ...machine.circuits.flatMap(circuitPlaces),
  ...workPlaces(machine),
]
