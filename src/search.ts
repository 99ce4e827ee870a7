/**
 * What a search for the cheapest way found: plain JSON, printed by `feasibility reach --json` and rendered on the report and
 * the terminal. Types only. Money is in the shop's currency, tax included; nothing is rounded.
 */
import type { Change, Cost, Finding, OptionResult } from './evaluation.ts'
import type { Json } from './question.ts'

/** What is wanted; at least one is not null. */
export interface Goal {
  readonly travelSpeedKmh: number | null
  readonly attachment: { readonly flowLpm: number; readonly pressureBar: number } | null
  readonly oilBelowC: number | null
}

/** What a way is measured by: the first that the goal names, in this order. */
export type Measure = 'travel-speed' | 'attachment-flow' | 'oil-temperature'

/** What a way gives of all that may be wanted. */
export interface Gives {
  /** On the level. */
  readonly speedKmh: number
  /** At the wanted pressure; null where none is wanted. */
  readonly attachmentLpm: number | null
  /** Settled; null where it does not settle. */
  readonly oilC: number | null
}

/** One way through the parts list, evaluated with every consequence. */
export interface FoundWay {
  /** The asked change as a merge patch over the machine file; empty: the machine as it is. */
  readonly changes: { readonly [key: string]: Json }
  /** Evaluated as an option of the scenario; `range` is null. */
  readonly option: OptionResult
  /** In the unit of the measure: km/h on the level, L/min at the wanted pressure, °C settled. */
  readonly reached: number | null
  readonly gives: Gives
  /** The goal is reached in all that it names, limits aside. */
  readonly reaches: boolean
  /** The goal is reached in all that it names, and no limit stands against it. */
  readonly meets: boolean
  /** Something on it is not on the list and has to be ordered; its price is "from". */
  readonly specialOrder: boolean
}

export interface SearchCounts {
  /** Combinations of the list that the search covers. */
  readonly combinations: number
  /** Evaluated in full, consequences included. */
  readonly evaluated: number
  /** Combinations never evaluated: a lower bound of their price was no better than what was found already. */
  readonly cutByPrice: number
  /** Combinations never evaluated: an upper bound of what they reach was too low. */
  readonly cutByReach: number
  /** Combinations never evaluated: they cannot be built, whatever else is chosen. */
  readonly cutByLimit: number
}

/** One assumption or reading, and how far the answer moves over its tolerance. */
export interface Moves {
  readonly path: string
  readonly label: string
  /** Tolerance as written: "± 3 %". */
  readonly tolerance: string | null
  /** Of the cheapest way: what it reaches at both ends, in the unit of the measure. */
  readonly reachedLow: number | null
  readonly reachedHigh: number | null
  /** The way still meets the goal at both ends. */
  readonly holds: boolean
}

export interface Search {
  readonly format: 1
  readonly goal: Goal
  readonly measure: Measure
  /** What it does today, restored where there are faults. */
  readonly reachedToday: number | null
  readonly today: Gives
  /** Readings that do not agree: whatever is found stands on one of them. Empty where they do. */
  readonly disagreements: readonly string[]
  /** Faults that are put right first; what is found holds for the machine after that. */
  readonly faults: readonly string[]
  /**
   * Cheapest that meets the goal, special orders allowed; null where nothing does. One with something that has no price only
   * where there is no other.
   */
  readonly cheapest: FoundWay | null
  readonly cheapestInStock: FoundWay | null
  /** Seems a tenth cheaper still, but something of it has no price; null where there is no such way. */
  readonly cheapestUnpriced: FoundWay | null
  /** Furthest that the budget pays for. */
  readonly withinBudget: { readonly budget: number; readonly way: FoundWay | null } | null
  /** No way is both cheaper and better than any of these: from the machine as it is upwards, no special orders. */
  readonly curve: readonly FoundWay[]
  /**
   * Where nothing meets the goal: the furthest that can be had within every limit; of several wishes the furthest in what is
   * measured while the others are met, or, where none meets those, whatever they come to.
   */
  readonly nearest: FoundWay | null
  /** Nothing was left open in the search for the nearest and for the curve up to it; false: there may be one nearer. */
  readonly nearestIsExact: boolean
  /** Where nothing meets the goal: what stops the ways that would go further, worst first. */
  readonly stops: readonly Finding[]
  /** Where nothing meets the goal: a way that reaches it past the limits, the one with the least in its way. */
  readonly pastLimits: FoundWay | null
  /** What would have to be true for that way, all of it: "an engine of 13 kW". */
  readonly wouldTake: readonly string[]
  /** The three that move the answer most. */
  readonly moves: readonly Moves[]
  /** Of the search for the goal. */
  readonly counts: SearchCounts
  /** Evaluated in full besides: for the nearest, the curve up to it and what stands in the way. */
  readonly evaluatedBesides: number
  /** Nothing was left open; false: the search was given up after its most evaluations, and there may be something better. */
  readonly isExact: boolean
  /** Of the options that the scenario wrote by hand: name, price, and whether it meets the goal. */
  readonly byHand: readonly {
    readonly name: string
    readonly cost: Cost
    readonly reached: number | null
    readonly gives: Gives
    readonly reaches: boolean
    readonly meets: boolean
  }[]
}

/** A way as the report names it beside others. */
export interface ToldWay extends Pick<FoundWay, 'reached' | 'gives' | 'reaches' | 'meets'> {
  /** Likely. */
  readonly price: number
  readonly changes: readonly Change[]
}

/** What a search found for one option, as figures: why it is this way and no other. */
export interface FoundBySearch {
  readonly goal: Goal
  readonly measure: Measure
  /** In the unit of the measure; null: the oil does not settle. */
  readonly reachedToday: number | null
  readonly reached: number | null
  readonly gives: Gives
  /** The goal is met; false: this is the nearest that can be had, or nothing. */
  readonly meets: boolean
  readonly counts: SearchCounts
  readonly isExact: boolean
  /** Price of the way that was found. */
  readonly price: number | null
  /** The cheapest of the other ways that were evaluated in full, have a price and meet the goal, with other parts. */
  readonly next: ToldWay | null
  /**
   * Of several wishes: of the ways that were evaluated in full, cost less and keep every limit the one that comes nearest, and which
   * wishes it misses. null where one thing is wanted: `curve` tells it then.
   */
  readonly cheaper: (ToldWay & { readonly misses: readonly Measure[] }) | null
  /** Seems cheaper still, but for some of it there is no price. */
  readonly unpriced: (ToldWay & { readonly items: readonly string[] }) | null
  readonly nearestIsExact: boolean
  /** Where nothing meets the goal: a way that reaches it past the limits. */
  readonly pastLimits: ToldWay | null
  /** Where nothing meets the goal: what would have to be true, for that way. */
  readonly wouldTake: readonly string[]
  /** The three that move the answer most. */
  readonly moves: readonly Moves[]
  /** From the machine as it is upwards. */
  readonly curve: readonly ToldWay[]
}
