/**
 * The shop, its parts list and its labour list, as read from shop/*.yaml. Types only. Money is in the shop's currency,
 * as a plain number of whole units with two decimals; whole cents are made once, in costing.
 */

import type { Json } from './question.ts'
import type { Share } from './units/si.ts'

export type PartKind =
  | 'pump'
  | 'tandem pump'
  | 'motor'
  | 'swivel'
  | 'valve'
  | 'relief'
  | 'coupling'
  | 'cooler'
  | 'filter'
  | 'strainer'
  | 'reservoir'
  | 'sprocket'
  | 'hose'
  | 'fitting'
  | 'adapter'
  | 'oil'
  | 'alternator'
  | 'lamp set'
  | 'thermostat'
  | 'harness'
  | 'breather'
  | 'oil cooler bypass'
  | 'kit'

export interface Part {
  readonly id: string
  readonly kind: PartKind
  readonly name: string
  /** As written, checked against the schema of its kind; what a patch `{part: id}` merges. */
  readonly figures: { readonly [key: string]: Json }
  readonly cost: number | null
  readonly price: number | null
  readonly leadDays: number | null
  readonly stock: number | null
  /** Jobs that this part brings besides the ordinary ones. */
  readonly labour: readonly { readonly job: string; readonly hours: Hours }[]
  /** Of a kit. */
  readonly holds: readonly { readonly part: string; readonly quantity: number }[]
  /** Returned when the old part comes back; null where none is asked. */
  readonly coreDeposit: number | null
}

export interface Hours {
  readonly low: number
  readonly likely: number
  readonly high: number
}

export interface SpecialOrder {
  readonly kind: PartKind
  readonly allow: Hours
  readonly leadDays: number | null
}

export interface Shop {
  readonly name: string
  readonly address: readonly string[]
  readonly phone: string | null
  readonly email: string | null
  /** Path of the logo beside the shop file, as written. */
  readonly mark: string | null
  readonly accent: string | null
  readonly units: 'metric' | 'us' | 'both'
  readonly currency: string
  readonly labourRate: number
  /** On cost: price = cost (1 + markUp). One of the two is used; `marginStated` says that the file gave a margin. */
  readonly markUp: Share | null
  readonly marginStated: Share | null
  readonly tax: Share
  readonly supplies: { readonly shareOfLabour: Share; readonly atMost: number | null }
  readonly freight: number
  readonly contingency: Share
  readonly quoteValidDays: number
  readonly terms: readonly string[]
  /** Disposal of used oil and the like, flat; 0 where none is stated. */
  readonly disposal: number
  /** Thresholds of the answer, with the defaults of the method. */
  readonly limits: { readonly shareOfValue: Share; readonly paybackYears: number; readonly leastGain: Share }
  readonly parts: readonly Part[]
  readonly specialOrder: readonly SpecialOrder[]
  readonly labour: readonly { readonly job: string; readonly hours: Hours }[]
}
