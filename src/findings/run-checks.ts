/**
 * Runs every check and marks what the machine already had. A finding exists already where the machine that the option
 * starts from has it too and the option does not worsen it: neither its severity, nor its value by more than 2 %, nor the
 * value against a limit that a new part has lowered.
 */
import type { Finding } from '../evaluation.ts'
import { noticeable } from '../tables/limits.ts'
import { allChecks } from './all-checks.ts'
import type { Check, CheckInput, Judged } from './check.ts'
import { isAbove, isWorse } from './judging.ts'

interface Result {
  readonly check: Check
  readonly judged: Judged
}

/** By finding id. Should a component be judged twice by one check, the worse judgement stands. */
const judgeAll = (input: CheckInput): ReadonlyMap<string, Result> => {
  const results = new Map<string, Result>()
  for (const check of allChecks) {
    for (const judged of check.judge(input)) {
      const id = `${check.id}:${judged.component}`
      const other = results.get(id)
      if (!other || isWorse(judged.severity, other.judged.severity)) results.set(id, { check, judged })
    }
  }
  return results
}

/** One number past another, in the bad direction, by more than a noticeable share of it. */
const isPast = (now: number, was: number, higher: boolean): boolean =>
  isAbove(higher ? now - was : was - now, noticeable.value * Math.abs(was))

const isNumber = (value: unknown): value is number => typeof value === 'number'

const hasWorseValue = (now: Judged, was: Judged): boolean => {
  const higher = now.worseWhenHigher
  if (higher === null) return false
  if (!isNumber(now.value) || !isNumber(was.value)) {
    if (isNumber(was.value)) return true
    return now.value === was.value && isPast(now.measure ?? 0, was.measure ?? 0, true)
  }
  if (isPast(now.value, was.value, higher)) return true
  const limits = isNumber(now.limit) && isNumber(was.limit) ? { now: now.limit, was: was.limit } : null
  if (!limits || now.severity !== was.severity) return false
  if (limits.now <= 0 || limits.was <= 0) return false
  return isPast(now.value / limits.now, was.value / limits.was, higher)
}

const existed = (now: Judged, was: Judged | undefined): boolean =>
  was !== undefined &&
  was.severity !== 'ok' &&
  now.severity !== 'ok' &&
  !isWorse(now.severity, was.severity) &&
  !hasWorseValue(now, was)

/**
 * Findings on one machine, in the order of the checks, those within their limits included.
 * @param input machine with its figures; `before` is the machine that an option starts from, null for that one itself
 * @returns findings with unique ids; `existing` is false throughout where there is no machine before
 */
export const runChecks = (input: CheckInput): Finding[] => {
  const { site, duty, attachment, before } = input
  const there = before ? judgeAll({ ...before, site, duty, attachment, before: null }) : new Map<string, Result>()
  return [...judgeAll(input)].map(([id, { check, judged }]) => ({
    id,
    component: judged.component,
    check: check.id,
    value: judged.value,
    limit: judged.limit,
    unit: judged.unit,
    severity: judged.severity,
    existing: existed(judged, there.get(id)?.judged),
    because: check.wording.why,
    source: judged.source,
    heading: judged.severity === 'ok' ? check.wording.within : check.wording.over,
  }))
}

/** Whether a finding asks for a component: it must change, and the machine did not have it before. */
export const counts = ({ severity, existing }: Finding): boolean => severity === 'change' && !existing

const onBraking: ReadonlySet<string> = new Set(
  allChecks.flatMap(({ id, countsWhenFaster }) => (countsWhenFaster ? id : [])),
)

/** Whether a finding counts against every option that raises a travel speed, existing or not: braking, holding, slope. */
export const countsWhenFaster = ({ check, severity }: Finding): boolean => severity !== 'ok' && onBraking.has(check)
