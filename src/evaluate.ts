/**
 * The conductor. From what was read to the result document, in these steps:
 *
 *   plates -> calibrate -> baseline -> restored (where faults are open)
 *   an option that says what is to be reached: its changes are searched for (reach.ts)
 *   each option: patch -> as asked -> findings -> consequences -> patch again ... until nothing asks -> cost -> answer
 *   ranges of all of them under the same draws, and which reading would narrow them -> recommendation
 *   readings after the work, where there are any, against what was promised
 *
 * It decides nothing itself; each step is a module of its own.
 */
import { acceptanceOf } from './answer/acceptance.ts'
import { answerOfSearch } from './answer/of-search.ts'
import { recommend, restingOn } from './answer/recommend.ts'
import { sameAsEarlier } from './answer/same-way.ts'
import { type UnreadCooling, unreadCooling } from './answer/unread-cooling.ts'
import type { Work } from './circuit/duty.ts'
import { diagramOf } from './diagram-of.ts'
import type { Acceptance, Range, Reading, ResultDocument } from './evaluation.ts'
import type { Figures } from './findings/check.ts'
import type { Evaluated } from './findings/evaluate-machine.ts'
import type { Loaded, PreparedMachine } from './loaded.ts'
import { evaluateOption, type OptionOutcome, type Start } from './option.ts'
import type { Assumption } from './question.ts'
import { type Ranged, type Resolve, rangesOf } from './ranges/ranges.ts'
import { sensitivities } from './ranges/sensitivity.ts'
import { resolveReach } from './reach.ts'
import { restore } from './restore.ts'
import { begin } from './start.ts'
import { readingsWorth } from './survey/readings.ts'
import { TOOL } from './tool.ts'

export interface EvaluateOptions {
  /** Without ranges, for benchmarks and searches; the result then has `null` there. */
  readonly ranges: boolean
}

interface AllRanges {
  readonly baseline: Range | null
  readonly restored: Range | null
  readonly options: readonly Range[]
  readonly readings: readonly Reading[]
}

/** Ranges of the machine as it stands and of every option, under the same draws, and what is worth reading next. */
const rangesFor = (
  loaded: Loaded,
  plates: PreparedMachine,
  baseline: Evaluated,
  restored: Evaluated | null,
  outcomes: readonly OptionOutcome[],
  work: Work,
  assumed: readonly Assumption[],
  unread: UnreadCooling | null,
): AllRanges => {
  const { scenario, shop } = loaded
  const ofPlates: Resolve = (draw) => plates.resolve(draw).machine
  const estimates = ({ travel, heat }: Figures) => ({ speedKmh: travel.level.speedKmh, steady: heat.steadyOilC })
  const stands: Ranged = { resolve: ofPlates, ...estimates(baseline.figures), restored: false, from: 0 }
  const firsts: readonly Ranged[] =
    restored === null
      ? [stands]
      : [stands, { resolve: ofPlates, ...estimates(restored.figures), restored: true, from: 1 }]
  const ofOptions = outcomes.map(
    ({ prepared, result }): Ranged => ({
      resolve: (draw) => prepared.resolve(draw).machine,
      ...estimates(result.evaluation),
      restored: restored !== null,
      from: firsts.length - 1,
    }),
  )
  const machines = [...firsts, ...ofOptions]
  const { site, readings } = scenario
  const all = rangesOf(ofPlates, machines, site, work, readings, shop.limits.leastGain)
  const paths = assumed.map(({ path }) => path)
  const found = sensitivities(ofPlates, machines, paths, site, work, readings)
  // 0 m2 has no tolerance; what it does to the oil is known all the same.
  const more = unread === null ? [] : [{ path: unread.path, speed: null, oil: unread.cooler }]
  return {
    baseline: all[0] ?? null,
    restored: restored === null ? null : (all[1] ?? null),
    options: all.slice(firsts.length),
    readings: readingsWorth([...found, ...more], readings),
  }
}

