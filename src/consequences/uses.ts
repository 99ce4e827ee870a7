/**
 * What a change uses: parts and jobs. Costing prices these. Each carries the component that it belongs to, so that a later
 * answer for the same component takes the place of an earlier one.
 */
import type { Consequence } from '../evaluation.ts'
import type { Json } from '../question.ts'
import type { PartKind } from '../shop.ts'

/** The closed list of jobs; a part may bring others of its own. */
export const JOBS = [
  'replace pump',
  'replace motor',
  'replace swivel',
  'replace valve',
  'replace relief',
  'replace coupling',
  'replace hose',
  'replace sprocket',
  'fit cooler',
  'fit filter',
  'fit second pump',
  'fit shift line',
  'clean reservoir',
  'change oil',
  'set relief',
  'test and record',
] as const

export type Job = (typeof JOBS)[number]

export interface PartUse {
  readonly component: string
  readonly kind: PartKind
  /** Id on the parts list; null where the list has none: a special order where the shop takes one, else unpriced. */
  readonly part: string | null
  /** In plain words, for the line on the quote where there is no part. */
  readonly what: string
  /** Pieces, metres of hose or litres of oil. */
  readonly quantity: number
}

export interface JobUse {
  readonly component: string
  readonly job: Job
  /** Sides of motors, hoses by piece. */
  readonly quantity: number
}

/** Everything that one answer uses. */
export interface Uses {
  readonly uses: readonly PartUse[]
  readonly jobs: readonly JobUse[]
}

export interface Remedy extends Uses {
  readonly consequence: Consequence
  /** Merge patch over the machine file, in its own words; null where nothing in the evaluation changes. */
  readonly patch: Json | null
  /** Nothing on the list and nothing to order: the option ends here. */
  readonly stop: boolean
}

export const joinUses = (all: readonly Uses[]): Uses => ({
  uses: all.flatMap((one) => one.uses),
  jobs: all.flatMap((one) => one.jobs),
})

/** What the answers of several passes come to. */
export interface Settled extends Uses {
  readonly consequences: readonly Consequence[]
  /** Finding ids that no part and no order answers. */
  readonly stopped: readonly string[]
}

/**
 * Puts the asked changes and the remedies of every pass together. A remedy for a component replaces what an earlier pass
 * (or the asked change, where it is the same component) used for it: a hose that was made -8 and then -10 is bought once,
 * and a hose that is made new needs no adapter any more that it was given before.
 * @param first uses and consequences of the asked changes
 * @param remedies in the order in which they were given
 */
export const settle = (
  first: Uses & { readonly consequences: readonly Consequence[] },
  remedies: readonly Remedy[],
): Settled => {
  const last = new Map(remedies.map((remedy) => [remedy.consequence.component, remedy]))
  const reasons = new Map<string, Set<string>>()
  for (const { consequence } of remedies) {
    const known = reasons.get(consequence.component) ?? new Set()
    for (const id of consequence.because) known.add(id)
    reasons.set(consequence.component, known)
  }
  const kept = [...last.values()].map((remedy) => {
    const because = [...(reasons.get(remedy.consequence.component) ?? [])]
    return { ...remedy, consequence: { ...remedy.consequence, because } }
  })
  const stays = ({ component }: { readonly component: string }): boolean => !last.has(component)
  return {
    ...joinUses([{ uses: first.uses.filter(stays), jobs: first.jobs.filter(stays) }, ...kept]),
    consequences: [...first.consequences.filter(stays), ...kept.map((remedy) => remedy.consequence)],
    stopped: kept.filter((remedy) => remedy.stop).flatMap((remedy) => remedy.consequence.because),
  }
}
