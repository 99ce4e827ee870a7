/**
 * The most oil that can reach an attachment at its pressure, whatever else is chosen: what the pump of its circuit gives at
 * that pressure, with every drop on the way left out.
 *
 *   T = torque of that pump at dp, without its viscous part; n = speed of the governed engine under T
 *   Q = (1 - e) V n - w k dp/mu
 *
 * Pressure at the pump = pressure at the tool + drops >= dp, other pumps only add torque, torque only slows the engine, and
 * flow falls with pressure and grows with speed. Where a suction may starve a pump, see travel-bound.ts. Where dp is no less
 * than the relief setting, or the engine has not the torque, nothing arrives.
 */
import { governedSpeed } from '../formulas/engine.ts'
import { pumpFlow } from '../formulas/pump.ts'
import { lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import { KEEP } from './candidate.ts'
import { type Ground, machinesOf } from './drive.ts'
import { leastTorque } from './travel-bound.ts'

const HAIR = 1e-6

/**
 * @param other choice of the attachment's own pump; undefined: still open
 * @param driving choice of the pumps that drive, where one of them works the attachment
 * @returns flow in L/min
 */
export const attachmentMost = (
  ground: Ground,
  other: number | undefined,
  driving: number,
  mu: PascalSeconds,
): number => {
  const { question, plant } = ground
  const wanted = question.wants.attachment
  if (wanted === null || (ground.other !== null && other === undefined)) return Number.POSITIVE_INFINITY
  const machines =
    ground.other === null
      ? machinesOf(ground, ground.driving, driving)
      : machinesOf(ground, ground.other, other ?? KEEP)
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