/** The test after the work against the option that was carried out, else against the restored machine. */
const acceptance = (
  { scenario }: Loaded,
  plates: PreparedMachine,
  start: Start,
  outcomes: readonly OptionOutcome[],
  ranged: AllRanges | null,
): Acceptance | null => {
  const { after, site } = scenario
  if (after === null) return null
  const i = outcomes.findIndex(({ result }) => result.name === after.option)
  const outcome = outcomes[i]
  const promised =
    outcome === undefined
      ? {
          option: null,
          machine: plates.resolve().machine,
          evaluation: start.beforeJudged,
          range: ranged?.restored ?? ranged?.baseline ?? null,
        }
      : {
          option: outcome.result.name,
          machine: outcome.prepared.resolve().machine,
          evaluation: outcome.result.evaluation,
          range: ranged?.options[i] ?? null,
        }
  return acceptanceOf(after, promised, site)
}

/**
 * Evaluates one scenario.
 * @param loaded the scenario with its machine and shop, read without a mistake
 * @returns the result document: the same bytes for the same input
 */
export const evaluate = (loaded: Loaded, options: EvaluateOptions = { ranges: true }): ResultDocument => {
  const { scenario, shop } = loaded
  const { site, readings } = scenario
  const begun = begin(loaded)
  const { plates, built, calibration, baseline, baselineJudged, restored, start } = begun
  const { before, beforeJudged, isRestored, faults, work } = start
  const outcomes: readonly OptionOutcome[] = scenario.options.map((request) => {
    if (request.reach === null) return evaluateOption(loaded, start, request)
    const resolved = resolveReach(loaded, begun, request, request.reach)
    const outcome = evaluateOption(loaded, start, resolved.request)
    const { found } = resolved
    return { ...outcome, result: { ...outcome.result, found, answer: answerOfSearch(outcome.result, found) } }
  })
  const assumptions = [...built.assumptions, ...loaded.assumptions]
  const unread = unreadCooling(before, assumptions, readings, site, work)
  const ranged = options.ranges
    ? rangesFor(loaded, plates, baseline, isRestored ? before : null, outcomes, work, assumptions, unread)
    : null
  const earlier = sameAsEarlier(
    outcomes.map(({ prepared, result }) => ({ machine: prepared.resolve().machine, result })),
  )
  const results = outcomes.map(({ result }, i) => ({
    ...result,
    range: ranged?.options[i] ?? null,
    sameAs: earlier[i] ?? null,
  }))
  const repair = restore(faults, baseline, baselineJudged, before, restored === null ? null : beforeJudged, site, shop)
  const works = [...(repair === null ? [] : [repair]), ...outcomes]
  return {
    format: 1,
    tool: TOOL,
    scenario: {
      title: scenario.title,
      file: scenario.file,
      machine: built.machine.name,
      customer: scenario.customer.name,
      asked: scenario.asked,
    },
    assumptions,
    restsOn: restingOn({ assumptions, readings, unread, faultsHangOn: calibration.faultsHangOn }).map(
      ({ path }) => path,
    ),
    readings: ranged?.readings ?? [],
    calibration: {
      ...calibration.figures,
      notes: [...calibration.figures.notes, ...loaded.askedAbout.map(({ text }) => text)],
    },
    askedAbout: loaded.askedAbout,
    baseline: baselineJudged,
    baselineRange: ranged?.baseline ?? null,
    restored: restored === null ? null : beforeJudged,
    restoration: repair?.restoration ?? null,
    options: results,
    recommendation: recommend({
      before: beforeJudged,
      options: results,
      faults,
      faultsHangOn: calibration.faultsHangOn,
      disagreements: calibration.disagreements,
      wants: scenario.wants,
      alternatives: scenario.alternatives,
      assumptions,
      readings,
      unread,
    }),
    acceptance: acceptance(loaded, plates, start, outcomes, ranged),
    diagram: diagramOf(built.machine),
    workOrders: works.map(({ workOrder }) => workOrder),
    pricing: { markUp: shop.markUp, margin: shop.marginStated, buildUps: works.map(({ buildUp }) => buildUp) },
    sheet: loaded.sheet,
  }
}
