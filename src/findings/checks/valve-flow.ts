/** Pump flow at the level point against the flow that the control valve is rated for. */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'valve-flow',
  wording: {
    /** Heading of a valve's row while it passes the flow. */
    within: 'The control valve passes the flow',
    /** Heading where it is rated for less. */
    over: 'The control valve is too small for the flow',
    /** Below the heading. */
    why: 'Pressure lost in a valve grows with the square of the flow, all of it turns to heat, and levers get heavy and jerky.',
  },
  judge: (input) =>
    circuitsOf(input).flatMap(({ circuit: { valve }, id, figures }) =>
      !valve || valve.ratedFlow === null
        ? []
        : [
            atMost(
              {
                component: `${id}.valve`,
                value: figures.pumpFlowLpm,
                limit: lpmFromCubicMetresPerSecond(valve.ratedFlow),
                unit: 'L/min',
                source: STATED,
              },
              'change',
            ),
          ],
    ),
}
