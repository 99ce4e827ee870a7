/**
 * What the report is about: which evaluation is "then" beside "now", which way was asked for, which one is offered. Picks
 * from the result document, works nothing out.
 */
import type { Evaluation, Finding, OptionResult, Range, RecommendationKind, ResultDocument } from '../../evaluation.ts'
import { en } from '../wording.ts'

export interface Subject {
  readonly kind: RecommendationKind
  /** The option that is recommended, with or without conditions, or that goes beside a repair. */
  readonly recommended: OptionResult | null
  /** The option offered in place of what was asked. */
  readonly offered: OptionResult | null
  /** The way that was asked for and is not recommended. */
  readonly asked: OptionResult | null
  /** The way to name beside the speed that is wanted: one that reaches it and is not declined, else the one asked for. */
  readonly named: OptionResult | null
  /** What the machine does afterwards; null where nobody can say yet. */
  readonly after: Evaluation | null
  readonly afterRange: Range | null
  readonly afterLabel: string
  /** The after is what the way advised against would do. */
  readonly against: boolean
}

const byName = (result: ResultDocument, name: string | null) =>
  result.options.find((option) => option.name === name) ?? null

/** One that changes nothing, as a search that found nothing, is no way to advise against, and costs nothing. */
export const changesNothing = ({ changes, consequences }: Pick<OptionResult, 'changes' | 'consequences'>): boolean =>
  changes.length === 0 && consequences.length === 0

const declinedAsk = (result: ResultDocument, recommended: OptionResult | null): OptionResult | null => {
  const others = result.options.filter(
    (option) => option !== recommended && !option.protecting && !changesNothing(option),
  )
  return others.find((option) => option.answer.answer === 'decline') ?? null
}

const MERIT = { recommend: 0, conditions: 1, decline: 2 } as const

/** A way that gives the speed wanted and that we would build, the best answer first, then the cheapest. */
const reaching = ({ options, sheet }: ResultDocument, recommended: OptionResult | null): OptionResult | null => {
  const { speedKmh: wanted } = sheet.wants
  if (wanted === null) return null
  const kept = options.filter(
    ({ answer, evaluation: { travel } }) =>
      answer.answer !== 'decline' && !travel.level.stalled && travel.level.speedKmh >= wanted,
  )
  // What is recommended gives it already: then the way that was asked for is the one to hold it against.
  if (recommended !== null && kept.includes(recommended)) return null
  const [best = null] = kept.toSorted(
    (one, other) => MERIT[one.answer.answer] - MERIT[other.answer.answer] || one.cost.likely - other.cost.likely,
  )
  return best
}

/** Every part of the option is in the repair already: it is neither priced nor built twice. Oil is counted by the job. */
export const isInRepair = ({ workOrders, recommendation }: ResultDocument, name: string | null): boolean => {
  const repair = workOrders.find(({ option }) => option === null)
  const own = workOrders.find(({ option }) => option !== null && option === name)
  if (recommendation.kind !== 'restore' || repair === undefined || own === undefined) return false
  return own.pulls
    .filter(({ kind, component }) => kind !== 'oil' && component !== 'fluid')
    .every((pull) => repair.pulls.some(({ component, part }) => component === pull.component && part === pull.part))
}

/** What was measured contradicts itself: the timed run does not carry the figures. */
export const readingsDisagree = ({ recommendation }: ResultDocument): boolean =>
  recommendation.kind === 'measure-first' && recommendation.reasons.some(({ code }) => code === 'readings-disagree')

/** The answer's leading figures come from here. */
export const subjectOf = (result: ResultDocument): Subject => {
  const { kind, option, offerInstead } = result.recommendation
  const recommended = kind === 'decline' || kind === 'measure-first' ? null : byName(result, option)
  const offered = byName(result, offerInstead)
  const asked =
    declinedAsk(result, recommended) ??
    (kind === 'decline' ? (result.options.find((option) => !changesNothing(option)) ?? null) : null)
  const named = reaching(result, recommended) ?? asked
  const base = { kind, recommended, offered: offered === recommended ? null : offered, asked, named, against: false }
  if (kind === 'measure-first') return { ...base, after: null, afterRange: null, afterLabel: en.answer.notYet }
  if (recommended !== null) {
    const label =
      kind === 'restore'
        ? `${en.answer.restored}, ${en.answer.with(recommended.name)}`
        : en.answer.with(recommended.name)
    return { ...base, after: recommended.evaluation, afterRange: recommended.range, afterLabel: label }
  }
  if (kind === 'restore') return { ...base, after: result.restored, afterRange: null, afterLabel: en.answer.restored }
  if (offered !== null)
    return {
      ...base,
      after: offered.evaluation,
      afterRange: offered.range,
      afterLabel: en.answer.offered(offered.name),
    }
  return asked === null
    ? { ...base, after: null, afterRange: null, afterLabel: '' }
    : {
        ...base,
        after: asked.evaluation,
        afterRange: asked.range,
        afterLabel: en.answer.ifWeDid(asked.name),
        against: true,
      }
}

/** Raised by more than 2 %: the rule of the method for a travel speed that counts as changed. */
const raised = (before: number, after: number) => after > before * 1.02

/** Whether any travel speed of `after` is higher than now. */
export const isFaster = (now: Evaluation, after: Evaluation | null): boolean =>
  after !== null &&
  (raised(now.travel.level.speedKmh, after.travel.level.speedKmh) ||
    raised(now.travel.grade.speedKmh, after.travel.grade.speedKmh) ||
    (now.travel.turn !== null &&
      after.travel.turn !== null &&
      raised(now.travel.turn.speedKmh, after.travel.turn.speedKmh)))

/** First finding of a check, the worst first. */
export const findingOf = (evaluation: Evaluation | null, check: string): Finding | null => {
  const order = { stop: 0, change: 1, watch: 2, ok: 3 }
  return (
    [...(evaluation?.findings ?? [])]
      .filter((finding) => finding.check === check)
      .sort((a, b) => order[a.severity] - order[b.severity])[0] ?? null
  )
}

/** Temperature to name: the settled one, else the last of the day. */
export const oilAfterDay = (evaluation: Evaluation): number | null =>
  evaluation.heat.steadyOilC ?? evaluation.heat.curve.at(-1)?.[1] ?? null
