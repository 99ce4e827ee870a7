/**
 * Torque at the relief setting against what the pump's shaft carries: the stated figure where there is one, else the low
 * end of what such a shaft usually carries, which is from memory and only worth watching. Sections of one tandem pump add
 * up on the shaft of the first.
 */
import { STATED } from '../../tables/limits.ts'
import { usualShaftTorque } from '../../tables/shaft-torques.ts'
import type { Check } from '../check.ts'
import { shaftsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'shaft-torque',
  wording: {
    /** Heading of a pump's row while its shaft carries the torque. */
    within: 'The pump shaft carries the torque',
    /** Heading where it does not, or where a shaft of that size usually would not. */
    over: 'The pump shaft may be too weak for the torque',
    /** Below the heading. */
    why: 'More oil or more pressure is more torque on the shaft; one that is overloaded twists off.',
  },
  judge: (input) =>
    shaftsOf(input).flatMap((shaft) => {
      const [first] = shaft
      if (!first) return []
      const { pump } = first.circuit
      const held = {
        component: `${first.id}.pump`,
        value: shaft.reduce((sum, { figures }) => sum + figures.shaftTorqueNm, 0),
        unit: 'N·m',
      }
      if (pump.maxShaftTorque !== null)
        return [atMost({ ...held, limit: pump.maxShaftTorque, source: STATED }, 'change')]
      const usual = pump.mount.shaft === null ? null : usualShaftTorque(pump.mount.shaft)
      return usual ? [atMost({ ...held, limit: usual.low, source: usual.source }, 'watch')] : []
    }),
}
