/** From a choice to a remedy: what is bought, what is ordered specially, or that it ends here. */
import type { Consequence, Evaluation, Finding } from '../evaluation.ts'
import type { Machine, Site } from '../machine.ts'
import type { Json } from '../question.ts'
import type { Part, PartKind, Shop } from '../shop.ts'
import { inWords } from './names.ts'
import type { Job, PartUse, Remedy } from './uses.ts'

export interface RemedyInput {
  /** Findings of severity `change` that do not merely exist. */
  readonly asking: readonly Finding[]
  /** As it stands after the passes so far. */
  readonly machine: Machine
  /** The machine that the option starts from. */
  readonly before: Machine
  readonly shop: Shop
  readonly site: Site
  /** Of `machine`: velocities and drops of its lines, its travel points. */
  readonly figures: Omit<Evaluation, 'findings'>
  /** Of `machine`: heat to be taken out and the flow through a cooler or filter in the return. */
  readonly steady: {
    readonly averageHeatKw: number
    readonly returnFlowLpm: number
    readonly steadyOilC: number | null
  }
  readonly targetOilC: number
  /** Name of the option, where every chain begins. */
  readonly option: string
  /** Finding ids that were answered before without a patch, and are not to be asked again. */
  readonly done: ReadonlySet<string>
  /** Consequences of earlier passes: a chain goes on where one of them brought the component that asks now. */
  readonly earlier: readonly Consequence[]
}

/** Nested patch: `nest(['travel', 'swivel'], x)` is {travel: {swivel: x}}. */
export const nest = (path: readonly string[], value: Json): Json =>
  path.reduceRight<Json>((inner, key) => ({ [key]: inner }), value)

/** A figure in the machine file's own words, rounded up so that it is enough. */
export const written = (value: number, unit: string, decimals = 1): string => {
  const scale = 10 ** decimals
  return `${Math.ceil(value * scale - 1e-6) / scale} ${unit}`
}

/** Numeric value of the finding of a check; null where that check does not ask. */
export const askedValue = (findings: readonly Finding[], check: string): number | null => {
  const value = findings.find((finding) => finding.check === check)?.value
  return typeof value === 'number' ? value : null
}

/** The chain up to a component that asks: from the option, over an earlier consequence where that brought it. */
export const chainUpTo = (
  input: RemedyInput,
  findings: readonly Finding[],
  cameWith: string | null = null,
): readonly string[] => {
  const earlier = input.earlier.findLast(({ component }) => component === cameWith)
  return [...(earlier?.chain ?? [input.option]), ...new Set(findings.map((finding) => finding.heading))]
}

export interface Answer {
  readonly component: string
  readonly kind: PartKind
  readonly action: Consequence['action']
  readonly because: readonly Finding[]
  readonly chosen: Part | null
  /** Requirement that nothing met; null where something did. */
  readonly failed: string | null
  readonly quantity: number
  readonly path: readonly string[]
  /** Figures that a part to order must have, as a patch at the path. */
  readonly ordered: Json
  /** What is ordered, in words. */
  readonly orderedWords: string
  readonly job: Job | null
  readonly jobs?: number
  readonly cameWith?: string
}

/**
 * Makes the remedy: the chosen part; else a special order where the shop takes one for the kind, with the figures that the
 * place needs so that the evaluation shows it; else a stop.
 */
export const answer = (input: RemedyInput, asked: Answer): Remedy => {
  const { component, kind, action, because, chosen, failed, quantity, path } = asked
  const order = chosen === null && input.shop.specialOrder.some((special) => special.kind === kind)
  const name = inWords(component, input.machine)
  const verb = action === 'add' ? 'added' : 'changed'
  const words =
    chosen !== null
      ? `${name} ${verb}: ${chosen.name}`
      : order
        ? `${name} to order: ${asked.orderedWords}`
        : `no ${kind} to be had for this place: ${failed ?? 'none on the parts list'}`
  const use: PartUse = {
    component,
    kind,
    part: chosen?.id ?? null,
    what: chosen?.name ?? `${kind.charAt(0).toUpperCase()}${kind.slice(1)} to order, ${asked.orderedWords}`,
    quantity,
  }
  const stop = chosen === null && !order
  return {
    consequence: {
      component,
      kind,
      action,
      part: chosen?.id ?? null,
      quantity,
      because: because.map(({ id }) => id),
      connections: [],
      available: chosen !== null,
      specialOrder: order,
      chain: [...chainUpTo(input, because, asked.cameWith ?? null), words],
    },
    patch: stop ? null : nest(path, chosen === null ? asked.ordered : { part: chosen.id }),
    uses: stop ? [] : [use],
    jobs: stop || asked.job === null ? [] : [{ component, job: asked.job, quantity: asked.jobs ?? quantity }],
    stop,
  }
}
