/**
 * The resolved machine: SI, defaults filled in, parts merged, calibration applied. Types only; every later phase reads
 * these and nothing else of the machine file. `null` always means "not there" or "nobody has read it", never zero. Long
 * because the whole noun stands in one place.
 */
import type {
  Amperes,
  Celsius,
  CubicMetres,
  CubicMetresPerRev,
  CubicMetresPerSecond,
  Kelvins,
  Kilograms,
  Metres,
  MetresPerSecond,
  NewtonMetres,
  PascalSeconds,
  Pascals,
  RevsPerSecond,
  Share,
  SquareMetres,
  SquareMetresPerSecond,
  Watts,
  WattsPerKelvin,
  WattsPerSquareMetreKelvin,
} from './units/si.ts'

export type MachineType = 'tracked excavator' | 'tracked loader' | 'wheeled loader' | 'tracked dumper'

export interface Machine {
  readonly name: string
  readonly type: MachineType
  readonly mass: Kilograms
  /** In the shop's currency. */
  readonly marketValue: number | null
  /** The maker's published figure. */
  readonly designTravelSpeed: MetresPerSecond | null
  readonly engine: Engine
  readonly oil: Oil
  readonly reservoir: Reservoir
  readonly otherCoolingSurface: SquareMetres
  /** Heat transfer coefficient of the other surface (12 W/m2K unless a range is drawn over it). */
  readonly otherHeatTransfer: WattsPerSquareMetreKelvin
  /** Calibrated factor on both surfaces, 1 where nothing was read. */
  readonly coolingFactor: number
  /** Return flow over pump flow at its worst. */
  readonly cylinderAreaRatio: number
  readonly brakes: { readonly holding: boolean | null; readonly counterbalance: boolean | null }
  readonly circuits: readonly Circuit[]
  readonly travel: Travel
  readonly filter: Filter | null
  readonly cooler: Cooler | null
  readonly strainer: Strainer | null
}

export interface Engine {
  readonly netPower: Watts
  readonly ratedSpeed: RevsPerSecond
  readonly governorDroop: Share
  readonly torqueRise: Share
  readonly continuousFraction: Share
  readonly spareCurrent: Amperes | null
  readonly cylinders: number
}

export interface Oil {
  /** "ISO VG 46" or as the shop wrote it. */
  readonly grade: string | null
  readonly viscosityAt40: SquareMetresPerSecond
  readonly viscosityAt100: SquareMetresPerSecond
}

export interface Reservoir {
  readonly volume: CubicMetres
  readonly coolingSurface: SquareMetres
  readonly heatTransfer: WattsPerSquareMetreKelvin
  readonly steelMass: Kilograms
}

export type ConnectionFamily =
  | 'G'
  | 'BSPT'
  | 'ORB'
  | 'JIC'
  | 'ORFS'
  | 'NPT'
  | '24L'
  | '24S'
  | 'metric'
  | 'code 61'
  | 'code 62'
  | 'flange 4-bolt'

/** A thread, port or flange as the shop writes it. `size` is the part after the family, normalised: "1/2", "-8", "12", "22x1.5", "35". */
export interface Connection {
  readonly family: ConnectionFamily
  readonly size: string
  /** Normalised text, the key for comparing: "G 1/2", "24° 12L", "M22x1.5", "flange 3/4 code 61". */
  readonly text: string
}

export interface Mount {
  readonly flange: string | null
  readonly shaft: string | null
  readonly rotation: 'clockwise' | 'counterclockwise' | 'both' | null
  readonly length: Metres | null
}

export interface Pump {
  /** Id of the part it was taken from, null for what the machine came with. */
  readonly part: string | null
  /** Section of a tandem pump, counted from 1; null for a single pump. */
  readonly section: number | null
  readonly displacement: CubicMetresPerRev
  readonly maxPressure: Pascals | null
  readonly maxSpeed: RevsPerSecond | null
  /** Absolute. */
  readonly minInletPressure: Pascals
  /** Flow offset e of Q = (1-e) V n - w k dp/mu. */
  readonly flowOffset: Share
  /** Slip coefficient k [m3], so that k dp/mu is a flow. */
  readonly slip: CubicMetres
  /** Slip factor w: 1 healthy, above 1 worn. */
  readonly slipFactor: number
  readonly reference: { readonly pressure: Pascals; readonly speed: RevsPerSecond; readonly viscosity: PascalSeconds }
  /** Torque lost at the reference point. */
  readonly referenceTorqueLoss: NewtonMetres
  /** True where a volumetric efficiency is stated (its own e is 0), false where defaults stand in (its own e is 0.02). */
  readonly efficiencyStated: boolean
  readonly mount: Mount
  readonly ports: { readonly inlet: Connection | null; readonly outlet: Connection | null }
  /** Of a tandem pump: what its one shaft carries for all sections. */
  readonly maxShaftTorque: NewtonMetres | null
}

export type HoseKind = string

/** A hose (or tube) with its ends. Work lines: one entry stands for all of their kind. */
export interface Line {
  /** Component id: `circuits.main.lines.suction`, `travel.lines.swivel-to-motor`. */
  readonly id: string
  readonly part: string | null
  /** Dash size as a number, 8 for -8; null where only a bore is given. */
  readonly dash: number | null
  readonly kind: HoseKind | null
  readonly bore: Metres
  readonly length: Metres
  readonly elbows: number
  readonly ends: readonly [Connection, Connection] | null
  /** Rating of the hose itself: stated, else by its kind and size from tables; null where neither says. */
  readonly maxPressure: Pascals | null
}

/** Anything whose drop is dp_ref (Q/Q_ref)^2 rho/rho_ref. */
export interface QuadraticRestriction {
  readonly flow: CubicMetresPerSecond
  readonly drop: Pascals
}

