/**
 * Whether the oil of every one of some candidates settles too hot, as the answer judges it ('oil-too-hot'): in the severe class, and
 * hotter than before, noticeably so where it was severe already. Hotter oil is thinner, so what holds at the coolest that any of them
 * settles holds for all. Where it did not settle before, what counts as worse is left to the evaluation.
 */
import type { Plant } from '../circuit/plant.ts'
import { conditionsAt } from '../circuit/plant.ts'
import { noticeable } from '../tables/limits.ts'
import { oilRisk } from '../tables/oil-risk.ts'
import { cstFromSquareMetresPerSecond } from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'
import type { Question } from './assess.ts'

/**
 * @param coolest that any of them settles; Infinity where none does
 * @param plant with the oil that all of them have
 */
export const allTooHot = ({ start }: Question, coolest: Celsius, plant: Plant): boolean => {
  const { steadyOilC: was, risk } = start.beforeJudged.heat
  if (was === null) return false
  if (coolest === Number.POSITIVE_INFINITY) return true
  if (coolest <= (risk === 'severe' ? was * (1 + noticeable.value) : was)) return false
  const viscosity = cstFromSquareMetresPerSecond(conditionsAt(plant, coolest).nu)
  return oilRisk(coolest, viscosity) === 'severe'
}
