/** Topics 9, 10 and 11 of the published checks: travel, engine, filters. */
import { governorDroop } from '../../../src/formulas/engine.ts'
import { filtrationEfficiency, filtrationRatio, scaleNumber } from '../../../src/formulas/filtration.ts'
import {
  rollingAndGrade,
  steerableRatio,
  thrustShare,
  travelSpeed,
  turningForcePerTrack,
  turningMoment,
  turningResistanceAtRadius,
  wayFromTeeth,
} from '../../../src/formulas/traction.ts'
import {
  kmhFromMetresPerSecond,
  metresFromMm,
  POUND_FORCE,
  percentFromShare,
  poundsForceFromNewtons,
  revsPerSecondFromRpm,
  shareFromPercent,
} from '../../../src/units/shop-units.ts'
import type { Expression, Expressions } from '../entry.ts'

const steerable: Expression = (given) => ({
  LB: steerableRatio(given('mu_t'), given('c_over_p'), (given('phi') * Math.PI) / 180, given('fr')),
})

/** Weight 1 N, coefficient 1, gauge 1 m, no motion resistance: the force is the share asked for. */
const spin: Expression = (given) => ({
  F_over_muW: turningForcePerTrack(0, 1, turningMoment(1, 1, given('LB'), 1), 1, 1),
})

const counted: Expression = (given) => {
  const beta = filtrationRatio(given('up'), given('down'))
  return { beta, eff: filtrationEfficiency(beta) }
}

const efficiency: Expression = (given) => ({ eff: filtrationEfficiency(given('beta')) })

const code: Expression = (given) => ({
  R4: scaleNumber(given('n4')) ?? Number.NaN,
  R6: scaleNumber(given('n6')) ?? Number.NaN,
  R14: scaleNumber(given('n14')) ?? Number.NaN,
})

export const travelEngineFilter: Expressions = {
  'tr-speed': (given) => {
    const way = wayFromTeeth(given('z'), metresFromMm(given('pitch')))
    return { v: kmhFromMetresPerSecond(travelSpeed(revsPerSecondFromRpm(given('n')), 1, way, given('slip'), 1)) }
  },
  'tr-grade-rule': (given) => ({
    F: poundsForceFromNewtons(rollingAndGrade(given('m') * POUND_FORCE, 0, shareFromPercent(given('grade')))),
  }),
  'tr-wong-sand': steerable,
  'tr-wong-clay': steerable,
  'tr-nikitin': (given) => ({ mu: turningResistanceAtRadius(given('mu_max'), given('R'), given('B')) }),
  'tr-spin-0.8': spin,
  'tr-spin-1.6': spin,
  'tr-janosi': (given) => ({ ratio: thrustShare(given('K'), given('L'), given('s')) }),
  'en-droop': (given) => ({ droop: percentFromShare(governorDroop(given('n_none'), given('n_full'))) }),
  'ft-sul-6-3': counted,
  'ft-ds61': counted,
  'ft-beta-2': efficiency,
  'ft-beta-10': efficiency,
  'ft-beta-75': efficiency,
  'ft-beta-200': efficiency,
  'ft-beta-1000': efficiency,
  'iso4406-19-16-13': code,
  'iso4406-20-16-13': code,
}
