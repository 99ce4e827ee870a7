/** A pump of the same size with the rating that is asked for, and a pump's flange or shaft that does not match. */
import type { Finding } from '../evaluation.ts'
import type { Circuit } from '../machine.ts'
import type { Json } from '../question.ts'
import type { Part, Shop } from '../shop.ts'
import { barFromPascals, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import { answer, askedValue, chainUpTo, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, type Candidate, type Choice, cheaperFirst, choose, type Requirement } from './choose.ts'
import { type PortWanted, portsTake } from './control-remedies.ts'
import { workingPressure } from './line-places.ts'
import { adapters, couplings, type PumpFigures, pumps, type TandemFigures, tandems } from './stock.ts'
import type { PartUse, Remedy } from './uses.ts'

/** Two displacements that do the same work: makers' sizes differ by as much between lists. Common practice, no source. */
export const SAME_SIZE = 0.03

export const sameSize = (one: number | null, other: number): boolean =>
  one !== null && Math.abs(one / other - 1) <= SAME_SIZE + 1e-9

/** Case and blanks do not count. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/\s+/gu, ' ').trim()
const sameText = (one: string | null, other: string | null): boolean =>
  one === null || other === null || plain(one) === plain(other)

/** The circuits whose pumps are one tandem with that of this circuit, by section; the circuit alone where it is none. */
const together = (input: RemedyInput, circuit: Circuit): readonly Circuit[] => {
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
const mountWanted = (input: RemedyInput, circuit: Circuit) =>
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

const chooseTandem = (input: RemedyInput, sections: readonly Circuit[], ports: readonly PortWanted[], torque: number) =>
  twice((matching) =>
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
        ...(sections[0] === undefined ? [] : mountNeeds(input, sections[0], matching)),
        {
          what: `shaft torque of ${written(torque, 'N·m')}`,
          met: (tandem) => torque === 0 || atLeastStated(tandem.maxShaftTorque, torque),
        },
      ],
      ({ sections: [first] }) => first?.maxPressure ?? null,
      input.shop,
    ),
  )

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
  const first = sections[0] ?? circuit
  const path = ['circuits', first.name, 'pump']
  const bar = barFromPascals(Math.max(...sections.map(workingPressure)))
  const rpm = rpmFromRevsPerSecond(highIdle(input))
  const ordered = { 'max-pressure': written(bar, 'bar'), 'max-speed': written(rpm, 'rpm', 0) }
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
    orderedWords: `same size, for ${written(bar, 'bar', 0)} and ${written(rpm, 'rpm', 0)}`,
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

/** A plate or hub from the list that joins two flanges or two shafts. */
const plateBetween = (one: string, other: string, shop: Shop): Part | null => {
  const joins = ([a, b]: readonly [string, string]) =>
    (plain(a) === plain(one) && plain(b) === plain(other)) || (plain(a) === plain(other) && plain(b) === plain(one))
  return (
    adapters(shop)
      .filter(({ figures }) => joins(figures.sides))
      .map(({ part }) => part)
      .toSorted(cheaperFirst(shop))[0] ?? null
  )
}

/** A coupling whose hub is bored for the shaft, as strong as the one that is there. */
const couplingFor = (shaft: string, circuit: Circuit, shop: Shop): Candidate<unknown> | null => {
  const torque = circuit.coupling?.ratedTorque ?? 0
  const { chosen } = choose(
    couplings(shop),
    [
      { what: 'shaft', met: (figures) => figures.shaft !== null && plain(figures.shaft) === plain(shaft) },
      { what: 'torque', met: (figures) => atLeastStated(figures.ratedTorque, torque) },
    ],
    ({ ratedTorque }) => ratedTorque,
    shop,
  )
  return chosen
}

interface Mismatch {
  readonly what: 'flange' | 'shaft'
  readonly now: string
  readonly there: string
  readonly part: Part | null
  readonly isCoupling: boolean
}

/**
 * A pump that does not go on: a plate for the flange, a hub or a coupling for the shaft; for the wrong rotation another
 * pump of the same size. What is joined counts as matching from then on.
 */
export const mountRemedy = (input: RemedyInput, circuit: Circuit, because: readonly Finding[]): Remedy => {
  const component = `circuits.${circuit.name}.pump.mount`
  if (because.some(({ check }) => check === 'pump-rotation')) return pumpRemedy(input, circuit, because)
  const wanted = mountWanted(input, circuit)
  const own = circuit.pump.mount
  const mismatches = (['flange', 'shaft'] as const).flatMap((what): readonly Mismatch[] => {
    const [now, there] = [own[what], wanted[what]]
    if (now === null || there === null || sameText(now, there)) return []
    const plate = plateBetween(now, there, input.shop)
    const coupling = plate === null && what === 'shaft' ? (couplingFor(now, circuit, input.shop)?.part ?? null) : null
    return [{ what, now, there, part: plate ?? coupling, isCoupling: coupling !== null }]
  })
  const missing = mismatches.filter(({ part }) => part === null)
  const order = missing.length > 0 && input.shop.specialOrder.some(({ kind }) => kind === 'adapter')
  const stop = missing.length > 0 && !order
  const uses = mismatches.map(({ part, isCoupling, what, now, there }): PartUse => {
    const kind = isCoupling ? 'coupling' : 'adapter'
    return { component, kind, part: part?.id ?? null, what: part?.name ?? `${what} ${now} to ${there}`, quantity: 1 }
  })
  const lacking = missing.map(({ what, now, there }) => `${what} ${now} to ${there}`).join(', ')
  const words = stop
    ? `no plate or hub to be had: ${lacking}`
    : `joined by ${mismatches.map(({ part, what }) => part?.name ?? `a ${what} adapter to order`).join(' and ')}`
  const mount = Object.fromEntries(mismatches.map(({ what, there }) => [what, there]))
  const patches = together(input, circuit).map((one): readonly [string, Json] => [one.name, { pump: { mount } }])
  const coupling = mismatches.find(({ isCoupling }) => isCoupling)?.part ?? null
  return {
    consequence: {
      component,
      kind: 'adapter',
      action: 'adapt',
      part: mismatches[0]?.part?.id ?? null,
      quantity: mismatches.length,
      because: because.map(({ id }) => id),
      connections: mismatches.map(({ now, there, part }) => ({ from: now, to: there, adapter: part?.id ?? null })),
      available: missing.length === 0,
      specialOrder: order,
      chain: [...chainUpTo(input, because), words],
    },
    patch: stop
      ? null
      : coupling === null
        ? { circuits: Object.fromEntries(patches) }
        : {
            circuits: Object.fromEntries(
              patches.map(([name, patch]) => [
                name,
                name === circuit.name ? { ...(patch as object), coupling: { part: coupling.id } } : patch,
              ]),
            ),
          },
    uses: stop ? [] : uses,
    jobs: stop || coupling === null ? [] : [{ component, job: 'replace coupling', quantity: 1 }],
    stop,
  }
}
