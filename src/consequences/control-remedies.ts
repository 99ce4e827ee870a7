/** Relief, valve and coupling: what takes their place when a check asks. */
import type { Finding } from '../evaluation.ts'
import type { Circuit } from '../machine.ts'
import type { Json } from '../question.ts'
import { barFromPascals, cubicMetresPerSecondFromLpm, lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import { type Answer, answer, askedValue, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, choose, type Requirement } from './choose.ts'
import { portTooSmall } from './connect.ts'
import { type Port, workingPressure } from './line-places.ts'
import { couplings, reliefs, type ValveFigures, valves } from './stock.ts'
import type { Remedy } from './uses.ts'

/** A port that must take a hose of a size. */
export interface PortWanted {
  readonly name: Port['name']
  readonly dash: number
}

/** The port is there and at most one usual size below each hose. */
export const portsTake = (
  wanted: readonly PortWanted[],
): Requirement<{ readonly [name in Port['name']]?: unknown }>[] =>
  wanted.map(({ name, dash }) => ({
    what: `${name} port for a -${dash} hose`,
    met: (figures) => {
      const port = figures[name] as ValveFigures['work'] | undefined
      return port !== null && port !== undefined && !portTooSmall(port, dash)
    },
  }))

const at = (circuit: Circuit, name: string) => ['circuits', circuit.name, name] as const

/**
 * How many ports of a valve are of the family of the present one's. A valve of the machine's own family takes the hoses that
 * are there: every adapter is one more joint to leak and a narrower way (common practice, no source).
 */
const portsOfFamily =
  (present: Circuit['valve']) =>
  (figures: ValveFigures): number =>
    present === null
      ? 0
      : (['inlet', 'outlet', 'work'] as const).filter((name) => {
          const [was, is] = [present.ports[name] ?? null, figures[name]]
          return was !== null && is !== null && was.family === is.family
        }).length

/**
 * A valve that passes the flow of the finding, or what the present one passes, at the working pressure.
 * @param ports that must take a bigger hose than the present valve's do
 */
export const valveRemedy = (
  input: RemedyInput,
  circuit: Circuit,
  because: readonly Finding[],
  ports: readonly PortWanted[] = [],
): Remedy => {
  const asked = askedValue(because, 'valve-flow')
  const present = circuit.valve?.ratedFlow ?? 0
  const flow = asked === null ? present : Math.max(present, cubicMetresPerSecondFromLpm(asked))
  const pressure = workingPressure(circuit)
  const lpm = lpmFromCubicMetresPerSecond(flow)
  const bar = barFromPascals(pressure)
  const requirements: readonly Requirement<ValveFigures>[] = [
    { what: `rated flow of ${written(lpm, 'L/min')}`, met: ({ ratedFlow }) => atLeastStated(ratedFlow, flow) },
    { what: `pressure of ${written(bar, 'bar')}`, met: ({ maxPressure }) => atLeastStated(maxPressure, pressure) },
    ...portsTake(ports),
  ]
  const choice = choose(
    valves(input.shop),
    requirements,
    ({ ratedFlow }) => ratedFlow,
    input.shop,
    portsOfFamily(circuit.valve),
  )
  const path = at(circuit, 'valve')
  // Where nobody stated what passes the present one, nobody asks that of the other.
  const rated: Json = lpm > 0 ? { 'rated-flow': written(lpm, 'L/min') } : {}
  const ordered: Json = { part: null, ...rated, 'max-pressure': written(bar, 'bar') }
  const asking: Answer = {
    component: path.join('.'),
    kind: 'valve',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path,
    ordered,
    orderedWords: `${written(lpm, 'L/min', 0)} at ${written(bar, 'bar', 0)}`,
    job: 'replace valve',
  }
  return answer(input, asking)
}

/** A relief that passes all that the pump gives; its setting is kept. */
export const reliefRemedy = (input: RemedyInput, circuit: Circuit, because: readonly Finding[]): Remedy => {
  const lpm = Math.max(
    askedValue(because, 'relief-capacity') ?? 0,
    lpmFromCubicMetresPerSecond(circuit.relief.ratedFlow ?? 0),
  )
  const flow = cubicMetresPerSecondFromLpm(lpm)
  const what = `rated flow of ${written(lpm, 'L/min')}`
  const met = ({ ratedFlow }: { readonly ratedFlow: number | null }) => atLeastStated(ratedFlow, flow)
  const choice = choose(reliefs(input.shop), [{ what, met }], ({ ratedFlow }) => ratedFlow, input.shop)
  const path = at(circuit, 'relief')
  return answer(input, {
    component: path.join('.'),
    kind: 'relief',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path,
    ordered: { part: null, 'rated-flow': written(lpm, 'L/min') },
    orderedWords: what,
    job: 'replace relief',
  })
}

/** A coupling of the same type whose rated torque carries the shaft's torque with its service factor. */
export const couplingRemedy = (input: RemedyInput, circuit: Circuit, because: readonly Finding[]): Remedy => {
  const torque = Math.max(askedValue(because, 'coupling-torque') ?? 0, circuit.coupling?.ratedTorque ?? 0)
  const type = circuit.coupling?.type ?? null
  const shaft = circuit.pump.mount.shaft
  type Figures = ReturnType<typeof couplings>[number]['figures']
  const requirements: readonly Requirement<Figures>[] = [
    { what: `type ${type}`, met: (figures) => type === null || figures.type === null || figures.type === type },
    {
      what: `hub for the shaft ${shaft}`,
      met: (figures) => figures.shaft === null || shaft === null || figures.shaft === shaft,
    },
    { what: `rated torque of ${written(torque, 'N·m')}`, met: (figures) => atLeastStated(figures.ratedTorque, torque) },
  ]
  const choice = choose(couplings(input.shop), requirements, ({ ratedTorque }) => ratedTorque, input.shop)
  const path = at(circuit, 'coupling')
  return answer(input, {
    component: path.join('.'),
    kind: 'coupling',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path,
    ordered: { part: null, 'rated-torque': written(torque, 'N·m') },
    orderedWords: `rated torque of ${written(torque, 'N·m')}`,
    job: 'replace coupling',
  })
}
