/** A pump of the same size with the rating that is asked for, and a pump's flange or shaft that does not match. */
import type { Finding } from '../evaluation.ts'
import type { Circuit } from '../machine.ts'
import type { Json } from '../question.ts'
import { barFromPascals, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import { answer, askedValue, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, type Choice, choose, type Requirement } from './choose.ts'
import { type PortWanted, portsTake } from './control-remedies.ts'
import { workingPressure } from './line-places.ts'
import { type PumpFigures, pumps, type TandemFigures, tandems } from './stock.ts'
import type { Remedy } from './uses.ts'

/** Two displacements that do the same work: makers' sizes differ by as much between lists. Common practice, no source. */
export const SAME_SIZE = 0.03

export const sameSize = (one: number | null, other: number): boolean =>
  one !== null && Math.abs(one / other - 1) <= SAME_SIZE + 1e-9

/** A text as it is compared: case and blanks do not count. */
export const plain = (text: string): string => text.toLowerCase().replaceAll(/\s+/gu, ' ').trim()

/** The same flange or shaft, or one that nobody has read. */
export const sameText = (one: string | null, other: string | null): boolean =>
  one === null || other === null || plain(one) === plain(other)

/** The circuits whose pumps are one tandem with that of this circuit, by section; the circuit alone where it is none. */
export const together = (input: RemedyInput, circuit: Circuit): readonly Circuit[] => {
  const { part, section } = circuit.pump
  if (section === null) return [circuit]
  return input.machine.circuits
    .filter(({ pump }) => pump.section !== null && pump.part === part)
    .toSorted((one, other) => (one.pump.section ?? 0) - (other.pump.section ?? 0))
}

/** Highest speed that the governor lets the engine run, without load. */
const highIdle = ({ machine: { engine } }: RemedyInput): number => engine.ratedSpeed * (1 + engine.governorDroop)

const rotationFits = (own: string | null, wanted: string | null): boolean =>
  own === null || wanted === null || own === 'both' || own === wanted

/** What one section, or a single pump, must be. */
const sectionNeeds = (
  input: RemedyInput,
  circuit: Circuit,
  ports: readonly PortWanted[],
): readonly Requirement<PumpFigures>[] => {
  const { displacement } = circuit.pump
  const pressure = workingPressure(circuit)
  const speed = highIdle(input)
  return [
    {
      what: `${Number((displacement * 1e6).toPrecision(3))} cm3/rev`,
      met: (pump) => sameSize(pump.displacement, displacement),
    },
    {
      what: `pressure of ${written(barFromPascals(pressure), 'bar')}`,
      met: (pump) => atLeastStated(pump.maxPressure, pressure),
    },
    {
      what: `speed of ${written(rpmFromRevsPerSecond(speed), 'rpm', 0)}`,
      met: (pump) => atLeastStated(pump.maxSpeed, speed),
    },
    ...portsTake(ports),
  ]
}

/** Mount of the machine: that of the pump that was there before the option, else of the one that is there. */
export const mountWanted = (input: RemedyInput, circuit: Circuit) =>
  input.before.circuits.find(({ name }) => name === circuit.name)?.pump.mount ?? circuit.pump.mount

/** First with flange and shaft that match; where none does, without: plate and hub are then asked for on their own. */
const twice = <F>(pick: (matching: boolean) => Choice<F>): Choice<F> => {
  const matching = pick(true)
  return matching.chosen === null ? pick(false) : matching
}

interface Mounted {
  readonly mount: PumpFigures['mount']
}

const mountNeeds = (input: RemedyInput, circuit: Circuit, matching: boolean): readonly Requirement<Mounted>[] => {
  const wanted = mountWanted(input, circuit)
  const rotation: Requirement<Mounted> = {
    what: `rotation ${wanted.rotation}`,
    met: ({ mount }) => rotationFits(mount.rotation, wanted.rotation),
  }
  const match: Requirement<Mounted> = {
    what: `flange ${wanted.flange} and shaft ${wanted.shaft}`,
    met: ({ mount }) => sameText(mount.flange, wanted.flange) && sameText(mount.shaft, wanted.shaft),
  }
  return matching ? [rotation, match] : [rotation]
}

const choosePump = (input: RemedyInput, circuit: Circuit, ports: readonly PortWanted[], torque: number) =>
  twice((matching) =>
    choose<PumpFigures>(
      pumps(input.shop),
      [
        ...sectionNeeds(input, circuit, ports),
        ...mountNeeds(input, circuit, matching),
        {
          what: `shaft torque of ${written(torque, 'N·m')}`,
          met: (pump) => torque === 0 || atLeastStated(pump.maxShaftTorque, torque),
        },
      ],
      ({ maxPressure }) => maxPressure,
      input.shop,
    ),
  )

/** Of a second pump one section has a circuit that was not there: the other says what the engine's side asks for. */
export const standing = (input: RemedyInput, sections: readonly Circuit[]): Circuit | undefined =>
  sections.find(({ name }) => input.before.circuits.some((one) => one.name === name)) ?? sections[0]

const chooseTandem = (
  input: RemedyInput,
  sections: readonly Circuit[],
  ports: readonly PortWanted[],
  torque: number,
) => {
  const there = standing(input, sections)
  return twice((matching) =>
    choose<TandemFigures>(
      tandems(input.shop),
      [
        { what: `${sections.length} sections`, met: (tandem) => tandem.sections.length === sections.length },
        ...sections.flatMap((circuit, i) =>
          sectionNeeds(input, circuit, ports).map(({ what, met }) => ({
            what: `${what} in section ${i + 1}`,
            met: (tandem: TandemFigures) => {
              const section = tandem.sections[i]
              return section !== undefined && met(section)
            },
          })),
        ),
        ...(there === undefined ? [] : mountNeeds(input, there, matching)),
        {
          what: `shaft torque of ${written(torque, 'N·m')}`,
          met: (tandem) => torque === 0 || atLeastStated(tandem.maxShaftTorque, torque),
        },
      ],
      ({ sections: [first] }) => first?.maxPressure ?? null,
      input.shop,
    ),
  )
}

/** A pump of the same displacement that bears the pressure and the speed; a tandem is changed whole. */
export const pumpRemedy = (
  input: RemedyInput,
  circuit: Circuit,
  because: readonly Finding[],
  ports: readonly PortWanted[] = [],
): Remedy => {
  const sections = together(input, circuit)
  const isTandem = circuit.pump.section !== null
  const torque = askedValue(because, 'shaft-torque') ?? 0
  const choice: Choice<unknown> = isTandem
    ? chooseTandem(input, sections, ports, torque)
    : choosePump(input, circuit, ports, torque)
  const first = standing(input, sections) ?? circuit
  const path = ['circuits', first.name, 'pump']
  const bar = barFromPascals(Math.max(...sections.map(workingPressure)))
  const rpm = rpmFromRevsPerSecond(highIdle(input))
  const turned = because.some(({ check }) => check === 'pump-rotation') ? mountWanted(input, first).rotation : null
  const ordered = {
    'max-pressure': written(bar, 'bar'),
    'max-speed': written(rpm, 'rpm', 0),
    ...(turned === null ? {} : { mount: { rotation: turned } }),
  }
  const made = answer(input, {
    component: path.join('.'),
    kind: isTandem ? 'tandem pump' : 'pump',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path,
    ordered,
    orderedWords: `same size, for ${written(bar, 'bar', 0)} and ${written(rpm, 'rpm', 0)}${turned === null ? '' : `, ${turned}`}`,
    job: 'replace pump',
  })
  if (!isTandem || made.patch === null) return made
  const id = choice.chosen?.part.id ?? null
  const each = sections.map((one, i): readonly [string, Json] => [
    one.name,
    { pump: id === null ? ordered : { part: id, section: i + 1 } },
  ])
  return { ...made, patch: { circuits: Object.fromEntries(each) } }
}
