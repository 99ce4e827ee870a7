/**
 * The result document: plain JSON, the contract of `feasibility check --json`. Keys carry their unit at the end, numbers
 * are unrounded. Worked out once (evaluate.ts); every copy and the terminal only render it. Long because the whole contract
 * stands in one place.
 */
import type { Diagram } from './diagram.ts'
import type { Assumption } from './question.ts'
import type { FoundBySearch } from './search.ts'
import type { WorkOrder } from './work-order.ts'

export type Severity = 'ok' | 'watch' | 'change' | 'stop'
export type Risk = 'low' | 'moderate' | 'high' | 'severe'
export type LimitedBy = null | 'relief' | 'engine' | 'adhesion' | 'suction'

export interface Point {
  readonly speedKmh: number
  readonly displacementCm3: number
  readonly engineSpeedRpm: number
  readonly engineLoad: number
  readonly shaftPowerKw: number
  readonly pumpFlowLpm: number
  readonly pumpPressureBar: number
  readonly reliefFlowLpm: number
  readonly motorFlowLpm: number
  readonly motorSpeedRpm: number
  readonly motorDifferentialBar: number
  readonly motorReturnBar: number
  readonly tractiveForceN: number
  readonly neededForceN: number
  readonly stalled: boolean
  readonly limitedBy: LimitedBy
}

export interface TravelPoints {
  readonly level: Point
  readonly levelSlow: Point | null
  readonly levelHot: Point | null
  readonly levelCold: Point
  readonly grade: Point
  readonly turn: Point | null
  readonly oneTrack: Point | null
}

export interface CircuitFigures {
  readonly pumpFlowLpm: number
  readonly theoreticalFlowLpm: number
  readonly inletPressureBarAbs: number
  readonly neutralPressureBar: number
  readonly reliefSettingBar: number
  readonly shaftTorqueNm: number
}

export interface LineFigures {
  readonly id: string
  readonly velocityMps: number
  readonly limitMps: number
  readonly reynolds: number
  readonly dropBar: number
  readonly boreMm: number
  readonly flowLpm: number
  readonly workingPressureBar: number | null
}

export interface DropFigures {
  readonly id: string
  readonly flowLpm: number
  readonly dropBar: number
}

export type ModeName = 'travel' | 'work' | 'relief' | 'attachment' | 'idle'

export interface ModeHeat {
  readonly mode: ModeName
  readonly share: number
  readonly inputKw: number
  readonly usefulKw: number
  readonly heatKw: number
}

export interface Heat {
  readonly averageInputKw: number
  readonly averageUsefulKw: number
  readonly averageHeatKw: number
  readonly steadyOilC: number | null
  readonly steadyViscosityCst: number | null
  readonly minutesTo: { readonly '70': number | null; readonly '82': number | null }
  readonly risk: Risk
  /** [minutes, oil temperature], every five minutes over eight hours. */
  readonly curve: readonly (readonly [number, number])[]
  readonly byMode: readonly ModeHeat[]
}

export interface Finding {
  /** `check` and component joined: "line-velocity:circuits.main.lines.pressure". */
  readonly id: string
  readonly component: string
  readonly check: string
  readonly value: number | string | null
  readonly limit: number | string | null
  readonly unit: string
  readonly severity: Severity
  readonly existing: boolean
  /** One sentence for the customer: why this matters. */
  readonly because: string
  /** Where the limit comes from. */
  readonly source: string
  /** The heading that holds (passing or failing). */
  readonly heading: string
}

export interface Evaluation {
  readonly oilC: number
  readonly travel: TravelPoints
  readonly circuits: { readonly [name: string]: CircuitFigures }
  readonly lines: readonly LineFigures[]
  readonly drops: readonly DropFigures[]
  readonly heat: Heat
  readonly findings: readonly Finding[]
}

export interface Change {
  readonly component: string
  readonly from: string
  readonly to: string
}

