/** A scenario read without a mistake, ready for evaluation: the boundary between reading files and working out. */
import type { AskedAbout, Sheet } from './evaluation.ts'
import type { Assumption, BuiltMachine, Json, Scenario } from './question.ts'
import type { Shop } from './shop.ts'

/** Value of one figure in a draw: path, nominal value and half-width of its tolerance, both SI. */
export type Draw = (path: string, nominal: number, tolerance: number) => number

/** A machine with some patches merged and checked, to be resolved as often as draws are wanted. */
export interface PreparedMachine {
  readonly resolve: (draw?: Draw) => BuiltMachine
}

export interface Loaded {
  readonly scenario: Scenario
  readonly shop: Shop
  readonly sheet: Sheet
  /** Of the scenario file: site and duty. */
  readonly assumptions: readonly Assumption[]
  /** Figures that can be, but are hardly right. */
  readonly askedAbout: readonly AskedAbout[]
  /**
   * The machine with merge patches applied in order.
   * @throws an Error where a patch does not fit; the patches that the scenario asks for were checked on reading
   */
  readonly prepare: (patches: readonly Json[]) => PreparedMachine
}
