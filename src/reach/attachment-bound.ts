/**
 * The most oil that can reach an attachment at its pressure, whatever else is chosen: what the pumps of its circuits give at
 * that pressure, with every drop on the way left out.
 *
 *   T = torque of those pumps at dp, without its viscous part; n = speed of the governed engine under T
 *   Q = sum of (1 - e) V n - w k dp/mu
 *
 * Pressure at the pump = pressure at the tool + drops >= dp, other pumps only add torque, torque only slows the engine, and
 * flow falls with pressure and grows with speed. Where a suction may starve a pump, see travel-bound.ts. Where dp is no less
 * than the relief setting, or the engine has not the torque, nothing arrives.
 */
import { governedSpeed } from '../formulas/engine.ts'
import { pumpFlow } from '../formulas/pump.ts'
import { lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, type Ground, machinesOf, withOthers } from './drive.ts'
import { leastTorque } from './travel-bound.ts'

const HAIR = 1e-6

/** @returns flow in L/min; Infinity while a pump that may work it is open */
export const attachmentMost = (ground: Ground, choices: Candidate, mu: PascalSeconds): number => {
  const { question, plant, driving, others } = ground
  const wanted = question.wants.attachment
  const isOpen = [driving, ...others].some((known) => choiceOf(known, choices) === undefined)
  if (wanted === null || isOpen) return Number.POSITIVE_INFINITY
  const machines = machinesOf(ground, driving, choiceOf(driving, choices) ?? KEEP).flatMap((machine) =>
    withOthers(ground, machine, choices),
  )
  const dp = wanted.pressure
  const { ratedSpeed, ratedTorque, droop, rise } = plant.engine
  const most = machines.map((machine) => {
    const working = machine.circuits.filter(
      ({ works, relief }) => works.includes('attachment') && dp < relief.setting * (1 + HAIR),
    )
    const torque = working.reduce((sum, { pump }) => sum + leastTorque(pump, dp), 0)
    const governed = governedSpeed(torque * (1 - HAIR), ratedSpeed, ratedTorque, droop, rise)
    const turns = ground.mayStarve ? Math.max(ratedSpeed, governed ?? 0) : governed
    if (turns === null) return 0
    return working.reduce((sum, { pump: { displacement, flowOffset, slip, slipFactor } }) => {
      return sum + pumpFlow(displacement, turns, flowOffset, slip, slipFactor, dp, mu)
    }, 0)
  })
  return lpmFromCubicMetresPerSecond(Math.max(...most)) * (1 + HAIR)
}
