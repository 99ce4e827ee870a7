/** How an option that only protects the oil is judged: temperature, viscosity, cleanliness and inlet pressure. */
import type { Evaluation } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import { classesBetter, OIL_VISCOSITY_LIMITS } from '../tables/oil-risk.ts'
import type { OptionFacts } from './facts.ts'

export type Protection = 'helps' | 'moderate' | 'does nothing'

/** Worst shortage of inlet pressure under its limit, warm and at the coldest start [bar]; 0 where none is short. */
const inletShortage = (evaluation: Evaluation): number => {
  let worst = 0
  for (const finding of evaluation.findings)
    if (
      finding.check.startsWith('inlet-pressure') &&
      typeof finding.value === 'number' &&
      typeof finding.limit === 'number'
    )
      worst = Math.max(worst, finding.limit - finding.value)
  return worst
}

const coolsEnough = (was: Evaluation['heat'], is: Evaluation['heat']): boolean =>
  (was.risk === 'high' || was.risk === 'severe') && classesBetter(was.risk, is.risk) >= 1

const thickensEnough = (was: Evaluation['heat'], is: Evaluation['heat']): boolean =>
  was.steadyViscosityCst !== null &&
  was.steadyViscosityCst < OIL_VISCOSITY_LIMITS.thin &&
  is.steadyViscosityCst !== null &&
  is.steadyViscosityCst >= OIL_VISCOSITY_LIMITS.thin

const feedsEnough = (was: Evaluation, is: Evaluation): boolean => {
  const short = inletShortage(was)
  return short > 1e-9 && inletShortage(is) <= short / 2
}

/** What is wrong with oil, inlet and cleanliness before, in words; empty where nothing is. */
export const wrongBefore = ({ before: { machine, evaluation } }: Pick<OptionFacts, 'before'>): readonly string[] => {
  const { risk, steadyOilC, steadyViscosityCst } = evaluation.heat
  const isThin = steadyViscosityCst !== null && steadyViscosityCst < OIL_VISCOSITY_LIMITS.thin
  const oil = steadyOilC === null ? 'the oil does not settle' : isThin ? 'the oil gets too thin' : 'the oil gets hot'
  return [
    ...(risk === 'high' || risk === 'severe' ? [oil] : []),
    ...(inletShortage(evaluation) > 1e-9 ? ['a pump is short of oil at its inlet'] : []),
    ...(machine.filter === null ? ['there is no filter'] : []),
  ]
}

const filtersNow = (was: Machine, is: Machine): boolean => was.filter === null && is.filter !== null

/**
 * Judges a protecting option.
 * @returns `helps` where it cures or eases what is wrong, `moderate` where the oil is warm and gets cooler, else `does nothing`
 */
export const protectionOf = ({ before, after }: OptionFacts): Protection => {
  const [was, is] = [before.evaluation.heat, after.evaluation.heat]
  if (
    coolsEnough(was, is) ||
    thickensEnough(was, is) ||
    feedsEnough(before.evaluation, after.evaluation) ||
    filtersNow(before.machine, after.machine)
  )
    return 'helps'
  const cooler = was.steadyOilC !== null && is.steadyOilC !== null && is.steadyOilC < was.steadyOilC - 1
  return was.risk === 'moderate' && cooler ? 'moderate' : 'does nothing'
}
