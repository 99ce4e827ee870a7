/** The recommendation for the whole scenario, in the order of the method. */
import type { Evaluation, Fault, OptionResult, Recommendation, RecommendationReason } from '../evaluation.ts'
import type { Alternative, Assumption, Readings, Wants } from '../question.ts'
import { kmhFromMetresPerSecond } from '../units/shop-units.ts'
import type { UnreadCooling } from './unread-cooling.ts'

export interface Situation {
  /** Restored where the machine has faults, else as it stands. */
  readonly before: Evaluation
  readonly options: readonly OptionResult[]
  readonly faults: readonly Fault[]
  /** Figures of the machine file that make faults of readings. */
  readonly faultsHangOn: readonly string[]
  readonly disagreements: readonly string[]
  readonly wants: Wants
  readonly alternatives: readonly Alternative[]
  readonly assumptions: readonly Assumption[]
  readonly readings: Readings
  /** Hot oil that rests on a surface that nobody measured. */
  readonly unread: UnreadCooling | null
}

/** Assumed figures that the answer stands or falls with. */
const CARRYING = [/\.relief\.setting$/, /travel\.swivel\.bore$/, /\.displacement$/]

/**
 * Assumptions that the answer rests on: a relief (that was not read either), a swivel bore or a displacement; the other
 * cooling surface where the oil is hot for want of it; and what a reading was held against and found a fault by, as an
 * engine speed under a governor line whose droop nobody read.
 */
export const restingOn = ({
  assumptions,
  readings,
  unread,
  faultsHangOn,
}: Pick<Situation, 'assumptions' | 'readings' | 'unread' | 'faultsHangOn'>): readonly Assumption[] =>
  assumptions.filter(
    ({ path }) =>
      path === unread?.path ||
      faultsHangOn.includes(path) ||
      (CARRYING.some((pattern) => pattern.test(path)) &&
        !(
          path.endsWith('.relief.setting') &&
          readings.reliefPressure.some((r) => r.circuit === null || path.includes(`.${r.circuit}.`))
        )),
  )

const attachmentShortOf = (evaluation: Evaluation): number => {
  const short = evaluation.findings.find((f) => f.check === 'attachment-flow')
  return typeof short?.value === 'number' && typeof short.limit === 'number'
    ? Math.max(0, short.limit - short.value)
    : 0
}

/**
 * How far an option stays behind what is wanted: 0 where it gives it. A protecting option changes no speed: the little that
 * its filter or cooler costs on the way back is not held against it.
 */
const shortfall = (wants: Wants, { evaluation, protecting }: OptionResult, before: Evaluation): number => {
  let short = 0
  const { speedKmh } = (protecting ? before : evaluation).travel.level
  if (wants.travelSpeed !== null) short += Math.max(0, 1 - speedKmh / kmhFromMetresPerSecond(wants.travelSpeed))
  if (wants.oilBelow !== null) short += Math.max(0, (evaluation.heat.steadyOilC ?? 150) - wants.oilBelow) / 100
  if (wants.attachment !== null) short += attachmentShortOf(evaluation) / 100
  return short
}

const RANK = { recommend: 0, conditions: 1, decline: 2 } as const

const HEAT_LEFT = { low: 0, moderate: 0, high: 1, severe: 2 } as const

/** What a protecting option is for: one that leaves the oil hot comes after one that cools it, however cheap it is. */
const heatLeft = ({ protecting, evaluation }: OptionResult): number =>
  protecting ? HEAT_LEFT[evaluation.heat.risk] : 0

/** Best first: by answer, then by what is wanted, then by the heat that protection leaves, then by cost, then as written. */
const byMerit = (wants: Wants, options: readonly OptionResult[], before: Evaluation): OptionResult[] =>
  options
    .map((option, place) => ({ option, place }))
    .sort(
      (a, b) =>
        RANK[a.option.answer.answer] - RANK[b.option.answer.answer] ||
        shortfall(wants, a.option, before) - shortfall(wants, b.option, before) ||
        heatLeft(a.option) - heatLeft(b.option) ||
        a.option.cost.likely - b.option.cost.likely ||
        a.place - b.place,
    )
    .map(({ option }) => option)

const reasonsOf = (option: OptionResult | undefined): readonly RecommendationReason[] => option?.answer.reasons ?? []

const isHot = (evaluation: Evaluation): boolean => evaluation.heat.risk === 'high' || evaluation.heat.risk === 'severe'

const kindOf = (option: OptionResult): Recommendation['kind'] => {
  if (option.protecting) return 'protect'
  return option.answer.answer === 'recommend' ? 'upgrade' : 'upgrade-on-conditions'
}

/** The alternative that saves most. */
const bestAlternative = (alternatives: readonly Alternative[]): string | null =>
  [...alternatives].sort((a, b) => b.saves - a.saves || a.cost - b.cost)[0]?.name ?? null

/** Recommends for the whole scenario. */
export const recommend = (situation: Situation): Recommendation => {
  const { before, options, faults, disagreements, wants, alternatives, unread } = situation
  const provisional = restingOn(situation).length > 0
  const ranked = byMerit(wants, options, before)
  const kept = ranked.filter((option) => option.answer.answer !== 'decline')
  const protecting = kept.find((option) => option.protecting) ?? null
  const instead = protecting?.name ?? bestAlternative(alternatives)
  const base = { provisional, faults }
  if (disagreements.length > 0)
    return {
      ...base,
      kind: 'measure-first',
      option: null,
      reasons: disagreements.map((text) => ({ code: 'readings-disagree', text })),
      offerInstead: instead,
    }
  if (faults.length > 0)
    return {
      ...base,
      kind: 'restore',
      option: protecting?.name ?? null,
      reasons: faults.map(({ text }) => ({ code: 'fault', text })),
      offerInstead: instead,
    }
  const best = kept[0]
  const missing: readonly RecommendationReason[] = unread === null ? [] : [{ code: 'data-missing', text: unread.text }]
  const declines = ranked.flatMap(reasonsOf)
  // Whether it is cooled, or nothing done, is the heat's to say; other reasons against an option hold whatever the oil does.
  const heatDecides = best === undefined ? declines.every(({ code }) => code === 'oil-too-hot') : best.protecting
  if (unread?.decides && heatDecides)
    return { ...base, kind: 'measure-first', option: null, reasons: missing, offerInstead: instead }
  if (best !== undefined) {
    const other = kept.find((option) => option !== best && option.protecting !== best.protecting)
    return {
      ...base,
      kind: kindOf(best),
      option: best.name,
      reasons: [...reasonsOf(best), ...missing],
      offerInstead:
        other?.name ?? (best.protecting ? bestAlternative(alternatives) : instead === best.name ? null : instead),
    }
  }
  const offered = ranked.find((option) => option.protecting)
  if (isHot(before) && offered !== undefined && !unread?.decides)
    return {
      ...base,
      kind: 'protect',
      option: offered.name,
      reasons: [...reasonsOf(offered), ...missing],
      offerInstead: instead,
    }
  return { ...base, kind: 'decline', option: null, reasons: [...declined(ranked), ...missing], offerInstead: instead }
}

/** Why nothing is done: the reasons of every option, each once. */
const declined = (options: readonly OptionResult[]): readonly RecommendationReason[] => {
  const seen = new Set<string>()
  const reasons = options
    .flatMap((option) => option.answer.reasons)
    .filter(({ code, text }) => {
      const key = `${code}:${text}`
      const isNew = !seen.has(key)
      seen.add(key)
      return isNew
    })
  return reasons.length > 0 ? reasons : [{ code: 'nothing-better', text: 'Nothing that was offered makes it better.' }]
}
