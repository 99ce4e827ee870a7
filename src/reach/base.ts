/** What the bounds work on for one choice of all that drives. */
import type { Conditions } from '../circuit/plant.ts'
import type { TravelState } from '../circuit/travel-point.ts'
import type { Machine } from '../machine.ts'
import { isSymmetric, type Needed } from './flows.ts'

/** Its level point with some choice of what carries the flow. */
export interface Solved {
  readonly machine: Machine
  readonly at: Conditions
  readonly state: TravelState
  /**
   * The state; of two-speed motors in their small displacement also the one in the large: a narrower way may not hold the level in
   * the small one, and then it is neither slower nor takes less for certain.
   */
  readonly states: readonly TravelState[]
}

/** A machine with pumps, motors, sprocket and oil as chosen, and what was worked out for it, by code of what carries the flow. */
export class Base {
  readonly machine: Machine
  readonly settled = new Map<number, number>()
  readonly most = new Map<number, number>()
  readonly keeps = new Map<number, boolean>()
  readonly asked = new Map<number, Needed | null>()
  /** The last one solved: several questions are asked of it in turn. */
  last: { readonly code: number; readonly solved: Solved } | null = null

  /** Its circuits that drive are alike. */
  readonly isAlike: boolean
  /** And there are no others. */
  readonly isEven: boolean

  constructor(machine: Machine) {
    this.machine = machine
    this.isAlike = isSymmetric(machine)
    this.isEven = this.isAlike && machine.circuits.every(({ drives }) => drives !== 'no track')
  }
}
