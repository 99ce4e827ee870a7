/** What the answer reads of an option: plain facts, gathered once, so that each rule is one line. */
import type { Cost, Evaluation, Fault, Gain } from '../evaluation.ts'
import type { Machine, Site } from '../machine.ts'
import type { Alternative, Json, Status, Wants } from '../question.ts'
import type { Shop } from '../shop.ts'
import { noticeable } from '../tables/limits.ts'

export interface OptionFacts {
  /** The machine the option starts from: restored where it has faults. */
  readonly before: { readonly machine: Machine; readonly evaluation: Evaluation }
  readonly after: { readonly machine: Machine; readonly evaluation: Evaluation }
  readonly changes: Json
  readonly protecting: boolean
  /** For which there is no part and no order to be had: "the swivel". */
  readonly missing: readonly string[]
  readonly cost: Cost
  readonly gain: Gain
  readonly site: Site
  readonly wants: Wants
  readonly status: Status
  readonly alternatives: readonly Alternative[]
  readonly limits: Shop['limits']
  readonly faults: readonly Fault[]
}

type SpeedPoint = 'level' | 'grade' | 'turn'

const POINTS: readonly SpeedPoint[] = ['level', 'grade', 'turn']

const ratioAt = (facts: OptionFacts, point: SpeedPoint): number => {
  const from = facts.before.evaluation.travel[point]?.speedKmh ?? 0
  const to = facts.after.evaluation.travel[point]?.speedKmh ?? 0
  if (from > 0) return to / from
  return to > 0 ? Number.POSITIVE_INFINITY : 1
}

/** A travel speed at 50 °C rises by more than 2 %. */
export const speedRaised = (facts: OptionFacts): boolean =>
  POINTS.some((point) => ratioAt(facts, point) > 1 + noticeable.value)

/** A travel speed at 50 °C changes by more than 2 %, either way. */
export const speedChanged = (facts: OptionFacts): boolean =>
  POINTS.some((point) => Math.abs(ratioAt(facts, point) - 1) > noticeable.value)

const isMapping = (value: Json | undefined): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The patch writes something at or under a path. */
export const touches = (changes: Json, ...path: readonly string[]): boolean => {
  let at: Json | undefined = changes
  for (const key of path) {
    if (!isMapping(at) || !(key in at)) return false
    at = at[key]
  }
  return at !== undefined
}

/** Keys of a machine whose change protects the oil and nothing else. */
const PROTECTING = new Set(['cooler', 'filter', 'fluid', 'reservoir', 'strainer', 'breather', 'other-cooling-surface'])

const onlySuction = (circuits: Json | undefined): boolean =>
  isMapping(circuits) &&
  Object.values(circuits).every(
    (circuit) =>
      isMapping(circuit) &&
      Object.entries(circuit).every(
        ([key, lines]) => key === 'lines' && isMapping(lines) && Object.keys(lines).every((line) => line === 'suction'),
      ),
  )

/** Changes only cooler, filter, oil, breather, reservoir, strainer or suction line. */
export const isProtecting = (changes: Json): boolean =>
  isMapping(changes) &&
  Object.keys(changes).length > 0 &&
  Object.entries(changes).every(([key, value]) => PROTECTING.has(key) || (key === 'circuits' && onlySuction(value)))
