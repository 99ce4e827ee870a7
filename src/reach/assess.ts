/** One candidate evaluated as an option of the scenario: with every consequence, priced, answered. */
import { carry } from '../calibration/carried.ts'
import { linePlaces } from '../consequences/line-places.ts'
import { DISPOSAL } from '../costing/quote.ts'
import type { Consequence, Finding, OptionResult, ReasonCode } from '../evaluation.ts'
import type { Loaded } from '../loaded.ts'
import type { Machine } from '../machine.ts'
import { evaluateOption, type OptionOutcome, type Start } from '../option.ts'
import type { Wants } from '../question.ts'
import type { FoundWay, Goal, Measure } from '../search.ts'
import { type Candidate, patchOf } from './candidate.ts'
import {
  attachmentFlow,
  givesOf,
  goalOf,
  measured,
  measureOf,
  type Reached,
  reachedBy,
  reachesGoal,
  scoreOf,
} from './goal.ts'
import type { Patch, Place } from './places.ts'

/** Reasons that decline whatever it costs. Those about money ('not-worth-it', 'within-error') are for the customer to weigh. */
const TECHNICAL: ReadonlySet<ReasonCode> = new Set<ReasonCode>([
  'engine-power',
  'no-part',
  'oil-too-hot',
  'braking-or-slope',
  'pull-lost',
  'governor',
])

/** A finding that stands against a way: it asks for a change or stops, and was not there before. */
export const stands = ({ severity, existing }: Finding): boolean =>
  !existing && (severity === 'change' || severity === 'stop')

/** No finding stands against it, and it is not declined for a technical reason. */
export const isWithinLimits = ({ answer, evaluation }: OptionResult): boolean =>
  !evaluation.findings.some(stands) &&
  !(answer.answer === 'decline' && answer.reasons.some(({ code }) => TECHNICAL.has(code)))

/** Something of it is not on the list, or has no price: what it costs is "from". */
export const isSpecial = ({ cost, consequences }: OptionResult): boolean =>
  cost.unpriced.length > 0 ||
  consequences.some(({ specialOrder }) => specialOrder) ||
  // Disposal is a line without a part, and nothing that is ordered.
  cost.lines.some(({ part, what }) => part === null && what !== DISPOSAL)

const partsAt = (machine: Machine, { kind, circuits, lines }: Place): readonly (string | null)[] => {
  const { travel } = machine
  const of = (name: string) => machine.circuits.find((circuit) => circuit.name === name)
  switch (kind) {
    case 'motor':
      return [travel.motor.part]
    case 'swivel':
      return [travel.swivel?.part ?? null]
    case 'pump':
      return circuits.map((name) => of(name)?.pump.part ?? null)
    case 'valve':
      return circuits.map((name) => of(name)?.valve?.part ?? null)
    case 'filter':
    case 'cooler':
      return [machine[kind]?.part ?? null]
    case 'hose': {
      const there = new Map(linePlaces(machine).map(({ line }) => [line.id, line.part]))
      return lines.map(({ line }) => there.get(line.id) ?? null)
    }
    default:
      // No consequence touches sprocket or oil.
      return []
  }
}

/** What a consequence calls the component of a place. */
const componentsAt = ({ kind, circuits, lines }: Place): readonly string[] => {
  if (kind === 'pump' || kind === 'valve') return circuits.map((name) => `circuits.${name}.${kind}`)
  if (kind === 'hose') return lines.map(({ line }) => line.id)
  return [kind === 'motor' || kind === 'swivel' ? `travel.${kind}` : kind]
}

/**
 * Every part that was chosen is there in the end. Nobody buys a part to throw it away: a candidate of which a consequence
 * replaces a chosen part is no way of its own; the part that it ends with may be chosen itself. (One to order in its place
 * keeps the id and gets other ratings: the consequence shows it.)
 */
const keepsChoice = (
  places: readonly Place[],
  candidate: Candidate,
  machine: Machine,
  consequences: readonly Consequence[],
): boolean =>
  candidate.every((option, i) => {
    const place = places[i]
    const part = place?.options[option]?.part
    if (place === undefined || part === undefined) return true
    const components = componentsAt(place)
    const replaced = consequences.some(
      (one) => one.action !== 'adapt' && one.part !== part.id && components.includes(one.component),
    )
    return !replaced && partsAt(machine, place).every((there) => there === part.id)
  })

/** A candidate with everything that ways are compared by. */
export interface Assessed {
  readonly candidate: Candidate
  readonly way: FoundWay
  readonly outcome: OptionOutcome
  readonly reached: Reached
  readonly score: number
  readonly price: number
  /** No limit stands against it, and every part that was chosen is there in the end. */
  readonly withinLimits: boolean
}

/** Everything that the search of one scenario works on. */
export interface Question {
  readonly loaded: Loaded
  readonly start: Start
  readonly wants: Wants
  readonly goal: Goal
  readonly measure: Measure
  readonly places: readonly Place[]
  /** What reaches the attachment today [L/min]; 0 where none is wanted. */
  readonly flowToday: number
}

export const questionOf = (loaded: Loaded, start: Start, wants: Wants, places: readonly Place[]): Question => ({
  loaded,
  start,
  wants,
  goal: goalOf(wants),
  measure: measureOf(wants),
  places,
  flowToday: attachmentFlow(start.before.machine, loaded.scenario.site, wants),
})

/** Name under which a way is evaluated: every chain of consequences begins with it. */
const NAME = 'The way that was found'

/** Evaluates one set of changes as an option. */
export const assessPatch = (question: Question, candidate: Candidate, changes: Patch, name = NAME): Assessed => {
  const { loaded, start, wants, goal, measure } = question
  // What this search is asked for stands in place of what the scenario wants: a cooler is sized for it.
  const asking: Loaded = { ...loaded, scenario: { ...loaded.scenario, wants } }
  const outcome = evaluateOption(asking, start, { name, why: null, changes, reach: null })
  const { result, prepared } = outcome
  const machine = carry(prepared.resolve().machine, start.carried, start.isRestored)
  const reached = reachedBy(result.evaluation, () => machine, loaded.scenario.site, wants)
  const withinLimits = isWithinLimits(result) && keepsChoice(question.places, candidate, machine, result.consequences)
  return {
    candidate,
    outcome,
    reached,
    score: scoreOf(reached, measure),
    price: result.cost.likely,
    withinLimits,
    way: {
      changes,
      option: result,
      reached: measured(reached, measure),
      gives: givesOf(reached, goal),
      reaches: reachesGoal(reached, goal),
      meets: withinLimits && reachesGoal(reached, goal),
      specialOrder: isSpecial(result),
    },
  }
}

export const assess = (question: Question, candidate: Candidate): Assessed =>
  assessPatch(question, candidate, patchOf(question.places, candidate))
