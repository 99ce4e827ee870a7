/**
 * The most oil that can reach an attachment at its pressure, whatever else is chosen: what the pump of its circuit gives at
 * that pressure, with every drop on the way left out, at the speed of the engine without load.
 *
 *   Q = (1 - e) V n_max - w k dp/mu
 *
 * Pressure at the pump = pressure at the tool + drops >= dp, the engine turns no faster than without load, and flow falls
 * with pressure and grows with speed. Where dp is no less than the relief setting nothing arrives.
 */
import { pumpFlow } from '../formulas/pump.ts'
import { lpmFromCubicMetresPerSecond } from '../units/shop-units.ts'
import type { PascalSeconds } from '../units/si.ts'
import { KEEP } from './candidate.ts'
import { type Ground, machinesOf } from './drive.ts'

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
  const most = machines.map((machine) =>
    machine.circuits.reduce((sum, { works, pump, relief }) => {
      if (!works.includes('attachment') || dp >= relief.setting * (1 + HAIR)) return sum
      const { displacement, flowOffset, slip, slipFactor } = pump
      return sum + pumpFlow(displacement, plant.engine.highIdle, flowOffset, slip, slipFactor, dp, mu)
    }, 0),
  )
  return lpmFromCubicMetresPerSecond(Math.max(...most)) * (1 + HAIR)
}