export interface Consequence {
  readonly component: string
  /** Kind of part asked for. */
  readonly kind: string
  readonly action: 'replace' | 'add' | 'adapt'
  /** Id on the parts list; null where none fits. */
  readonly part: string | null
  readonly quantity: number
  /** Finding ids. */
  readonly because: readonly string[]
  readonly connections: readonly { readonly from: string; readonly to: string; readonly adapter: string | null }[]
  /** False where the place has no part on the list (special order or stop). */
  readonly available: boolean
  /** True where the shop can order it though it is not on the list. */
  readonly specialOrder: boolean
  /** From the asked change to this one, in words. */
  readonly chain: readonly string[]
}

export interface CostLine {
  readonly what: string
  readonly part: string | null
  readonly quantity: number
  /** null: unpriced. */
  readonly unitPrice: number | null
  readonly amount: number | null
  readonly leadDays: number | null
  readonly stock: number | null
  /** Shop's copy only. */
  readonly unitCost: number | null
}

export interface LabourLine {
  readonly job: string
  readonly hoursLow: number
  readonly hoursLikely: number
  readonly hoursHigh: number
  readonly rate: number
}

/** Paid with a part, and given back when the old one comes back: in no total. */
export interface CoreDeposit {
  readonly what: string
  readonly part: string
  readonly quantity: number
  readonly amount: number
}

export interface Cost {
  readonly currency: string
  /** Totals, tax included. */
  readonly low: number
  readonly likely: number
  readonly high: number
  readonly lines: readonly CostLine[]
  readonly labour: readonly LabourLine[]
  readonly parts: number
  readonly labourTotal: number
  readonly supplies: number
  readonly freight: number
  readonly contingency: number
  readonly tax: number
  readonly deposits: readonly CoreDeposit[]
  /** Unpriced things: the total is "from". */
  readonly unpriced: readonly string[]
}

export interface Gain {
  readonly speedKmh: number | null
  readonly speedRatio: number | null
  readonly minutesPerTrip: number | null
  readonly hoursPerYear: number | null
  readonly steadyOilC: number | null
  readonly costPerKmh: number | null
  readonly paybackYears: number | null
}

export interface Percentiles {
  readonly p10: number | null
  readonly p50: number | null
  readonly p90: number | null
}

export interface Range {
  readonly speedKmh: Percentiles
  readonly steadyOilC: Percentiles
  /** Level speed over that of the machine it starts from, draw by draw; 1 throughout for that machine itself. */
  readonly speedRatio: Percentiles
  /** The gain's p10 is under what a stopwatch can show: it cannot be promised. */
  readonly gainWithinError: boolean
}

export type ReasonCode =
  | 'engine-power'
  | 'no-part'
  | 'oil-too-hot'
  | 'braking-or-slope'
  | 'pull-lost'
  | 'governor'
  | 'within-error'
  | 'not-worth-it'
  | 'fault-first'
  | 'speed-class'
  | 'maker-consent'
  | 'warranty-lease-hire'
  | 'open-defects'
  | 'data-missing'

export interface Reason {
  readonly code: ReasonCode
  readonly text: string
}

export interface Answer {
  readonly answer: 'recommend' | 'conditions' | 'decline'
  readonly reasons: readonly Reason[]
  readonly conditions: readonly string[]
}

export interface OptionResult {
  readonly name: string
  readonly why: string | null
  /** Changes only cooler, filter, oil, breather, reservoir, strainer or suction line. */
  readonly protecting: boolean
  readonly changes: readonly Change[]
  readonly consequences: readonly Consequence[]
  readonly evaluation: Evaluation
  readonly asAskedOnly: Evaluation
  readonly cost: Cost
  readonly gain: Gain
  readonly range: Range | null
  readonly answer: Answer
  /** Where the option said what is to be reached in place of changes: how they were found. */
  readonly found: FoundBySearch | null
  /** Name of an option before it that makes the same changes for the same price; null where there is none. */
  readonly sameAs: string | null
}

