/** Flow of all pumps through the suction strainer against its rated flow. The inlet checks judge what it does to the pump. */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'strainer-flow',
  wording: {
    /** Heading of the strainer's row while it passes the flow. */
    within: 'The suction strainer passes the flow',
    /** Heading where it is rated for less. */
    over: 'The suction strainer is small for the flow',
    /** Below the heading. */
    why: 'A strainer that is small, or half blocked, starves the pump before anything else shows.',
  },
  judge: ({ machine: { strainer }, more }) =>
    strainer
      ? [
          atMost(
            {
              component: 'strainer',
              value: more.returnFlowLpm,
              limit: lpmFromCubicMetresPerSecond(strainer.ratedFlow),
              unit: 'L/min',
              source: STATED,
            },
            'watch',
          ),
        ]
      : [],
}
