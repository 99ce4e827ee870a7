/** Components of the parts list, kind by kind, with the figures that a choice reads, in SI. Null: not stated. */
import type { Connection } from '../machine.ts'
import type { Json } from '../question.ts'
import type { Shop } from '../shop.ts'
import type {
  Amperes,
  CubicMetresPerRev,
  CubicMetresPerSecond,
  Kelvins,
  Metres,
  NewtonMetres,
  Pascals,
  RevsPerSecond,
  SquareMetresPerSecond,
  WattsPerKelvin,
} from '../units/si.ts'
import { count, list, mapping, perShop, port, quantity, type Written, words } from './read-figures.ts'

export interface MountFigures {
  readonly flange: string | null
  readonly shaft: string | null
  readonly rotation: string | null
  readonly length: Metres | null
}

const mountOf = (written: Written): MountFigures => {
  const mount = mapping(written.mount)
  return {
    flange: words(mount, 'flange'),
    shaft: words(mount, 'shaft'),
    rotation: words(mount, 'rotation'),
    length: quantity(mount, 'length', 'length'),
  }
}

export interface PumpFigures {
  readonly displacement: CubicMetresPerRev | null
  readonly maxPressure: Pascals | null
  readonly maxSpeed: RevsPerSecond | null
  readonly maxShaftTorque: NewtonMetres | null
  readonly mount: MountFigures
  readonly inlet: Connection | null
  readonly outlet: Connection | null
}

const pumpOf = (written: Written, mount: MountFigures): PumpFigures => ({
  displacement: quantity(written, 'displacement', 'displacement'),
  maxPressure: quantity(written, 'max-pressure', 'pressure'),
  maxSpeed: quantity(written, 'max-speed', 'speed'),
  maxShaftTorque: quantity(written, 'max-shaft-torque', 'torque'),
  mount,
  inlet: port(written, 'inlet'),
  outlet: port(written, 'outlet'),
})

export const pumps = perShop((shop: Shop) => list(shop, 'pump', (written) => pumpOf(written, mountOf(written))))

export interface TandemFigures {
  readonly sections: readonly PumpFigures[]
  readonly mount: MountFigures
  readonly maxShaftTorque: NewtonMetres | null
}

export const tandems = perShop((shop: Shop) =>
  list(shop, 'tandem pump', (written): TandemFigures => {
    const mount = mountOf(written)
    const sections = Array.isArray(written.sections) ? (written.sections as readonly Json[]) : []
    return {
      sections: sections.map((section) => pumpOf({ ...written, ...mapping(section) }, mount)),
      mount,
      maxShaftTorque: quantity(written, 'max-shaft-torque', 'torque'),
    }
  }),
)

export interface MotorFigures {
  readonly displacement: CubicMetresPerRev | null
  readonly secondDisplacement: CubicMetresPerRev | null
  readonly maxPressure: Pascals | null
  readonly maxFlow: CubicMetresPerSecond | null
  readonly maxSpeed: RevsPerSecond | null
  readonly maxReturnPressure: Pascals | null
  readonly mount: MountFigures
  readonly work: Connection | null
}

export const motors = perShop((shop: Shop) =>
  list(
    shop,
    'motor',
    (written): MotorFigures => ({
      displacement: quantity(written, 'displacement', 'displacement'),
      secondDisplacement: quantity(written, 'second-displacement', 'displacement'),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
      maxFlow: quantity(written, 'max-flow', 'flow'),
      maxSpeed: quantity(written, 'max-speed', 'speed'),
      maxReturnPressure: quantity(written, 'max-return-pressure', 'pressure'),
      mount: mountOf(written),
      work: port(written, 'work'),
    }),
  ),
)

export interface SwivelFigures {
  readonly bore: Metres | null
  readonly passages: number | null
  readonly sparePassages: number | null
  readonly maxPressure: Pascals | null
  readonly work: Connection | null
}

export const swivels = perShop((shop: Shop) =>
  list(
    shop,
    'swivel',
    (written): SwivelFigures => ({
      bore: quantity(written, 'bore', 'length'),
      passages: count(written, 'passages'),
      sparePassages: count(written, 'spare-passages'),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
      work: port(written, 'work'),
    }),
  ),
)

export interface ValveFigures {
  readonly ratedFlow: CubicMetresPerSecond | null
  readonly maxPressure: Pascals | null
  readonly inlet: Connection | null
  readonly outlet: Connection | null
  readonly work: Connection | null
}

export const valves = perShop((shop: Shop) =>
  list(
    shop,
    'valve',
    (written): ValveFigures => ({
      ratedFlow: quantity(written, 'rated-flow', 'flow'),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
      inlet: port(written, 'inlet'),
      outlet: port(written, 'outlet'),
      work: port(written, 'work'),
    }),
  ),
)

export const reliefs = perShop((shop: Shop) =>
  list(shop, 'relief', (written) => ({
    ratedFlow: quantity(written, 'rated-flow', 'flow') as CubicMetresPerSecond | null,
  })),
)

export const couplings = perShop((shop: Shop) =>
  list(shop, 'coupling', (written) => ({
    type: words(written, 'type'),
    ratedTorque: quantity(written, 'rated-torque', 'torque') as NewtonMetres | null,
    /** Shaft that its hub is bored for; null where the hub is bored to order. */
    shaft: words(written, 'shaft'),
  })),
)

export interface CoolerFigures {
  readonly capacity: WattsPerKelvin | null
  readonly atFlow: CubicMetresPerSecond | null
  readonly maxPressure: Pascals | null
  readonly airRise: Kelvins
  readonly fanCurrent: Amperes | null
  /** It comes with a bypass of its own. */
  readonly bypassStated: boolean
}

export const coolers = perShop((shop: Shop) =>
  list(
    shop,
    'cooler',
    (written): CoolerFigures => ({
      capacity: quantity(written, 'capacity', 'heat capacity rate'),
      atFlow: quantity(written, 'at-flow', 'flow'),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
      airRise: quantity(written, 'air-rise', 'temperature difference') ?? 0,
      fanCurrent: quantity(written, 'fan-current', 'current'),
      bypassStated: written.bypass !== undefined && written.bypass !== null,
    }),
  ),
)

export const filters = perShop((shop: Shop) =>
  list(shop, 'filter', (written) => ({
    ratedFlow: quantity(written, 'rated-flow', 'flow') as CubicMetresPerSecond | null,
  })),
)

export const strainers = perShop((shop: Shop) =>
  list(shop, 'strainer', (written) => ({
    ratedFlow: quantity(written, 'rated-flow', 'flow') as CubicMetresPerSecond | null,
  })),
)

/** Alternators and lamp sets: by how much each raises what the alternator has left. */
export const currentGivers = (shop: Shop, kind: 'alternator' | 'lamp set') =>
  list(shop, kind, (written) => ({ current: quantity(written, 'current', 'current') as Amperes | null }))

export const oils = perShop((shop: Shop) =>
  list(shop, 'oil', (written) => ({
    grade: words(written, 'grade'),
    viscosityAt40: quantity(written, 'viscosity-at-40C', 'viscosity') as SquareMetresPerSecond | null,
    viscosityAt100: quantity(written, 'viscosity-at-100C', 'viscosity') as SquareMetresPerSecond | null,
  })),
)