export type RecommendationKind =
  | 'restore'
  | 'protect'
  | 'upgrade'
  | 'upgrade-on-conditions'
  | 'decline'
  | 'measure-first'

export interface Fault {
  readonly component: string
  readonly text: string
}

export interface RecommendationReason {
  readonly code: ReasonCode | 'readings-disagree' | 'fault' | 'oil-hot' | 'best-option' | 'nothing-better'
  readonly text: string
}

export interface Recommendation {
  readonly kind: RecommendationKind
  /** Name of the option. */
  readonly option: string | null
  readonly provisional: boolean
  readonly reasons: readonly RecommendationReason[]
  readonly offerInstead: string | null
  readonly faults: readonly Fault[]
}

export interface CalibrationFigures {
  readonly pumpSlipFactor: number
  readonly impliedVolumetricEfficiency: number
  readonly speedFactor: number
  readonly coolingFactor: number
  readonly measuredSpeedKmh: number | null
  readonly predictedSpeedKmh: number | null
  readonly notes: readonly string[]
}

/** What putting the faults right takes, priced; null where there is no fault. */
export interface Restoration {
  readonly consequences: readonly Consequence[]
  readonly cost: Cost
  readonly gain: Gain
}

/** One line of a quote as the shop sees it. Shop's copy only. */
export interface BuildUpLine {
  readonly what: string
  readonly part: string | null
  readonly quantity: number
  /** Of a kit without a cost of its own: what it holds. null: not on the list. */
  readonly unitCost: number | null
  readonly cost: number | null
  readonly unitPrice: number | null
  readonly price: number | null
  readonly profit: number | null
  /** Share of the price. */
  readonly margin: number | null
  /** Share of the cost. */
  readonly markUp: number | null
  readonly stock: number | null
  readonly leadDays: number | null
}

/** What the parts of one quote earn. Shop's copy only. */
export interface BuildUp {
  /** Name of the option; null: the restoration. */
  readonly option: string | null
  readonly lines: readonly BuildUpLine[]
  /** Over the lines whose cost and price are both known. */
  readonly known: {
    readonly price: number
    readonly cost: number
    readonly profit: number
    readonly margin: number | null
    readonly markUp: number | null
  }
  /** Lines whose cost or price is not known. */
  readonly open: readonly string[]
}

/** A reading that is not there yet, and how much the answer hangs on it. */
export interface Reading {
  /** Where it is written down: in the machine file, or under `measured` of the scenario. */
  readonly path: string
  readonly label: string
  readonly how: string
  /** Largest move of a level speed over the tolerance of what was assumed, one side; null where nothing moves. */
  readonly effectOnSpeedPercent: number | null
  readonly effectOnOilK: number
}

/** One row of the record after the work. */
export interface AcceptanceRow {
  readonly what: 'speed' | 'engine-speed' | 'relief-pressure' | 'inlet-pressure' | 'oil-temperature'
  readonly component: string
  /** Ends of what was promised, in `unit`; null where there is no such end. */
  readonly promisedLow: number | null
  readonly promisedHigh: number | null
  readonly measured: number
  readonly unit: string
  /** Which end counts. */
  readonly bound: 'at least' | 'at most' | 'between'
  /** null: cannot be held against a promise; the note says why. */
  readonly kept: boolean | null
  readonly note: string | null
  readonly source: string
}

/** What was promised against what was measured. */
export interface Acceptance {
  readonly date: string | null
  /** The option that was carried out; null: restored, or nothing changed. */
  readonly option: string | null
  readonly runs: readonly {
    readonly direction: 'forward' | 'back'
    readonly distanceM: number
    readonly timeS: number
    readonly speedKmh: number
  }[]
  readonly oilC: number | null
  readonly rows: readonly AcceptanceRow[]
  /** null: open. */
  readonly kept: boolean | null
}

