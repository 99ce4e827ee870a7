/** Difference of the two tracks' speeds on the level where each has its circuit, in percent of their mean. */
import { drift } from '../../tables/limits.ts'
import { percentFromShare } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { drivingCircuits } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'drift',
  wording: {
    /** Heading of the travel row where both tracks run alike. */
    within: 'Both tracks run alike',
    /** Heading where they do not. */
    over: 'One track runs faster than the other',
    /** Below the heading. */
    why: 'The machine pulls to one side and the operator steers against it all day.',
  },
  judge: (input) => {
    const speeds = drivingCircuits(input).flatMap(({ more }) => more.levelSpeedKmh ?? [])
    const mean = speeds.reduce((sum, speed) => sum + speed, 0) / 2
    if (speeds.length !== 2 || mean === 0) return []
    return [
      atMost(
        {
          component: 'travel',
          value: percentFromShare((Math.max(...speeds) - Math.min(...speeds)) / mean),
          limit: percentFromShare(drift.value),
          unit: '%',
          source: drift.source,
        },
        'watch',
      ),
    ]
  },
}
