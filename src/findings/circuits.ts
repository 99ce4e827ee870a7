/** Circuits as checks look at them: with their figures, those that drive, those on one shaft, and what was there before. */
import type { CircuitFigures } from '../evaluation.ts'
import type { Circuit, Machine } from '../machine.ts'
import type { CheckFigures, CheckInput } from './check.ts'

export type MoreOfCircuit = CheckFigures['circuits'][string]

export interface CircuitWithFigures {
  readonly circuit: Circuit
  /** Component id of the circuit: `circuits.main`. */
  readonly id: string
  readonly figures: CircuitFigures
  readonly more: MoreOfCircuit
}

type Seen = Pick<CheckInput, 'machine' | 'figures' | 'more'>

/** Every circuit of the machine with its figures. A circuit that nobody worked out is a fault of the evaluation. */
export const circuitsOf = ({ machine, figures, more }: Seen): readonly CircuitWithFigures[] =>
  machine.circuits.map((circuit) => {
    const own = figures.circuits[circuit.name]
    const extra = more.circuits[circuit.name]
    if (!own || !extra) throw new Error(`no figures for circuit ${circuit.name}`)
    return { circuit, id: `circuits.${circuit.name}`, figures: own, more: extra }
  })

/** Those that drive a track or wheel. */
export const drivingCircuits = (seen: Seen): readonly CircuitWithFigures[] =>
  circuitsOf(seen).filter(({ circuit }) => circuit.drives !== 'no track')

/** Highest relief setting with its override that reaches the motors [bar]; null where nothing drives. */
export const drivingPressureBar = (seen: Seen): number | null => {
  const pressures = drivingCircuits(seen).map(({ more }) => more.workingPressureBar)
  return pressures.length > 0 ? Math.max(...pressures) : null
}

/** Circuits whose pumps are driven by one shaft: each alone, but sections of one tandem together, the first first. */
export const shaftsOf = (seen: Seen): readonly (readonly CircuitWithFigures[])[] => {
  const shafts = new Map<string, CircuitWithFigures[]>()
  for (const one of circuitsOf(seen)) {
    const { part, section } = one.circuit.pump
    const shaft = section === null ? `circuit ${one.circuit.name}` : `tandem ${part ?? ''}`
    const together = shafts.get(shaft)
    if (together) together.push(one)
    else shafts.set(shaft, [one])
  }
  return [...shafts.values()].map((shaft) =>
    shaft.toSorted((a, b) => (a.circuit.pump.section ?? 0) - (b.circuit.pump.section ?? 0)),
  )
}

/** The circuit of that name in the machine that the option starts from; null where there is none. */
export const circuitBefore = (machine: Machine | undefined, name: string): Circuit | null =>
  machine?.circuits.find((circuit) => circuit.name === name) ?? null

/** Circuits with another pump than before; without a machine to start from there are none. */
export const changedPumps = (
  input: CheckInput,
): readonly { readonly circuit: Circuit; readonly before: Circuit; readonly id: string }[] =>
  input.machine.circuits.flatMap((circuit) => {
    const before = circuitBefore(input.before?.machine, circuit.name)
    return before && isAnotherPump(circuit, before) ? [{ circuit, before, id: `circuits.${circuit.name}` }] : []
  })

const isAnotherPump = ({ pump: now }: Circuit, { pump: before }: Circuit): boolean =>
  now.part !== before.part ||
  now.section !== before.section ||
  now.displacement !== before.displacement ||
  now.mount.flange !== before.mount.flange ||
  now.mount.shaft !== before.mount.shaft ||
  now.mount.rotation !== before.mount.rotation ||
  now.mount.length !== before.mount.length ||
  now.ports.inlet?.text !== before.ports.inlet?.text ||
  now.ports.outlet?.text !== before.ports.outlet?.text