/** A figure that was read and worked with, but that hardly any small machine has. */
export interface AskedAbout {
  /** In the machine file or the scenario. */
  readonly path: string
  /** Option that makes it so; null where it stands in the files. */
  readonly option: string | null
  readonly written: string
  /** What is usual, as text: "40 to 350 bar". */
  readonly usual: string
  readonly text: string
  readonly source: string
}

export interface ResultDocument {
  readonly format: 1
  readonly tool: { readonly name: string; readonly version: string }
  readonly scenario: {
    readonly title: string
    readonly file: string
    readonly machine: string
    readonly customer: string
    readonly asked: string
  }
  readonly assumptions: readonly Assumption[]
  /** Paths of those that the answer rests on: with any, it is provisional. */
  readonly restsOn: readonly string[]
  /** What to read next, that which matters most first; empty where nothing was assumed, or no ranges were asked for. */
  readonly readings: readonly Reading[]
  readonly calibration: CalibrationFigures
  /** Told among the notes of the calibration too, so that every copy prints it. */
  readonly askedAbout: readonly AskedAbout[]
  readonly baseline: Evaluation
  readonly baselineRange: Range | null
  readonly restored: Evaluation | null
  readonly restoration: Restoration | null
  readonly options: readonly OptionResult[]
  readonly recommendation: Recommendation
  /** Of the test after the work; null until there was one. */
  readonly acceptance: Acceptance | null
  /** The circuit as it stands, for drawing; what an option touches is in its changes and consequences, by the same ids. */
  readonly diagram: Diagram
  /** What the technician works from: the restoration where there is a fault, then every option. */
  readonly workOrders: readonly WorkOrder[]
  /** Shop's copy only: how parts are priced, and what each quote earns, in the order of `workOrders`. */
  readonly pricing: {
    /** On cost; null where the shop states a margin or nothing. */
    readonly markUp: number | null
    /** Of the price. */
    readonly margin: number | null
    readonly buildUps: readonly BuildUp[]
  }
  /** Everything the report prints that is not worked out: letterhead, terms, what was measured, site and duty. */
  readonly sheet: Sheet
}

/** One row of "what we were told and what we measured", already in SI with its unit, from the files. */
export interface SheetRow {
  readonly label: string
  readonly value: number | string
  /** SI-derived unit as in the keys: "km/h", "bar", "L/min", "°C", "kg"; '' for words. */
  readonly unit: string
  readonly from: 'measured' | 'plate' | 'manual' | 'assumed' | 'stated' | 'default'
  readonly tolerance: string | null
}

export interface Sheet {
  readonly shop: {
    readonly name: string
    readonly address: readonly string[]
    readonly phone: string | null
    readonly email: string | null
    readonly mark: string | null
    readonly accent: string | null
    readonly units: 'metric' | 'us' | 'both'
    readonly currency: string
    readonly terms: readonly string[]
    readonly quoteValidDays: number
  }
  readonly customer: { readonly name: string; readonly place: string | null }
  readonly quote: { readonly number: string | null; readonly date: string | null; readonly validUntil: string | null }
  readonly machine: {
    readonly name: string
    readonly type: string
    readonly massKg: number
    readonly designSpeedKmh: number | null
  }
  readonly site: {
    readonly ambientC: number
    readonly coldestStartC: number
    readonly altitudeM: number
    readonly ground: string
    readonly steepestGradePercent: number
    readonly tripM: number | null
    readonly tripsPerDay: number | null
    readonly daysPerYear: number | null
    readonly hourIsWorth: number | null
  }
  readonly wants: {
    readonly speedKmh: number | null
    readonly oilBelowC: number | null
    readonly attachmentFlowLpm: number | null
    readonly attachmentPressureBar: number | null
  }
  readonly alternatives: readonly { readonly name: string; readonly minutesPerDay: number; readonly cost: number }[]
  readonly rows: readonly SheetRow[]
}
