/**
 * The customer's question as it stands after reading: what was measured, what is wanted, what is offered. Types only.
 */

import type { Attachment, Duty, Machine, Site } from './machine.ts'
import type {
  Celsius,
  CubicMetresPerSecond,
  Metres,
  MetresPerSecond,
  Pascals,
  RevsPerSecond,
  Seconds,
} from './units/si.ts'

/** Where a figure comes from. `stated`: the shop wrote it and said nothing more. `default`: the tool filled it in. */
export type Provenance = 'measured' | 'plate' | 'manual' | 'assumed' | 'stated' | 'default'

/** One figure that nobody measured or read; listed in the result and on the report. */
export interface Assumption {
  /** Path in the machine or scenario file: "circuits.main.pump.efficiency.volumetric". */
  readonly path: string
  readonly value: number | string
  /** Unit as printed; '' for a word or a plain number. */
  readonly unit: string
  readonly from: 'assumed' | 'default'
  /** "± 3 %" style text, null where none applies. */
  readonly tolerance: string | null
}

export interface FlowReading {
  /** null: the only circuit that drives, or every circuit that drives. */
  readonly circuit: string | null
  readonly pressure: Pascals
  readonly flow: CubicMetresPerSecond
  /** null where it was not written down. */
  readonly engineSpeed: RevsPerSecond | null
  readonly oil: Celsius
}

export interface CircuitReading {
  /** null: holds for every circuit that drives. */
  readonly circuit: string | null
  readonly pressure: Pascals
}

export interface Readings {
  readonly travel: {
    readonly distance: Metres
    readonly time: Seconds
    readonly oil: Celsius
    /** Relative error of the speed that the run gives; 0.015 where nothing is stated. */
    readonly tolerance: number
  } | null
  readonly engineSpeed: RevsPerSecond | null
  readonly reliefPressure: readonly CircuitReading[]
  readonly flows: readonly FlowReading[]
  /** Gauge: below zero is a vacuum. */
  readonly inletPressure: readonly CircuitReading[]
  readonly oilTemperature: { readonly reading: Celsius; readonly after: Seconds; readonly ambient: Celsius } | null
}

export interface TimedRun {
  readonly direction: 'forward' | 'back'
  readonly distance: Metres
  readonly time: Seconds
}

/** Measured after the work, to be held against what was promised. */
export interface After {
  /** ISO date. */
  readonly date: string | null
  /** The option that was carried out; null: the machine was restored, or nothing was changed. */
  readonly option: string | null
  readonly runs: readonly TimedRun[]
  /** Oil during the runs. */
  readonly oil: Celsius | null
  /** During the runs. */
  readonly engineSpeed: RevsPerSecond | null
  readonly reliefPressure: readonly CircuitReading[]
  /** Gauge: below zero is a vacuum. */
  readonly inletPressure: readonly CircuitReading[]
  readonly oilTemperature: Readings['oilTemperature']
}

export interface Status {
  readonly warranty: boolean
  readonly leased: boolean
  readonly hiredOut: boolean
  readonly makerConsent: boolean
  readonly openDefects: readonly string[]
}

export interface Wants {
  readonly travelSpeed: MetresPerSecond | null
  readonly attachment: { readonly flow: CubicMetresPerSecond; readonly pressure: Pascals } | null
  readonly oilBelow: Celsius | null
}

export interface Alternative {
  readonly name: string
  /** Seconds a day. */
  readonly saves: Seconds
  /** In the shop's currency. */
  readonly cost: number
}

export interface Customer {
  readonly name: string
  readonly place: string | null
}

/** A merge patch as plain JSON (RFC 7396), as it stands in the YAML. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

export interface OptionRequest {
  readonly name: string
  readonly why: string | null
  readonly changes: { readonly [key: string]: Json }
  /** What is to be reached, where the option says that in place of its changes: they are then searched for. */
  readonly reach: Wants | null
}

export interface Scenario {
  readonly title: string
  readonly asked: string
  readonly customer: Customer
  readonly quote: { readonly number: string | null /** ISO date. */; readonly date: string | null }
  /** Path as given on the command line, with forward slashes. */
  readonly file: string
  readonly site: Site
  readonly duty: Duty
  readonly readings: Readings
  /** null: the work is not done, or nobody has measured. */
  readonly after: After | null
  readonly status: Status
  readonly wants: Wants
  readonly alternatives: readonly Alternative[]
  readonly attachment: Attachment | null
  readonly options: readonly OptionRequest[]
}

/** A machine built from the machine file and a list of patches, with what had to be assumed on the way. */
export interface BuiltMachine {
  readonly machine: Machine
  readonly assumptions: readonly Assumption[]
}