export interface Valve {
  readonly part: string | null
  readonly ratedFlow: CubicMetresPerSecond | null
  /** Whole way through, pump port to tank port by the work ports. */
  readonly restriction: QuadraticRestriction | null
  readonly maxPressure: Pascals | null
  readonly ports: {
    readonly inlet: Connection | null
    readonly outlet: Connection | null
    readonly work: Connection | null
  }
}

export interface Relief {
  readonly part: string | null
  readonly setting: Pascals
  readonly ratedFlow: CubicMetresPerSecond | null
  readonly override: Share
}

export interface Auxiliary {
  readonly out: Line | null
  readonly back: Line | null
  readonly coupler: QuadraticRestriction | null
}

export interface Circuit {
  readonly name: string
  readonly pump: Pump
  readonly coupling: {
    readonly part: string | null
    readonly type: string | null
    readonly ratedTorque: NewtonMetres
  } | null
  readonly room: { readonly length: Metres } | null
  readonly relief: Relief
  readonly valve: Valve | null
  readonly lines: { readonly suction: Line | null; readonly pressure: Line | null; readonly return: Line | null }
  /** Name of the circuit whose suction line this one shares (then `lines.suction` is that very line), else null. */
  readonly suctionSharedWith: string | null
  readonly drives: 'both tracks' | 'left track' | 'right track' | 'no track'
  readonly works: readonly ('implements' | 'attachment')[]
  readonly auxiliary: Auxiliary | null
}

export interface Motor {
  readonly part: string | null
  readonly displacement: CubicMetresPerRev
  readonly secondDisplacement: CubicMetresPerRev | null
  readonly maxPressure: Pascals | null
  readonly maxFlow: CubicMetresPerSecond | null
  readonly maxSpeed: RevsPerSecond | null
  readonly maxReturnPressure: Pascals | null
  /** e_m of Q = (1+e_m) V n + k_m dp (dp/100 bar) (mu_ref/mu). */
  readonly flowOffset: Share
  /** k_m [m3/(s.Pa)]. The same in both displacements. */
  readonly leak: number
  readonly referenceViscosity: PascalSeconds
  readonly hydromechanical: Share
  readonly starting: Share
  readonly mount: Mount
  readonly ports: { readonly work: Connection | null }
  /** Manifold or brake valve, in and out together. */
  readonly block: QuadraticRestriction | null
}

export interface Swivel {
  readonly part: string | null
  readonly bore: Metres | null
  readonly passages: number | null
  readonly sparePassages: number | null
  readonly maxPressure: Pascals | null
  /** One way. */
  readonly restriction: QuadraticRestriction | null
  readonly ports: { readonly work: Connection | null }
}

export interface Travel {
  readonly running: 'tracks' | 'wheels'
  /** Motors in all: 2 on tracks, 2 or 4 on wheels. */
  readonly motors: number
  readonly motor: Motor
  readonly finalDriveRatio: number
  /** Distance for one turn of the sprocket or wheel. */
  readonly wayPerTurn: Metres
  /** Of track or wheel. */
  readonly efficiency: Share
  /** Centre to centre; null on wheels. */
  readonly gauge: Metres | null
  readonly groundContactLength: Metres | null
  readonly swivel: Swivel | null
  /** Each passed out and back. */
  readonly lines: readonly Line[]
  /** Calibrated factor on every travel speed, 1 where nothing sets it. */
  readonly speedFactor: number
}

export interface Filter {
  readonly part: string | null
  readonly ratedFlow: CubicMetresPerSecond | null
  /** Laminar element: dp_ref (Q/Q_ref)(nu/nu_ref). */
  readonly drop: Pascals | null
  readonly reference: { readonly flow: CubicMetresPerSecond; readonly viscosity: SquareMetresPerSecond } | null
  readonly fineness: Metres | null
  readonly beta: number | null
  readonly bypass: Pascals
}

export interface Cooler {
  readonly part: string | null
  readonly capacity: WattsPerKelvin
  readonly atFlow: CubicMetresPerSecond
  readonly drop: Pascals | null
  readonly maxPressure: Pascals | null
  readonly bypass: Pascals
  readonly airRise: Kelvins
  readonly fanCurrent: Amperes | null
}

export interface Strainer {
  readonly part: string | null
  readonly ratedFlow: CubicMetresPerSecond
  readonly drop: Pascals
  readonly viscosity: SquareMetresPerSecond
}

export type GroundName = 'paved' | 'firm soil' | 'grass' | 'loose soil' | 'sand' | 'mud'

/** The four figures of one ground for this machine's running gear. */
export interface Ground {
  readonly name: GroundName
  /** f_r */
  readonly rollingResistance: number
  /** mu_t */
  readonly turning: number
  /** phi */
  readonly adhesion: number
  /** Slip on the level: 0.03 on tracks off pavement, else 0.01. */
  readonly slip: Share
}

export interface Site {
  readonly ambient: Celsius
  readonly coldestStart: Celsius
  readonly altitude: Metres
  readonly ground: Ground
  /** 0.2 for 20 %: rise over run. */
  readonly steepestGrade: Share
  readonly trip: Metres | null
  readonly tripsPerDay: number | null
  readonly daysPerYear: number | null
  /** In the shop's currency. */
  readonly hourIsWorth: number | null
}

/** Shares make 1. */
export interface Duty {
  readonly travel: Share
  readonly work: {
    readonly share: Share /** null: 0.4 of the relief setting. */
    readonly pressure: Pascals | null
    readonly useful: Share
  }
  readonly relief: Share
  readonly attachment: Share
  readonly idle: Share
}

export interface Attachment {
  readonly name: string
  readonly flow: CubicMetresPerSecond
  readonly pressure: Pascals
}
