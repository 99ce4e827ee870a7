/** What is wanted, and how far a way gets: a score that grows the better it is, in the unit of the measure. */
import { atTool, attachmentState } from '../circuit/duty.ts'
import { conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import type { Evaluation } from '../evaluation.ts'
import type { Machine, Site } from '../machine.ts'
import type { Wants } from '../question.ts'
import type { Gives, Goal, Measure } from '../search.ts'
import { barFromPascals, kmhFromMetresPerSecond, lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'

export const goalOf = ({ travelSpeed, attachment, oilBelow }: Wants): Goal => ({
  travelSpeedKmh: travelSpeed === null ? null : kmhFromMetresPerSecond(travelSpeed),
  attachment:
    attachment === null
      ? null
      : {
          flowLpm: lpmFromCubicMetresPerSecond(attachment.flow),
          pressureBar: barFromPascals(attachment.pressure),
        },
  oilBelowC: oilBelow,
})

/** The first that the goal names. */
export const measureOf = ({ travelSpeed, attachment }: Wants): Measure =>
  travelSpeed !== null ? 'travel-speed' : attachment !== null ? 'attachment-flow' : 'oil-temperature'

/** Rounding in a unit conversion must not make a way miss what it just reaches. */
const HAIR = 1e-9
const atLeast = (value: number, wanted: number): boolean => value >= wanted - HAIR * Math.abs(wanted)

/**
 * Flow that reaches the tool while it asks for the wanted pressure, at 50 degC; 0 where the engine or the relief does not
 * carry it, or where no circuit works an attachment.
 */
export const attachmentFlow = (machine: Machine, site: Site, wants: Wants): number => {
  if (wants.attachment === null) return 0
  const plant = preparePlant(machine, site)
  const at = conditionsAt(plant, REFERENCE_OIL)
  const { flow, pressure } = wants.attachment
  const { working, state } = attachmentState(plant, { name: '', flow, pressure }, at)
  if (state.scaled) return 0
  let most = 0
  for (const i of working) {
    const circuit = state.circuits[i]
    if (circuit !== undefined) most += atTool(plant, i, circuit, state.sharedReturn, pressure, false, at).flow
  }
  return lpmFromCubicMetresPerSecond(most)
}

/** What one evaluated machine reaches of all that may be wanted. */
export interface Reached {
  readonly speedKmh: number
  readonly flowLpm: number
  readonly oilC: number | null
}

export const reachedBy = (evaluation: Evaluation, machine: () => Machine, site: Site, wants: Wants): Reached => ({
  speedKmh: evaluation.travel.level.speedKmh,
  flowLpm: wants.attachment === null ? 0 : attachmentFlow(machine(), site, wants),
  oilC: evaluation.heat.steadyOilC,
})

/** In the unit of the measure; null where the oil does not settle. */
export const measured = ({ speedKmh, flowLpm, oilC }: Reached, measure: Measure): number | null =>
  measure === 'travel-speed' ? speedKmh : measure === 'attachment-flow' ? flowLpm : oilC

/** The more the better. */
export const scoreOf = (reached: Reached, measure: Measure): number => {
  const value = measured(reached, measure)
  if (measure !== 'oil-temperature') return value ?? 0
  return value === null ? Number.NEGATIVE_INFINITY : -value
}

/** Score from which the wanted figure of the measure is met. */
export const wantedScore = (goal: Goal, measure: Measure): number => {
  const wanted =
    measure === 'travel-speed'
      ? (goal.travelSpeedKmh ?? 0)
      : measure === 'attachment-flow'
        ? (goal.attachment?.flowLpm ?? 0)
        : -(goal.oilBelowC ?? 0)
  return wanted - HAIR * Math.abs(wanted)
}

/** Every figure that is wanted is reached. */
export const reachesGoal = ({ speedKmh, flowLpm, oilC }: Reached, goal: Goal): boolean =>
  (goal.travelSpeedKmh === null || atLeast(speedKmh, goal.travelSpeedKmh)) &&
  (goal.attachment === null || atLeast(flowLpm, goal.attachment.flowLpm)) &&
  (goal.oilBelowC === null || (oilC !== null && atLeast(-oilC, -goal.oilBelowC)))

/** The goal without what the search measures by; null where that is all. */
export const restOf = (goal: Goal, measure: Measure): Goal | null => {
  const rest: Goal = {
    travelSpeedKmh: null,
    attachment: measure === 'travel-speed' ? goal.attachment : null,
    oilBelowC: measure === 'oil-temperature' ? null : goal.oilBelowC,
  }
  return rest.attachment === null && rest.oilBelowC === null ? null : rest
}

export const givesOf = ({ speedKmh, flowLpm, oilC }: Reached, goal: Goal): Gives => ({
  speedKmh,
  attachmentLpm: goal.attachment === null ? null : flowLpm,
  oilC,
})
