/**
 * What the technician works from: parts to pull with their joints, jobs, relief settings, oil. Types only, plain JSON, part
 * of the result document; ids are those of findings and consequences. `null` means "not there" or "nobody has read it".
 */

/** How far a joint is tightened: by torque, by turns, or, where both are null, as the maker of the fitting says. */
export interface Tightening {
  /** Lowest and highest of the published tables, because they differ. */
  readonly torqueNm: readonly [low: number, high: number] | null
  readonly turns: string | null
  readonly source: string
}

export type JointPlace = 'inlet' | 'outlet' | 'work' | 'first' | 'second' | 'port'

/** One thread or flange that is made up. */
export interface Joint {
  readonly place: JointPlace
  /** Component on the other side; null where nobody has read it. */
  readonly into: string | null
  /** "24° 12L"; null where nobody has read it. */
  readonly connection: string | null
  readonly standard: string | null
  readonly thread: string | null
  readonly seal: string | null
  /** What looks the same and does not fit. */
  readonly mistakenFor: string | null
  /** Name of the adapter between; null where the end goes straight in. */
  readonly adapter: string | null
  readonly tightening: Tightening | null
}

export interface Pull {
  readonly component: string
  readonly kind: string
  /** Id on the parts list; null: to order, or to find. */
  readonly part: string | null
  readonly what: string
  readonly quantity: number
  readonly unit: 'piece' | 'm' | 'L'
  /** Hoses to cut; null for anything else. */
  readonly pieces: number | null
  /** Of each hose; null: cut to fit on the machine. */
  readonly lengthM: number | null
  readonly boreMm: number | null
  /** What it is rated for. */
  readonly maxPressureBar: number | null
  /** What the circuit asks of it; null where the relief does not reach. */
  readonly workingPressureBar: number | null
  /** Flange, shaft and turning direction of a pump or motor. */
  readonly mount: string | null
  readonly joints: readonly Joint[]
  /** Name of the kit that it comes in. */
  readonly kit: string | null
  readonly stock: number | null
  readonly leadDays: number | null
  /** The old part goes back for a deposit. */
  readonly oldPartBack: boolean
}

export interface OrderedJob {
  readonly job: string
  readonly quantity: number
  readonly components: readonly string[]
}

export interface ReliefSetting {
  readonly circuit: string
  readonly settingBar: number
  /** As found, or as the plate says; null for a circuit that was not there. */
  readonly wasBar: number | null
}

export interface WorkOrder {
  /** Name of the option; null: the restoration. */
  readonly option: string | null
  readonly pulls: readonly Pull[]
  readonly jobs: readonly OrderedJob[]
  readonly reliefs: readonly ReliefSetting[]
  readonly oil: { readonly grade: string | null; readonly fillL: number; readonly reservoirL: number }
  readonly ratedEngineRpm: number
}
