/** The pump's whole flow at the relief setting against the flow that the relief is rated for. */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'relief-capacity',
  wording: {
    /** Heading of a relief's row while it passes the pump's whole flow. */
    within: 'The relief passes all the flow',
    /** Heading where it does not. */
    over: 'The relief is too small for the flow',
    /** Below the heading. */
    why: 'A relief that is too small lets the pressure climb above its setting, and every hose behind it with it.',
  },
  judge: (input) =>
    circuitsOf(input).flatMap(({ circuit: { relief }, id, more }) =>
      relief.ratedFlow === null
        ? []
        : [
            atMost(
              {
                component: `${id}.relief`,
                value: more.flowAtReliefLpm,
                limit: lpmFromCubicMetresPerSecond(relief.ratedFlow),
                unit: 'L/min',
                source: STATED,
              },
              'change',
            ),
          ],
    ),
}
