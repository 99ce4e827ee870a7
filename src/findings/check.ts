/**
 * What a check sees and what it answers. A check sees machines and worked-out figures, never another check; it has one
 * file, one id and its own words. all-checks.ts lists them in order, run-checks.ts runs them and marks what existed.
 */

import type { Evaluation, Severity } from '../evaluation.ts'
import type { Attachment, Duty, Machine, Site } from '../machine.ts'

/** An evaluation before its findings. */
export type Figures = Omit<Evaluation, 'findings'>

/** Figures that only checks need; worked out beside the travel points, at 50 °C unless the name says otherwise. */
export interface CheckFigures {
  /** Atmosphere at the site. */
  readonly atmosphereBar: number
  /** Shaft power at the relief setting, rated speed: the worse of "driving circuits together" and "each other circuit alone". */
  readonly reliefPowerKw: number
  /** Which of them: "both tracks" or the circuit's name. */
  readonly reliefPowerOf: string
  /** Net power after derating for the site. */
  readonly deratedPowerKw: number
  /** Highest speed the governor allows, no load. */
  readonly highIdleRpm: number
  /** Per circuit. */
  readonly circuits: {
    readonly [name: string]: {
      /** At the coldest start; 0.2 where the pump is starved. */
      readonly coldInletBarAbs: number
      /** Pump flow at the relief setting and rated speed. */
      readonly flowAtReliefLpm: number
      /** Relief setting with its override. */
      readonly workingPressureBar: number
      /** Pump flow with everything in neutral. */
      readonly neutralFlowLpm: number
      /** Shaft power with everything in neutral. */
      readonly neutralPowerKw: number
      /** Level speed of the track that it drives; null where it drives none. */
      readonly levelSpeedKmh: number | null
    }
  }
  /** Sum of the pump flows at the level point. */
  readonly returnFlowLpm: number
  /** Of the filter at the coldest start with that flow, before the bypass opens; null without filter or drop figure. */
  readonly filterColdDropBar: number | null
  readonly coolerColdDropBar: number | null
  /** Pressure at the cooler's inlet at the level point. */
  readonly coolerPressureBar: number | null
  readonly coldViscosityCst: number
  /** The attachment as worked out at 50 °C; null without one. */
  readonly attachment: {
    readonly flowLpm: number
    readonly pumpPressureBar: number
    /** Flow that really reaches the tool at its pressure. */
    readonly toolFlowLpm: number
    readonly auxiliaryLines: readonly { readonly id: string; readonly velocityMps: number; readonly boreMm: number }[]
  } | null
  /** Pull from standstill against what is needed, large displacement, at the relief setting. */
  readonly start: {
    readonly gradePullN: number
    readonly gradeNeededN: number
    readonly turnPullN: number | null
    readonly turnNeededN: number | null
  }
}

export interface CheckInput {
  readonly machine: Machine
  readonly figures: Figures
  readonly more: CheckFigures
  readonly site: Site
  readonly duty: Duty
  readonly attachment: Attachment | null
  /** The machine an option starts from (restored where it has faults) and its figures; null for that machine itself. */
  readonly before: { readonly machine: Machine; readonly figures: Figures; readonly more: CheckFigures } | null
}

/** One result of a check on one component, before it is known whether it existed. */
export interface Judged {
  readonly component: string
  readonly value: number | string | null
  readonly limit: number | string | null
  readonly unit: string
  readonly severity: Severity
  /** Key of tables/sources.ts, or its text. */
  readonly source: string
  /** true where a bigger value is worse, false where a smaller one is, null where values do not compare. */
  readonly worseWhenHigher: boolean | null
  /** Compared in place of the value where there is none: oil that settles nowhere is the worse the more heat goes into it. */
  readonly measure?: number
}

export interface Check {
  readonly id: string
  readonly wording: {
    /** Heading where the check is within its limit. */
    readonly within: string
    /** Heading where it is not. */
    readonly over: string
    /** One sentence for the customer: why it matters. */
    readonly why: string
  }
  /** A finding on these counts against every option that raises a travel speed, existing or not (braking, holding, slope). */
  readonly countsWhenFaster?: true
  readonly judge: (input: CheckInput) => readonly Judged[]
}
