/** Circuits and lines in SI. */
import type { Auxiliary, Circuit, Line, Valve } from '../machine.ts'
import { hoseRating } from '../tables/hose-ratings.ts'
import { boreOfDash } from '../tables/line-sizes.ts'
import type { RevsPerSecond } from '../units/si.ts'
import { type Figures, SPREADS } from './figures.ts'
import type { CircuitSpec, HoseSpec, MachineSpec } from './machine-schema.ts'
import { resolvePump } from './resolve-pump.ts'

/** Relief override at full pump flow where none is stated (method). */
const OVERRIDE = 0.1

type LineSpec = Omit<HoseSpec, 'length'> & {
  readonly length?: HoseSpec['length'] | null | undefined
  readonly 'same-as'?: string | null | undefined
}

/** A line; null where it is not there or nothing says how wide it is. */
export const resolveLine = (figures: Figures, id: string, spec: LineSpec | null | undefined): Line | null => {
  if (spec === null || spec === undefined || spec.length == null) return null
  const dash = spec.hose ?? null
  const bore = figures.maybe(`${id}.bore`, spec.bore) ?? (dash === null ? null : boreOfDash(dash))
  if (bore === null) return null
  return {
    id,
    part: spec.part ?? null,
    dash,
    kind: spec.kind ?? null,
    bore,
    length: figures.written(`${id}.length`, spec.length, SPREADS.length),
    elbows: figures.filled(`${id}.elbows`, spec.elbows, 0),
    ends: spec.ends ?? null,
    maxPressure: figures.maybe(`${id}.max-pressure`, spec['max-pressure']) ?? hoseRating(spec.kind ?? null, dash),
  }
}

const resolveValve = (spec: CircuitSpec['valve']): Valve | null => {
  if (spec === null || spec === undefined) return null
  const flow = spec['rated-flow']?.si ?? null
  const drop = spec['drop-at-rated-flow']?.si ?? null
  return {
    part: spec.part ?? null,
    ratedFlow: flow,
    restriction: flow === null || drop === null ? null : { flow, drop },
    maxPressure: spec['max-pressure']?.si ?? null,
    ports: { inlet: spec.ports?.inlet ?? null, outlet: spec.ports?.outlet ?? null, work: spec.ports?.work ?? null },
  }
}

const resolveAuxiliary = (figures: Figures, path: string, spec: CircuitSpec['auxiliary']): Auxiliary | null => {
  if (spec === null || spec === undefined) return null
  const { lines, coupler } = spec
  return {
    out: resolveLine(figures, `${path}.lines.out`, lines?.out),
    back: resolveLine(figures, `${path}.lines.back`, lines?.back),
    coupler: coupler == null ? null : { flow: coupler.flow.si, drop: coupler.drop.si },
  }
}

const resolveCircuit = (figures: Figures, name: string, spec: CircuitSpec, ratedSpeed: RevsPerSecond): Circuit => {
  const path = `circuits.${name}`
  const { lines, coupling } = spec
  return {
    name,
    pump: resolvePump(figures, `${path}.pump`, spec.pump, ratedSpeed),
    coupling:
      coupling == null
        ? null
        : { part: coupling.part ?? null, type: coupling.type ?? null, ratedTorque: coupling['rated-torque'].si },
    room: spec.room == null ? null : { length: spec.room.length.si },
    relief: {
      part: spec.relief.part ?? null,
      setting: figures.written(`${path}.relief.setting`, spec.relief.setting),
      ratedFlow: spec.relief['rated-flow']?.si ?? null,
      override: figures.or(`${path}.relief.override`, spec.relief.override, OVERRIDE, 'share'),
    },
    valve: resolveValve(spec.valve),
    lines: {
      suction: resolveLine(figures, `${path}.lines.suction`, lines?.suction),
      pressure: resolveLine(figures, `${path}.lines.pressure`, lines?.pressure),
      return: resolveLine(figures, `${path}.lines.return`, lines?.return),
    },
    suctionSharedWith: lines?.suction?.['same-as'] ?? null,
    drives: spec.drives,
    works: spec.works ?? [],
    auxiliary: resolveAuxiliary(figures, `${path}.auxiliary`, spec.auxiliary),
  }
}

/** All circuits; a shared suction line is the very line of its owner. */
export const resolveCircuits = (figures: Figures, spec: MachineSpec, ratedSpeed: RevsPerSecond): readonly Circuit[] => {
  const own = Object.entries(spec.circuits).map(([name, circuit]) => resolveCircuit(figures, name, circuit, ratedSpeed))
  return own.map((circuit) => {
    if (circuit.suctionSharedWith === null) return circuit
    const owner = own.find((other) => other.name === circuit.suctionSharedWith)
    return { ...circuit, lines: { ...circuit.lines, suction: owner?.lines.suction ?? null } }
  })
}
