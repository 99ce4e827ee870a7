/** Every component of a machine by its id, as the list of changes sees it: what it is in words, and what tells it apart. */
import type { Circuit, Machine } from '../machine.ts'
import type { PartKind, Shop } from '../shop.ts'
import { kwFromWatts, kwPerKelvinFromWatts, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import {
  boreWords,
  flowWords,
  lineWords,
  litreWords,
  motorWords,
  partOr,
  pressureWords,
  pumpWords,
  short,
} from './names.ts'

export interface View {
  /** Kind of the part that takes the place; null where a change needs none (a setting, a figure). */
  readonly kind: PartKind | null
  readonly part: string | null
  readonly section: number | null
  /** For the list of changes. */
  readonly words: string
  /** For a line of the quote where the part is not on the list. */
  readonly name: string
  /** Two with the same signature are the same component. */
  readonly signature: string
  /** Signature without what is only set on it. */
  readonly fixed: string
  readonly path: readonly string[]
}

const view = (
  path: readonly string[],
  kind: PartKind | null,
  part: string | null,
  words: string,
  told: unknown,
  more: { readonly section?: number | null; readonly fixed?: unknown } = {},
): readonly [string, View] => {
  const signature = JSON.stringify([part, told])
  const name = kind === null ? words : `${kind.charAt(0).toUpperCase()}${kind.slice(1)}, ${words}`
  const fixed = JSON.stringify([part, more.fixed ?? told])
  return [path.join('.'), { kind, part, section: more.section ?? null, words, name, signature, fixed, path }]
}

const pumpView = (circuit: Circuit, shop: Shop) => {
  const { pump } = circuit
  // What calibration fits (slip, offset) does not make it another pump.
  const told = [pump.section, pump.displacement, pump.maxPressure, pump.maxSpeed, pump.mount, pump.ports]
  const kind = pump.section === null ? 'pump' : 'tandem pump'
  return view(['circuits', circuit.name, 'pump'], kind, pump.part, pumpWords(circuit, shop), told, {
    section: pump.section,
  })
}

const circuitViews = (circuit: Circuit, shop: Shop): readonly (readonly [string, View])[] => {
  const at = ['circuits', circuit.name]
  const { coupling, relief, valve, lines, auxiliary } = circuit
  const set = `set at ${pressureWords(relief.setting)}`
  const reliefName = partOr(relief.part, shop, '')
  return [
    pumpView(circuit, shop),
    ...(coupling === null
      ? []
      : [
          view(
            [...at, 'coupling'],
            'coupling',
            coupling.part,
            partOr(coupling.part, shop, `${coupling.type ?? ''} ${short(coupling.ratedTorque ?? 0)} N·m`.trim()),
            coupling,
          ),
        ]),
    view(
      [...at, 'relief'],
      'relief',
      relief.part,
      reliefName === '' ? set : `${reliefName}, ${set}`,
      [relief.setting, relief.ratedFlow, relief.override],
      {
        fixed: [relief.ratedFlow],
      },
    ),
    ...(valve === null
      ? []
      : [view([...at, 'valve'], 'valve', valve.part, partOr(valve.part, shop, flowWords(valve.ratedFlow)), valve)]),
    ...(['suction', 'pressure', 'return'] as const).flatMap((name) => {
      const line = lines[name]
      if (line === null || (name === 'suction' && circuit.suctionSharedWith !== null)) return []
      return [view([...at, 'lines', name], 'hose', line.part, lineWords(line, shop), line)]
    }),
    ...(['out', 'back'] as const).flatMap((name) => {
      const line = auxiliary?.[name] ?? null
      return line === null
        ? []
        : [view([...at, 'auxiliary', 'lines', name], 'hose', line.part, lineWords(line, shop), line)]
    }),
    view([...at, 'drives'], null, null, circuit.drives, circuit.drives),
    view([...at, 'works'], null, null, circuit.works.join(' and ') || 'nothing', circuit.works),
  ]
}

const travelViews = ({ travel }: Machine, shop: Shop): readonly (readonly [string, View])[] => {
  const { motor, swivel } = travel
  const told = [
    motor.displacement,
    motor.secondDisplacement,
    motor.maxPressure,
    motor.maxFlow,
    motor.maxSpeed,
    motor.mount,
    motor.ports,
  ]
  const way = `${short(travel.wayPerTurn)} m per turn`
  return [
    view(['travel', 'motor'], 'motor', motor.part, motorWords(motor, shop), told),
    ...(swivel === null
      ? []
      : [view(['travel', 'swivel'], 'swivel', swivel.part, partOr(swivel.part, shop, boreWords(swivel.bore)), swivel)]),
    ...(travel.running === 'tracks'
      ? [view(['travel', 'sprocket'], 'sprocket', null, way, travel.wayPerTurn)]
      : [view(['travel', 'wheel'], null, null, way, travel.wayPerTurn)]),
    view(['travel', 'final-drive-ratio'], null, null, `${short(travel.finalDriveRatio)} to 1`, travel.finalDriveRatio),
    ...travel.lines.map((line) =>
      view(['travel', 'lines', line.id.slice('travel.lines.'.length)], 'hose', line.part, lineWords(line, shop), line),
    ),
  ]
}

/** Components that the machine has, by id. */
export const componentViews = (machine: Machine, shop: Shop): ReadonlyMap<string, View> => {
  const { filter, cooler, strainer, reservoir, oil, engine } = machine
  const coolerWords = cooler === null ? '' : `${short(1000 * kwPerKelvinFromWatts(cooler.capacity))} W/K`
  const engineWords = `${short(kwFromWatts(engine.netPower))} kW at ${short(rpmFromRevsPerSecond(engine.ratedSpeed))} rpm`
  return new Map([
    ...machine.circuits.flatMap((circuit) => circuitViews(circuit, shop)),
    ...travelViews(machine, shop),
    ...(filter === null
      ? []
      : [view(['filter'], 'filter', filter.part, partOr(filter.part, shop, flowWords(filter.ratedFlow)), filter)]),
    ...(cooler === null
      ? []
      : [view(['cooler'], 'cooler', cooler.part, partOr(cooler.part, shop, coolerWords), cooler)]),
    ...(strainer === null
      ? []
      : [
          view(
            ['strainer'],
            'strainer',
            strainer.part,
            partOr(strainer.part, shop, flowWords(strainer.ratedFlow)),
            strainer,
          ),
        ]),
    view(
      ['reservoir'],
      'reservoir',
      null,
      litreWords(reservoir.volume),
      [reservoir.volume, reservoir.coolingSurface, reservoir.heatTransfer],
      {
        fixed: [reservoir.volume, reservoir.coolingSurface],
      },
    ),
    view(['fluid'], 'oil', null, oil.grade ?? `${short(oil.viscosityAt40 * 1e6)} cSt`, oil),
    view(['engine'], null, null, engineWords, [engine.netPower, engine.ratedSpeed, engine.governorDroop]),
    view(
      ['brakes'],
      null,
      null,
      `holding ${yes(machine.brakes.holding)}, counterbalance ${yes(machine.brakes.counterbalance)}`,
      machine.brakes,
    ),
  ])
}

const yes = (value: boolean | null): string => (value === null ? 'not read' : value ? 'yes' : 'no')
