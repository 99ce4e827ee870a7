/** One rule a reason: when it holds and what it says to the customer (method: "The answer"). */
import type { Point, Reason, ReasonCode } from '../evaluation.ts'
import { crawlerBraking, holdBackGrade, noticeable, overMakersSpeed } from '../tables/limits.ts'
import { kmhFromMetresPerSecond, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import { type OptionFacts, speedChanged, speedRaised, touches } from './facts.ts'
import { onlyWorse } from './only-worse.ts'
import { hasSameFigures } from './same-figures.ts'

const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`

/** A rule gives its sentence where it holds, null where not. */
type Rule = (facts: OptionFacts) => string | null

export interface ReasonRule {
  readonly code: ReasonCode
  readonly effect: 'decline' | 'conditions'
  /** Held only where the scenario wants a travel speed, never against a protecting option. */
  readonly onlyForSpeed: boolean
  readonly rule: Rule
}

const enginePower: Rule = ({ after }) => {
  const finding = after.evaluation.findings.find((f) => f.check === 'engine-power')
  if (finding?.severity !== 'stop' || finding.existing) return null
  const kw = (value: unknown) => (typeof value === 'number' ? value.toFixed(1) : '?')
  const has = typeof finding.limit === 'number' ? ` of the ${kw(finding.limit)} kW that it has here` : ''
  return `At the relief setting the pumps would ask the engine for ${kw(finding.value)} kW${has}: it would stall just when it is needed.`
}

const noPart: Rule = ({ missing }) =>
  missing.length === 0 ? null : `No part is to be had for ${listed(missing)}, and it cannot be done without.`

/**
 * Hotter as findings count it: into the severe class, or by more than 2 %. The few hundredths of a degree that the drop of a
 * new filter adds to oil that is too hot already are not the filter's fault.
 */
const oilTooHot: Rule = ({ before, after }) => {
  const { steadyOilC, risk, averageHeatKw } = after.evaluation.heat
  if (risk !== 'severe') return null
  const was = before.evaluation.heat
  const noticeably = (value: number) => value * (1 + noticeable.value)
  if (steadyOilC === null) {
    const worse = was.steadyOilC !== null || averageHeatKw > noticeably(was.averageHeatKw)
    return worse
      ? 'The oil would not settle at all on a working day: more heat goes in than the machine can shed.'
      : null
  }
  if (was.steadyOilC === null) return null
  if (was.risk === 'severe' && steadyOilC <= noticeably(was.steadyOilC)) return null
  if (steadyOilC <= was.steadyOilC) return null
  return `The oil would settle at ${steadyOilC.toFixed(0)} °C, hotter than without the change and too hot for seals and hoses.`
}

const brakingOrSlope: Rule = (facts) => {
  if (!speedRaised(facts)) return null
  const { brakes } = facts.after.machine
  if (brakes.holding === false) return 'It has no holding brake, so it must not be made faster.'
  if (brakes.counterbalance === false && facts.site.steepestGrade > holdBackGrade.value)
    return `On a ${(facts.site.steepestGrade * 100).toFixed(0)} % slope nothing holds it back downhill (no counterbalance), so it must not be made faster.`
  return null
}

const stands = (point: Point | null, pull: boolean): boolean => point !== null && (point.stalled || !pull)

const canStart = (point: Point | null): boolean => point === null || point.tractiveForceN >= point.neededForceN

const pullLost: Rule = ({ before, after }) => {
  const [was, is] = [before.evaluation.travel, after.evaluation.travel]
  const lost = (name: 'grade' | 'turn') =>
    !stands(was[name], canStart(was[name])) && stands(is[name], canStart(is[name]))
  if (lost('turn')) return 'It would no longer turn on the spot on your ground.'
  if (lost('grade')) return 'It would no longer climb your steepest slope.'
  if (is.grade.tractiveForceN < is.grade.neededForceN && is.grade.tractiveForceN < was.grade.tractiveForceN * 0.999)
    return 'Its pull would fall below what your steepest slope asks.'
  return null
}

const governor: Rule = ({ before, after, changes }) => {
  const [was, is] = [before.machine.engine, after.machine.engine]
  const rpm = (speed: number) => rpmFromRevsPerSecond(speed).toFixed(0)
  if (is.ratedSpeed > was.ratedSpeed * 1.0001)
    return `It needs the engine at ${rpm(is.ratedSpeed)} rpm, above the ${rpm(was.ratedSpeed)} rpm that it is rated and certified for.`
  const touched = ['net-power', 'torque-rise', 'governor-droop', 'rated-speed'].filter((key) =>
    touches(changes, 'engine', key),
  )
  return touched.length > 0 ? 'It changes the engine or its governor, which are certified as they are.' : null
}

const withinError: Rule = ({ before, after, gain, limits }) => {
  if (gain.speedRatio === null) {
    // A machine that stands gives no ratio: it gains everything, or it still stands and has gained nothing.
    const [was, is] = [before.evaluation.travel.level, after.evaluation.travel.level]
    return is.speedKmh > was.speedKmh ? null : 'It would still not move on the level at full lever: no speed is gained.'
  }
  if (gain.speedRatio >= 1 + limits.leastGain) return null
  const gained = Math.max(0, (gain.speedRatio - 1) * 100)
  return `It would gain ${gained.toFixed(0)} % of speed, less than a stopwatch on your ground can show.`
}

const notWorthIt: Rule = ({ gain, cost, before, limits, alternatives, site }) => {
  // What has no price yet comes on top.
  const atLeast = cost.unpriced.length === 0 ? '' : 'at least '
  if (gain.paybackYears !== null && gain.paybackYears > limits.paybackYears)
    return `It would take ${atLeast}${gain.paybackYears.toFixed(1)} seasons to earn its price.`
  const value = before.machine.marketValue
  if (value !== null && cost.likely > limits.shareOfValue * value)
    return `It would cost ${atLeast}${((cost.likely / value) * 100).toFixed(0)} % of what the machine is worth.`
  const saved =
    gain.minutesPerTrip === null || site.tripsPerDay === null ? null : gain.minutesPerTrip * site.tripsPerDay
  const better = alternatives.find((way) => saved !== null && way.saves / 60 > saved && way.cost < cost.likely)
  return better === undefined ? null : `“${better.name}” saves more time for less money.`
}

/**
 * Where no travel speed is wanted, neither gain nor payback is asked for; a way that changes nothing, or makes things worse and
 * nothing better, is no answer there either. Of a protecting option its own judgement says so, in the same code.
 */
const bringsNothing: Rule = ({ before, after, wants, protecting, faults }) => {
  if (wants.travelSpeed !== null || protecting) return null
  const start = faults.length === 0 ? 'Nothing' : 'Beyond the repair nothing'
  if (hasSameFigures(before.evaluation, after.evaluation))
    return `${start} that we work out for it changes: speed, pull, oil and limits stay as they are.`
  const worse = onlyWorse(before.evaluation, after.evaluation)
  return worse.length === 0 ? null : `${start} that we work out for it gets better, and ${listed(worse.slice(0, 3))}.`
}

const faultFirst: Rule = ({ faults, protecting }) =>
  faults.length === 0 || protecting ? null : 'A fault is open; it is put right first, and the machine measured again.'

const speedClass: Rule = (facts) => {
  if (!speedRaised(facts)) return null
  const { designTravelSpeed } = facts.after.machine
  const speed = Math.max(facts.after.evaluation.travel.level.speedKmh, facts.after.evaluation.travel.grade.speedKmh)
  const maker = designTravelSpeed === null ? null : kmhFromMetresPerSecond(designTravelSpeed)
  if (maker !== null && speed > overMakersSpeed.value * maker)
    return `At ${speed.toFixed(1)} km/h it would be faster than the ${maker.toFixed(1)} km/h that its maker built it for.`
  const was = facts.before.evaluation.travel.level.speedKmh
  if (speed > crawlerBraking.value && was <= crawlerBraking.value)
    return `Above ${crawlerBraking.value} km/h another braking standard applies (ISO 3450 in place of ISO 10265).`
  return null
}

const makerConsent: Rule = (facts) => {
  if (facts.status.makerConsent) return null
  const structure = ['brakes', 'mass'].some((key) => touches(facts.changes, key))
  return speedChanged(facts) || structure ? "The maker's written consent is needed before the work begins." : null
}

const warrantyLeaseHire: Rule = ({ status }) => {
  const held: readonly (readonly [boolean, kind: string, who: string])[] = [
    [status.warranty, 'under warranty', 'whoever gives the warranty'],
    [status.leased, 'leased', 'its owner'],
    [status.hiredOut, 'hired out', 'whoever hires it out'],
  ]
  const holding = held.filter(([holds]) => holds)
  if (holding.length === 0) return null
  const [kinds, who] = [listed(holding.map(([, kind]) => kind)), listed(holding.map(([, , one]) => one))]
  return `The machine is ${kinds}: ${who} ${holding.length === 1 ? 'has' : 'have'} to agree in writing.`
}

const openDefects: Rule = (facts) =>
  facts.status.openDefects.length > 0 && speedRaised(facts)
    ? `Open defects are put right first: ${facts.status.openDefects.join(', ')}.`
    : null

const dataMissing: Rule = (facts) => {
  const { after } = facts
  const missing: string[] = []
  if (speedRaised(facts) && after.machine.brakes.holding === null) missing.push('whether a brake holds it on the slope')
  if (
    speedRaised(facts) &&
    after.machine.brakes.counterbalance === null &&
    facts.site.steepestGrade > holdBackGrade.value
  )
    missing.push('whether a counterbalance valve holds it back downhill')
  if ((after.machine.cooler?.fanCurrent ?? null) !== null && after.machine.engine.spareCurrent === null)
    missing.push("what the alternator has left for the cooler's fan")
  return missing.length === 0 ? null : `Still to be looked at: ${missing.join('; ')}.`
}

/** The closed list, in the order in which a customer is told. */
export const REASON_RULES: readonly ReasonRule[] = [
  { code: 'engine-power', effect: 'decline', onlyForSpeed: false, rule: enginePower },
  { code: 'no-part', effect: 'decline', onlyForSpeed: false, rule: noPart },
  { code: 'oil-too-hot', effect: 'decline', onlyForSpeed: false, rule: oilTooHot },
  { code: 'braking-or-slope', effect: 'decline', onlyForSpeed: false, rule: brakingOrSlope },
  { code: 'pull-lost', effect: 'decline', onlyForSpeed: false, rule: pullLost },
  { code: 'governor', effect: 'decline', onlyForSpeed: false, rule: governor },
  { code: 'within-error', effect: 'decline', onlyForSpeed: true, rule: withinError },
  { code: 'not-worth-it', effect: 'decline', onlyForSpeed: true, rule: notWorthIt },
  { code: 'not-worth-it', effect: 'decline', onlyForSpeed: false, rule: bringsNothing },
  { code: 'fault-first', effect: 'conditions', onlyForSpeed: false, rule: faultFirst },
  { code: 'speed-class', effect: 'conditions', onlyForSpeed: false, rule: speedClass },
  { code: 'maker-consent', effect: 'conditions', onlyForSpeed: false, rule: makerConsent },
  { code: 'warranty-lease-hire', effect: 'conditions', onlyForSpeed: false, rule: warrantyLeaseHire },
  { code: 'open-defects', effect: 'conditions', onlyForSpeed: false, rule: openDefects },
  { code: 'data-missing', effect: 'conditions', onlyForSpeed: false, rule: dataMissing },
]

/** Reasons that hold against an option. */
export const reasonsFor = (facts: OptionFacts): readonly (Reason & { readonly effect: 'decline' | 'conditions' })[] =>
  REASON_RULES.flatMap(({ code, effect, onlyForSpeed, rule }) => {
    if (onlyForSpeed && (facts.wants.travelSpeed === null || facts.protecting)) return []
    const text = rule(facts)
    return text === null ? [] : [{ code, text, effect }]
  })
